package masking

import "filmbuild/surfaces/quantity"

// Film returns the film, in m², for a band along an edge and for a flat area
// with an overlap all round.
//
//	film = edge · band + area + areaEdge · overlap
//
// edge and areaEdge are in m in [0, 100000], band in m in [0, 20], area in m² in
// [0, 100000], overlap in m in [0, 1]. Outside those ranges it returns a
// *quantity.RangeError. Corners of the overlap are left out: four of 1/2 in are
// 6 cm².
//
// Source: identity; the usual overlap of 1/2 in is from USAF TO 1-1-8 para 2.3.
func Film(edge, band, area, areaEdge, overlap float64) (float64, error) {
	for _, check := range []struct {
		name   string
		value  float64
		unit   string
		limits quantity.Limits
	}{{"edge", edge, "m", lengthLimits}, {"film width", band, "m", bandLimits}, {"film area", area, "m²", coverLimits},
		{"film edge", areaEdge, "m", lengthLimits}, {"overlap", overlap, "m", overlapLimits}} {
		if err := quantity.Within(check.name, check.value, check.unit, check.limits); err != nil {
			return 0, err
		}
	}
	return edge*band + area + areaEdge*overlap, nil
}

func (m Masking) film(r *Result) error {
	if m.FilmWidthM == nil && m.FilmAreaM2 == nil && m.FilmEdgeM == nil {
		return nil
	}
	band, area, edge := or(m.FilmWidthM), or(m.FilmAreaM2), or(m.FilmEdgeM)
	film, err := Film(m.EdgeM, band, area, edge, m.OverlapM)
	if err != nil {
		return err
	}
	r.FilmM2 = &film
	r.Working = append(r.Working, quantity.Working{Quantity: "film_m2", Value: film, Unit: "m²", Formula: "E·b + F + K·o",
		Terms: map[string]float64{"E": m.EdgeM, "b": band, "F": area, "K": edge, "o": m.OverlapM}, Source: "identity; overlap USAF TO 1-1-8 para 2.3"})
	if m.FilmRollM == nil {
		return nil
	}
	if err := quantity.Within("film roll width", *m.FilmRollM, "m", filmRollLimits); err != nil {
		return err
	}
	r.FilmM = new(film / *m.FilmRollM)
	r.Working = append(r.Working, quantity.Working{Quantity: "film_m", Value: *r.FilmM, Unit: "m", Formula: "C/B",
		Terms: map[string]float64{"C": film, "B": *m.FilmRollM}, Source: identity})
	return nil
}

func or(value *float64) float64 {
	if value == nil {
		return 0
	}
	return *value
}
