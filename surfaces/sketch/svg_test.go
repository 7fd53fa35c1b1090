package sketch

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// picture is a sketch read back.
type picture struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Scale   string `xml:"data-scale,attr"`
	Title   string `xml:"title"`
	Desc    string `xml:"desc"`
	Groups  []struct {
		Paths []pathElement `xml:"path"`
		Texts []textElement `xml:"text"`
	} `xml:"g"`
}

type pathElement struct {
	ID    string `xml:"id,attr"`
	Class string `xml:"class,attr"`
	Width string `xml:"stroke-width,attr"`
	D     string `xml:"d,attr"`
}

type textElement struct {
	Class      string  `xml:"class,attr"`
	X          float64 `xml:"x,attr"`
	Y          float64 `xml:"y,attr"`
	Transform  string  `xml:"transform,attr"`
	Anchor     string  `xml:"text-anchor,attr"`
	Face       string  `xml:"data-face,attr"`
	Decoration string  `xml:"text-decoration,attr"`
	Text       string  `xml:",chardata"`
}

func readBack(t require.TestingT, svg []byte) picture {
	var p picture
	require.NoError(t, xml.Unmarshal(svg, &p))
	return p
}

func (p picture) paths() []pathElement {
	var list []pathElement
	for _, g := range p.Groups {
		list = append(list, g.Paths...)
	}
	return list
}

func (p picture) texts() []textElement {
	var list []textElement
	for _, g := range p.Groups {
		list = append(list, g.Texts...)
	}
	return list
}

func (p picture) says(text string) bool {
	for _, e := range p.texts() {
		if strings.Contains(e.Text, text) {
			return true
		}
	}
	return false
}

// main returns the main outline.
func (p picture) main(t require.TestingT, prefix string) [][]point {
	for _, e := range p.paths() {
		if e.ID == prefix+"outline" {
			return trace(t, e.D)
		}
	}
	require.Fail(t, "there is no main outline")
	return nil
}

// perMetre reads the scale: mm on paper for each m.
func (p picture) perMetre(t require.TestingT) float64 {
	a, b, found := strings.Cut(p.Scale, ":")
	require.True(t, found, p.Scale)
	paper, err := strconv.ParseFloat(a, 64)
	require.NoError(t, err)
	real, err := strconv.ParseFloat(b, 64)
	require.NoError(t, err)
	return 1000 * paper / real
}

// box is where a text stands, going by estimated widths of its letters.
func (e textElement) box() bounds {
	l := lettering{text: e.Text, upright: strings.HasPrefix(e.Transform, "rotate(-90 ")}
	q, half := point{e.X, e.Y}, textWidth(e.Text)/2
	switch {
	case e.Anchor == "start" && l.upright:
		q.y -= half
	case e.Anchor == "end" && l.upright:
		q.y += half
	case e.Anchor == "start":
		q.x += half
	case e.Anchor == "end":
		q.x -= half
	}
	return l.box(q)
}

// trace turns a path into polylines, arcs into 64 pieces each.
func trace(t require.TestingT, d string) [][]point {
	fields := strings.Fields(strings.NewReplacer("M", " M ", "L", " L ", "A", " A ", "Z", " Z ").Replace(d))
	var lines [][]point
	number := func() float64 {
		require.NotEmpty(t, fields, d)
		v, err := strconv.ParseFloat(fields[0], 64)
		require.NoError(t, err, d)
		require.False(t, math.IsNaN(v) || math.IsInf(v, 0), d)
		fields = fields[1:]
		return v
	}
	for len(fields) > 0 {
		command := fields[0]
		fields = fields[1:]
		last := len(lines) - 1
		switch command {
		case "M":
			lines = append(lines, []point{{number(), number()}})
		case "L":
			lines[last] = append(lines[last], point{number(), number()})
		case "A":
			rx, ry := number(), number()
			require.Zero(t, number(), "rotation")
			require.Zero(t, number(), "large arc")
			clockwise := number() == 1
			from := lines[last][len(lines[last])-1]
			lines[last] = append(lines[last], arcPoints(from, point{number(), number()}, rx, ry, clockwise)...)
		case "Z":
			lines[last] = append(lines[last], lines[last][0])
		default:
			require.Fail(t, "unknown command", "%s in %s", command, d)
		}
	}
	return lines
}

// arcPoints finds the centre of an arc of at most half a turn and follows it.
//
// Source: SVG 1.1 appendix F.6.5 and F.6.6 (from memory), for no rotation.
func arcPoints(a, b point, rx, ry float64, clockwise bool) []point {
	if rx == 0 || ry == 0 {
		return []point{b}
	}
	hx, hy := (a.x-b.x)/2/rx, (a.y-b.y)/2/ry
	square := hx*hx + hy*hy
	if square > 1 { // rounding: the ends are a little too far apart
		grow := math.Sqrt(square)
		rx, ry, hx, hy, square = rx*grow, ry*grow, hx/grow, hy/grow, 1
	}
	if square == 0 {
		return []point{b}
	}
	f := math.Sqrt(max(0, (1-square)/square))
	if !clockwise {
		f = -f
	}
	cx, cy := f*hy, -f*hx
	from := math.Atan2(hy-cy, hx-cx)
	to := math.Atan2(-hy-cy, -hx-cx)
	if clockwise && to < from {
		to += 2 * math.Pi
	} else if !clockwise && to > from {
		to -= 2 * math.Pi
	}
	c := point{(a.x+b.x)/2 + cx*rx, (a.y+b.y)/2 + cy*ry}
	var points []point
	const steps = 64
	for i := 1; i < steps; i++ {
		points = append(points, onOval(c, rx, ry, from+(to-from)*float64(i)/steps))
	}
	return append(points, b)
}

func boxOf(lines [][]point) bounds {
	b := nowhere()
	for _, l := range lines {
		for _, q := range l {
			b.add(q)
		}
	}
	return b
}

func lengthOf(lines [][]point) float64 {
	sum := 0.0
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			sum += math.Hypot(l[i].x-l[i-1].x, l[i].y-l[i-1].y)
		}
	}
	return sum
}

// turned returns the area of an outline turned about its level middle axis;
// both halves are drawn, so that each counts half.
func turned(lines [][]point) float64 {
	axis, sum := boxOf(lines).middle().y, 0.0
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			a, b := l[i-1].plus(0, -axis), l[i].plus(0, -axis)
			long := math.Hypot(b.x-a.x, b.y-a.y)
			mean := math.Abs(a.y+b.y) / 2
			if a.y*b.y < 0 { // crosses the axis
				mean = (a.y*a.y + b.y*b.y) / (2 * math.Abs(b.y-a.y))
			}
			sum += 2 * math.Pi * mean * long / 2
		}
	}
	return sum
}

func TestArcsAreReadBackAsDrawn(t *testing.T) {
	d := newDrawing(scale{1, 1}, SI)
	way := d.path().move(point{50, 30}).arc(point{30, 30}, 20, 10, 0, -2.2)
	lines := trace(t, string(way.text))
	for _, q := range lines[0] {
		onIt := math.Hypot((q.x-30)/20, (q.y-30)/10)
		require.InDelta(t, 1, onIt, 2e-3)
		require.LessOrEqual(t, q.y, 30.01, "the arc goes up")
	}
	require.InDelta(t, 2*math.Pi*7, lengthOf(trace(t, string(d.path().oval(point{60, 60}, 7, 7).text))), 0.02) // identity
}
