package film

import "filmbuild/surfaces/quantity"

const (
	sourceSpread = "volume identity, as 10·VS%/DFT in Ask-the-Expert July 2010"
	sourceLosses = "coverage·(1−loss), a public definition of practical coverage; with transfer efficiency, Ask-the-Expert October 2003"
	sourceRule   = "normally distributed readings; rules of ISO 19840 and IMO MSC.215(82)"
	sourceWet    = "coating-school slide deck: DFT·(100+t)/VS%"
	sourcePaint  = "Metal Finishing Guidebook 2013 p. 835: area·film/solids, divided by each share that arrives"
	identity     = "identity"
)

// working shows how each figure of a result came about.
func (c Coating) working(r Result, f fractions) []quantity.Working {
	coats := float64(c.Coats)
	w := make([]quantity.Working, 0, 13)
	w = append(w,
		quantity.Working{Quantity: "theoretical_spreading_rate_m2_l", Value: r.TheoreticalSpreadingRateM2L, Unit: "m²/L", Formula: "1000·VS/t",
			Terms: map[string]float64{"VS": f.solids, "t": c.DryFilmUm}, Source: sourceSpread},
		quantity.Working{Quantity: "practical_spreading_rate_m2_l", Value: r.PracticalSpreadingRateM2L, Unit: "m²/L", Formula: "S·TE·(1−L)",
			Terms: map[string]float64{"S": r.TheoreticalSpreadingRateM2L, "TE": f.efficiency, "L": f.loss}, Source: sourceLosses},
		quantity.Working{Quantity: "mean_dry_film_um", Value: r.MeanDryFilmUm, Unit: "µm", Formula: "t·k",
			Terms: map[string]float64{"t": c.DryFilmUm, "k": r.FilmFactorRatio, "cov": c.FilmCovRatio}, Source: sourceRule},
		quantity.Working{Quantity: "wet_film_um", Value: r.WetFilmUm, Unit: "µm", Formula: "t·(1+x)/VS",
			Terms: map[string]float64{"t": c.DryFilmUm, "x": f.thinner, "VS": f.solids}, Source: sourceWet},
		quantity.Working{Quantity: "wet_film_aim_um", Value: r.WetFilmAimUm, Unit: "µm", Formula: "tm·(1+x)/VS",
			Terms: map[string]float64{"tm": r.MeanDryFilmUm, "x": f.thinner, "VS": f.solids}, Source: sourceWet},
		c.sprayedWorking(r, f),
		quantity.Working{Quantity: "thinner_l", Value: r.ThinnerL, Unit: "L", Formula: "P·x",
			Terms: map[string]float64{"P": r.PaintL, "x": f.thinner}, Source: sourceWet},
	)
	if r.LeftInGunL > 0 {
		w = append(w, c.gunWorking(r, f))
	}
	if r.Passes != nil {
		w = append(w, quantity.Working{Quantity: "passes", Value: float64(*r.Passes), Formula: "⌈wet/pass⌉",
			Terms: map[string]float64{"wet": r.WetFilmAimUm, "pass": *c.PassWetFilmUm}, Source: identity})
	}
	if r.DryFilmKg != nil {
		w = append(w,
			quantity.Working{Quantity: "dry_film_kg", Value: *r.DryFilmKg, Unit: "kg", Formula: "A·(n·tm + p·q)/1000·d",
				Terms: map[string]float64{"A": c.AreaM2, "n": coats, "tm": r.MeanDryFilmUm, "p": c.ProfileUm, "q": c.ProfileFillRatio, "d": *c.DryFilmDensityKgL}, Source: identity},
			c.lostWorking(r, f),
		)
	}
	return w
}

// sprayedWorking is the paint of a coating without what batches leave in the gun:
// paint_l itself where they leave nothing.
func (c Coating) sprayedWorking(r Result, f fractions) quantity.Working {
	w := quantity.Working{Quantity: "paint_l", Value: r.PaintL, Unit: "L", Formula: "A·(n·tm + p·q)/(1000·VS·TE·(1−L))",
		Terms: map[string]float64{"A": c.AreaM2, "n": float64(c.Coats), "tm": r.MeanDryFilmUm, "p": c.ProfileUm, "q": c.ProfileFillRatio,
			"VS": f.solids, "TE": f.efficiency, "L": f.loss}, Source: sourcePaint}
	if r.LeftInGunL > 0 {
		w.Quantity, w.Value = "paint_before_gun_l", r.PaintL-r.LeftInGunL/(1+f.thinner)
	}
	return w
}

// gunWorking adds what batches leave in the gun to the paint.
func (c Coating) gunWorking(r Result, f fractions) quantity.Working {
	return quantity.Working{Quantity: "paint_l", Value: r.PaintL, Unit: "L", Formula: "P0 + N·g/(1+x)",
		Terms: map[string]float64{"P0": r.PaintL - r.LeftInGunL/(1+f.thinner), "N": float64(c.Batches), "g": c.BatchLossL, "x": f.thinner}, Source: identity}
}

func (c Coating) lostWorking(r Result, f fractions) quantity.Working {
	w := quantity.Working{Quantity: "lost_solids_kg", Value: *r.LostSolidsKg, Unit: "kg", Formula: "m/(TE·(1−L)) − m",
		Terms: map[string]float64{"m": *r.DryFilmKg, "TE": f.efficiency, "L": f.loss}, Source: identity}
	if r.LeftInGunL > 0 {
		w.Formula += " + N·g/(1+x)·VS·d"
		w.Terms["N"], w.Terms["g"], w.Terms["x"] = float64(c.Batches), c.BatchLossL, f.thinner
		w.Terms["VS"], w.Terms["d"] = f.solids, *c.DryFilmDensityKgL
	}
	return w
}
