package document

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// drawing is one of our own sketches, read back from its SVG: paths of lines and
// arcs, and texts. Only what package sketch writes is understood.
type drawing struct {
	Box    string         `xml:"viewBox,attr"`
	Title  string         `xml:"title"`
	Groups []drawingGroup `xml:"g"`
}

type drawingGroup struct {
	Fill   string        `xml:"fill,attr"`
	Size   float64       `xml:"font-size,attr"`
	Anchor string        `xml:"text-anchor,attr"`
	Paths  []drawingPath `xml:"path"`
	Texts  []drawingText `xml:"text"`
}

type drawingPath struct {
	Data  string  `xml:"d,attr"`
	Width float64 `xml:"stroke-width,attr"`
	Dash  string  `xml:"stroke-dasharray,attr"`
}

type drawingText struct {
	X      float64 `xml:"x,attr"`
	Y      float64 `xml:"y,attr"`
	Anchor string  `xml:"text-anchor,attr"`
	Style  string  `xml:"font-style,attr"`
	Turn   string  `xml:"transform,attr"`
	Words  string  `xml:",chardata"`
}

// readDrawing reads the SVG of a sketch and its size.
func readDrawing(svg string) (d drawing, width, height float64, err error) {
	if err = xml.Unmarshal([]byte(svg), &d); err != nil {
		return d, 0, 0, err
	}
	box := numbers(d.Box)
	if len(box) != 4 || box[2] <= 0 || box[3] <= 0 {
		return d, 0, 0, fmt.Errorf("a sketch has no size")
	}
	return d, box[2], box[3], nil
}

func numbers(text string) []float64 {
	var list []float64
	for _, field := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == '(' || r == ')' }) {
		if x, err := strconv.ParseFloat(field, 64); err == nil {
			list = append(list, x)
		}
	}
	return list
}

// sketch draws an SVG into a box of a width at a place.
func (p *paper) sketch(svg string, x, y, width float64) error {
	d, wide, _, err := readDrawing(svg)
	if err != nil {
		return err
	}
	k := width / wide
	at := func(px, py float64) (float64, float64) { return x + px*k, y + py*k }
	c := ink()
	for _, g := range d.Groups {
		for _, path := range g.Paths {
			p.SetDrawColor(c.r, c.g, c.b)
			p.SetFillColor(c.r, c.g, c.b)
			p.SetLineWidth(math.Max(0.08, path.Width*k))
			if dash := numbers(path.Dash); len(dash) > 0 {
				for i := range dash {
					dash[i] *= k
				}
				p.SetDashPattern(dash, 0)
			}
			filled := g.Fill != "" && g.Fill != "none"
			p.path(path.Data, at, filled)
			p.SetDashPattern(nil, 0)
		}
		for _, t := range g.Texts {
			p.words(t, g, at, k)
		}
	}
	return nil
}

// path draws path data of M, L, A and Z in absolute coordinates. Arcs are drawn
// as chords so short that the eye cannot tell.
func (p *paper) path(data string, at func(x, y float64) (float64, float64), filled bool) {
	var from [2]float64
	began := false
	for _, c := range commands(data) {
		n := c.numbers
		switch {
		case c.letter == 'M' && len(n) == 2:
			p.MoveTo(at(n[0], n[1]))
			from, began = [2]float64{n[0], n[1]}, true
		case c.letter == 'L' && len(n) == 2 && began:
			p.LineTo(at(n[0], n[1]))
			from = [2]float64{n[0], n[1]}
		case c.letter == 'A' && len(n) == 7 && began:
			for _, q := range arc(from, n) {
				p.LineTo(at(q[0], q[1]))
			}
			from = [2]float64{n[5], n[6]}
		case c.letter == 'Z' && began:
			p.ClosePath()
		}
	}
	if !began {
		return
	}
	if filled {
		p.DrawPath("F")
		return
	}
	p.DrawPath("D")
}

type command struct {
	letter  byte
	numbers []float64
}

func commands(data string) []command {
	var list []command
	start := -1
	flush := func(end int) {
		if start >= 0 {
			list = append(list, command{data[start], numbers(strings.ReplaceAll(data[start+1:end], "-", " -"))})
		}
	}
	for i := range len(data) {
		if c := data[i]; c >= 'A' && c <= 'Z' {
			flush(i)
			start = i
		}
	}
	flush(len(data))
	return list
}

// arc gives points along an elliptical arc, by its centre.
//
// Source: SVG 1.1 (second edition), appendix F.6.5.
func arc(from [2]float64, n []float64) [][2]float64 {
	rx, ry, turn, large, sweep, x2, y2 := math.Abs(n[0]), math.Abs(n[1]), n[2]*math.Pi/180, n[3] != 0, n[4] != 0, n[5], n[6]
	if rx == 0 || ry == 0 {
		return [][2]float64{{x2, y2}}
	}
	sin, cos := math.Sincos(turn)
	dx, dy := (from[0]-x2)/2, (from[1]-y2)/2
	x, y := cos*dx+sin*dy, -sin*dx+cos*dy
	if short := x*x/(rx*rx) + y*y/(ry*ry); short > 1 {
		rx, ry = rx*math.Sqrt(short), ry*math.Sqrt(short)
	}
	root := math.Sqrt(math.Max(0, (rx*rx*ry*ry-rx*rx*y*y-ry*ry*x*x)/(rx*rx*y*y+ry*ry*x*x)))
	if large == sweep {
		root = -root
	}
	cx, cy := root*rx*y/ry, -root*ry*x/rx
	from1, to1 := math.Atan2((y-cy)/ry, (x-cx)/rx), math.Atan2((-y-cy)/ry, (-x-cx)/rx)
	span := to1 - from1
	switch {
	case sweep && span < 0:
		span += 2 * math.Pi
	case !sweep && span > 0:
		span -= 2 * math.Pi
	}
	mx, my := cos*cx-sin*cy+(from[0]+x2)/2, sin*cx+cos*cy+(from[1]+y2)/2
	steps := int(math.Ceil(math.Abs(span)/(math.Pi/60))) + 1
	points := make([][2]float64, steps)
	for i := range points {
		a := from1 + span*float64(i+1)/float64(steps)
		s, c := math.Sincos(a)
		points[i] = [2]float64{cos*rx*c - sin*ry*s + mx, sin*rx*c + cos*ry*s + my}
	}
	points[steps-1] = [2]float64{x2, y2}
	return points
}

const pointsPerMM = 72 / 25.4

func (p *paper) words(t drawingText, g drawingGroup, at func(x, y float64) (float64, float64), k float64) {
	style := ""
	if t.Style == "italic" {
		style = "I"
	}
	size := g.Size
	if size == 0 {
		size = 5
	}
	p.face(style, math.Max(4, size*k*pointsPerMM), ink())
	anchor := t.Anchor
	if anchor == "" {
		anchor = g.Anchor
	}
	text := shown(t.Words)
	width := p.GetStringWidth(text)
	x, y := at(t.X, t.Y)
	shift := map[string]float64{"middle": width / 2, "end": width}[anchor]
	turn := numbers(strings.TrimPrefix(t.Turn, "rotate"))
	if len(turn) == 3 {
		cx, cy := at(turn[1], turn[2])
		p.TransformBegin()
		p.TransformRotate(-turn[0], cx, cy)
		p.Text(x-shift, y, text)
		p.TransformEnd()
		return
	}
	p.Text(x-shift, y, text)
}
