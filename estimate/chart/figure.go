package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Bar is one bar of the histogram.
type Bar struct{ From, To, Share float64 }

// Point is one point of the S-curve.
type Point struct{ Value, Share float64 }

// Mark is a value that stands out: a percentile, or the single figure.
type Mark struct {
	Label string
	Value float64
	Plain bool // the single figure, drawn apart from the percentiles
}

// Figure is what is drawn.
type Figure struct {
	Title       string
	Description string // in words, for those who do not see the drawing
	Unit        string // beside the numbers of the axis: USD, h, L
	Bars        []Bar
	Curve       []Point
	Marks       []Mark
}

// The drawing's measures, in its own units.
const (
	width, height = 760.0, 430.0
	left, right   = 24.0, width - 58
	top, bottom   = 128.0, height - 62
)

// style is the look: quiet bars, one strong line, and colours that change with
// the reader's light or dark setting.
const style = `text{font-family:system-ui,"Segoe UI",Helvetica,Arial,sans-serif;font-size:13px;fill:#33414e}
.head{font-size:17px;font-weight:600;fill:#16222d}.mid{text-anchor:middle}.end{text-anchor:end}.mark{font-weight:600}
.faint{fill:#66737f}.grid{stroke:#d9dfe4;stroke-width:1}.base{stroke:#66737f;stroke-width:1.2}
.bar{fill:#9fc3c9}.bar.late{fill:#dccaa6}.curve{fill:none;stroke:#0f5c66;stroke-width:2.6;stroke-linejoin:round}
.at{stroke:#0f5c66;stroke-width:1.3;stroke-dasharray:3 4}.single{stroke:#a2431b;stroke-width:1.8}.named{fill:#a2431b}
@media (prefers-color-scheme:dark){text{fill:#c8d2da}.head{fill:#eef3f6}.faint{fill:#93a1ac}.grid{stroke:#33404b}.base{stroke:#93a1ac}
.bar{fill:#2f5f68}.bar.late{fill:#6a5a38}.curve{stroke:#7fd0da}.at{stroke:#7fd0da}.single{stroke:#f0a070}.named{fill:#f0a070}}
`

// SVG draws a figure. One without bars has nothing to draw but its words.
func (f Figure) SVG() []byte {
	c := &canvas{}
	fmt.Fprintf(&c.out, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="img" aria-labelledby="range-title range-words">`+"\n", point(width), point(height))
	fmt.Fprintf(&c.out, "<title id=\"range-title\">%s</title>\n<desc id=\"range-words\">%s</desc>\n<style>%s</style>\n", escape(f.Title), escape(f.Description), style)
	c.text(left, 34, "head", clip(f.Title, 78))
	if len(f.Bars) > 0 && len(f.Curve) > 0 {
		f.axes(c)
		f.bars(c)
		f.curve(c)
		f.marks(c)
	}
	c.out.WriteString("</svg>\n")
	return []byte(c.out.String())
}

// clip keeps a title inside the drawing; the whole of it is in its title element.
func clip(text string, most int) string {
	if letters := []rune(text); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return text
}

// bounds are the values at the left and the right edge: the bars', and the marks
// with some air.
func (f Figure) bounds() (low, high float64) {
	low, high = f.Bars[0].From, f.Bars[len(f.Bars)-1].To
	for _, m := range f.Marks {
		low, high = min(low, m.Value), max(high, m.Value)
	}
	air := (high - low) * 0.02
	if air == 0 {
		air = max(math.Abs(low)*0.05, 1)
	}
	return low - air, high + air
}

func (f Figure) x(value float64) float64 {
	low, high := f.bounds()
	return left + (right-left)*min(max((value-low)/(high-low), 0), 1)
}

func y(share float64) float64 { return bottom - (bottom-top)*share }

func (f Figure) axes(c *canvas) {
	for _, percent := range []float64{0, 20, 40, 60, 80, 100} {
		class := "grid"
		if percent == 0 {
			class = "base"
		}
		c.line(left, y(percent/100), right, y(percent/100), class)
		c.text(right+8, y(percent/100)+4, "faint", fmt.Sprintf("%g %%", percent))
	}
	low, high := f.bounds()
	steps := ticks(low, high, 6)
	step := 0.0
	if len(steps) > 1 {
		step = steps[1] - steps[0]
	}
	for _, v := range steps {
		c.line(f.x(v), bottom, f.x(v), bottom+5, "base")
		c.text(f.x(v), bottom+20, "mid", short(v, step))
	}
	c.text((left+right)/2, bottom+44, "mid faint", f.Unit)
	c.text(left, 56, "faint", "bars: how often a value came out · line: how likely it is to be enough")
}

// bars are scaled so that the highest takes two thirds of the height: their
// shares are read from the titles, the axis is the line's.
func (f Figure) bars(c *canvas) {
	most := 0.0
	for _, b := range f.Bars {
		most = max(most, b.Share)
	}
	single := math.Inf(1)
	for _, m := range f.Marks {
		if m.Plain {
			single = m.Value
		}
	}
	for _, b := range f.Bars {
		class := "bar"
		if (b.From+b.To)/2 > single {
			class = "bar late"
		}
		tall := (bottom - top) * 2 / 3 * b.Share / most
		wide := max(f.x(b.To)-f.x(b.From)-1, 1)
		step := b.To - b.From
		c.bar(f.x(b.From)+0.5, bottom-tall, wide, tall, class, fmt.Sprintf("%s to %s %s: %.1f %%", short(b.From, step), short(b.To, step), f.Unit, 100*b.Share))
	}
}

func (f Figure) curve(c *canvas) {
	points := make([][2]float64, len(f.Curve))
	for i, p := range f.Curve {
		points[i] = [2]float64{f.x(p.Value), y(p.Share)}
	}
	c.path(points, "curve")
}

// marks are named above the drawing, in rows, so that names of near values do not
// cover each other.
func (f Figure) marks(c *canvas) {
	marks := slices.Clone(f.Marks)
	slices.SortStableFunc(marks, func(a, b Mark) int { return cmp.Compare(a.Value, b.Value) })
	rows := []float64{-1e9, -1e9, -1e9}
	for _, m := range marks {
		x := f.x(m.Value)
		half := 3.7 * float64(len([]rune(m.Label)))
		at := min(max(x, left+half), width-8-half)
		row := 0
		for k, end := range rows {
			if at-half > end+10 {
				row = k
				break
			}
			if end < rows[row] {
				row = k
			}
		}
		rows[row] = at + half
		base := top - 10 - 17*float64(row)
		class, named := "at", "mid mark"
		if m.Plain {
			class, named = "single", "mid mark named"
		}
		c.line(x, base+5, x, bottom, class)
		c.text(at, base, named, m.Label)
	}
}
