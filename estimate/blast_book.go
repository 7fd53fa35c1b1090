package estimate

import (
	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// pace is how fast old paint comes off.
type pace struct {
	rateM2H   float64       // of one nozzle, over basis
	basis     string        // nozzle_on or burdened
	source    string        // where the rate comes from
	link      quantity.Link // of the rate
	crewRate  bool          // the job gave rate_m2_h, of the whole crew
	atWorkM2H float64       // of one nozzle at work, for the media
	atWork    quantity.Link // of that
}

// filmUnknownUM stands for the old paint where a component gives no thickness.
//
// Source: assumption, the film that the catalogue's own strip rates hold for.
const filmUnknownUM = 250

// burdenedFilmUM is the film that burdened rates are published for: 1 mil.
//
// Source: USAF study of 2001 as quoted (reference planning L04).
const burdenedFilmUM = 25.4

// rateBasis notes a word that is no basis of a rate.
func (r *run) rateBasis(b *StepBase, at string) {
	if b.RateBasis != "" {
		r.oneOf(b.RateBasis, at, "rate_basis", []string{string(blast.NozzleOn), string(blast.Burdened)})
	}
}

// basis is what the rate of a step is over.
func (b *StepBase) basis() string {
	if b.RateBasis == "" {
		return string(blast.NozzleOn)
	}
	return b.RateBasis
}

// stripping finds the rate of a blasting: a test patch's, the job's own, or the
// book's, carried to the nozzle, pressure and film of the work. The second value
// is false when a fault was noted.
func (r *run) stripping(p *Blast, s *StepEstimate, media *products.Media, filmUM float64, at string) (pace, bool) {
	nozzles, t := float64(p.Nozzles), r.tested(p.ID)
	own := pace{basis: p.basis(), source: "the job"}
	switch {
	case t.hours > 0:
		own.rateM2H, own.basis, own.source = t.timedM2/t.hours/nozzles, string(blast.NozzleOn), "test patch"
		own.link = quantity.From("X", patched(p.ID, "strip_rate_m2_h"))
	case p.StripRateM2H != nil:
		own.rateM2H, own.link = *p.StripRateM2H, quantity.From("X", quantity.Setting(p.ID, "strip_rate_m2_h"))
	case p.RateM2H != nil:
		own.rateM2H, own.crewRate = *p.RateM2H/nozzles, true
		own.link = quantity.Scaled("X", quantity.Setting(p.ID, "rate_m2_h"), 1/nozzles)
	case p.basis() == string(blast.Burdened):
		own = r.burdenedRate(&p.StepBase, s, "blast_burdened", filmUM)
		onNozzle, ok := r.bookRate(p, s, media, filmUM, at) // for the media: most of a burdened hour none are thrown
		own.atWorkM2H, own.atWork = onNozzle.rateM2H, onNozzle.link
		return own, ok
	default:
		found, ok := r.bookRate(p, s, media, filmUM, at)
		if !ok {
			return pace{}, false
		}
		own = found
	}
	r.unusualRate(p, s, media, own, filmUM)
	return r.atWork(p, s, own), true
}

// atWork adds the rate at work, which the media go by: a burdened rate is less
// than that by what the day loses.
func (r *run) atWork(p *Blast, s *StepEstimate, own pace) pace {
	own.atWorkM2H, own.atWork = own.rateM2H, own.link
	if own.basis != string(blast.Burdened) {
		return own
	}
	available := valueOr(r.job.Labour.AvailabilityPercent, 100) / 100
	own.atWorkM2H = own.rateM2H / available
	link := own.link
	link.Term = "rate"
	s.Working = append(s.Working, quantity.Working{Quantity: "strip_rate_at_work_m2_h", Value: own.atWorkM2H, Unit: "m²/h", Formula: "rate/available",
		Terms: map[string]float64{"rate": own.rateM2H, "available": available}, Source: "identity", Links: []quantity.Link{link,
			quantity.Scaled("available", quantity.Node{Kind: "job", ID: "labour", Quantity: "availability_percent"}, 0.01)}})
	if available == 1 {
		s.Warnings = append(s.Warnings, "the rate is over the shift and the job's labour has no availability_percent: media are counted as if the nozzle never stopped, which is too much")
	}
	own.atWork = quantity.From("X", quantity.StepWorking(p.ID, "strip_rate_at_work_m2_h", ""))
	return own
}

// burdenedRate is the book's rate with set-up, clean-up and waste in it.
//
//	rate = book · 25.4 µm / film
func (r *run) burdenedRate(b *StepBase, s *StepEstimate, operation string, filmUM float64) pace {
	book := r.operation(operation)
	if filmUM == 0 {
		filmUM = filmUnknownUM
		r.assumed.add(b.ID, "old paint that comes off, where existing_film_um is not given", filmUM, "µm", "assumption")
	}
	scale := burdenedFilmUM / filmUM
	rate := book.Rate.Likely * scale
	s.warnf("burdened rates are published from %.2g to %.2g m²/h for this film, and no middle: the hours are an order of size; go by your own records where you have any", book.Rate.Low*scale, book.Rate.High*scale)
	s.Working = append(s.Working, quantity.Working{Quantity: "burdened_rate_m2_h", Value: rate, Unit: "m²/h", Formula: "X0·t0/t",
		Terms: map[string]float64{"X0": book.Rate.Likely, "t0": burdenedFilmUM, "t": filmUM}, Source: book.Rate.Text(),
		Links: []quantity.Link{quantity.From("X0", valueOf("operation", operation, "rate"))}})
	r.assumed.add(b.ID, "area done in an hour, "+book.Name, rate, "m²/h", noted(book.Rate))
	return pace{rateM2H: rate, basis: string(blast.Burdened), source: book.Rate.Text(), link: quantity.From("X", quantity.StepWorking(b.ID, "burdened_rate_m2_h", ""))}
}

// bookRate is the strip rate of the catalogue, carried to the work.
func (r *run) bookRate(p *Blast, s *StepEstimate, media *products.Media, filmUM float64, at string) (pace, bool) {
	switch {
	case media.StripRateM2H == nil:
		r.faults.Addf(at+"/strip_rate_m2_h", "required", "strip_rate_m2_h is missing, and %s has none: give it, rate_m2_h of the whole crew, or a test patch with minutes", media.ID)
		return pace{}, false
	case p.PressureKPa < blast.LeastStripKPa:
		r.faults.Addf(at+"/pressure_kpa", "out_of_range", "pressure_kpa is %.4g kPa, below the 69 kPa (10 psi) that is the lowest published for stripping anything: the book's strip rate cannot be carried there; raise it, or give strip_rate_m2_h or a test patch", p.PressureKPa)
		return pace{}, false
	}
	from, source := quantity.From("X", valueOf("product", media.ID, "strip_rate_m2_h")), r.sourceOf(media, "strip_rate_m2_h")
	likely := *media.StripRateM2H
	known, work, carried := conditions(p, media, filmUM)
	if carried {
		if filmUM == 0 {
			r.assumed.add(p.ID, "old paint that comes off, where existing_film_um is not given", work.FilmUM, "µm", "assumption")
		}
		var err error
		if likely, err = blast.StripRate(*media.StripRateM2H, known, work); err != nil {
			r.faults.Add(at, "out_of_range", err.Error())
			return pace{}, false
		}
		feed := feedFactor(p)
		likely *= feed
		s.Working = append(s.Working, quantity.Working{Quantity: "strip_rate_m2_h", Value: likely, Unit: "m²/h",
			Formula: "min(max(X0·(d/d0)²·(p/p0)^m·t0/max(t, t0·thinnest), least), most)·feed", Source: source + "; carried to this nozzle, pressure and film: an assumption",
			Terms: map[string]float64{"X0": *media.StripRateM2H, "d": work.BoreMM, "d0": known.BoreMM, "p": work.PressureKPa, "p0": known.PressureKPa, "m": blast.PressureExponent,
				"t0": known.FilmUM, "t": work.FilmUM, "thinnest": blast.ThinnestShare, "least": blast.LeastStripRate, "most": blast.MostStripRate, "feed": feed},
			Links: []quantity.Link{quantity.From("X0", from.Node), quantity.From("d", quantity.Setting(p.ID, "nozzle_bore_mm")), quantity.From("p", quantity.Setting(p.ID, "pressure_kpa"))}})
		from = quantity.From("X", quantity.StepWorking(p.ID, "strip_rate_m2_h", ""))
	}
	r.assumed.add(p.ID, "area one nozzle strips in an hour with "+media.ID, likely, "m²/h", source)
	return pace{rateM2H: likely, basis: string(blast.NozzleOn), source: source, link: from}, true
}

// conditions are those that the catalogue's rate holds for and those of the work;
// false for a medium that does not say.
func conditions(p *Blast, media *products.Media, filmUM float64) (known, work blast.Conditions, ok bool) {
	if media.StripAtBoreMM == nil || media.StripAtKPa == nil || media.StripAtFilmUM == nil {
		return known, work, false
	}
	known = blast.Conditions{BoreMM: *media.StripAtBoreMM, PressureKPa: *media.StripAtKPa, FilmUM: *media.StripAtFilmUM}
	work = blast.Conditions{BoreMM: p.NozzleBoreMM, PressureKPa: p.PressureKPa, FilmUM: filmUM}
	if filmUM == 0 {
		work.FilmUM = known.FilmUM
	}
	return known, work, true
}

func feedFactor(p *Blast) float64 {
	if p.Feed == string(blast.Suction) {
		return blast.SuctionRate
	}
	return 1
}
