package estimate

import (
	"math"

	"filmbuild/estimate/climate"
	"filmbuild/estimate/film"
	"filmbuild/products"
)

// mostBatches of one coat is beyond any job, and keeps the count a whole number.
const mostBatches = 100_000

// mixing splits a paint into the parts it is mixed of and finds how much to mix
// at a time: what is used within the pot life, in one coat, and no more than a
// few gallons, because a large batch heats itself.
//
//	batch = paint of one coat · min(pot life, 4 h) / hours of one coat
func (r *run) mixing(b *StepBase, plan applied, paint *products.Paint, result film.Result, coating *film.Coating, at string) Mixing {
	m := Mixing{Product: paint.ID, PaintL: result.PaintL, ThinnerL: result.ThinnerL, Parts: []MixPart{}}
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
	m.UseWithinH = min(m.PotLifeH, climate.LongestBatchH)
	if hours > m.UseWithinH {
		m.BatchL = perCoat * m.UseWithinH / hours
	}
	m.BatchL = min(m.BatchL, climate.LargestBatchL)
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
