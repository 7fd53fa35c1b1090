package surfaces

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"filmbuild/surfaces/planar"
)

// Panel is a flat sheet: a rectangle, or any outline with straight sides, with
// holes in it.
type Panel struct {
	WidthM        *float64     `json:"width_m,omitempty" limit:"[0.001,500]" doc:"left to right; or give outline"`
	HeightM       *float64     `json:"height_m,omitempty" limit:"[0.001,500]" doc:"bottom to top; or give outline"`
	CornerRadiusM *float64     `json:"corner_radius_m,omitempty" limit:"[0,250]" doc:"of a rectangular panel; 0 (the default) for sharp corners"`
	Outline       [][2]float64 `json:"outline,omitempty" unit:"m" doc:"a panel with straight sides: corners [x, y] in order, at least three"`
	Holes         []Hole       `json:"holes,omitempty" doc:"openings cut out; those that overlap count as one; none may touch the outline"`
	Sides         int          `json:"sides" limit:"[1,2]" doc:"faces painted: 1 (the default) or 2"`
	ThicknessMM   *float64     `json:"thickness_mm,omitempty" limit:"[0.001,1000]" doc:"of the sheet, if its edges and the rims of its holes are painted too"`
}

// Kind implements Shape.
func (*Panel) Kind() string { return "panel" }

// Check implements Shape. Crossing outlines, holes that reach the outline and
// holes that together cut a piece free are refused.
func (s *Panel) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	if !s.checkForm(report) {
		clean = false
	}
	if len(s.Holes) > maxHoles {
		report("/holes", "too_many", fmt.Sprintf("the panel has %d holes; at most %d are taken", len(s.Holes), maxHoles))
		return
	}
	for i, h := range s.PlacedHoles() {
		if !h.check("/holes/"+strconv.Itoa(i), report) {
			clean = false
		}
	}
	if clean {
		s.checkHoles(report)
	}
}

// checkForm reports unless the panel is a rectangle or an outline.
func (s *Panel) checkForm(report reporter) bool {
	if len(s.Outline) == 0 {
		if s.WidthM == nil && s.HeightM == nil {
			report("/width_m", "required", "the panel has no size; give width_m and height_m, or outline")
			return false
		}
		return checkRectangle("", s.WidthM, s.HeightM, s.CornerRadiusM, report)
	}
	clean := checkOutline("/outline", s.Outline, report)
	for _, f := range []struct {
		pointer string
		value   *float64
	}{{"/width_m", s.WidthM}, {"/height_m", s.HeightM}, {"/corner_radius_m", s.CornerRadiusM}} {
		clean = notApplicable(f.pointer, f.value, "the panel is already given by its outline", report) && clean
	}
	return clean
}

// checkHoles reports holes that reach the outline, and holes that together cut
// a piece out.
func (s *Panel) checkHoles(report reporter) {
	panel, holes := planar.Region{s.figure()}, s.cutouts()
	if len(holes) == 0 {
		return
	}
	all, err := compare(panel, holes)
	if err != nil {
		report("/holes", "out_of_range", err.Error())
		return
	}
	for i, h := range holes {
		box := boxAbout(h)
		if !slices.ContainsFunc(all.beyond, func(p planar.Point) bool { return holds(box, p) }) {
			continue
		}
		if t, err := compare(panel, planar.Region{h}); err != nil || t.over {
			report("/holes/"+strconv.Itoa(i), "outside", fmt.Sprintf(
				"hole %d reaches the panel's outline or lies beyond it; move it, or cut it into the outline", i))
		}
	}
	groups, err := together(holes)
	if err != nil {
		report("/holes", "out_of_range", err.Error())
	}
	for _, g := range groups {
		if len(g) < 2 {
			continue
		}
		if free, err := cutsFree(chosen(holes, g)); err != nil || free {
			report("/holes/"+strconv.Itoa(g[0]), "inconsistent", fmt.Sprintf(
				"%s meet and cut a piece of the panel free, which falls out; give them as one hole", holeNames(g)))
		}
	}
}

// cutouts are the holes' exact forms.
func (s *Panel) cutouts() []planar.Outline {
	holes := make([]planar.Outline, len(s.Holes))
	for i, h := range s.PlacedHoles() {
		holes[i] = h.figure()
	}
	return holes
}

// chosen are some of the figures as one region: their union.
func chosen(figures []planar.Outline, numbers []int) planar.Region {
	var some planar.Region
	for _, i := range numbers {
		some = append(some, figures[i])
	}
	return some
}

// holeNames lists holes by number, the first of them where there are many.
func holeNames(numbers []int) string {
	const most = 8
	var names []string
	for _, i := range numbers[:min(len(numbers), most)] {
		names = append(names, "hole "+strconv.Itoa(i))
	}
	if more := len(numbers) - most; more > 0 {
		return strings.Join(names, ", ") + fmt.Sprintf(" and %d more", more)
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func (s *Panel) figure() planar.Outline {
	if len(s.Outline) > 0 {
		return straight(corners(s.Outline))
	}
	w, h := or(s.WidthM, 0), or(s.HeightM, 0)
	return roundedRectangle(w/2, h/2, w, h, or(s.CornerRadiusM, 0))
}

// Measure implements Shape. The faces are front, back when both sides are
// painted, and edges (outline and rims of holes) when the thickness is given.
// Where there is no face edges, front meets back, or Open on a one-sided panel.
func (s *Panel) Measure() Measurement {
	holes := s.cutouts()
	gross, line := extent(planar.Region{s.figure()})
	cut, rims := extent(holes)
	m := Measurement{Method: "flat panel from its dimensions, holes cut out", AccuracyPercent: accuracy(wayTaped)}
	terms := map[string]float64{"A": gross, "H": cut}
	m.face("front", gross-cut, "A−H", terms, "identity")
	behind := Open
	if s.Sides == 2 {
		behind = "back"
		m.face("back", gross-cut, "A−H", terms, "identity")
	}
	if s.ThicknessMM == nil {
		m.edge("front", behind, line+rims)
	} else {
		t := *s.ThicknessMM / 1000
		m.face("edges", (line+rims)*t, "(P+R)·t", map[string]float64{"P": line, "R": rims, "t": t}, "identity")
		m.edge("front", "edges", line+rims)
		m.edge("edges", behind, line+rims)
	}
	m.note("outline_and_rims_m", line+rims, "m", "P+R", map[string]float64{"P": line, "R": rims}, "identity")
	m.noteUnited(holes, cut)
	return m
}

// noteUnited says which holes overlap or touch, and what they come to as one.
func (m *Measurement) noteUnited(holes []planar.Outline, cut float64) {
	groups, err := together(holes)
	if err != nil || len(groups) == len(holes) {
		return // nothing to unite; a panel that Check passed makes no error
	}
	apart := 0.0
	for _, h := range holes {
		area, _ := extent(planar.Region{h})
		apart += area
	}
	m.note("holes_united_m2", cut, "m²", "A−O",
		map[string]float64{"A": apart, "O": apart - cut}, "identity (union of the holes; O is what they share, counted once)")
	for _, g := range groups {
		if len(g) > 1 {
			m.Warnings = append(m.Warnings, holeNames(g)+" overlap or touch: they are cut out as one, and its rim is the only edge there")
		}
	}
}
