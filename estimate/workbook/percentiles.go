package workbook

import (
	"fmt"

	"filmbuild/estimate"
)

// percentiles writes what the trials gave: of the total, the hours, every step
// and every line of the order, and what makes the total uncertain.
func (b *book) percentiles(r *estimate.Range) {
	s := &b.ranges
	s.add(cell{value: fmt.Sprintf("%d trials, seed %d. The single figure is enough in %.0f %% of them.", r.Trials, r.Seed, 100*r.Holds), style: note})
	s.add(empty())
	s.add(headings("Figure", "P10", "P50", "P80", "P90")...)
	amounts := func(name string, m *estimate.MoneyRange) {
		s.add(words(name), cell{value: m.P10.Float64(), style: cash}, cell{value: m.P50.Float64(), style: cash}, cell{value: m.P80.Float64(), style: cash}, cell{value: m.P90.Float64(), style: cash})
	}
	figures := func(name string, n *estimate.NumberRange) {
		s.add(words(name), cell{value: n.P10, style: figure}, cell{value: n.P50, style: figure}, cell{value: n.P80, style: figure}, cell{value: n.P90, style: figure})
	}
	amounts("Total, "+b.graph.Estimate.Currency, &r.Total)
	amounts("Cash needed, "+b.graph.Estimate.Currency, &r.CashNeeded)
	figures("Person-hours", &r.Hours)
	for i := range r.Steps {
		amounts("Cost of "+r.Steps[i].Step, &r.Steps[i].Cost)
		figures("Hours of "+r.Steps[i].Step, &r.Steps[i].Hours)
	}
	for i := range r.Order {
		figures("Need of "+r.Order[i].Product+", "+r.Order[i].Unit, &r.Order[i].Needed)
	}
	s.add(empty())
	s.add(cell{value: "What makes the total uncertain", style: section})
	s.add(headings("Input", "Share")...)
	for _, d := range r.Drivers {
		s.add(words(d.Name), cell{value: d.Share, style: figure})
	}
}
