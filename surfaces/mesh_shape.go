package surfaces

import (
	"context"
	"fmt"
	"strings"

	"filmbuild/surfaces/mesh"
)

// Mesh is a surface from a scan or a drawing program. It only names the mesh:
// whoever reads the job fetches the file, measures it as Options says, and
// hands the result over by Resolve before the shape is checked.
type Mesh struct {
	Mesh     string     `json:"mesh" doc:"id of an upload, or a file beside the job"`
	Unit     string     `json:"unit" unit:"" doc:"unit the file is drawn in: m, mm, cm, in or ft; files do not say"`
	Split    string     `json:"split" doc:"faces by direction: none (the default), up_down or left_right"`
	Axis     mesh.Point `json:"axis" doc:"direction in the file that points up (up_down) or left (left_right); [0, 0, 1] by default"`
	AngleDeg float64    `json:"angle_deg" limit:"(0,90]" doc:"how far a facet's normal may lie from the axis; 90 by default"`
	Solids   []string   `json:"solids,omitempty" doc:"names of the solids or groups that count; all by default"`

	result *mesh.Result
}

func newMesh() *Mesh {
	o := mesh.DefaultOptions("")
	return &Mesh{Split: o.Split, Axis: o.Axis, AngleDeg: o.AngleDeg}
}

// wedge is the example of a mesh: half a brick, in mm.
const wedge = `solid wedge
facet normal 0 0 -1
outer loop
vertex 0 0 0
vertex 0 400 0
vertex 600 0 0
endloop
endfacet
facet normal 0 -1 0
outer loop
vertex 0 0 0
vertex 600 0 0
vertex 0 0 300
endloop
endfacet
facet normal -1 0 0
outer loop
vertex 0 0 0
vertex 0 0 300
vertex 0 400 0
endloop
endfacet
facet normal 1 1.5 2
outer loop
vertex 600 0 0
vertex 0 400 0
vertex 0 0 300
endloop
endfacet
endsolid wedge
`

// exampleMesh is a mesh that has been measured: an example needs no file.
func exampleMesh() Shape {
	m := newMesh()
	m.Mesh, m.Unit, m.Split = "wedge.stl", "mm", mesh.SplitUpDown
	if result, err := mesh.Measure(context.Background(), strings.NewReader(wedge), m.Options()); err == nil {
		m.Resolve(result) // a test measures every example
	}
	return m
}

// Options returns how the file is to be measured.
func (s *Mesh) Options() mesh.Options {
	o := mesh.DefaultOptions(s.Unit)
	o.Split, o.Axis, o.AngleDeg, o.Solids = s.Split, s.Axis, s.AngleDeg, s.Solids
	return o
}

// Resolve hands over what the file came to.
func (s *Mesh) Resolve(r mesh.Result) { s.result = &r }

// Box returns the bounding box in m, and false before Resolve.
func (s *Mesh) Box() (mesh.Box, bool) {
	if s.result == nil {
		return mesh.Box{}, false
	}
	return s.result.Box, true
}

// Kind implements Shape.
func (*Mesh) Kind() string { return "mesh" }

// Check implements Shape.
func (s *Mesh) Check(report func(pointer, code, detail string)) {
	if s.Mesh == "" {
		report("/mesh", "required", "mesh is missing; give the id of an upload, or a file beside the job")
	} else if s.result == nil {
		report("/mesh", "unknown_reference", fmt.Sprintf("mesh %.60q was not found; upload it, or put the file beside the job", s.Mesh))
	}
	sound := inRange(s, report)
	s.Options().Check(func(pointer, code, detail string) {
		if sound || pointer != "/angle_deg" { // told already
			report(pointer, code, detail)
		}
	})
}

// Measure implements Shape. The faces are those of the split, or surface; lines
// are known only where the mesh is small enough to be checked.
func (s *Mesh) Measure() Measurement {
	m := Measurement{Method: "sum of the facets of a mesh", AccuracyPercent: s.result.Accuracy.Percent, Working: s.result.Working}
	for _, f := range s.result.Faces {
		m.Faces = append(m.Faces, Face{f.Name, f.AreaM2})
	}
	if s.result.Checks != nil {
		for _, e := range s.result.Checks.Edges {
			m.edge(e.Between[0], e.Between[1], e.LengthM)
		}
	}
	for _, w := range s.result.Warnings {
		m.Warnings = append(m.Warnings, w.Detail)
	}
	return m
}
