package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/placing"
	"filmbuild/surfaces/planar"
)

// Placed is a marking at its place on a face.
type Placed struct {
	Name   string
	Figure marking.Figure
	Fix    placing.Fix
}

// MostPlaced is how many markings one sheet shows at most.
const MostPlaced = 200

// placed is a marking drawn at its place.
type placed struct {
	Placed
	passes []Pass
	box    planar.Box // of the lines at their place
	at     planar.Point
}

// Face draws all markings of one face at their places, seen from outside: a
// group for each marking with a group for each of its passes, the known points
// and edges with the distances to tape, the station lines, and a table of what
// to lay out, with the error of each place.
//
// The error is a surfaces.Faults for figures that their Check refuses, for no
// marking and for more than MostPlaced.
func Face(markings []Placed, look Look) ([]byte, error) {
	if n := len(markings); n == 0 || n > MostPlaced {
		return nil, surfaces.Faults{{Pointer: "", Code: "out_of_range", Detail: fmt.Sprintf("the sheet would show %d markings; it shows 1 to %d", n, MostPlaced)}}
	}
	d := &board{look: look}
	for _, m := range markings {
		if err := d.add(m); err != nil {
			return nil, err
		}
	}
	d.layout()
	d.put(`<rect id="sheet-base" x="`, rough(d.left-d.u(4)), `" y="`, rough(d.top-d.u(4)), `" width="`, rough(metre*d.world.Width()+d.u(8)), `" height="`, rough(metre*d.world.Height()+d.u(8)), `" fill="`, faint, "\"/>\n")
	for i := range d.all {
		d.figure(i)
	}
	d.references()
	title := look.Title
	if title == "" {
		title = "Placing sheet"
	}
	b := block{paper: &d.paper, left: d.u(6), right: d.width0 - d.u(6), y: d.bottom}
	b.open(lines(&d.paper, "title"))
	b.head(title, look)
	b.row(list([]string{"seen from outside, x to the right, y up", look.unit(), "scale 1:1"}))
	d.table(&b)
	b.row("± error is one standard deviation for the tape error said; worst is with every tape off by it.")
	b.row("Before the old paint comes off, check every place by one more measure and photograph it with the tape. After painting, lay the tapes out again from the same points.")
	if d.mixed() {
		b.row("Places are given in more than one way; they stand in one picture only if all count from the same origin.")
	}
	b.check()
	b.shut()
	height := b.y + d.u(7)
	d.frame(d.width0, height)
	return d.document(d.width0, height, title+", scale 1:1", d.said()), nil
}

// board is a face and what is on it.
type board struct {
	paper
	view
	look      Look
	all       []placed
	world     planar.Box
	left, top float64 // of the world on the sheet, mm
	width0    float64
	bottom    float64
	busy      []bounds // where there is something already
}

func (d *board) add(m Placed) error {
	passes, _, err := Passes(m.Figure)
	if err != nil {
		return err
	}
	to := m.Fix.Placement(boxOf(passes))
	var all planar.Region
	for i := range passes {
		for k, o := range passes[i].Lines {
			passes[i].Lines[k] = to.Outline(o)
		}
		all = append(all, passes[i].Lines...)
	}
	d.all = append(d.all, placed{m, passes, all.Box(), planar.Point{X: m.Fix.XM, Y: m.Fix.YM}})
	return nil
}

// layout finds the world that is shown, the size of the letters and the margins.
func (d *board) layout() {
	lo, hi := planar.Point{X: math.Inf(1), Y: math.Inf(1)}, planar.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	show := func(x, y float64) {
		lo, hi = planar.Point{X: min(lo.X, x), Y: min(lo.Y, y)}, planar.Point{X: max(hi.X, x), Y: max(hi.Y, y)}
	}
	for _, p := range d.all {
		show(p.box.Min.X, p.box.Min.Y)
		show(p.box.Max.X, p.box.Max.Y)
		show(p.at.X, p.at.Y)
		for _, m := range p.Fix.Measures {
			show(m.FromXM, m.FromYM)
		}
	}
	d.world = planar.Box{Min: lo, Max: hi}
	w, h := metre*d.world.Width(), metre*d.world.Height()
	d.h = textHeight(w, h)
	room := d.u(18)
	for _, m := range append(d.columns(), d.rows()...) {
		room = max(room, d.u(18)+d.width(m.text))
	}
	// Names of known points reach beyond the world at most by themselves.
	side := d.u(8)
	for _, p := range d.all {
		for _, m := range p.Fix.Measures {
			name := d.width(m.From)
			side = max(side, name-metre*(d.world.Max.X-m.FromXM)+d.u(8))
		}
		name := d.width(p.Name) / 2
		side = max(side, name-metre*(d.world.Max.X-(p.box.Min.X+p.box.Max.X)/2)+d.u(8))
	}
	d.left, d.top = room, d.u(13)+d.h*1.6
	d.width0 = max(d.left+w+side, 60*d.h, 150)
	d.left += max(0, d.width0-(d.left+w+side)) / 2
	d.view = view{d.left - metre*lo.X, d.top + metre*hi.Y}
	d.bottom = d.top + h + room
}

// columns and rows are the places of the anchors along x and y, each once.
func (d *board) columns() []mark {
	return d.marks(func(p placed) mark {
		text := d.look.tenth(p.at.X)
		if s := p.Fix.Station; s != nil {
			switch s.Face {
			case "left", "right":
				text = "STA " + d.look.tenth(s.StationM)
			default:
				text = "BL " + d.look.tenth(s.ButtLineM)
			}
		}
		return mark{d.x + metre*p.at.X, text}
	})
}

func (d *board) rows() []mark {
	return d.marks(func(p placed) mark {
		text := d.look.tenth(p.at.Y)
		if s := p.Fix.Station; s != nil {
			switch s.Face {
			case "left", "right":
				text = "WL " + d.look.tenth(s.WaterLineM)
			default:
				text = "STA " + d.look.tenth(s.StationM)
			}
		}
		return mark{d.y - metre*p.at.Y, text}
	})
}

func (d *board) marks(of func(placed) mark) []mark {
	var out []mark
	for _, p := range d.all {
		out = append(out, of(p))
	}
	slices.SortStableFunc(out, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
	return slices.CompactFunc(out, func(a, b mark) bool { return math.Abs(a.at-b.at) < 0.05 && a.text == b.text })
}

// figure draws one marking and its name.
func (d *board) figure(i int) {
	p := d.all[i]
	d.open(`id="` + fmt.Sprintf("marking-%d", i+1) + `" data-marking="` + escaped(p.Name) + `"`)
	for k, pass := range p.passes {
		d.open(fmt.Sprintf(`id="marking-%d-pass-%d" data-colour="%s" fill="%s" fill-rule="evenodd" stroke="%s" stroke-width="%s" stroke-linejoin="round"`,
			i+1, k+1, escaped(pass.Colour), fill(pass.Colour), ink, rough(d.u(0.18))))
		d.outlines(pass.Lines, d.view)
		d.shut()
	}
	d.shut()
	d.open(`font-family="sans-serif"`)
	x, _ := d.point(planar.Point{X: (p.box.Min.X + p.box.Max.X) / 2})
	_, y := d.point(planar.Point{Y: p.box.Max.Y})
	d.busy = append(d.busy, bounds{x - d.width(p.Name)/2, y - d.u(2) - d.h, x + d.width(p.Name)/2, y})
	left, top := d.point(planar.Point{X: p.box.Min.X, Y: p.box.Max.Y})
	right, bottom := d.point(planar.Point{X: p.box.Max.X, Y: p.box.Min.Y})
	d.busy = append(d.busy, bounds{left, top, right, bottom})
	d.text(x, y-d.u(2), p.Name, place{anchor: "middle", bold: true, halo: true})
	d.shut()
}

// mixed reports whether places are given by stations and otherwise, or by edges
// and by tapes.
func (d *board) mixed() bool {
	ways := map[string]bool{}
	for _, p := range d.all {
		ways[wayOf(p.Fix)] = true
	}
	return len(ways) > 1
}

func wayOf(f placing.Fix) string {
	switch {
	case f.Station != nil:
		return "station " + f.Station.Datum
	case len(f.Measures) > 0 && f.Measures[0].Edge:
		return "edges"
	}
	return "tapes"
}

func (d *board) said() string {
	var parts []string
	for _, p := range d.all {
		parts = append(parts, fmt.Sprintf("%s with its %s at x %s, y %s", p.Name, words(p.Fix.Anchor), d.look.tenth(p.at.X), d.look.tenth(p.at.Y)))
	}
	return "Markings at their places on one face, seen from outside: " + strings.Join(parts, "; ") + ". One user unit is 1 mm. Colours on the screen match no paint."
}

func words(name string) string { return strings.ReplaceAll(name, "_", " ") }
