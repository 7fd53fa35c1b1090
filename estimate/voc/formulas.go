package voc

import "filmbuild/surfaces/quantity"

// LessWater returns the VOC of a coating, in g/L, less water and exempt compounds.
//
//	voc = mass / (volume − water − exempt)
//
// mass is the VOC in g in [0, 10¹¹]; volume, water and exempt are in L in
// [0, 10⁷], and what is neither water nor exempt must be at least 1 % of volume.
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: 40 CFR 59.104(a)(1) (reference coating V1); V10 to V16 in
// tests/published.
func LessWater(mass, volume, water, exempt float64) (float64, error) {
	if err := quantity.Within("VOC mass", mass, "g", massLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("volume", volume, "L", withinLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("water", water, "L", withinLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("exempt compounds", exempt, "L", withinLimits); err != nil {
		return 0, err
	}
	rest := volume - water - exempt
	if err := quantity.Within("volume less water and exempt compounds", rest, "L",
		quantity.Limits{Low: leastRest * volume, High: volume, LowOpen: volume == 0}); err != nil {
		return 0, err
	}
	return mass / rest, nil
}

// ImpliedSolids returns the volume solids, a fraction, of a coating without
// water or exempt compounds whose solvents have an assumed density: a check on
// data sheets, not a measurement.
//
//	solids = 1 − voc / solventDensity
//
// voc is in g/L in [0, 1500] and at most solventDensity, which is in g/L in
// [500, 2000]; SolventDensity is the usual one. Outside those ranges it returns a
// *quantity.RangeError.
//
// Source: follows from 30 TAC 115.423(1) (reference coating V3); V20 in
// tests/published.
func ImpliedSolids(voc, solventDensity float64) (float64, error) {
	if err := quantity.Within("solvent density", solventDensity, "g/L", solventLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("VOC", voc, "g/L", quantity.Limits{High: solventDensity}); err != nil {
		return 0, err
	}
	return 1 - voc/solventDensity, nil
}

// MaxThinner returns the thinner, in L, that may be added to a mixture before it
// reaches a limit: 0 when it is over the limit already. bounded is false, and
// the litres 0, when thinner of this kind never takes the mixture over the limit.
//
//	thinner = (limit · rest − mass) / (thinnerVOC − limit)
//
// mass is the VOC of the mixture in g in [0, 10¹¹]; rest is its volume less water
// and exempt compounds in L in [0, 10⁷]; limit and thinnerVOC are in g/L in
// [0, 1500]. Outside those ranges it returns a *quantity.RangeError.
//
// Source: algebra on the VOC of mixtures, Metal Finishing Guidebook 2012-2013
// App. B (reference coating V5).
func MaxThinner(mass, rest, limit, thinnerVOC float64) (litres float64, bounded bool, err error) {
	if err := quantity.Within("VOC mass", mass, "g", massLimits); err != nil {
		return 0, false, err
	}
	if err := quantity.Within("volume less water and exempt compounds", rest, "L", withinLimits); err != nil {
		return 0, false, err
	}
	if err := quantity.Within("limit", limit, "g/L", contentLimits); err != nil {
		return 0, false, err
	}
	if err := quantity.Within("thinner VOC", thinnerVOC, "g/L", contentLimits); err != nil {
		return 0, false, err
	}
	room := limit*rest - mass
	switch {
	case room < 0:
		return 0, true, nil
	case thinnerVOC <= limit:
		return 0, false, nil
	}
	return room / (thinnerVOC - limit), true, nil
}
