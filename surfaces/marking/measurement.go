package marking

import (
	"slices"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Measurement is what a figure's dimensions come to. Colours stand in the
// order in which they are put down. Places are in the figure's own coordinates,
// x to the right and y up; the figure's box is left_m to left_m + width_m and
// bottom_m to bottom_m + height_m. With sizes projected onto a curved skin all
// figures are those on the skin, unrolled about the middle.
type Measurement struct {
	Colours       []ColourArea       `json:"colours"`
	Painted       []ColourArea       `json:"painted"` // what is sprayed: as colours, or the under colour on the whole figure first
	AreaM2        float64            `json:"area_m2"` // all colours
	Edges         []Edge             `json:"edges"`
	OutlineM      float64            `json:"outline_m"`        // edges against the base
	EdgeOnceM     float64            `json:"edge_once_m"`      // each edge masked once: light colours first, later ones cut back
	EdgeTwoSidedM float64            `json:"edge_two_sided_m"` // each colour sprayed alone inside its own mask
	LeftM         float64            `json:"left_m"`
	BottomM       float64            `json:"bottom_m"`
	WidthM        float64            `json:"width_m"`
	HeightM       float64            `json:"height_m"`
	CentroidXM    float64            `json:"centroid_x_m"` // of all colours
	CentroidYM    float64            `json:"centroid_y_m"`
	StencilFilmM2 float64            `json:"stencil_film_m2"` // the box with its margin all round
	Islands       int                `json:"islands"`         // of all stencils, one for each colour: pieces of film that need bridges
	Skin          *Skin              `json:"skin,omitempty"`
	Working       []quantity.Working `json:"working"`
}

// ColourArea is the area that shows one colour, where its centroid lies, in how
// many parts it is, and how many islands fall out of a stencil for it.
type ColourArea struct {
	Colour     string  `json:"colour"`
	AreaM2     float64 `json:"area_m2"`
	CentroidXM float64 `json:"centroid_x_m"`
	CentroidYM float64 `json:"centroid_y_m"`
	Parts      int     `json:"parts"`
	Islands    int     `json:"islands"` // closed lines less parts
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
func measured(f Figure, a *planar.Arrangement) (Measurement, error) {
	sums, skin, err := f.shared().onSkin(a)
	if err != nil {
		return Measurement{}, err
	}
	m := Measurement{Colours: make([]ColourArea, 0, len(sums.Areas)), Edges: make([]Edge, 0, len(sums.Lengths)), Skin: skin}
	areas := make(map[string]float64, len(sums.Areas))
	holes := a.Holes()
	for _, c := range sums.Areas {
		h := holesOf(c.Colour, holes)
		m.Colours = append(m.Colours, ColourArea{c.Colour, c.Area, c.Centre.X, c.Centre.Y, h.Parts, h.Holes})
		areas[c.Colour] = c.Area
		m.AreaM2 += c.Area
		m.Islands += h.Holes
		m.CentroidXM, m.CentroidYM = m.CentroidXM+c.Area*c.Centre.X, m.CentroidYM+c.Area*c.Centre.Y
	}
	if m.AreaM2 > 0 {
		m.CentroidXM, m.CentroidYM = m.CentroidXM/m.AreaM2, m.CentroidYM/m.AreaM2
	}
	m.Painted = f.shared().painted(m.Colours)
	if s, ok := f.(seamed); ok {
		s.closeSeam(sums.Lengths)
	}
	inner := 0.0
	for _, l := range sums.Lengths {
		m.Edges = append(m.Edges, Edge{l.Between, l.Length})
		if l.Between[1] == planar.Base {
			m.OutlineM += l.Length
		} else {
			inner += l.Length
		}
	}
	m.EdgeOnceM = m.OutlineM + inner
	m.EdgeTwoSidedM = m.OutlineM + 2*inner
	box := sums.Box
	m.LeftM, m.BottomM, m.WidthM, m.HeightM = box.Min.X, box.Min.Y, box.Width(), box.Height()
	margin := f.StencilMargin()
	m.StencilFilmM2 = (m.WidthM + 2*margin) * (m.HeightM + 2*margin)

	if d, ok := f.(dimensioned); ok {
		m.Working = d.dimensions()
	}
	m.Working = slices.Grow(m.Working, 5)
	m.note("area_m2", m.AreaM2, "m²", "sum of the colours, each ½·∮(x·dy − y·dx) along its borders", areas, sourceOf(f.Kind()))
	edges := map[string]float64{"outline": m.OutlineM, "inner": inner}
	m.note("edge_once_m", m.EdgeOnceM, "m", "outline + inner", edges, "identity")
	m.note("edge_two_sided_m", m.EdgeTwoSidedM, "m", "outline + 2·inner", edges, "identity")
	m.note("stencil_film_m2", m.StencilFilmM2, "m²", "(w + 2·e)·(h + 2·e)",
		map[string]float64{"w": m.WidthM, "h": m.HeightM, "e": margin}, "identity: the box with a margin all round")
	if skin != nil && f.shared().Sizes == "projected" {
		m.note("skin_height_m", skin.HeightM, "m", "by unrolling: 2·ρ·asin(h/(2·ρ)) across the axis", map[string]float64{"h": skin.ProjectedHeightM, "w": skin.ProjectedWidthM, "ρ": skin.RadiusM}, "identity: arc length")
	}
	return m, nil
}

func holesOf(colour string, list []planar.Holes) planar.Holes {
	for _, h := range list {
		if h.Colour == colour {
			return h
		}
	}
	return planar.Holes{}
}

// seamed is a figure whose ends meet: it takes the seam off the lengths.
type seamed interface{ closeSeam(lengths []planar.Length) }

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
