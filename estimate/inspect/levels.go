package inspect

import "fmt"

const (
	usualLevel   = 3    // Source: SSPC-PA 2, default (reference coating A2)
	leastISOFilm = 40.0 // µm nominal. Source: scope of ISO 19840 (reference coating P3)
)

// spotBounds returns between which shares of the specified film the mean of a
// spot may lie; most is 0 where there is no bound.
//
// Source: SSPC-PA 2. Read: five levels, 1 without any deviation, 0.8 at the default
// level 3 (reference coating A2, A3); the upper bounds, and level 2, from memory.
func spotBounds(level int) (least, most float64, err error) {
	switch level {
	case 1:
		return 1, 1, nil
	case 2:
		return 0.9, 1.2, nil
	case 0, usualLevel:
		return 0.8, 1.2, nil
	case 4:
		return 0.8, 1.5, nil
	case 5:
		return 0.8, 0, nil
	}
	return 0, 0, fmt.Errorf("restriction_level is %d; it must be 1 to 5", level)
}

// ProfileCorrection returns what is taken off a reading of a gauge that was
// zeroed on smooth steel, in µm, for a profile graded by ISO 8503-1: fine, medium,
// coarse, or unknown. It is not the paint that fills the profile.
//
// Source: ISO 19840 (reference coating P1), from memory.
func ProfileCorrection(grade string) (float64, error) {
	switch grade {
	case "fine":
		return 10, nil
	case "medium", "unknown":
		return 25, nil
	case "coarse":
		return 40, nil
	}
	return 0, fmt.Errorf("profile_grade %q is not one of fine, medium, coarse, unknown", grade)
}
