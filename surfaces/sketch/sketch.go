// Package sketch draws a shape with its dimensions, true to scale, as a
// stand-alone SVG picture of 180 mm by 120 mm. People check a shape by looking
// at it.
//
// Standing assumptions, for every kind:
//   - one user unit is 1 mm on paper, y runs down;
//   - what is drawn is to the scale printed below it; a dimension that could not
//     be is underlined, a length that was cut short has break lines, and a note
//     says so;
//   - dimensions are real sizes, in the units of the caller;
//   - a dimension in brackets follows from the others;
//   - face names are in italics;
//   - lines and letters take the colour of the text around the picture, and
//     their class names start with sketch-; there is no script, style or link.
//
// Line widths, arrows and distances follow the secondary accounts of ISO 128
// and ISO 129; the letters' height of 3.5 mm is from memory of ISO 3098. Scales are
// round numbers.
package sketch

import (
	"fmt"
	"strings"

	"filmbuild/surfaces"
)

// System is the system of units that dimensions are written in.
type System string

// SI writes metres, or millimetres throughout for small parts and for rolled
// and pressed sections; US writes feet, inches and fractions of an inch.
const (
	SI System = "si"
	US System = "us"
)

// SVG draws a shape. Every id in the picture starts with prefix, so that
// several pictures can stand in one page; it is empty or a letter followed by
// letters, digits, hyphens and underscores.
//
// The error is a surfaces.Faults for a shape that its Check refuses; a kind, a
// system or a prefix that cannot be used is named, and so is a mesh of more than
// planetary size. Equal arguments give equal
// bytes.
func SVG(s surfaces.Shape, system System, prefix string) ([]byte, error) {
	if system != SI && system != US {
		return nil, fmt.Errorf("the system of units is %q; it must be %s or %s", system, SI, US)
	}
	if !isPrefix(prefix) {
		return nil, fmt.Errorf("the prefix is %q; it must be a letter followed by letters, digits, - and _", prefix)
	}
	var faults surfaces.Faults
	s.Check(func(pointer, code, detail string) {
		faults = append(faults, surfaces.Fault{Pointer: pointer, Code: code, Detail: detail})
	})
	if len(faults) > 0 {
		return nil, faults
	}
	figures, ok := figuresOf(s)
	if !ok {
		return nil, fmt.Errorf("there is no drawing of a %s", s.Kind())
	}
	d := fitted(figures, system)
	if d.taken.width() > sheetWidth || d.taken.height() > sheetHeight {
		return nil, fmt.Errorf("the %s is too large to be drawn at 1:%.0f", s.Kind(), d.real)
	}
	return d.document(s.Kind(), prefix), nil
}

// figure draws one shape.
type figure func(*drawing)

// figuresOf finds what draws a shape: one figure, or several that differ in
// layout.
func figuresOf(s surfaces.Shape) (figures []figure, ok bool) {
	switch s := s.(type) {
	case *surfaces.Measured:
		return []figure{func(d *drawing) { drawMeasured(d, s) }}, true
	case *surfaces.Panel:
		p := newPanel(s)
		return []figure{
			func(d *drawing) { drawPanel(d, p, mostMarks) },
			func(d *drawing) { drawPanel(d, p, mostMarks*2/3) },
			func(d *drawing) { drawPanel(d, p, mostMarks/3) },
			func(d *drawing) { drawPanel(d, p, mostMarks/5) },
		}, true
	case *surfaces.Box:
		return spacious(func(d *drawing) { drawBox(d, s) }), true
	case *surfaces.Cylinder:
		return []figure{func(d *drawing) { drawCylinder(d, s) }}, true
	case *surfaces.Frustum:
		return []figure{func(d *drawing) { drawFrustum(d, s) }}, true
	case *surfaces.Sphere:
		return []figure{func(d *drawing) { drawSphere(d, s) }}, true
	case *surfaces.Cap:
		return []figure{func(d *drawing) { drawCap(d, s) }}, true
	case *surfaces.Torus:
		return []figure{func(d *drawing) { drawTorus(d, s) }}, true
	case *surfaces.Ellipsoid:
		return []figure{func(d *drawing) { drawEllipsoid(d, s) }}, true
	case *surfaces.Nose:
		return []figure{func(d *drawing) { drawNose(d, s) }}, true
	case *surfaces.Vessel:
		return []figure{func(d *drawing) { drawVessel(d, s) }}, true
	case *surfaces.Wing:
		return []figure{func(d *drawing) { drawWing(d, s) }}, true
	case *surfaces.Body:
		return []figure{
			func(d *drawing) { drawBody(d, s, planBelow) },
			func(d *drawing) { drawBody(d, s, planBeside) },
			func(d *drawing) { drawBody(d, s, planBare) },
		}, true
	case *surfaces.Bar:
		return []figure{func(d *drawing) { drawBar(d, s) }}, true
	case *surfaces.Corrugated:
		return []figure{func(d *drawing) { drawCorrugated(d, s) }}, true
	case *surfaces.Revolved:
		return []figure{func(d *drawing) { drawRevolved(d, s) }}, true
	case *surfaces.Mesh:
		return spacious(func(d *drawing) { drawMesh(d, s) }), true
	case *surfaces.Swept:
		return []figure{func(d *drawing) { drawSwept(d, s) }}, true
	}
	return nil, false
}

// spacious is a figure, and the same with its dimensions beside each other where
// they would be above each other.
func spacious(f figure) []figure {
	return []figure{f, func(d *drawing) { d.abreast = true; f(d) }}
}

func isPrefix(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || !strings.ContainsRune("0123456789-_", r)) {
			return false
		}
	}
	return true
}
