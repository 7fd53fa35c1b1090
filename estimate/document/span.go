package document

import (
	"fmt"

	"filmbuild/estimate"
	"filmbuild/estimate/risk"
)

// span prints the range of the total: in words, as a curve, and what makes it
// wide.
func (p *paper) span(e *estimate.Estimate) {
	r := e.Range
	p.Ln(2)
	p.text(fmt.Sprintf("In %d trials the total is %s %s or less in half, %s or less in eight of ten, and %s or less in nine of ten. The single figure of %s is enough in %.0f of 100.",
		r.Trials, e.Currency, grouped(r.Total.P50), grouped(r.Total.P80), grouped(r.Total.P90), grouped(r.SingleFigure), 100*r.Holds))
	p.Ln(1)
	p.curve(r, e.Currency)
	if len(r.Drivers) == 0 {
		return
	}
	var rows [][]string
	for i, d := range r.Drivers {
		if i == 8 {
			break
		}
		rows = append(rows, []string{d.Name, fmt.Sprintf("%.0f %%", 100*d.Share)})
	}
	p.table([]column{{"What makes the total uncertain", 80, "L"}, {"Share", 20, "R"}}, rows)
}

const (
	curveHigh = 44.0 // mm
	curveFoot = 9.0
)

// curve draws how likely each total is to be enough, over the histogram.
func (p *paper) curve(r *estimate.Range, currency string) {
	if len(r.SCurve) < 2 || r.SCurve[len(r.SCurve)-1].Value <= r.SCurve[0].Value {
		return
	}
	p.room(curveHigh + curveFoot + 6)
	low, high := r.SCurve[0].Value, r.SCurve[len(r.SCurve)-1].Value
	wide, y0 := p.width-14, p.GetY()+curveHigh
	x := func(value float64) float64 { return margin + wide*(value-low)/(high-low) }
	y := func(share float64) float64 { return y0 - (curveHigh-4)*share }
	p.bars(r.Histogram, x, y0)
	p.stroke(rule(), 0.15)
	p.face("", smallSize-1, muted())
	for _, share := range []float64{0, 0.25, 0.5, 0.75, 1} {
		p.Line(margin, y(share), margin+wide, y(share))
		p.Text(margin+wide+2, y(share)+1, fmt.Sprintf("%.0f %%", 100*share))
	}
	p.stroke(accent(), 0.6)
	for i := 1; i < len(r.SCurve); i++ {
		a, b := r.SCurve[i-1], r.SCurve[i]
		p.Line(x(a.Value), y(a.Share), x(b.Value), y(b.Share))
	}
	for _, m := range []struct {
		name  string
		value float64
		share float64
	}{{"P10", r.Total.P10.Float64(), 0.1}, {"P50", r.Total.P50.Float64(), 0.5}, {"P80", r.Total.P80.Float64(), 0.8}} {
		p.stroke(accent(), 0.2)
		p.Line(x(m.value), y(m.share), x(m.value), y0)
		p.face("B", smallSize-1, accent())
		p.Text(x(m.value)-3, y0+3.6, m.name)
	}
	single := r.SingleFigure.Float64()
	if single >= low && single <= high {
		p.stroke(alarm(), 0.3)
		p.Line(x(single), y(1), x(single), y0)
		p.face("", smallSize-1, alarm())
		p.Text(x(single)+1, y(1)+3, "single figure")
	}
	p.face("", smallSize-1, muted())
	p.Text(margin, y0+7.4, fmt.Sprintf("%.0f", low))
	end := fmt.Sprintf("%.0f %s", high, currency)
	p.Text(margin+wide-p.GetStringWidth(end), y0+7.4, end)
	p.SetXY(margin, y0+curveFoot+1)
}

// bars draws the histogram under the curve, the tallest bar at half its height.
func (p *paper) bars(bins []risk.Bin, x func(float64) float64, y0 float64) {
	tallest := 0.0
	for _, b := range bins {
		tallest = max(tallest, b.Share)
	}
	if tallest == 0 {
		return
	}
	c := ground()
	p.SetFillColor(c.r, c.g, c.b)
	for _, b := range bins {
		high := (curveHigh - 4) * 0.5 * b.Share / tallest
		from, to := max(x(b.From), margin), min(x(b.To), margin+p.width-14)
		if to > from {
			p.Rect(from, y0-high, to-from, high, "F")
		}
	}
}
