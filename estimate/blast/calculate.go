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
	for _, part := range []func(*Result) error{b.air, b.hose, b.flow, b.media, b.waste, b.leachate, b.drums, b.dust} {
		if err := part(&r); err != nil {
			return Result{}, err
		}
	}
	r.Working = b.working(r)
	r.Warnings = b.warnings(r)
	return r, nil
}

// withinLimits guards the figures that no formula function looks at.
func (b Blasting) withinLimits() error {
	if err := quantity.Within("nozzles", float64(b.Nozzles), "", quantity.Limits{Low: 1, High: 50}); err != nil {
		return err
	}
	if b.BatchPasses != nil {
		if err := quantity.Within("batch passes", float64(*b.BatchPasses), "", quantity.Limits{Low: 1, High: 1000}); err != nil {
			return err
		}
	}
	for _, g := range []struct {
		name, unit string
		value      *float64
		limits     quantity.Limits
	}{
		{"area", "m²", b.AreaM2, areaLimits},
		{"strip rate", "m²/h", b.StripRateM2H, stripRateLimits},
		{"availability", "%", &b.AvailabilityPercent, quantity.Limits{Low: 1, High: 100}},
		{"media flow", "kg/h", b.MediaFlowKgH, flowLimits},
		{"breakdown", "%", b.BreakdownPercent, quantity.Limits{Low: 100 * breakdownLimits.Low, High: 100}},
		{"carry-out", "%", b.CarryOutPercent, quantity.Limits{High: 99}},
		{"removed film density", "kg/L", b.RemovedFilmDensityKgL, quantity.Limits{Low: 0.5, High: 10}},
		{"lead", "%", b.FilmLeadPercent, quantity.Limits{High: 100}},
		{"chromium", "%", b.FilmChromiumPercent, quantity.Limits{High: 100}},
		{"cadmium", "%", b.FilmCadmiumPercent, quantity.Limits{High: 100}},
		{"collected debris", "kg", b.CollectedDebrisKg, quantity.Limits{High: 1e7}},
		{"working charge", "kg", &b.WorkingChargeKg, quantity.Limits{High: 100000}},
		{"batch", "kg", b.BatchKg, quantity.Limits{Low: 0.1, High: 100000}},
		{"removed film", "µm", &b.RemovedFilmUm, quantity.Limits{High: 20000}},
		{"other air", "m³/min", &b.OtherAirM3Min, quantity.Limits{High: 500}},
		{"compressor supply", "m³/min", b.CompressorSupplyM3Min, quantity.Limits{High: 5000, LowOpen: true}},
		{"wind", "m/s", b.WindMS, quantity.Limits{High: 50}},
		{"dust control", "%", &b.DustControlPercent, quantity.Limits{High: 100}},
		{"drum", "L", &b.DrumL, quantity.Limits{Low: 1, High: 20000}},
		{"drum fill", "%", &b.DrumFillPercent, quantity.Limits{Low: 1, High: 100}},
		{"drum weight", "kg", &b.DrumMostKg, quantity.Limits{Low: 1, High: 20000}},
		{"hose length", "m", b.HoseLengthM, hoseLengthLimits},
		{"hose bore", "mm", b.HoseBoreMm, hoseBoreLimits},
	} {
		if g.value == nil {
			continue
		}
		if err := quantity.Within(g.name, *g.value, g.unit, g.limits); err != nil {
			return err
		}
	}
	if loss, known := b.loss(); known {
		return quantity.Within("breakdown and carry-out", 100*loss, "%", quantity.Limits{High: 100 * (1 + 1e-12)})
	}
	return nil
}
