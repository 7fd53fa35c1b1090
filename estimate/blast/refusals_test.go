package blast_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/blast"
	"filmbuild/surfaces/quantity"
)

// Every formula refuses an argument that is no number, whichever it is.
func TestFormulasRefuseNaN(t *testing.T) {
	for name, f := range map[string]struct {
		sound   []float64
		formula func(x []float64) (float64, error)
	}{
		"mass":       {[]float64{6, 300, 101, 0.8}, func(x []float64) (float64, error) { return blast.AirMass(x[0], x[1], x[2], x[3]) }},
		"free air":   {[]float64{6, 300, 101, 0.8}, func(x []float64) (float64, error) { return blast.FreeAir(x[0], x[1], x[2], x[3]) }},
		"media flow": {[]float64{6, 300, 101, 1400}, func(x []float64) (float64, error) { return blast.MediaFlow(x[0], x[1], x[2], x[3]) }},
		"power":      {[]float64{5}, func(x []float64) (float64, error) { return blast.CompressorPower(x[0]) }},
		"worn":       {[]float64{6}, func(x []float64) (float64, error) { return blast.WornBore(x[0]) }},
		"hose":       {[]float64{25, 15, 4, 700}, func(x []float64) (float64, error) { return blast.HoseLoss(x[0], x[1], x[2], x[3]) }},
		"uses":       {[]float64{0.1}, func(x []float64) (float64, error) { return blast.Uses(x[0]) }},
		"charge":     {[]float64{0.1}, func(x []float64) (float64, error) { left, _, err := blast.UntoppedCharge(x[0], 3); return left, err }},
	} {
		_, err := f.formula(f.sound)
		require.NoError(t, err, name)
		for i := range f.sound {
			spoilt := append([]float64(nil), f.sound...)
			spoilt[i] = math.NaN()
			_, err := f.formula(spoilt)
			var outside *quantity.RangeError
			assert.ErrorAs(t, err, &outside, "%s, argument %d", name, i)
		}
	}
	_, _, err := blast.UntoppedCharge(0.1, -1)
	assert.Error(t, err)
	_, err = blast.HoseLoss(19, 200, 15, 300)
	assert.Error(t, err, "a hose that would take more than half the pressure")
}

// Whatever lies outside the tag of a field is refused by Calculate too, so that
// no caller gets a number for what Check refuses.
func TestCalculateKeepsTheTags(t *testing.T) {
	for pointer, spoil := range map[string]func(b *blast.Blasting){
		"/area_m2":                   func(b *blast.Blasting) { b.AreaM2 = new(100001.0) },
		"/nozzle_bore_mm":            func(b *blast.Blasting) { b.NozzleBoreMm = 0.4 },
		"/nozzles":                   func(b *blast.Blasting) { b.Nozzles = 51 },
		"/bulk_density_kg_m3":        func(b *blast.Blasting) { b.BulkDensityKgM3 = new(6001.0) },
		"/breakdown_percent":         func(b *blast.Blasting) { b.BreakdownPercent = new(0.09) },
		"/media_flow_kg_h":           func(b *blast.Blasting) { b.MediaFlowKgH = new(10001.0) },
		"/strip_rate_m2_h":           func(b *blast.Blasting) { b.StripRateM2H = new(501.0) },
		"/working_charge_kg":         func(b *blast.Blasting) { b.WorkingChargeKg = 100001 },
		"/removed_film_um":           func(b *blast.Blasting) { b.RemovedFilmUm = 20001 },
		"/removed_film_density_kg_l": func(b *blast.Blasting) { b.RemovedFilmDensityKgL = new(11.0) },
		"/collected_debris_kg":       func(b *blast.Blasting) { b.CollectedDebrisKg = new(-1.0) },
		"/discharge_coefficient":     func(b *blast.Blasting) { b.DischargeCoefficient = new(0.2) },
		"/ambient_pressure_kpa":      func(b *blast.Blasting) { b.AmbientPressureKPa = 111 },
	} {
		b := sound()
		spoil(b)
		assert.Equal(t, map[string]string{pointer: "out_of_range"}, faults(b))
		_, err := b.Calculate()
		var outside *quantity.RangeError
		assert.ErrorAs(t, err, &outside, pointer)
	}
}
