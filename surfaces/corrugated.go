package surfaces

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Corrugated is a rectangular sheet pressed into waves or ribs.
type Corrugated struct {
	WidthM   float64  `json:"width_m" limit:"[0.001,500]" doc:"across the corrugations, as it lies"`
	LengthM  float64  `json:"length_m" limit:"[0.001,500]" doc:"along the corrugations"`
	PitchMM  float64  `json:"pitch_mm" limit:"[0.1,5000]" doc:"from crest to crest"`
	DepthMM  float64  `json:"depth_mm" limit:"[0.01,2500]" doc:"from crest to valley"`
	Form     string   `json:"form" doc:"sine (the default), arc (circular arcs that run into each other) or trapezoid"`
	CrestMM  *float64 `json:"crest_mm,omitempty" limit:"[0,5000]" doc:"of a trapezoid: width of the flat crest"`
	ValleyMM *float64 `json:"valley_mm,omitempty" limit:"[0,5000]" doc:"of a trapezoid: width of the flat valley"`
	Sides    int      `json:"sides" limit:"[1,2]" doc:"faces painted: 1 (the default) or 2"`
}

// Kind implements Shape.
func (*Corrugated) Kind() string { return "corrugated" }

// Check implements Shape.
func (s *Corrugated) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	if !oneOf("/form", s.Form, report, "sine", "arc", "trapezoid") {
		return
	}
	if s.Form != "trapezoid" {
		notApplicable("/crest_mm", s.CrestMM, "only a trapezoid has flat crests", report)
		notApplicable("/valley_mm", s.ValleyMM, "only a trapezoid has flat valleys", report)
		if clean && s.Form == "arc" && s.DepthMM > s.PitchMM/2 {
			report("/depth_mm", "inconsistent", fmt.Sprintf(
				"depth_mm is %g mm; arcs of this pitch are at most half circles, %g mm deep", s.DepthMM, s.PitchMM/2))
		}
		return
	}
	clean = given("/crest_mm", s.CrestMM, report) && clean
	clean = given("/valley_mm", s.ValleyMM, report) && clean
	if clean && *s.CrestMM+*s.ValleyMM > s.PitchMM {
		report("/pitch_mm", "inconsistent", fmt.Sprintf(
			"pitch_mm is %g mm, less than crest and valley together, %g mm", s.PitchMM, *s.CrestMM+*s.ValleyMM))
	}
}

// Measure implements Shape. The faces are front and, with two sides, back. Two
// of the four lines around them follow the corrugations.
func (s *Corrugated) Measure() Measurement {
	factor, formula, source := s.factor()
	m := Measurement{Method: "sheet times the length along its " + s.Form + " profile", AccuracyPercent: accuracy(wayPressed)}
	terms := map[string]float64{"w": s.WidthM, "l": s.LengthM, "f": factor, "p": s.PitchMM / 1000, "d": s.DepthMM / 1000}
	area := s.WidthM * s.LengthM * factor
	m.face("front", area, "w·l·f", terms, source+"; "+formula)
	behind := Open
	if s.Sides == 2 {
		behind = "back"
		m.face("back", area, "w·l·f", terms, source+"; "+formula)
	}
	m.edge("front", behind, 2*s.LengthM+2*s.WidthM*factor)
	return m
}

// factor is the length along the profile for each length across it.
func (s *Corrugated) factor() (factor float64, formula, source string) {
	p, d := s.PitchMM, s.DepthMM
	switch s.Form {
	case "arc": // chord p/2, rise d/2
		half := 2 * math.Atan2(2*d, p)
		return half / math.Sin(half), "f = α/sin α, α = 2·atan(2d/p)", "identity (arc over its chord)"
	case "trapezoid":
		crest, valley := or(s.CrestMM, 0), or(s.ValleyMM, 0)
		web := math.Hypot((p-crest-valley)/2, d)
		return (crest + valley + 2*web) / p, "f = (crest+valley+2·web)/p, web = √(((p−crest−valley)/2)²+d²)", "identity"
	}
	k := math.Pi * d / p
	return 2 / math.Pi * math.Sqrt(1+k*k) * mathext.CompleteE(k*k/(1+k*k)),
		"f = (2/π)·√(1+k²)·E(k²/(1+k²)), k = π·d/p", "identity (arc length of a sine)"
}
