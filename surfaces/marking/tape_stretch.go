package marking

import "filmbuild/surfaces/quantity"

// TapeStretch is how much longer the outer edge of a tape becomes that is laid
// flat round a curve with its inner edge unstretched, as a part of its length.
//
//	stretch = w/R
//
// width of the tape and radius of the inner edge are in m, both above 0 and at
// most 1000; outside it returns a *quantity.RangeError. How much a tape bears
// is its maker's to say.
//
// Source: plane geometry, identity.
func TapeStretch(width, radius float64) (float64, error) {
	limits := quantity.Limits{LowOpen: true, High: 1000}
	if err := quantity.Within("width of the tape", width, "m", limits); err != nil {
		return 0, err
	}
	if err := quantity.Within("radius of the curve", radius, "m", limits); err != nil {
		return 0, err
	}
	return width / radius, nil
}
