package blast

import "filmbuild/surfaces/quantity"

// Calculate works out a blasting. It expects input that Check finds sound; of
// other input it returns the first *quantity.RangeError or leaves out what
// cannot be found.
func (b Blasting) Calculate() (Result, error) {
	var r Result
	if err := b.withinLimits(); err != nil {
		return Result{}, err
	}
	if err := b.air(&r); err != nil {
		return Result{}, err
	}
	if err := b.flow(&r); err != nil {
		return Result{}, err
	}
	b.media(&r)
	b.waste(&r)
	r.Working = b.working(r)
	r.Warnings = b.warnings(r)
	return r, nil
}

// withinLimits guards the figures that no formula function looks at.
func (b Blasting) withinLimits() error {
	if err := quantity.Within("nozzles", float64(b.Nozzles), "", quantity.Limits{Low: 1, High: 50}); err != nil {
		return err
	}
	for _, g := range []struct {
		name, unit string
		value      *float64
		limits     quantity.Limits
	}{
		{"area", "m²", b.AreaM2, areaLimits},
		{"strip rate", "m²/h", b.StripRateM2H, stripRateLimits},
		{"media flow", "kg/h", b.MediaFlowKgH, flowLimits},
		{"breakdown", "%", b.BreakdownPercent, quantity.Limits{Low: 100 * breakdownLimits.Low, High: 100}},
		{"removed film density", "kg/L", b.RemovedFilmDensityKgL, quantity.Limits{Low: 0.5, High: 10}},
		{"collected debris", "kg", b.CollectedDebrisKg, quantity.Limits{High: 1e7}},
		{"working charge", "kg", &b.WorkingChargeKg, quantity.Limits{High: 100000}},
		{"removed film", "µm", &b.RemovedFilmUm, quantity.Limits{High: 20000}},
	} {
		if g.value == nil {
			continue
		}
		if err := quantity.Within(g.name, *g.value, g.unit, g.limits); err != nil {
			return err
		}
	}
	return nil
}

func (b Blasting) discharge() float64 {
	switch {
	case b.DischargeCoefficient != nil:
		return *b.DischargeCoefficient
	case b.Feed == Suction:
		return SuctionDischarge
	}
	return PressureDischarge
}

func (b Blasting) air(r *Result) error {
	nozzles := float64(b.Nozzles)
	one, err := FreeAir(b.NozzleBoreMm, b.PressureKPa, b.AmbientPressureKPa, b.discharge())
	if err != nil {
		return err
	}
	worn, err := WornBore(b.NozzleBoreMm)
	if err != nil {
		return err
	}
	r.DischargeUsed = b.discharge()
	r.AirM3Min = one * nozzles
	r.WornAirM3Min = r.AirM3Min * (worn / b.NozzleBoreMm) * (worn / b.NozzleBoreMm)
	r.CompressorM3Min = r.AirM3Min * CompressorReserve
	r.AirPowerKW = compressorKilowatts(r.AirM3Min)
	r.CompressorPowerKW = compressorKilowatts(r.CompressorM3Min)
	r.CompressorPowerHP = r.CompressorPowerKW / kilowattsPerHorsepower
	r.ChokedFromPressure = b.AmbientPressureKPa * (ChokedRatio() - 1)
	r.Choked = b.PressureKPa >= r.ChokedFromPressure
	return nil
}

func (b Blasting) flow(r *Result) error {
	flow := b.MediaFlowKgH
	if flow == nil {
		if b.Feed == Suction || b.BulkDensityKgM3 == nil {
			return nil
		}
		found, err := MediaFlow(b.NozzleBoreMm, b.PressureKPa, b.AmbientPressureKPa, *b.BulkDensityKgM3)
		if err != nil {
			return err
		}
		flow, r.MediaFlowAccuracyPercent = &found, new(float64(MediaFlowAccuracyPercent))
	}
	r.MediaFlowPerNozzleKgH = new(*flow)
	r.MediaFlowKgH = new(*flow * float64(b.Nozzles))
	return nil
}

func (b Blasting) media(r *Result) {
	if b.BreakdownPercent != nil {
		r.Uses = new(100 / *b.BreakdownPercent)
	}
	if b.StripRateM2H == nil {
		return
	}
	if b.AreaM2 != nil {
		r.Hours = new(*b.AreaM2 / (*b.StripRateM2H * float64(b.Nozzles)))
	}
	if r.MediaFlowPerNozzleKgH == nil {
		return
	}
	r.MediaThrownKgM2 = new(*r.MediaFlowPerNozzleKgH / *b.StripRateM2H)
	if b.AreaM2 == nil {
		return
	}
	thrown := *b.AreaM2 * *r.MediaThrownKgM2
	r.MediaThrownKg = &thrown
	switch {
	case !b.Recovered:
		r.MediaUsedKg = new(thrown)
	case b.BreakdownPercent != nil:
		r.MediaUsedKg = new(thrown * (*b.BreakdownPercent / 100)) // a share of at most 1 first, so that rounding adds no media
	default:
		return
	}
	r.MediaBoughtKg = new(*r.MediaUsedKg + b.WorkingChargeKg)
}

func (b Blasting) waste(r *Result) {
	if b.AreaM2 != nil && b.RemovedFilmUm > 0 && b.RemovedFilmDensityKgL != nil {
		r.RemovedFilmKg = new(*b.AreaM2 * b.RemovedFilmUm * *b.RemovedFilmDensityKgL / 1000)
	}
	if r.MediaUsedKg == nil {
		return
	}
	waste := *r.MediaUsedKg
	if r.RemovedFilmKg != nil {
		waste += *r.RemovedFilmKg
	}
	r.WasteKg = &waste
	if b.CollectedDebrisKg != nil {
		r.RecoveryPercent = new(100 * *b.CollectedDebrisKg / waste)
	}
}
