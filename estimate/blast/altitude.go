package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

const (
	lapseOverSurface = 0.0065 / 288.15 // 1/m; 6.5 K/km from 288.15 K. Source: ISO 2533, standard atmosphere
	lapseExponent    = 5.25588         // g/(R·lapse). Source: ISO 2533, standard atmosphere
)

// AmbientAt returns the pressure of the air, in kPa absolute, at an altitude.
//
//	pa = 101.325 · (1 − 0.0065·h/288.15)^5.25588
//
// altitude is in m above the sea in [−500, 5500]. Outside that range it returns
// a *quantity.RangeError. The weather moves the real pressure by 3 % or so.
//
// Source: ISO 2533 standard atmosphere (from memory); the pressure of 5000 ft
// that reference blasting A-19d works with. In tests/published.
func AmbientAt(altitude float64) (float64, error) {
	if err := quantity.Within("altitude", altitude, "m", altitudeLimits); err != nil {
		return 0, err
	}
	return SeaLevelKPa * math.Pow(1-lapseOverSurface*altitude, lapseExponent), nil
}
