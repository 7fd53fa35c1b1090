package inspect

import (
	"math"

	"filmbuild/surfaces/quantity"
)

const (
	smallStep, smallMost = 10.0, 30.0 // m². Source: SSPC-PA 2, metric figures from memory (reference coating A2, A6)
	middleMost           = 100.0      // m². Source: as above
	middleAreas          = 3          // Source: SSPC newsletter (reference coating A6)
	furtherStep          = 100.0      // m². Source: SSPC-PA 2, from memory

	squareFoot                      = 0.09290304           // m². Source: definition
	feetStep, feetSmall, feetMiddle = 100.0, 300.0, 1000.0 // ft². Source: SSPC newsletter (reference coating A6)

	SpotsPerArea    = 5 // Source: SSPC-PA 2 (reference coating A2)
	ReadingsPerSpot = 3 // Source: SSPC-PA 2 (reference coating A2)

	countSlack = 1e-9 // forgives the rounding of a quotient that is a whole number
)

var areaLimits = quantity.Limits{High: 100000, LowOpen: true} // m²; a great ship's hull has about 50,000

// Areas returns how many areas of 10 m² are inspected on a coated surface.
//
//	up to 30 m²:  ⌈area/10⌉
//	up to 100 m²: 3
//	beyond:       3 + ⌈(area − 100)/100⌉
//
// area is in m² in (0, 100000]. Outside it returns a *quantity.RangeError.
//
// Source: SSPC-PA 2; the figures in m² from memory, those in ft² read (reference
// coating A2, A6). In tests/published.
func Areas(area float64) (int, error) {
	if err := quantity.Within("area", area, "m²", areaLimits); err != nil {
		return 0, err
	}
	return areas(area, smallStep, smallMost, middleMost, furtherStep), nil
}

// AreasByFeet counts as Areas does with the standard's figures in square feet:
// 100, 300 and 1000 ft², and one more for each further 1000 ft².
//
// area is in m² in (0, 100000]. Outside it returns a *quantity.RangeError.
//
// Source: SSPC newsletter up to 1000 ft² (reference coating A6); beyond it from
// memory. In tests/published.
func AreasByFeet(area float64) (int, error) {
	if err := quantity.Within("area", area, "m²", areaLimits); err != nil {
		return 0, err
	}
	return areas(area/squareFoot, feetStep, feetSmall, feetMiddle, feetMiddle), nil
}

func areas(area, step, small, middle, further float64) int {
	switch {
	case area <= small*(1+countSlack):
		return int(math.Max(1, math.Ceil(area/step-countSlack)))
	case area <= middle*(1+countSlack):
		return middleAreas
	}
	return middleAreas + int(math.Ceil((area-middle)/further-countSlack))
}
