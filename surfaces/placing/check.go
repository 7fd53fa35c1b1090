package placing

import (
	"fmt"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// Faces are those on which a place by stations may lie.
func Faces() []string { return []string{"left", "right", "upper", "lower"} }

// Anchors are the points of a figure that may be measured.
func Anchors() []string {
	return []string{"centre", "lower_left", "lower_right", "upper_left", "upper_right", "origin"}
}

// Sides are those of the way between two known points.
func Sides() []string { return []string{"left", "right"} }

type reporter = func(pointer, code, detail string)

// Check reports every fault of a place, fixes that cannot be among them.
func (p *Place) Check(report func(pointer, code, detail string)) {
	clean := true
	tell := func(pointer, code, detail string) { clean = false; report(pointer, code, detail) }
	quantity.Check(p, tell)
	oneOf("/side", p.Side, tell, Sides()...)
	oneOf("/anchor", p.Anchor, tell, Anchors()...)
	ways := 0
	for _, given := range []bool{p.Offsets != nil, p.Station != nil, len(p.Tapes) > 0} {
		if given {
			ways++
		}
	}
	switch {
	case ways == 0:
		tell("", "required", "the place is missing; give offsets, station or tapes")
	case ways > 1:
		tell("", "inconsistent", "the place is given in more than one way; give offsets, station or tapes alone")
	}
	if s := p.Station; s != nil {
		oneOf("/station/face", s.Face, tell, Faces()...)
		if s.Datum == "" {
			tell("/station/datum", "required", "datum is missing; say from where stations and water lines count, since makers differ")
		}
	}
	if n := len(p.Tapes); n == 1 || n > 3 {
		tell("/tapes", "out_of_range", fmt.Sprintf("tapes has %d entries; a fix takes 2 or 3", n))
	}
	if clean {
		p.locate(report)
	}
}

// oneOf reports a word that is none of those allowed.
func oneOf(pointer, value string, report reporter, allowed ...string) {
	for _, a := range allowed {
		if value == a {
			return
		}
	}
	report(pointer, "unknown_kind", fmt.Sprintf("%s is %q; it must be one of %s", pointer[strings.LastIndexByte(pointer, '/')+1:], value, strings.Join(allowed, ", ")))
}

// Locate checks a place and finds it. The error is a surfaces.Faults with all
// that Check reported.
func (p *Place) Locate() (Fix, error) {
	var faults surfaces.Faults
	report := func(pointer, code, detail string) {
		faults = append(faults, surfaces.Fault{Pointer: pointer, Code: code, Detail: detail})
	}
	if p.Check(report); len(faults) > 0 {
		return Fix{}, faults
	}
	return p.locate(report), nil
}
