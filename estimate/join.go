package estimate

import (
	"strconv"

	"filmbuild/surfaces"
)

// Join sets a component on another one. The footprint comes off the other's
// face, and off the own closing face where there is one; its outline is an edge.
type Join struct {
	surfaces.Joint
	To      string `json:"to" doc:"id of the component it is set on"`
	Face    string `json:"face,omitempty" doc:"face of that component; spread over its faces in proportion where it is left out"`
	OwnFace string `json:"own_face,omitempty" doc:"own face that closes it there and is covered, such as end_1; end_1 of a cylinder or frustum with two ends where it is left out, none of other shapes"`
	Count   int    `json:"count,omitempty" limit:"[1,1000]" doc:"how many such joints one part has"`
	Spot           // on the component that it is set on
}

// Defaults makes a join stand for one joint.
func (j *Join) Defaults() { j.Count = 1 }

// seam is the line along which a component is set on a face, of all parts.
type seam struct {
	part  int     // the surface that is set on
	edgeM float64 // on this face
	rimM  float64 // of the part's own open rim there; 0 where a face closes it
}

// joins takes the footprints off, once all components are measured.
func (c *checker) joins() {
	for i := range c.job.Components {
		for k := range c.job.Components[i].Joins {
			if at := "/components/" + strconv.Itoa(i); c.surfaces[i].good {
				c.join(i, &c.job.Components[i].Joins[k], at+"/joins/"+strconv.Itoa(k))
			}
		}
	}
}

// join takes one footprint off both sides.
func (c *checker) join(i int, j *Join, at string) {
	part := &c.surfaces[i]
	to, found := c.componentAt[j.To]
	switch {
	case j.To == "":
		c.faults.Add(at+"/to", "required", "to is missing; give the id of the component that this one is set on")
		return
	case !found:
		c.faults.Addf(at+"/to", "unknown_reference", "there is no component %q; there is %s", clip(j.To), c.knownComponents())
		return
	case to == i:
		c.faults.Add(at+"/to", "inconsistent", "a component cannot be set on itself; name the other one")
		return
	case !c.surfaces[to].good:
		return // its own faults say why
	}
	body := &c.surfaces[to]
	j.Joint.Check(part.component.Shape, body.component.Shape, c.faults.At(at))
	on, onFace := body.named(c, j.Face, at+"/face")
	own := part.closing(c, j.OwnFace, at+"/own_face")
	c.checkSpot(&j.Spot, body, at)
	if c.faults.HasBelow(at) || !onFace {
		return
	}
	f := j.Joint.Measure(part.component.Shape, body.component.Shape)
	n := float64(part.component.Count) * float64(j.Count)
	name := part.component.ID + " on " + body.component.ID
	body.change(change{name: "joint_m2", of: name, areaM2: -f.BodyM2 * n, accuracy: f.AccuracyPercent, faces: on, at: at,
		formula: f.Formula, terms: f.Terms, times: n, source: f.Source})
	body.note("joint_edge_m", name, f.EdgeM*n, "m", "e·n", map[string]float64{"e": f.EdgeM, "n": n}, f.Source+"; e is the length of the line along which they meet")
	rim := f.OwnEdgeM * n
	if own >= 0 {
		rim = 0
		part.change(change{name: "joint_m2", of: name, areaM2: -f.OwnM2 * n, accuracy: f.AccuracyPercent, faces: []int{own}, at: at,
			formula: "by the joint's footprint on " + part.faces[own].name, terms: f.Terms, times: n, source: f.Source})
	} else {
		part.note("joint_m2", name, 0, "m²", "by nothing that comes off: the part has no closing face at the joint", map[string]float64{}, "identity")
	}
	for _, k := range on {
		share := body.share(k, on)
		body.faces[k].spotted = append(body.faces[k].spotted, spotted{spot: &j.Spot, areaM2: f.BodyM2 * n * share, edgeM: f.EdgeM * n * share, seam: len(body.faces[k].seams)})
		body.faces[k].seams = append(body.faces[k].seams, seam{part: i, edgeM: f.EdgeM * n * share, rimM: rim * share})
	}
}

// closing is the face of a part that a joint covers, −1 for none.
func (s *surface) closing(c *checker, name, at string) int {
	if name != "" {
		k := s.faceIndex(name)
		if k < 0 {
			c.faults.Addf(at, "unknown_reference", "own_face is %q; this %s has %s", clip(name), s.component.Shape.Kind(), s.faceNames())
		}
		return k
	}
	ends := 0
	switch shape := s.component.Shape.(type) {
	case *surfaces.Cylinder:
		ends = shape.Ends
	case *surfaces.Frustum:
		ends = shape.Ends
	}
	if ends < 2 {
		return -1
	}
	return s.faceIndex("end_1")
}
