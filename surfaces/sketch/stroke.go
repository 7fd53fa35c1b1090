package sketch

import (
	"math"
	"strconv"
)

// pen is a kind of line. Wide lines are twice as wide as narrow ones.
type pen int

const (
	outline   pen = iota // what is seen of the part from outside
	edge                 // lines within the outline, and sections drawn in their place
	thin                 // dimension, extension and leader lines
	centre               // axes
	imaginary            // an outline that stands for an unknown one
)

// attributes are written out on every line, since a page's policy may forbid
// style sheets of the picture's own. Widths are those of ISO 128-20.
func (p pen) attributes() string {
	switch p {
	case outline:
		return `class="sketch-outline" stroke-width="0.7"`
	case edge:
		return `class="sketch-edge" stroke-width="0.5"`
	case centre:
		return `class="sketch-centre" stroke-width="0.35" stroke-dasharray="6 1.2 0.6 1.2"`
	case imaginary:
		return `class="sketch-imaginary" stroke-width="0.7" stroke-dasharray="4 2"`
	}
	return `class="sketch-thin" stroke-width="0.35"`
}

// line draws a straight line.
func (d *drawing) line(p pen, a, b point) {
	d.draw(p, d.path().move(a).line(b))
}

// circle draws a whole circle.
func (d *drawing) circle(p pen, c point, radius float64) {
	d.draw(p, d.path().oval(c, radius, radius))
}

// draw puts a path on the drawing.
func (d *drawing) draw(p pen, way *path) { d.drawNamed(p, way, "") }

// drawMain puts the outline of the main view on the drawing: the element that
// carries an id, by which it can be measured.
func (d *drawing) drawMain(p pen, way *path) { d.drawNamed(p, way, mainOutline) }

// mainOutline stands for the id of the main view's outline until the document
// puts the caller's prefix before it.
const mainOutline = ` id="` + "\x00" + `outline"`

func (d *drawing) drawNamed(p pen, way *path, id string) {
	d.taken.join(way.box)
	if p == outline || p == imaginary {
		d.part.join(way.box)
	}
	if d.trial {
		return
	}
	d.lines = append(d.lines, "<path"+id+" "+p.attributes()+` d="`...)
	d.lines = append(d.lines, way.text...)
	d.lines = append(d.lines, "\"/>\n"...)
}

// path is a line under the pen, in SVG's path language.
type path struct {
	silent bool // only its box counts
	origin point
	text   []byte
	box    bounds
}

func (d *drawing) path() *path { return &path{silent: d.trial, origin: d.at, box: nowhere()} }

func (w *path) to(command byte, q point) *path {
	if !w.silent {
		w.text = append(w.text, command)
		w.put(q)
	}
	w.box.add(q)
	return w
}

func (w *path) put(q point) {
	w.text = appendNumber(w.text, q.x+w.origin.x)
	w.text = append(w.text, ' ')
	w.text = appendNumber(w.text, q.y+w.origin.y)
}

func (w *path) move(q point) *path { return w.to('M', q) }
func (w *path) line(q point) *path { return w.to('L', q) }

func (w *path) close() *path {
	w.text = append(w.text, 'Z')
	return w
}

// polygon goes through all points, from the first one on.
func (w *path) polygon(points []point) *path {
	for i, q := range points {
		if i == 0 {
			w.move(q)
		} else {
			w.line(q)
		}
	}
	return w
}

// arc goes on along an ellipse from the angle it stands at to another one, less
// than a full turn away. Angles are in radians from the x axis towards y, which
// is down: clockwise as seen.
func (w *path) arc(c point, rx, ry, from, to float64) *path {
	const flat, steps = 0.2, 12
	if min(rx, ry) < flat { // the rounding of its radii would count
		for i := 1; i <= steps; i++ {
			w.line(onOval(c, rx, ry, from+(to-from)*float64(i)/steps))
		}
		return w
	}
	// Near half a turn the rounding of the ends would move the centre far.
	if math.Abs(to-from) > 1.6 {
		return w.arc(c, rx, ry, from, (from+to)/2).arc(c, rx, ry, (from+to)/2, to)
	}
	for k := math.Ceil(min(from, to) / (math.Pi / 2)); k*math.Pi/2 < max(from, to); k++ {
		w.box.add(onOval(c, rx, ry, k*math.Pi/2))
	}
	q := onOval(c, rx, ry, to)
	w.box.add(q)
	if w.silent {
		return w
	}
	w.text = append(w.text, 'A')
	w.text = appendNumber(w.text, rx)
	w.text = append(w.text, ' ')
	w.text = appendNumber(w.text, ry)
	if to > from {
		w.text = append(w.text, " 0 0 1 "...)
	} else {
		w.text = append(w.text, " 0 0 0 "...)
	}
	w.put(q)
	return w
}

// oval goes once round an ellipse.
func (w *path) oval(c point, rx, ry float64) *path {
	return w.move(onOval(c, rx, ry, 0)).arc(c, rx, ry, 0, math.Pi).arc(c, rx, ry, math.Pi, 2*math.Pi).close()
}

// rectangle goes once round a rectangle with corners rounded by rx and ry.
func (w *path) rectangle(b bounds, rx, ry float64) *path {
	const quarter = math.Pi / 2
	w.move(b.low.plus(rx, 0)).line(point{b.high.x - rx, b.low.y})
	w.corner(point{b.high.x - rx, b.low.y + ry}, rx, ry, -quarter)
	w.line(point{b.high.x, b.high.y - ry})
	w.corner(point{b.high.x - rx, b.high.y - ry}, rx, ry, 0)
	w.line(point{b.low.x + rx, b.high.y})
	w.corner(point{b.low.x + rx, b.high.y - ry}, rx, ry, quarter)
	w.line(point{b.low.x, b.low.y + ry})
	w.corner(point{b.low.x + rx, b.low.y + ry}, rx, ry, 2*quarter)
	return w.close()
}

func (w *path) corner(c point, rx, ry, from float64) {
	if rx > 0 && ry > 0 {
		w.arc(c, rx, ry, from, from+math.Pi/2)
	}
}

func onOval(c point, rx, ry, angle float64) point {
	sin, cos := math.Sincos(angle)
	return point{c.x + rx*cos, c.y + ry*sin}
}

// appendNumber writes a number of mm to a thousandth: less would bend flat arcs.
func appendNumber(text []byte, value float64) []byte {
	return strconv.AppendFloat(text, math.Round(value*1000)/1000+0, 'f', -1, 64)
}
