package report

import "filmbuild/estimate"

// rangeRows is the range of every figure, one to a line; without trials there is
// the head alone.
func rangeRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"figure", "unit", "p10", "p50", "p80", "p90", "mean", "standard_deviation"}}
	r := e.Range
	if r == nil {
		return rows
	}
	money := func(name string, m estimate.MoneyRange) {
		rows = append(rows, []string{text(name), e.Currency, m.P10.String(), m.P50.String(), m.P80.String(), m.P90.String(), m.Mean.String(), m.StandardDeviation.String()})
	}
	amount := func(name, unit string, n estimate.NumberRange) {
		rows = append(rows, []string{text(name), unit, number(n.P10), number(n.P50), number(n.P80), number(n.P90), number(n.Mean), number(n.StandardDeviation)})
	}
	money("total", r.Total)
	money("cash_needed", r.CashNeeded)
	amount("hours", "h", r.Hours)
	for _, s := range r.Steps {
		money("step/"+s.Step+"/cost", s.Cost)
		amount("step/"+s.Step+"/hours", "h", s.Hours)
	}
	for _, n := range r.Order {
		amount("order/"+n.Product+"/needed", n.Unit, n.Needed)
	}
	return rows
}

// driverRows is what makes the total uncertain, the most first.
func driverRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"input", "name", "share_ratio", "rank_correlation"}}
	if e.Range != nil {
		for _, d := range e.Range.Drivers {
			rows = append(rows, []string{text(d.Input), text(d.Name), number(d.Share), number(d.Correlation)})
		}
	}
	return rows
}

// curveRows is the S-curve of the total: each value with the chance that it is
// enough.
func curveRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"total_" + e.Currency, "share_ratio"}}
	if e.Range != nil {
		for _, p := range e.Range.SCurve {
			rows = append(rows, []string{number(p.Value), number(p.Share)})
		}
	}
	return rows
}

// inputRows is every number that was drawn, with where its spread comes from.
func inputRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"input", "name", "group", "unit", "low", "likely", "high", "distribution", "source"}}
	if e.Range != nil {
		for _, u := range e.Range.Inputs {
			rows = append(rows, []string{text(u.Input), text(u.Name), text(u.Group), text(u.Unit), number(u.Low), number(u.Likely), number(u.High), u.Distribution, text(u.Source)})
		}
	}
	return rows
}
