package estimate

import (
	"math"
	"strconv"

	"filmbuild/estimate/climate"
	"filmbuild/estimate/film"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// batching is how the coats of a paint are mixed: in how many batches, and what
// each leaves in the gun.
type batching struct {
	split climate.Batches // of one coat; no count where the paint has no pot life
	life  climate.PotLifeResult
	atC   float64
	lossL float64 // of one batch

	thinner float64 // per volume of unthinned paint
	times   int     // batches of all coats, or coats where the paint has no pot life
}

// batch finds how much of a paint to mix at a time: what is used within the pot
// life, in one coat, and no more than a few gallons, because a large batch heats
// itself. coatL is the mixed paint that lands or is lost in one coat.
func (r *run) batch(b *StepBase, f *FilmPlan, plan applied, paint *products.Paint, coatL, areaM2 float64, at string) (batching, bool) {
	loss, ok := r.gunLoss(&f.Gun, at)
	made := batching{lossL: loss, times: f.Coats}
	if !ok || paint.PotLifeH == nil || paint.PotLifeAtC == nil {
		return made, ok
	}
	if made.life, made.atC, ok = r.potLife(b, f, paint, at); !ok {
		return made, false
	}
	rate, _ := r.coatRate(b, plan)
	hours := areaM2 / rate
	split, err := climate.Batching{CoatL: coatL, HoursH: hours, UseH: made.life.UseH, LossL: loss, LargerL: climate.LargestBatchL}.Split()
	if err != nil {
		r.faults.Addf(at+"/product", "inconsistent", "%s cannot be mixed in batches: %s; look at pot_life_h, gun_loss_l, hose_m and the rate", paint.ID, err)
		return made, false
	}
	made.split, made.times = split, f.Coats*split.Count
	return made, true
}

// potLife is how long a batch can be used at the temperature of the work: of the
// halving rule and the two points of a data sheet the shorter, and at most 4 h.
func (r *run) potLife(b *StepBase, f *FilmPlan, paint *products.Paint, at string) (climate.PotLifeResult, float64, bool) {
	temperature := *paint.PotLifeAtC
	if t := workC(b, f); t != nil {
		temperature = *t
	} else {
		r.assumed.add(b.ID, "temperature of "+paint.ID+" at the work, where temperature_c and conditions are not given: that of its pot life", temperature, "°C", "assumption: pot life halves with every 10 °C more (UFGS 09971 3.7.1.3); give temperature_c")
	}
	p := climate.PotLife{PotLifeH: *paint.PotLifeH, AtC: *paint.PotLifeAtC, TemperatureC: &temperature,
		PotLife2H: paint.PotLife2H, At2C: paint.PotLife2AtC, InductionH: paint.InductionH}
	sound := true
	p.Check(func(pointer, code, detail string) {
		sound = false
		r.faults.Add(r.lifeField(b, f, paint, pointer, at), code, detail)
	})
	if !sound {
		return climate.PotLifeResult{}, 0, false
	}
	life, err := p.Calculate()
	if err != nil {
		r.faults.Addf(r.lifeField(b, f, paint, "/induction_h", at), "inconsistent", "%s: %s", paint.ID, err)
		return life, 0, false
	}
	return life, temperature, true
}

// lifeField is where the job gives what a pointer of the pot-life calculator is
// about.
func (r *run) lifeField(b *StepBase, f *FilmPlan, paint *products.Paint, pointer, at string) string {
	switch pointer {
	case "/temperature_c":
		if f.TemperatureC == nil && b.Conditions != nil {
			return at + "/conditions/surface_c"
		}
		return at + pointer
	case "/at_c":
		pointer = "/pot_life_at_c"
	case "/at_2_c":
		pointer = "/pot_life_2_at_c"
	}
	where := r.ofPaint(paint.ID, at)
	if where == at+"/product" {
		return where
	}
	return where + pointer
}

// ofPaint is where a paint's own values stand: under products, or at the step's
// product where it is of the catalogue.
func (r *run) ofPaint(product, at string) string {
	if own, mine := r.productAt[product]; mine {
		return "/products/" + strconv.Itoa(own)
	}
	return at + "/product"
}

// coatRate is the area a crew coats in an hour: a test patch's, the step's or the
// book's, and where it comes from.
func (r *run) coatRate(b *StepBase, plan applied) (float64, quantity.Link) {
	if t := r.tested(b.ID); t.hours > 0 {
		return t.timedM2 / t.hours, quantity.From("rate", patched(b.ID, "rate_m2_h"))
	}
	if b.RateM2H != nil {
		return *b.RateM2H, quantity.From("rate", quantity.Setting(b.ID, "rate_m2_h"))
	}
	crew := float64(b.Crew)
	return plan.method.RateM2H.Likely * crew, quantity.Scaled("rate", valueOf("method", plan.method.ID, "rate_m2_h"), crew)
}

// gunLoss is what one batch leaves in gun, hose and cup.
//
//	loss = gun + π/4 · bore² · length
func (r *run) gunLoss(g *Gun, at string) (float64, bool) {
	if g.HoseM == 0 {
		return g.GunLossL, true
	}
	if g.HoseBoreMM == nil {
		r.faults.Add(at+"/hose_bore_mm", "required", "hose_bore_mm is missing; what a hose of hose_m holds depends on it")
		return 0, false
	}
	contents, err := film.HoseContents(*g.HoseBoreMM, g.HoseM)
	if err != nil {
		return 0, false // outside its limits, which are noted
	}
	return g.GunLossL + contents, true
}

// mixing tells how the paint of a step is mixed and put on.
func (r *run) mixing(f *FilmPlan, paint *products.Paint, result film.Result, coating *film.Coating, made batching) Mixing {
	m := Mixing{Product: paint.ID, PaintL: result.PaintL, ThinnerL: result.ThinnerL, Parts: []MixPart{},
		WetFilmUM: result.WetFilmAimUm, LeftInGunL: result.LeftInGunL}
	if result.Passes != nil {
		m.Passes = *result.Passes
	}
	thinner := coating.ThinnerPercent / 100
	filled := result.TotalL / float64(coating.Coats) // of one coat, where there are no batches
	if made.split.Count > 0 {
		m.PotLifeH, m.PotLifeAtC, m.UseWithinH = made.life.PotLifeH, made.atC, made.life.BatchH
		if made.life.InductionH != nil {
			m.InductionH = *made.life.InductionH
		}
		m.BatchL, m.Batches, m.EvenBatchL = made.split.BatchL, made.times, made.split.EvenL
		m.BatchThinnerL = m.EvenBatchL * thinner / (1 + thinner)
		filled = m.EvenBatchL
	}
	if f.CupL != nil {
		m.CupFillings = int(math.Max(1, math.Ceil(filled / *f.CupL - 1e-9)))
	}
	sum := 0.0
	for _, part := range paint.Mix.Parts() {
		sum += part.Ratio
	}
	for _, part := range paint.Mix.Parts() {
		share := part.Ratio / sum
		m.Parts = append(m.Parts, MixPart{Part: part.Part, Ratio: part.Ratio, Litres: result.PaintL * share, BatchL: m.EvenBatchL / (1 + thinner) * share})
	}
	return m
}

// leastBatchL is the least that a crew can measure out by volume: the parts of a
// smaller batch are below the marks of a graduated cup (common practice). A coat
// that is smaller as a whole is no matter.
const leastBatchL = 0.05

// unmixable warns of batches that nobody can mix, and of a coat that has to be
// mixed very often.
func (s *StepEstimate) unmixable(m Mixing, coats int) {
	if m.Batches > coats && m.EvenBatchL < leastBatchL {
		s.warnf("a batch of %s is %.3g L: parts so small have to be weighed, or mixed a little larger and the rest thrown away", m.Product, m.EvenBatchL)
	}
	if m.UseWithinH > 0 && m.UseWithinH < climate.ShortestBatchH {
		s.warnf("%s is to be used up within %.2g min of mixing: too little to mix, fill and spray a batch by hand and to clean the gun; cool the paint, take a slower hardener, or a gun that mixes at its head", m.Product, m.UseWithinH*60)
	}
	if m.InductionH > 0 && m.InductionH > m.UseWithinH/2 {
		s.warnf("%s stands for %.3g h before use and is to be used up within %.3g h of mixing: more than half of its life goes by standing; keep the paint at the temperature of its data sheet, or mix the next batch while this one is used", m.Product, m.InductionH, m.UseWithinH)
	}
}
