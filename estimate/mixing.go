package estimate

import (
	"math"

	"filmbuild/estimate/film"
	"filmbuild/products"
)

// batchHours is the longest that a mixed batch may stand before it is used up.
//
// Source: USAF TO 1-1-8 para 6.12.6.3, mix no more than is used in 4 h (read).
const batchHours = 4.0

// mostBatches of one coat is beyond any job, and keeps the count a whole number.
const mostBatches = 100_000

// mixing splits a paint into the parts it is mixed of and finds how much to mix
// at a time: what is used within the pot life, in one coat.
//
//	batch = paint of one coat · min(pot life, 4 h) / hours of one coat
func (r *run) mixing(b *StepBase, plan applied, paint *products.Paint, result film.Result, coating *film.Coating, at string) Mixing {
	m := Mixing{Product: paint.ID, ThinnerL: result.ThinnerL, Parts: []MixPart{}}
	parts, sum := partsOf(paint.Mix), 0.0
	for _, part := range parts {
		sum += part.Ratio
	}
	for _, part := range parts {
		part.Litres = result.PaintL * part.Ratio / sum
		m.Parts = append(m.Parts, part)
	}
	if paint.PotLifeH == nil {
		return m
	}
	m.PotLifeH = *paint.PotLifeH
	if paint.PotLifeAtC != nil {
		m.PotLifeAtC = *paint.PotLifeAtC
	}
	rate := plan.method.RateM2H.Likely * float64(b.Crew)
	if t := r.tested(b.ID); t.hours > 0 {
		rate = t.timedM2 / t.hours
	} else if b.RateM2H != nil {
		rate = *b.RateM2H
	}
	perCoat := result.TotalL / float64(coating.Coats)
	hours := coating.AreaM2 / rate
	m.BatchL = perCoat
	if within := min(m.PotLifeH, batchHours); hours > within {
		m.BatchL = perCoat * within / hours
	}
	each := math.Ceil(perCoat/m.BatchL - 1e-9)
	if !(each <= mostBatches) {
		r.faults.Addf(at+"/product", "inconsistent", "one coat of %s takes %.4g h and the paint can be used for %.4g h: that is more than %d batches; look at pot_life_h and at the rate", paint.ID, hours, m.PotLifeH, mostBatches)
		return m
	}
	m.Batches = coating.Coats * int(each)
	return m
}

// partsOf lists the parts of a mix in the order in which they go together.
func partsOf(mix *products.Mix) []MixPart {
	if mix == nil {
		return nil
	}
	parts := []MixPart{{Part: "base", Ratio: mix.Base}, {Part: "hardener", Ratio: mix.Hardener}}
	if mix.Activator != nil {
		parts = append(parts, MixPart{Part: "activator", Ratio: *mix.Activator})
	}
	return parts
}
