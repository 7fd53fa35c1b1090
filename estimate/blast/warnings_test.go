package blast_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/blast"
)

func said(t *testing.T, change func(b *blast.Blasting)) string {
	t.Helper()
	b := sound()
	change(b)
	require.Empty(t, faults(b))
	r, err := b.Calculate()
	require.NoError(t, err)
	return strings.Join(r.Warnings, "\n")
}

// Each warning stands where its bound is passed and not where it is kept.
func TestWarningsHaveTheirBounds(t *testing.T) {
	suction := func(b *blast.Blasting) { b.Feed, b.MediaFlowKgH = blast.Suction, new(50.0) }
	for part, c := range map[string]struct{ beyond, within func(b *blast.Blasting) }{
		"lowest pressure published": { // 10 psi, AC 43.13-1B p. 6-32 (B-44)
			func(b *blast.Blasting) { b.PressureKPa = 9.9 * psi }, func(b *blast.Blasting) { b.PressureKPa = 10.1 * psi }},
		"suction guns are made for": { // 100 psi, common practice
			func(b *blast.Blasting) { suction(b); b.PressureKPa = 101 * psi }, func(b *blast.Blasting) { suction(b); b.PressureKPa = 99 * psi }},
		"common suction guns": { // 5/16 in, common practice
			func(b *blast.Blasting) { suction(b); b.NozzleBoreMm = 8.5 }, func(b *blast.Blasting) { suction(b); b.NozzleBoreMm = 7.9375 }},
		"of mineral media": { // 17 kg/min, A-29
			func(b *blast.Blasting) { b.MediaFlowKgH = new(1021.0) }, func(b *blast.Blasting) { b.MediaFlowKgH = new(1019.0) }},
		"of metallic media": { // 25 kg/min, A-29
			func(b *blast.Blasting) { b.BulkDensityKgM3, b.MediaFlowKgH = new(3684.0), new(1501.0) },
			func(b *blast.Blasting) { b.BulkDensityKgM3, b.MediaFlowKgH = new(3684.0), new(1499.0) }},
		"is narrower than": { // 1 in for a 1/4 in nozzle, H-6
			func(b *blast.Blasting) { b.HoseLengthM, b.HoseBoreMm = new(5.0), new(19.05) },
			func(b *blast.Blasting) { b.HoseLengthM, b.HoseBoreMm = new(5.0), new(25.4) }},
		"cannot hold": {
			func(b *blast.Blasting) { b.CompressorSupplyM3Min = new(1.0) }, func(b *blast.Blasting) { b.CompressorSupplyM3Min = new(1.2) }},
		"runs without the reserve": {
			func(b *blast.Blasting) { b.CompressorSupplyM3Min = new(1.2) }, func(b *blast.Blasting) { b.CompressorSupplyM3Min = new(1.6) }},
		"change nozzles early": { // (5/4)² of the air is more than 1.5 times it
			func(*blast.Blasting) {}, func(b *blast.Blasting) { b.NozzleBoreMm = 9.525 }},
		"never stopped": {
			func(b *blast.Blasting) { b.RateBasis = blast.Burdened }, func(b *blast.Blasting) { b.RateBasis, b.AvailabilityPercent = blast.Burdened, 60 }},
		"metals of the paint": {
			func(b *blast.Blasting) { b.FilmLeadPercent, b.RemovedFilmUm = new(1.0), 0 }, func(b *blast.Blasting) { b.FilmLeadPercent = new(1.0) }},
	} {
		assert.Contains(t, said(t, c.beyond), part)
		assert.NotContains(t, said(t, c.within), part)
	}
}

func TestRefusalsOfWhatContradicts(t *testing.T) {
	for pointer, change := range map[string]func(b *blast.Blasting){
		"/altitude_m":        func(b *blast.Blasting) { b.AltitudeM, b.AmbientPressureKPa = new(100.0), 100 },
		"/carry_out_percent": func(b *blast.Blasting) { b.BreakdownPercent, b.CarryOutPercent = new(60.0), new(41.0) },
		"/batch_passes":      func(b *blast.Blasting) { b.BatchKg = new(20.0) },
		"/working_charge_kg": func(b *blast.Blasting) { b.BatchPasses = new(5) },
		"/recovered":         func(b *blast.Blasting) { b.BatchPasses, b.Recovered, b.WorkingChargeKg = new(5), false, 0 },
		"/hose_bore_mm":      func(b *blast.Blasting) { b.NozzleBoreMm, b.HoseLengthM, b.HoseBoreMm = 12.7, new(200.0), new(19.0) },
		"/hose_length_m":     func(b *blast.Blasting) { b.HoseBoreMm = new(25.0) },
		"/rate_basis":        func(b *blast.Blasting) { b.RateBasis = "daily" },
		"/dust_as":           func(b *blast.Blasting) { b.DustAs = "beads" },
		"/breakdown_percent": func(b *blast.Blasting) { b.BreakdownPercent = new(0.0) },
	} {
		b := sound()
		change(b)
		found := faults(b)
		assert.Len(t, found, 1, "%s: %v", pointer, found)
		assert.Contains(t, found, pointer)
	}
}

// A figure shown is worth what the compressor, the hose and the drum make of it
// (identity).
func TestUsersOfTheAirAddUp(t *testing.T) {
	b := sound()
	b.OtherAirM3Min, b.CompressorSupplyM3Min = 0.4, new(3.0)
	r, err := b.Calculate()
	require.NoError(t, err)
	assert.InEpsilon(t, 1.5*(r.AirM3Min+0.4), r.CompressorM3Min, 1e-12)
	assert.InEpsilon(t, 1.5*(r.WornAirM3Min+0.4), r.WornCompressorM3Min, 1e-12)
	fed := sound()
	fed.NozzleBoreMm, fed.OtherAirM3Min = *r.LargestBoreMm, 0.4
	again, err := fed.Calculate()
	require.NoError(t, err)
	assert.InEpsilon(t, 3.0, again.CompressorM3Min, 1e-9, "the largest bore needs the compressor at hand")
}
