package surfaces

import "filmbuild/surfaces/quantity"

// Open stands for a face's neighbour where the skin ends: the root of a wing,
// the rim of an open cylinder, the outline of a panel painted on one side.
const Open = "open"

// Measurement is what a shape's dimensions come to.
type Measurement struct {
	Faces           []Face             `json:"faces"`
	Edges           []Edge             `json:"edges"`
	Method          string             `json:"method"`           // how the area was found, in words
	AccuracyPercent float64            `json:"accuracy_percent"` // half width of the likely error; see Ways
	Working         []quantity.Working `json:"working"`
	Warnings        []string           `json:"warnings,omitempty"` // what should be looked at before the figures are used
}

// Face is one side of a shape. A face that the shape does not have (the end of
// an open cylinder) is not listed.
type Face struct {
	Name   string  `json:"face"`
	AreaM2 float64 `json:"area_m2"`
}

// Edge is the boundary between two faces, or between a face and Open: the
// length of all lines between the two, each counted once.
type Edge struct {
	Between [2]string `json:"between"`
	LengthM float64   `json:"length_m"`
}

// AreaM2 returns the area of all faces together.
func (m Measurement) AreaM2() float64 {
	sum := 0.0
	for _, f := range m.Faces {
		sum += f.AreaM2
	}
	return sum
}

// EdgeM returns the length of all lines, each counted once.
func (m Measurement) EdgeM() float64 {
	sum := 0.0
	for _, e := range m.Edges {
		sum += e.LengthM
	}
	return sum
}

// FaceEdgeM returns the length of the boundary of one face: what has to be
// masked when that face alone is painted. It is 0 for a face without boundary
// and for a name the shape does not have.
func (m Measurement) FaceEdgeM(face string) float64 {
	sum := 0.0
	for _, e := range m.Edges {
		if e.Between[0] == face || e.Between[1] == face {
			sum += e.LengthM
		}
	}
	return sum
}

// face adds a face with its working, unless it has no area.
func (m *Measurement) face(name string, area float64, formula string, terms map[string]float64, source string) {
	if area <= 0 {
		return
	}
	m.Faces = append(m.Faces, Face{name, area})
	m.note(name+"_area_m2", area, "m²", formula, terms, source)
}

// edge adds a line to those between two neighbours.
func (m *Measurement) edge(a, b string, length float64) {
	if length <= 0 {
		return
	}
	for i, e := range m.Edges {
		if e.Between == [2]string{a, b} || e.Between == [2]string{b, a} {
			m.Edges[i].LengthM += length
			return
		}
	}
	m.Edges = append(m.Edges, Edge{[2]string{a, b}, length})
}

func (m *Measurement) note(name string, value float64, unit, formula string, terms map[string]float64, source string) {
	if terms == nil {
		terms = map[string]float64{} // an object on the wire, though empty
	}
	m.Working = append(m.Working, quantity.Working{
		Quantity: name, Value: value, Unit: unit, Formula: formula, Terms: terms, Source: source,
	})
}
