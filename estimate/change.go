package estimate

import (
	"maps"
	"math"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// change is something added to the faces of a component or taken off them, of
// all parts together.
type change struct {
	name, of string
	areaM2   float64 // below 0 where it is taken off
	accuracy float64 // percent
	faces    []int   // that share it, in proportion to their plain areas
	at       string  // pointer of what says so

	formula, source string
	terms           map[string]float64
	times           float64 // how many there are
}

// change notes a change with its working; settle carries the changes out.
func (s *surface) change(ch change) {
	s.changes = append(s.changes, ch)
	terms := maps.Clone(ch.terms)
	formula := ch.formula
	if ch.times != 1 {
		if terms == nil {
			terms = map[string]float64{}
		}
		terms["n"] = ch.times
		if !strings.HasPrefix(formula, "by ") {
			formula = "(" + formula + ")·n"
		}
	}
	s.note(ch.name, ch.of, math.Abs(ch.areaM2), "m²", formula, terms, ch.source)
}

func (s *surface) note(name, of string, value float64, unit, formula string, terms map[string]float64, source string) {
	s.working = append(s.working, quantity.Working{Quantity: name, Of: of, Value: value, Unit: unit, Formula: formula, Terms: terms, Source: source})
}

// named resolves a face, or all faces where none is named.
func (s *surface) named(c *checker, name, at string) ([]int, bool) {
	if name != "" {
		k := s.faceIndex(name)
		if k < 0 {
			c.faults.Addf(at, "unknown_reference", "face is %q; this %s has %s", clip(name), s.component.Shape.Kind(), s.faceNames())
			return nil, false
		}
		return []int{k}, true
	}
	all := make([]int, len(s.faces))
	for k := range all {
		all[k] = k
	}
	return all, true
}

// share is the part of a change that falls on one of its faces.
func (s *surface) share(k int, of []int) float64 {
	total := 0.0
	for _, f := range of {
		total += s.one.Faces[f].AreaM2
	}
	return s.one.Faces[k].AreaM2 / total
}

// settle carries the changes out, in the order in which they were noted, and
// says so where one takes more than a face has.
func (s *surface) settle(c *checker) {
	for _, ch := range s.changes {
		for _, k := range ch.faces {
			f, area := &s.faces[k], ch.areaM2*s.share(k, ch.faces)
			switch {
			case f.areaM2+area < -1e-12*math.Abs(area):
				c.faults.Addf(ch.at, "outside", "%.4g m² come off face %s of %s here, all parts together; only %.4g m² are left of it", -area, f.name, s.component.ID, f.areaM2)
				s.good = false
				return
			case area < 0:
				s.joinsM2 -= area
			default:
				s.addedM2 += area
			}
			f.areaM2 = max(0, f.areaM2+area)
		}
	}
}

// accuracy is that of the shape with all that was added and taken off: each has
// its own error, and they are independent.
//
//	√Σ (area·accuracy)² / area left
//
// Source: identity (independent errors add by their squares).
func (s *surface) accuracy() float64 {
	plain := s.one.AreaM2() * float64(s.component.Count)
	extra := plain * s.component.ExtraAreaPercent / 100
	squares, left := 0.0, 0.0
	add := func(area, percent float64) { squares += area * percent * area * percent }
	add(plain+extra, s.one.AccuracyPercent)
	add(extra, surfaces.AccuracyOf("allowance"))
	for i := range s.faces {
		add(s.faces[i].openingsM2, surfaces.AccuracyOf("given"))
		left += s.faces[i].areaM2
	}
	for _, ch := range s.changes {
		add(ch.areaM2, ch.accuracy)
	}
	if left == 0 || squares == plain*s.one.AccuracyPercent*plain*s.one.AccuracyPercent {
		return s.one.AccuracyPercent
	}
	return min(100, math.Ceil(10*math.Sqrt(squares)/left-1e-9)/10)
}
