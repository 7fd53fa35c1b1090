package blast

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// DustClass is the abrasive that published dust factors know.
type DustClass string

const (
	SandDust DustClass = "sand"
	GritDust DustClass = "grit"
	ShotDust DustClass = "shot"
)

// DustClasses lists them.
func DustClasses() []DustClass { return []DustClass{SandDust, GritDust, ShotDust} }

// Emission is the dust that goes into the air, in kg. The fine parts are known
// for sand only.
type Emission struct {
	TotalKg float64
	PM10Kg  *float64
	PM25Kg  *float64
}

// The factors of AP-42 13.2.6 (Sep 1997), Table 13.2.6-1, in kg for each Mg of
// sand thrown at mild steel without control, and the winds they are for
// (E-1 to E-3).
const (
	metresPerMile          = 1609.344
	lowWind                = 5 * metresPerMile / 3600  // m/s
	middleWind             = 10 * metresPerMile / 3600 // m/s
	highWind               = 15 * metresPerMile / 3600 // m/s
	lowDust                = 27.0                      // E-1
	middleDust             = 55.0                      // E-1
	highDust               = 91.0                      // E-1
	fineDust, finestDust   = 13.0, 1.3                 // PM10 and PM2.5 at any wind, E-2
	gritToSand, shotToSand = 0.24, 0.10                // E-3
)

// Dust returns what abrasive blasting of mild steel in the open sends into the
// air.
//
//	total = thrown · factor(wind) · class · (1 − control)
//
// thrown is in kg in [0, 1e9]; wind in m/s in [2.2352, 6.7056], between whose
// ends and middle (5, 10 and 15 mph) the factor is interpolated; control is the
// share that a device holds back, in [0, 1]. Outside those ranges, and for a
// class that is not known, it returns an error. For media other than sand, grit
// and shot, on other metals or on paint, no factor is published.
//
// Source: EPA AP-42 13.2.6 Table 13.2.6-1 (E-1 to E-5); in tests/published.
func Dust(class DustClass, thrown, wind, control float64) (Emission, error) {
	if err := quantity.Within("media thrown", thrown, "kg", quantity.Limits{High: 1e9}); err != nil {
		return Emission{}, err
	}
	if err := quantity.Within("wind", wind, "m/s", quantity.Limits{Low: lowWind, High: highWind}); err != nil {
		return Emission{}, err
	}
	if err := quantity.Within("dust control", control, "", quantity.Limits{High: 1}); err != nil {
		return Emission{}, err
	}
	share := class.ofSand()
	if share == 0 {
		return Emission{}, fmt.Errorf("no dust factor is published for %q; there are those of sand, grit and shot", string(class))
	}
	passed := thrown / 1000 * (1 - control) // Mg
	e := Emission{TotalKg: passed * (windDust(wind) * share)}
	if class == SandDust {
		e.PM10Kg, e.PM25Kg = new(passed*fineDust), new(passed*finestDust)
	}
	return e, nil
}

// ofSand is the dust of an abrasive over that of sand; 0 where none is known.
func (c DustClass) ofSand() float64 {
	switch c {
	case SandDust:
		return 1
	case GritDust:
		return gritToSand
	case ShotDust:
		return shotToSand
	}
	return 0
}

// windDust interpolates the factor of sand, in kg/Mg.
func windDust(wind float64) float64 {
	if wind <= middleWind {
		return lowDust + (middleDust-lowDust)*(wind-lowWind)/(middleWind-lowWind)
	}
	return middleDust + (highDust-middleDust)*(wind-middleWind)/(highWind-middleWind)
}
