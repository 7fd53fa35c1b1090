package marking

import (
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Measurement is what a figure's dimensions come to. Colours stand in the
// order in which they are put down.
type Measurement struct {
	Colours       []ColourArea       `json:"colours"`
	AreaM2        float64            `json:"area_m2"` // all colours
	Edges         []Edge             `json:"edges"`
	OutlineM      float64            `json:"outline_m"`        // edges against the base
	EdgeOnceM     float64            `json:"edge_once_m"`      // each edge masked once: light colours first, later ones cut back
	EdgeTwoSidedM float64            `json:"edge_two_sided_m"` // each colour sprayed alone inside its own mask
	WidthM        float64            `json:"width_m"`
	HeightM       float64            `json:"height_m"`
	StencilFilmM2 float64            `json:"stencil_film_m2"` // the box with its margin all round
	Working       []quantity.Working `json:"working"`
}

// ColourArea is the area that shows one colour.
type ColourArea struct {
	Colour string  `json:"colour"`
	AreaM2 float64 `json:"area_m2"`
}

// Edge is the length of all borders between two colours, or between a colour
// and the base, each border counted once.
type Edge struct {
	Between [2]string `json:"between"`
	LengthM float64   `json:"length_m"`
}

// measured adds up an arrangement.
//
//	once      = outline + inner edges
//	two-sided = outline + 2 · inner edges = Σ perimeters of the colours
//	film      = (width + 2·margin) · (height + 2·margin)
//
// Source: identities.
func measured(f Figure, a *planar.Arrangement) Measurement {
	m := Measurement{Colours: []ColourArea{}, Edges: []Edge{}}
	areas := map[string]float64{}
	for _, c := range a.Areas() {
		m.Colours = append(m.Colours, ColourArea{c.Colour, c.Area})
		areas[c.Colour] = c.Area
		m.AreaM2 += c.Area
	}
	inner := 0.0
	for _, l := range a.Lengths() {
		m.Edges = append(m.Edges, Edge{l.Between, l.Length})
		if l.Between[1] == planar.Base {
			m.OutlineM += l.Length
		} else {
			inner += l.Length
		}
	}
	m.EdgeOnceM = m.OutlineM + inner
	m.EdgeTwoSidedM = m.OutlineM + 2*inner
	box := a.Box()
	m.WidthM, m.HeightM = box.Width(), box.Height()
	margin := f.StencilMargin()
	m.StencilFilmM2 = (m.WidthM + 2*margin) * (m.HeightM + 2*margin)

	if d, ok := f.(dimensioned); ok {
		m.Working = d.dimensions()
	}
	m.note("area_m2", m.AreaM2, "m²", "sum of the colours, each ½·∮(x·dy − y·dx) along its borders", areas, sourceOf(f.Kind()))
	edges := map[string]float64{"outline": m.OutlineM, "inner": inner}
	m.note("edge_once_m", m.EdgeOnceM, "m", "outline + inner", edges, "identity")
	m.note("edge_two_sided_m", m.EdgeTwoSidedM, "m", "outline + 2·inner", edges, "identity")
	m.note("stencil_film_m2", m.StencilFilmM2, "m²", "(w + 2·e)·(h + 2·e)",
		map[string]float64{"w": m.WidthM, "h": m.HeightM, "e": margin}, "identity: the box with a margin all round")
	return m
}

// dimensioned is a figure that says how its lesser dimensions follow from the
// governing one.
type dimensioned interface{ dimensions() []quantity.Working }

func (m *Measurement) note(name string, value float64, unit, formula string, terms map[string]float64, source string) {
	m.Working = append(m.Working, quantity.Working{
		Quantity: name, Value: value, Unit: unit, Formula: formula, Terms: terms, Source: source,
	})
}

// length is the working of a lesser dimension of a figure: a share of the
// governing one.
func length(name string, value float64, formula string, terms map[string]float64, source string) quantity.Working {
	return quantity.Working{Quantity: name, Value: value, Unit: "m", Formula: formula, Terms: terms, Source: source}
}
