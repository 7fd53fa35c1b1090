package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// figure is one published number: its id and mark in the reference tables, where
// it was printed, and what we find. The tolerance is what the source's own
// rounding needs, unless a comment says otherwise.
//
// Marks: T the source's text was read; T2 read second-hand; C as T, in the
// blasting tables; A as T, in the planning tables; B as T2 there; D derived from
// confirmed values; M from memory.
type figure struct {
	id, mark, source string
	want, tolerance  float64
	got              float64
}

func checkFigures(t *testing.T, figures []figure) {
	t.Helper()
	for _, f := range figures {
		t.Run(f.id, func(t *testing.T) {
			assert.InDelta(t, f.want, f.got, f.tolerance+1e-12, "%s [%s]", f.source, f.mark)
		})
	}
}

// found unwraps a formula inside a table of figures; an error ends the test.
func found(value float64, err error) float64 {
	if err != nil {
		panic(err)
	}
	return value
}

// Units of the sources, by their definitions.
const (
	mil        = 25.4          // µm
	litresGal  = 3.785411784   // L in a US gallon
	squareFoot = 0.09290304    // m²
	poundKg    = 0.45359237    // kg
	psiKPa     = 6.894757293   // kPa
	cfmM3Min   = 0.0283168466  // m³/min in ft³/min
	inchMm     = 25.4          // mm
	footM      = 0.3048        // m
	hpKW       = 0.745699872   // kW
	lbGalGL    = 119.826427317 // g/L in lb/gal

	// feetPerGallon turns m²/L into ft²/gal.
	feetPerGallon = litresGal / squareFoot
)

func celsius(fahrenheit float64) float64 { return (fahrenheit - 32) / 1.8 }
