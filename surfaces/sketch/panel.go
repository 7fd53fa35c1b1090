package sketch

import (
	"math"
	"slices"

	"filmbuild/surfaces"
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/spacing"
)

// plate is a panel on paper: kx and ky mm for each m, y up in the panel.
type plate struct {
	kx, ky    float64
	low, high [2]float64 // of the outline, m
}

func (p plate) at(x, y float64) point { return point{x * p.kx, -y * p.ky} }

// panel is a sheet with the lines round its holes, which are found once for all
// scales: those that overlap or touch are one hole.
type panel struct {
	*surfaces.Panel
	holes  []surfaces.Hole
	alone  map[int]bool
	united []planar.Outline
}

func newPanel(s *surfaces.Panel) panel {
	p := panel{Panel: s, holes: s.PlacedHoles(), alone: map[int]bool{}}
	alone, united := s.UnitedHoles()
	for _, i := range alone {
		p.alone[i] = true
	}
	p.united = united
	return p
}

// drawPanel shows a sheet from the front with the places of its holes from its
// lower left corner.
func drawPanel(d *drawing, s panel, marks int) {
	d.marks = marks
	d.views = "Flat sheet from the front, places from its lower left corner"
	p := plate{}
	if len(s.Outline) > 0 {
		p.low, p.high = extent(s.Outline)
		d.views = "Flat sheet from the front, places from the origin of its outline"
	} else {
		p.high = [2]float64{or(s.WidthM, 0), or(s.HeightM, 0)}
	}
	w, h := p.high[0]-p.low[0], p.high[1]-p.low[1]
	d.upTo(max(w, h, math.Abs(p.low[0]), math.Abs(p.high[0]), math.Abs(p.low[1]), math.Abs(p.high[1])))
	fx, fy := d.stretch(w), d.stretch(h)
	if fx != 1 || fy != 1 {
		d.note("Width and height differ in scale.")
	}
	p.kx, p.ky = d.k*fx, d.k*fy
	d.drawMain(outline, d.plateOutline(s.Panel, p))
	b := bounds{p.at(p.low[0], p.high[1]), p.at(p.high[0], p.low[1])}
	groups := d.holes(s, p)
	d.holePlaces(s.Panel, p, b)
	d.level(b.low, point{b.high.x, b.low.y}, b.low.y-firstDimension, plain("width", w).unless(fx != 1))
	d.upright(point{b.high.x, b.low.y}, b.high, b.high.x+firstDimension, plain("height", h).unless(fy != 1))
	d.panelFaces(s.Panel, p, b)
	d.holeList(s.Panel, groups, point{b.high.x + firstDimension + 8, b.low.y + capital})
}

func (d *drawing) plateOutline(s *surfaces.Panel, p plate) *path {
	if len(s.Outline) == 0 {
		r := or(s.CornerRadiusM, 0)
		return d.path().rectangle(bounds{p.at(p.low[0], p.high[1]), p.at(p.high[0], p.low[1])}, r*p.kx, r*p.ky)
	}
	return d.path().polygon(p.points(s.Outline)).close()
}

func (p plate) points(outline [][2]float64) []point {
	points := make([]point, len(outline))
	for i, q := range outline {
		points[i] = p.at(q[0], q[1])
	}
	return points
}

func extent(outline [][2]float64) (low, high [2]float64) {
	low, high = outline[0], outline[0]
	for _, q := range outline {
		for k := range q {
			low[k], high[k] = min(low[k], q[k]), max(high[k], q[k])
		}
	}
	return low, high
}

// holePlaces writes the places of holes, and of the corners of an outline, from
// the origin: across in a row below, up in a column at the left.
func (d *drawing) holePlaces(s *surfaces.Panel, p plate, b bounds) {
	var across, up []float64
	for _, h := range s.PlacedHoles() {
		c := holeCentre(h)
		across, up = append(across, c[0]), append(up, c[1])
	}
	for _, q := range s.Outline {
		across, up = append(across, q[0]), append(up, q[1])
	}
	if len(across) == 0 {
		return
	}
	const same = 0.5 // mm on paper
	var marks []mark
	for _, x := range distinct(across, same/p.kx) {
		marks = append(marks, mark{p.at(x, 0).x, b.high.y, []string{d.text(plain("at x", x))}})
	}
	d.rows([]string{"x"}, marks, b.high.y, false)
	var heights []callout
	for _, y := range distinct(up, same/p.ky) {
		heights = append(heights, callout{at: p.at(0, y).y, text: lettering{text: d.text(plain("at y", y)), class: dimensionText}})
	}
	d.ladder(heights, b)
}

// distinct sorts values and drops those that repeat another one.
func distinct(values []float64, same float64) []float64 {
	values = slices.Clone(values)
	slices.Sort(values)
	return slices.CompactFunc(values, func(a, b float64) bool { return math.Abs(a-b) <= same })
}

// ladder writes heights in a column left of a box, each joined to its place.
func (d *drawing) ladder(list []callout, b bounds) {
	most := d.marks / 2
	if len(list) > most {
		d.sparse = true
		d.note(leftOut)
		kept := make([]callout, most)
		for i := range kept {
			kept[i] = list[i*(len(list)-1)/(most-1)]
		}
		list = kept
	}
	slices.SortStableFunc(list, func(a, b callout) int { return compare(a.at, b.at) })
	want := make([]float64, len(list))
	for i, c := range list {
		want[i] = c.at
	}
	x := b.low.x - rowStart
	placed := spacing.Spread(want, markPitch)
	lift := max(0, placed[len(placed)-1]-b.high.y) // the row below begins there
	for i, y := range placed {
		y -= lift
		d.draw(thin, d.path().move(point{b.low.x - 1, want[i]}).line(point{b.low.x - 2, want[i]}).line(point{x + 2, y}).line(point{x, y}))
		d.left(list[i].text, point{x - 0.8, y + capital/2})
		if i == 0 {
			d.write(lettering{text: "y", class: noteText}, point{x - 2, y - lineSpace + capital/2})
		}
	}
}

// panelFaces names the faces on the sheet, where there is room between the
// holes, or above it.
func (d *drawing) panelFaces(s *surfaces.Panel, p plate, b bounds) {
	l := d.face("front")
	if s.Sides == 2 {
		d.face("back")
		l.text, l.face = "front, back", ""
	}
	if at, ok := d.clearPlace(s, p, b, l); ok {
		d.write(l, at)
		return
	}
	d.write(l, d.raised(l, point{b.middle().x, b.low.y - 3}))
}

// clearPlace finds a place for letters on the sheet that no hole, no other
// letter and no edge comes near.
func (d *drawing) clearPlace(s *surfaces.Panel, p plate, b bounds, l lettering) (point, bool) {
	const rows, columns = 7, 5
	var occupied []bounds
	for _, h := range s.PlacedHoles() {
		low, high := holeExtent(h)
		occupied = append(occupied, bounds{p.at(low[0], high[1]).plus(-1, -1), p.at(high[0], low[1]).plus(1, 1)})
	}
	for _, i := range []int{3, 2, 4, 1, 5, 0, 6} {
	next:
		for _, j := range []int{2, 1, 3, 0, 4} {
			at := point{b.low.x + b.width()*(float64(j)+0.5)/columns, b.low.y + b.height()*(float64(i)+0.5)/rows + capital/2}
			box := l.box(at)
			for _, o := range occupied {
				if box.meets(o) {
					continue next
				}
			}
			corners := []point{box.low.plus(-1.5, -1), box.high.plus(1.5, 1), {box.low.x - 1.5, box.high.y + 1}, {box.high.x + 1.5, box.low.y - 1}, box.middle()}
			for _, c := range corners {
				if !d.onSheet(s, p, b, c) {
					continue next
				}
			}
			if d.free(l, at) {
				return at, true
			}
		}
	}
	return point{}, false
}

// onSheet says whether a point lies inside the panel's outline.
func (d *drawing) onSheet(s *surfaces.Panel, p plate, b bounds, q point) bool {
	if len(s.Outline) == 0 {
		return q.x > b.low.x && q.x < b.high.x && q.y > b.low.y && q.y < b.high.y
	}
	inside := false
	points := p.points(s.Outline)
	for i, a := range points {
		c := points[(i+1)%len(points)]
		if (a.y > q.y) != (c.y > q.y) && q.x < a.x+(c.x-a.x)*(q.y-a.y)/(c.y-a.y) {
			inside = !inside
		}
	}
	return inside
}
