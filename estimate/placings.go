package estimate

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/placing"
)

// Placing is where one marking was and goes back to: on its face seen from
// outside, x to the right and y up.
type Placing struct {
	Marking   string `json:"marking"`
	Component string `json:"component,omitempty"` // or region
	Face      string `json:"face,omitempty"`
	OtherFace string `json:"other_face,omitempty"` // that of the other side
	Mirrored  bool   `json:"mirrored"`             // the figure stands on the other side as well
	placing.Fix
	Corners      [][2]float64 `json:"corners" unit:"m"`        // of the figure's own box at its place, from its lower left counter-clockwise
	OtherCorners [][2]float64 `json:"other_corners" unit:"m"`  // the same on the other side
	RecordBefore string       `json:"record_before,omitempty"` // the step that takes the paint off there
	ReturnIn     []string     `json:"return_in,omitempty"`     // the steps that paint it
}

// place checks where a marking is said to have been.
func (c *checker) place(m *Marking, at string) {
	if m.Place == nil {
		return
	}
	report := c.faults.At(at + "/place")
	m.Place.Check(report)
	if m.Place.Mirrored && m.Count < 2 {
		report("/mirrored", "inconsistent", "mirrored is true and count is 1; count says how many are painted in all, so that a figure on both sides counts 2")
	}
	if k := m.Figure; k != nil && m.Place.MirrorFigure && (k.Kind() == "lettering" || k.Kind() == "stencil") {
		report("/mirror_figure", "not_applicable", "mirror_figure is true and the figure is letters, which nobody could read mirrored; leave it out")
	}
	_, face, named := strings.Cut(m.On, "/")
	if s := m.Place.Station; named && s != nil && slices.Contains(placing.Faces(), face) && face != s.Face {
		report("/station/face", "inconsistent", fmt.Sprintf("face is %s and the marking is on %s; correct one of them", clip(s.Face), clip(m.On)))
	}
}

// errand is what a step has to do for the places of markings.
type errand struct {
	step int
	text string // with %s for the markings
}

// placings finds every marking that says where it was, and tells the steps what
// to record and what to put back.
func (r *run) placings() {
	names := map[errand][]string{}
	for i := range r.job.Markings {
		m := &r.job.Markings[i]
		before, painted := r.strippedBy(i), r.paintedBy(m.ID)
		if m.Place == nil {
			if before >= 0 && len(painted) > 0 {
				e := errand{before, "before this step measure where %s stand, photograph them with the tape and give it to the job as place"}
				names[e] = append(names[e], m.ID)
			}
			continue
		}
		p, err := placed(m)
		if err != nil {
			r.faults.Add("/markings/"+strconv.Itoa(i)+"/place", "inconsistent", err.Error())
			continue
		}
		if before >= 0 {
			p.RecordBefore = r.estimate.Steps[before].ID
			e := errand{before, "before this step check by one more measure where %s stand, and photograph them with the tape: afterwards nothing tells a wrong place from a right one"}
			names[e] = append(names[e], m.ID)
		}
		for _, k := range painted {
			p.ReturnIn = append(p.ReturnIn, r.estimate.Steps[k].ID)
			e := errand{k, "put back to their places: %s; see placings, and the placing sheet of each face"}
			names[e] = append(names[e], m.ID)
		}
		r.estimate.Placings = append(r.estimate.Placings, p)
	}
	for e, of := range names {
		s := &r.estimate.Steps[e.step]
		s.Instructions = append(s.Instructions, fmt.Sprintf(e.text, strings.Join(of, ", ")))
	}
	for k := range r.estimate.Steps {
		slices.Sort(r.estimate.Steps[k].Instructions)
	}
}

// placed finds where a checked marking goes.
func placed(m *Marking) (Placing, error) {
	fix, err := m.Place.Locate()
	if err != nil {
		return Placing{}, err
	}
	figure, err := marking.Arrange(m.Figure)
	if err != nil {
		return Placing{}, err
	}
	p := Placing{Marking: m.ID, Mirrored: m.Place.Mirrored, Fix: fix}
	p.Component, p.Face, _ = strings.Cut(m.On, "/")
	if p.Face == "" {
		p.Face = fix.Face
	}
	p.OtherFace = placing.OtherFace(p.Face)
	box := figure.Box()
	p.Corners, p.OtherCorners = fix.Corners(box), fix.OtherSide.Corners(box)
	return p, nil
}

// strippedBy is the first step that takes paint off what a marking is on, -1 if
// none does before the marking is painted.
func (r *run) strippedBy(i int) int {
	for k := range r.estimate.Steps {
		s := &r.estimate.Steps[k]
		if slices.Contains(r.paintedBy(r.job.Markings[i].ID), k) {
			return -1
		}
		if !removes(s.Operation) {
			continue
		}
		for _, p := range r.chosen[s.ID].patches {
			if slices.ContainsFunc(r.markedOn[i].patches, func(on patch) bool { return on.surface == p.surface && on.face == p.face }) {
				return k
			}
		}
	}
	return -1
}

// paintedBy lists the steps that paint a marking.
func (r *run) paintedBy(id string) []int {
	var list []int
	for k, step := range r.job.Steps {
		if m, ok := step.(*Mark); ok && slices.Contains(m.Markings, id) {
			list = append(list, k)
		}
	}
	return list
}

// undrawable notes what is found in measuring a marking only, such as a figure
// that reaches round the body it lies on.
func (r *run) undrawable(marking int, err error) {
	at := "/markings/" + strconv.Itoa(marking)
	var found surfaces.Faults
	if !errors.As(err, &found) {
		r.faults.Add(at, "out_of_range", err.Error())
	}
	for _, f := range found {
		r.faults.Add(at+f.Pointer, f.Code, f.Detail)
	}
}
