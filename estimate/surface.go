package estimate

import (
	"strconv"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// surface is one component measured, all its parts together.
type surface struct {
	component *Component
	one       surfaces.Measurement // of one part, without extra area and openings
	faces     []face
	good      bool // false where a fault keeps it from being measured

	changes          []change // joints, gaps, laps and rivets
	working          []quantity.Working
	joinsM2, addedM2 float64
}

// face is one side of a component, all its parts together.
type face struct {
	name       string
	areaM2     float64 // extra area in, openings off
	openingsM2 float64
	openingsM  float64   // edge of the openings
	seams      []seam    // where other components are set on it
	spotted    []spotted // openings and joints, with their places where they are known
	paint      float64   // share of the area that still has its old paint
}

// measure finds the areas of every component that has no fault so far.
func (c *checker) measure() {
	c.surfaces = make([]surface, len(c.job.Components))
	for i := range c.job.Components {
		comp, at := &c.job.Components[i], "/components/"+strconv.Itoa(i)
		c.surfaces[i].component = comp
		if comp.Shape == nil || c.faults.HasBelow(at) {
			continue
		}
		c.surfaces[i].one = comp.Shape.Measure()
		c.surfaces[i].good = c.cut(&c.surfaces[i], at)
	}
	for i := range c.surfaces {
		if at := "/components/" + strconv.Itoa(i); c.surfaces[i].good {
			c.additions(&c.surfaces[i], at)
		}
	}
	c.joins()
	for i := range c.surfaces {
		if c.surfaces[i].good {
			c.surfaces[i].settle(c)
		}
	}
}

// cut takes the openings off the faces they lie in.
func (c *checker) cut(s *surface, at string) bool {
	count, extra := float64(s.component.Count), 1+s.component.ExtraAreaPercent/100
	for _, f := range s.one.Faces {
		s.faces = append(s.faces, face{name: f.Name, areaM2: f.AreaM2 * extra * count, paint: 1})
	}
	good := true
	for i, o := range s.component.Openings {
		k := s.faceIndex(o.Face)
		below := at + "/openings/" + strconv.Itoa(i)
		switch {
		case o.Face == "" && len(s.faces) == 1:
			k = 0
		case k < 0:
			c.faults.Addf(below+"/face", "unknown_reference", "face is %q; this %s has %s", clip(o.Face), s.component.Shape.Kind(), s.faceNames())
			good = false
			continue
		}
		s.faces[k].openingsM2 += o.AreaM2 * count
		s.faces[k].openingsM += o.EdgeM * count
		c.checkSpot(&s.component.Openings[i].Spot, s, below)
		s.faces[k].spotted = append(s.faces[k].spotted, spotted{spot: &s.component.Openings[i].Spot, areaM2: o.AreaM2 * count, edgeM: o.EdgeM * count, seam: -1, opening: i})
		s.note("opening_m2", o.Name, o.AreaM2*count, "m²", "A·n", map[string]float64{"A": o.AreaM2, "n": count}, "given by the user")
	}
	for k := range s.faces {
		f := &s.faces[k]
		if f.openingsM2 > f.areaM2*(1+1e-12) {
			c.faults.Addf(at+"/openings", "outside", "the openings in face %s have %.4g m² on each part; the face has only %.4g m²", f.name, f.openingsM2/count, f.areaM2/count)
			good = false
			continue
		}
		f.areaM2 = max(0, f.areaM2-f.openingsM2)
	}
	return good
}

func (s *surface) faceIndex(name string) int {
	for k := range s.faces {
		if s.faces[k].name == name {
			return k
		}
	}
	return -1
}

func (s *surface) faceNames() string {
	names := make([]string, len(s.faces))
	for k := range s.faces {
		names[k] = s.faces[k].name
	}
	if len(names) == 1 {
		return "the face " + names[0]
	}
	return "the faces " + strings.Join(names, ", ")
}

// area returns the wire form.
func (s *surface) area() Area {
	count := float64(s.component.Count)
	a := Area{Component: s.component.ID, Name: s.component.Name, Kind: s.component.Shape.Kind(), Count: s.component.Count,
		Method: s.one.Method, Warnings: s.one.Warnings, AccuracyPercent: s.accuracy(), Working: append(s.one.Working[:len(s.one.Working):len(s.one.Working)], s.working...),
		EdgeM: s.one.EdgeM() * count, JoinsM2: s.joinsM2, AddedM2: s.addedM2}
	for k := range s.faces {
		f := &s.faces[k]
		within := f.openingsM
		for _, j := range f.seams {
			within += j.edgeM
		}
		a.Faces = append(a.Faces, FaceArea{Face: f.name, AreaM2: f.areaM2, EdgeM: s.one.FaceEdgeM(f.name)*count + within})
		a.AreaM2 += f.areaM2
		a.OpeningsM2 += f.openingsM2
		a.EdgeM += within
	}
	a.EachM2 = a.AreaM2 / count
	return a
}

// MeasureShape returns the area of one part of a shape that its Check passed.
func MeasureShape(shape surfaces.Shape) Area {
	s := surface{component: &Component{ID: shape.Kind(), Count: 1, Shape: shape}, one: shape.Measure()}
	for _, f := range s.one.Faces {
		s.faces = append(s.faces, face{name: f.Name, areaM2: f.AreaM2})
	}
	return s.area()
}
