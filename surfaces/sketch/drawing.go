package sketch

import "math"

// point is a place on the sheet, in mm; y runs down.
type point struct{ x, y float64 }

func (p point) plus(dx, dy float64) point { return point{p.x + dx, p.y + dy} }

// bounds is an upright box on the sheet, in mm.
type bounds struct{ low, high point }

// nowhere contains no point.
func nowhere() bounds {
	return bounds{point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}}
}

func (b *bounds) add(p point) {
	b.low = point{min(b.low.x, p.x), min(b.low.y, p.y)}
	b.high = point{max(b.high.x, p.x), max(b.high.y, p.y)}
}

func (b *bounds) join(c bounds) {
	if c.low.x <= c.high.x {
		b.add(c.low)
		b.add(c.high)
	}
}

func (b bounds) width() float64  { return b.high.x - b.low.x }
func (b bounds) height() float64 { return b.high.y - b.low.y }
func (b bounds) middle() point   { return point{(b.low.x + b.high.x) / 2, (b.low.y + b.high.y) / 2} }

func (b bounds) meets(c bounds) bool {
	return b.low.x < c.high.x && c.low.x < b.high.x && b.low.y < c.high.y && c.low.y < b.high.y
}

// drawing collects what is drawn of one shape at one scale. A figure draws
// about an origin of its own; the sheet then finds the place for it.
type drawing struct {
	lengths
	scale
	k       float64 // mm on paper for each m
	at      point   // where the figure's origin lies on the sheet
	trial   bool    // only the space that is taken counts, nothing is written
	taken   bounds
	part    bounds   // what is taken by the part alone
	texts   []bounds // where there are letters already
	rules   []bounds // dimension and extension lines
	lines   []byte
	fills   []byte
	words   []byte
	views   string   // what is shown, in words
	spoken  []string // the dimensions in words
	faces   []string
	notes   []string
	marks   int  // most places in a row
	sparse  bool // places were left out of a row
	abreast bool // dimensions stand beside each other
}

func (d *drawing) note(text string) {
	for _, n := range d.notes {
		if n == text {
			return
		}
	}
	d.notes = append(d.notes, text)
}

// stretch returns what to multiply an extent by, in m, so that it can be seen:
// 1 unless it would be less than 1 mm on paper.
func (d *drawing) stretch(extent float64) float64 {
	const least, seen = 1, 10 // mm on paper
	if extent <= 0 || extent*d.k >= least {
		return 1
	}
	return seen / (extent * d.k)
}

// shortened returns how much of a length is drawn, in the unit of both. A part
// more than 25 times as long as it is thick is broken.
func shortened(length, thick float64) (shown float64, broken bool) {
	if length <= 25*thick {
		return length, false
	}
	return 6 * thick, true
}
