package report

import (
	"errors"
	"fmt"

	"filmbuild/estimate"
	"filmbuild/estimate/chart"
	"filmbuild/estimate/money"
)

// ErrNoRange says that an estimate has no range to draw.
var ErrNoRange = errors.New("the estimate has no range to draw: ask for trials")

// Chart draws the range of the total as SVG: histogram, S-curve and percentiles.
func Chart(e *estimate.Estimate) ([]byte, error) {
	r := e.Range
	if r == nil {
		return nil, ErrNoRange
	}
	f := chart.Figure{Title: "Range of the total: " + e.Job, Unit: e.Currency,
		Description: fmt.Sprintf("%d trials. The total is at most %s in 10, %s in 50, %s in 80 and %s in 90 of 100 trials. The single figure %s holds in %.0f of 100.",
			r.Trials, r.Total.P10, r.Total.P50, r.Total.P80, r.Total.P90, r.SingleFigure, 100*r.Holds)}
	for _, b := range r.Histogram {
		f.Bars = append(f.Bars, chart.Bar{From: b.From, To: b.To, Share: b.Share})
	}
	for _, p := range r.SCurve {
		f.Curve = append(f.Curve, chart.Point{Value: p.Value, Share: p.Share})
	}
	for _, m := range []struct {
		label string
		at    money.Amount
	}{{"P10", r.Total.P10}, {"P50", r.Total.P50}, {"P80", r.Total.P80}, {"P90", r.Total.P90}} {
		f.Marks = append(f.Marks, chart.Mark{Label: m.label + " " + m.at.String(), Value: m.at.Float64()})
	}
	f.Marks = append(f.Marks, chart.Mark{Label: "single figure " + r.SingleFigure.String(), Value: r.SingleFigure.Float64(), Plain: true})
	return f.SVG(), nil
}
