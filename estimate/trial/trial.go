// Package trial says how far a figure that was measured on small areas may be
// off on the whole job.
//
// The rule: one square metre differs from the next, so a trial of A m² is off by
// 30 % · √(1 m²/A), as the mean of A independent square metres is, and never by
// less than 10 %, for who did it, that day's weather and flat open metal are the
// same in all of it. Several trials are weighted by their area; where they differ
// by more than that rule lets expect, what they say themselves counts: the
// interval that holds the mean four times in five. The larger of the two is
// taken, and no more than 100 %.
package trial

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	// oneSquareMetre is what a trial of 1 m² is off, as a ratio (assumption; no
	// published figure was found).
	oneSquareMetre = 0.30
	// least is what the largest trial is off (assumption).
	least = 0.10
	// most bounds the rule: a trial that may be off by more says nothing.
	most = 1.0
	// within is the quantile of Student's t for an interval that holds the mean
	// four times in five, one time in ten above it (P10 to P90 of the ranges).
	within = 0.90
)

// Patch is one trial of a quantity.
type Patch struct {
	AreaM2 float64
	Weight float64 // area, or what else the amount was divided by
	Amount float64 // what was used or taken on it
}

// Figure is what trials come to.
type Figure struct {
	Value   float64 // amount for one of weight, all trials together
	Off     float64 // how far it may be off, as a ratio: from Value/(1 + Off) to Value·(1 + Off)
	AreaM2  float64
	Patches int
	Spread  bool // the spread between the trials sets Off, not their size
}

// Low is the low end of what the figure may be.
func (f Figure) Low() float64 { return f.Value / (1 + f.Off) }

// High is the high end.
func (f Figure) High() float64 { return f.Value * (1 + f.Off) }

// Combine adds trials up: amounts before they are divided, so that each counts
// by its weight.
//
//	value = Σ amount / Σ weight
//	off   = max(rule of size, t(0.9; n − 1) · √(Σ w·(x − value)² / ((n − 1)·Σ w)) / value)
//
// where x is the amount of one trial over its weight. It returns an error for no
// trial, and for one whose area, weight or amount is not above 0.
//
// Source: weighted mean and its standard error for errors that fall with the
// root of the weight (identity); Student's t.
func Combine(patches []Patch) (Figure, error) {
	var f Figure
	weight, amount := 0.0, 0.0
	for _, p := range patches {
		if !(p.AreaM2 > 0 && p.Weight > 0 && p.Amount > 0) || math.IsInf(p.AreaM2+p.Weight+p.Amount, 1) {
			return Figure{}, fmt.Errorf("a trial of %g m² with %g over %g; all must be above 0", p.AreaM2, p.Amount, p.Weight)
		}
		f.AreaM2 += p.AreaM2
		weight += p.Weight
		amount += p.Amount
	}
	f.Patches = len(patches)
	if f.Patches == 0 {
		return Figure{}, fmt.Errorf("there is no trial")
	}
	f.Value = amount / weight
	f.Off = OffBySize(f.AreaM2)
	if f.Patches > 1 {
		squares, free := 0.0, float64(f.Patches-1)
		for _, p := range patches {
			x := p.Amount / p.Weight
			squares += p.Weight * (x - f.Value) * (x - f.Value)
		}
		t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: free}.Quantile(within)
		if off := t * math.Sqrt(squares/(free*weight)) / f.Value; off > f.Off {
			f.Off, f.Spread = off, true
		}
	}
	f.Off = min(f.Off, most)
	return f, nil
}

// OffBySize is how far a trial of an area, in m², may be off by the rule of
// size, as a ratio in [0.1, 1].
func OffBySize(areaM2 float64) float64 {
	return min(max(least, oneSquareMetre/math.Sqrt(areaM2)), most)
}

// Text says the rule, and which part of it counts, in one line.
func (f Figure) Text() string {
	of := fmt.Sprintf("%d test patches, %.3g m² in all", f.Patches, f.AreaM2)
	if f.Patches == 1 {
		of = fmt.Sprintf("one test patch of %.3g m²", f.AreaM2)
	}
	why := "by their size, 30 %·√(1 m²/area), at least 10 %"
	if f.Spread {
		why = "by the spread between them, four times in five"
	}
	return fmt.Sprintf("%s: may be off by a factor of %.3g either way, %s", of, 1+f.Off, why)
}
