package surfaces

// Round is the size of a round shape, by its radius or by its diameter.
type Round struct {
	RadiusM   *float64 `json:"radius_m,omitempty" limit:"[0.0005,250]" doc:"radius; or give diameter_m"`
	DiameterM *float64 `json:"diameter_m,omitempty" limit:"[0.001,500]" doc:"diameter; or give radius_m"`
}

// radius is half the diameter when the diameter is given.
func (r Round) radius() float64 {
	if r.DiameterM != nil {
		return *r.DiameterM / 2
	}
	return or(r.RadiusM, 0)
}

// checkRound reports unless exactly one of the two is given.
func (r Round) checkRound(report reporter) bool {
	switch {
	case r.RadiusM == nil && r.DiameterM == nil:
		report("/radius_m", "required", "radius_m and diameter_m are both missing; give one of them")
	case r.RadiusM != nil && r.DiameterM != nil:
		report("/diameter_m", "inconsistent", "radius_m and diameter_m are both given; give one of them")
	default:
		return true
	}
	return false
}
