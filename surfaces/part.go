package surfaces

import (
	"fmt"
	"math"
	"strings"
)

// Cut stands for the rest of a face's own area where only a part of the face
// is taken: the line between the two is nowhere but on the paint.
const Cut = "cut"

// Part says which part of a shape is meant: what lies between two stations,
// between two heights, or both; or a strip along a line of the shape, on kinds
// whose Strip says so between two stations. An absent bound is the shape's end.
type Part struct {
	FromM, ToM   *float64 // stations along the shape
	FromZM, ToZM *float64 // heights
	Along        string   // the line that a strip follows; empty for no strip
	WidthM       float64  // of the strip, on the skin
}

// Extent is how far a shape reaches, in the numbers a Part is given in.
type Extent struct {
	From, To  float64 // stations
	Low, High float64 // heights; both 0 for a shape that has none
	Station   string  // where stations count from, for people
	Height    string  // where heights count from; empty for a shape that has none
}

// Window is a Part between stations and heights with every bound in place;
// a height that is not bounded is infinite.
type Window struct{ From, To, Low, High float64 }

// Divisible is a shape that can be measured between stations and perhaps
// between heights.
type Divisible interface {
	Shape
	Extent() Extent
	// Between measures the part in a window that lies within the extent. A
	// plane face that lies on the bound between two windows belongs to the
	// window that starts there, the last one to the window that ends there.
	Between(w Window) Measurement
}

// Striped is a shape that has lines along which a strip can be laid.
type Striped interface {
	Shape
	// Lines names them and says how the width of a strip is measured there.
	Lines() []StripLine
	// Strip measures the strip of a width along one of the lines, over all
	// faces that it lies on.
	Strip(along string, width float64, w Window) (Measurement, error)
}

// StripLine is a line along which a strip can be laid.
type StripLine struct {
	Name, Measured string
	Stations       bool // the strip may be bounded by stations
}

// MeasurePart measures a part of a shape that its Check passed. The faces are
// those of the shape as far as they lie in the part; edges to Cut are where the
// part ends within a face. The error is a Faults; its pointers are from_m,
// to_m, from_z_m, to_z_m, strip/along and strip/width_m.
func MeasurePart(s Shape, p Part) (Measurement, error) {
	var faults Faults
	report := func(pointer, code, detail string) { faults = append(faults, Fault{pointer, code, detail}) }
	w := p.window(s, report)
	if p.Along == "" {
		if len(faults) > 0 {
			return Measurement{}, faults
		}
		return s.(Divisible).Between(w), nil // window reported any other shape
	}
	if !p.checkStrip(s, report) || len(faults) > 0 {
		return Measurement{}, faults
	}
	m, err := s.(Striped).Strip(p.Along, p.WidthM, w)
	if err != nil {
		return Measurement{}, Faults{{"/strip/width_m", "outside", err.Error()}}
	}
	return m, nil
}

// PartWindow returns the window of a part of a shape that its Check passed, with
// stations for absent ones, and reports bounds that do not fit.
func PartWindow(s Shape, p Part, report func(pointer, code, detail string)) Window {
	return p.window(s, report)
}

func (p Part) bounded() bool { return p.FromM != nil || p.ToM != nil || p.heights() }

func (p Part) heights() bool { return p.FromZM != nil || p.ToZM != nil }

// window fills in the bounds that are absent and reports those that do not fit.
func (p Part) window(s Shape, report reporter) Window {
	unlimited := Window{math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(1)}
	d, divisible := s.(Divisible)
	if !divisible {
		if p.Along == "" || p.bounded() {
			report(p.firstBound(), "not_applicable", fmt.Sprintf(
				"a %s has no stations to divide it by; %s have", s.Kind(), kindsThat(func(s Shape) bool { _, ok := s.(Divisible); return ok })))
		}
		return unlimited
	}
	e, w := d.Extent(), unlimited
	w.From, w.To = p.bounds("m", p.FromM, p.ToM, e.From, e.To, e.Station, report)
	if !p.heights() {
		return w
	}
	if e.Height == "" {
		report(p.firstHeight(), "not_applicable", fmt.Sprintf("a %s has no heights to divide it by; %s have", s.Kind(), kindsThat(func(s Shape) bool {
			d, ok := s.(Divisible)
			return ok && d.Extent().Height != ""
		})))
		return w
	}
	low, high := p.bounds("z_m", p.FromZM, p.ToZM, e.Low, e.High, e.Height, report)
	if p.FromZM != nil && low > e.Low {
		w.Low = low
	}
	if p.ToZM != nil && high < e.High {
		w.High = high
	}
	return w
}

// bounds checks one pair of bounds. What is off an end by rounding is the end.
func (p Part) bounds(name string, from, to *float64, first, last float64, counted string, report reporter) (low, high float64) {
	slack := 1e-9 * max(1, math.Abs(first), math.Abs(last))
	low, high = or(from, first), or(to, last)
	clean := true
	for _, b := range []struct {
		pointer string
		value   *float64
	}{{"/from_" + name, from}, {"/to_" + name, to}} {
		if b.value != nil && !(*b.value >= first-slack && *b.value <= last+slack) {
			clean = false
			report(b.pointer, "outside", fmt.Sprintf("%s is %s; the shape reaches from %s to %s, counted %s",
				b.pointer[1:], metres(*b.value), metres(first), metres(last), counted))
		}
	}
	if !clean {
		return first, last
	}
	for _, b := range []*float64{&low, &high} {
		if *b-first <= slack {
			*b = first
		} else if last-*b <= slack {
			*b = last
		}
	}
	if low >= high {
		at := "/to_" + name
		if to == nil {
			at = "/from_" + name
		}
		report(at, "not_increasing", fmt.Sprintf("the part from %s to %s has no length; to_%s must be above from_%s", metres(low), metres(high), name, name))
	}
	return low, high
}

func (p Part) firstBound() string {
	switch {
	case p.FromM != nil:
		return "/from_m"
	case p.ToM != nil:
		return "/to_m"
	}
	return p.firstHeight()
}

func (p Part) firstHeight() string {
	if p.FromZM != nil {
		return "/from_z_m"
	}
	return "/to_z_m"
}

// checkStrip reports a strip that the shape cannot have.
func (p Part) checkStrip(s Shape, report reporter) bool {
	striped, ok := s.(Striped)
	if !ok || len(striped.Lines()) == 0 {
		report("/strip", "not_applicable", fmt.Sprintf("a %s has no line to lay a strip along; %s have", s.Kind(), kindsThat(func(s Shape) bool {
			striped, ok := s.(Striped)
			return ok && len(striped.Lines()) > 0
		})))
		return false
	}
	var names []string
	for _, l := range striped.Lines() {
		names = append(names, l.Name)
		if l.Name != p.Along {
			continue
		}
		if p.heights() {
			report(p.firstHeight(), "not_applicable", "a strip is not bounded by heights; leave them out, or the strip")
			return false
		}
		if p.bounded() && !l.Stations {
			report(p.firstBound(), "not_applicable", fmt.Sprintf("a strip along %s is not bounded by stations here; leave from_m and to_m out", l.Name))
			return false
		}
		return true
	}
	report("/strip/along", "unknown_reference", fmt.Sprintf("this %s has no line %q; a strip may follow %s", s.Kind(), p.Along, strings.Join(names, ", ")))
	return false
}

// kindsThat names the kinds whose examples have a property.
func kindsThat(can func(Shape) bool) string {
	var names []string
	for _, k := range kinds() {
		if can(k.example()) {
			names = append(names, k.name)
		}
	}
	return strings.Join(names, ", ")
}

// partOf starts the measurement of a part as exact as its shape.
func partOf(s Shape, what string) Measurement {
	whole := s.Measure()
	return Measurement{Method: what + "; " + whole.Method, AccuracyPercent: whole.AccuracyPercent}
}

// add adds the area of the faces of a part in the order of their first use.
func (m *Measurement) add(name string, area float64) {
	if !(area > 0) {
		return
	}
	for i := range m.Faces {
		if m.Faces[i].Name == name {
			m.Faces[i].AreaM2 += area
			return
		}
	}
	m.Faces = append(m.Faces, Face{name, area})
}

// noteParts gives the working of a part's faces and how far the integrals may
// be off.
func (m *Measurement) noteParts(formula string, terms map[string]float64, bound float64) {
	for _, f := range m.Faces {
		m.note(f.Name+"_area_m2", f.AreaM2, "m²", formula, terms, "identity")
	}
	if bound > 0 {
		m.note("integral_error_m2", bound, "m²", "by the differences between the rule on each stretch and on its halves", nil, "identity (Gauss's rule, halved until it agrees)")
	}
}

// terms are the bounds of a window as far as there are any.
func (w Window) terms() map[string]float64 {
	terms := map[string]float64{}
	for symbol, value := range map[string]float64{"x1": w.From, "x2": w.To, "z1": w.Low, "z2": w.High} {
		if !math.IsInf(value, 0) {
			terms[symbol] = value
		}
	}
	return terms
}

func (w Window) String() string {
	text := ""
	if !math.IsInf(w.From, 0) {
		text = fmt.Sprintf("from %s to %s", metres(w.From), metres(w.To))
	}
	switch {
	case !math.IsInf(w.Low, 0) && !math.IsInf(w.High, 0):
		text += fmt.Sprintf(", heights %s to %s", metres(w.Low), metres(w.High))
	case !math.IsInf(w.Low, 0):
		text += ", above " + metres(w.Low)
	case !math.IsInf(w.High, 0):
		text += ", below " + metres(w.High)
	}
	return text
}

// Effort is about how long a part takes to measure, in ms on one core, so that
// whoever measures many can bound them.
func (p Part) Effort(s Shape) int {
	switch s := s.(type) {
	case *Body:
		if p.Along == "top" || p.Along == "bottom" {
			return 20 * min(len(s.Stations), mostStripBays)
		}
		return 1 + 5*len(s.Stations)
	case *Panel:
		corners := len(s.Outline)
		for _, h := range s.Holes {
			corners += 4 + len(h.Outline)
		}
		return 1 + corners/2
	case *Wing:
		if p.Along != "" {
			return 50
		}
	}
	return 2
}
