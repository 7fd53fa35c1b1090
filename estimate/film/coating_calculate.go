package film

import "fmt"

// Calculate works out a coating. It expects input that Check finds sound and
// returns the first *quantity.RangeError otherwise.
//
// The practical spreading rate is that of one coat at the nominal film, as a
// tin's label would give it after losses. The factor of the film rule and the
// filling of the profile are left out of it, because they belong to the job and
// not to the paint; the achieved spreading rate has both.
func (c Coating) Calculate() (Result, error) {
	f := c.fractions()
	var r Result
	var err error
	if c.Coats < 1 {
		return Result{}, fmt.Errorf("coats is %d; it must be at least 1", c.Coats)
	}
	if r.TheoreticalSpreadingRateM2L, err = TheoreticalSpreadingRate(f.solids, c.DryFilmUm); err != nil {
		return Result{}, err
	}
	if r.PracticalSpreadingRateM2L, err = PracticalSpreadingRate(r.TheoreticalSpreadingRateM2L, f.efficiency, f.loss); err != nil {
		return Result{}, err
	}
	if r.FilmFactorRatio, err = MeanFactor(c.FilmRule, c.FilmCovRatio); err != nil {
		return Result{}, err
	}
	if r.WetFilmUm, err = WetFilm(c.DryFilmUm, f.solids, f.thinner); err != nil {
		return Result{}, err
	}
	r.WetFilmAimUm = r.WetFilmUm * r.FilmFactorRatio
	if err := c.strokes(&r); err != nil {
		return Result{}, err
	}
	filling, err := ProfileFilm(c.ProfileUm, c.ProfileFillRatio)
	if err != nil {
		return Result{}, err
	}
	r.VolumeSolidsThinnedPercent = c.VolumeSolidsPercent / (1 + f.thinner)
	r.MeanDryFilmUm = r.FilmFactorRatio * c.DryFilmUm
	r.TotalDryFilmUm = float64(c.Coats) * r.MeanDryFilmUm
	if r.PaintL, err = Paint(c.AreaM2, r.TotalDryFilmUm+filling, f.solids, f.efficiency, f.loss); err != nil {
		return Result{}, err
	}
	if r.FirstCoatPaintL, err = Paint(c.AreaM2, r.MeanDryFilmUm+filling, f.solids, f.efficiency, f.loss); err != nil {
		return Result{}, err
	}
	if c.Coats > 1 {
		further := (r.PaintL - r.FirstCoatPaintL) / float64(c.Coats-1)
		r.FurtherCoatPaintL = &further
	}
	if r.LeftInGunL, err = BatchLoss(c.Batches, c.BatchLossL); err != nil {
		return Result{}, err
	}
	r.PaintL += r.LeftInGunL / (1 + f.thinner)
	r.ThinnerL = r.PaintL * f.thinner
	r.TotalL = r.PaintL + r.ThinnerL
	r.AchievedSpreadingRateM2L = c.AreaM2 * float64(c.Coats) / r.PaintL
	if err := c.weigh(&r, f, filling); err != nil {
		return Result{}, err
	}
	r.Working = c.working(r, f)
	r.Warnings = c.warnings(r)
	return r, nil
}

// strokes counts the passes of a coat, and finds the mean film that the least
// reading of the rule asks for.
func (c Coating) strokes(r *Result) error {
	if least, bounded, err := LeastReadingFactor(c.FilmRule, c.FilmCovRatio); err != nil {
		return err
	} else if bounded {
		r.LeastReadingFactorRatio = &least
	}
	if c.PassWetFilmUm == nil {
		return nil
	}
	passes, err := Passes(r.WetFilmAimUm, *c.PassWetFilmUm)
	r.Passes = &passes
	return err
}

// fractions are the percentages of a coating, divided by 100 once.
type fractions struct{ solids, efficiency, loss, thinner float64 }

func (c Coating) fractions() fractions {
	return fractions{
		solids:     c.VolumeSolidsPercent / 100,
		efficiency: c.TransferEfficiencyPercent / 100,
		loss:       c.LossPercent / 100,
		thinner:    c.ThinnerPercent / 100,
	}
}

// weigh adds the kilograms where the density is known. Solids that are mixed
// either land (the film), are sprayed and miss, or are never sprayed.
func (c Coating) weigh(r *Result, f fractions, filling float64) error {
	if c.DryFilmDensityKgL == nil {
		return nil
	}
	landed, err := Mass(c.AreaM2, r.TotalDryFilmUm+filling, *c.DryFilmDensityKgL)
	if err != nil {
		return err
	}
	perArea := landed / c.AreaM2
	sprayed := landed / f.efficiency
	overspray := sprayed - landed
	lost := sprayed/(1-f.loss) - landed + r.LeftInGunL/(1+f.thinner)*f.solids**c.DryFilmDensityKgL
	r.DryFilmKg, r.DryFilmKgM2, r.OversprayKg, r.LostSolidsKg = &landed, &perArea, &overspray, &lost
	return nil
}

func (c Coating) warnings(r Result) []string {
	var said []string
	if c.TransferEfficiencyPercent == 100 && c.LossPercent == 0 {
		said = append(said, "nothing is lost in this figure: it is the theoretical amount; give transfer_efficiency_percent and loss_percent")
	}
	if r.FilmFactorRatio > 2 {
		said = append(said, fmt.Sprintf("the film rule makes the mean film %.2f times the nominal one; shipyards see such figures, but look at film_cov_ratio first", r.FilmFactorRatio))
	}
	if least := r.LeastReadingFactorRatio; least != nil && *least > r.FilmFactorRatio*(1+1e-9) {
		said = append(said, fmt.Sprintf("the rule also bounds the least reading: with this scatter 1 %% of the readings would fail it unless the mean film is %.2f times the nominal one, not %.2f; measure film_cov_ratio, or give a thicker dry_film_um", *least, r.FilmFactorRatio))
	}
	if c.FilmRule == Min80Of20 && float64(c.Coats)*c.DryFilmUm < leastISOFilm {
		said = append(said, "ISO 19840, from which min_80_20 is taken, is not meant for a nominal film below 40 µm")
	}
	if c.ProfileUm > 0 && (c.ProfileFillRatio < leastPublishedFill) {
		said = append(said, "published practice fills 0.4 to 1 of the profile's depth; profile_fill_ratio is below that")
	}
	return said
}

const (
	leastISOFilm       = 40  // µm nominal, all coats. Source: scope of ISO 19840 (reference coating P3)
	leastPublishedFill = 0.4 // Source: trade note on application losses (reference coating P4 to P7)
)
