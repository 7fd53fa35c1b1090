package report

import (
	"fmt"

	"filmbuild/estimate"
	"filmbuild/estimate/units"
)

// shownDrivers is how many drivers the table shows; JSON and CSV have all.
const shownDrivers = 8

// sure tells how sure the figures are: the class of the estimate, its range, and
// what drives it.
func (t *table) sure() {
	t.section("HOW SURE")
	c := t.e.Class
	paragraph(&t.out, "", fmt.Sprintf("Class %d, %s: the published range of its class is %+.0f to %+.0f %% at the low end and %+.0f to %+.0f %% at the high end; %.0f %% of what the money rests on is known. %s.",
		c.Class, c.Name, c.LowPercent[0], c.LowPercent[1], c.HighPercent[0], c.HighPercent[1], c.DefinitionPercent, c.Source))
	if len(c.Up) > 0 {
		t.out.WriteString("What would move it up:\n")
	}
	for _, up := range c.Up {
		paragraph(&t.out, "- ", up)
	}
	r := t.e.Range
	if r == nil {
		return
	}
	fmt.Fprintf(&t.out, "\nRANGE in %s, from %d trials\n", t.e.Currency, r.Trials)
	g := grid{columns: []column{{"enough in so many of 100 trials", false}, {"10", true}, {"50", true}, {"80", true}, {"90", true}}}
	money := func(name string, m estimate.MoneyRange) {
		g.row(name, m.P10.String(), m.P50.String(), m.P80.String(), m.P90.String())
	}
	money("total", r.Total)
	money("cash needed", r.CashNeeded)
	g.row("hours", fixed(r.Hours.P10, 1), fixed(r.Hours.P50, 1), fixed(r.Hours.P80, 1), fixed(r.Hours.P90, 1))
	for _, s := range r.Steps {
		money("step "+s.Step, s.Cost)
	}
	for _, n := range r.Order {
		cell := func(x float64) string {
			shown, _ := units.PresentUnit(x, n.Unit, t.system)
			return units.Format(shown, 4)
		}
		_, unit := units.PresentUnit(0, n.Unit, t.system)
		g.row("need of "+n.Product+", "+unit, cell(n.Needed.P10), cell(n.Needed.P50), cell(n.Needed.P80), cell(n.Needed.P90))
	}
	g.write(&t.out)
	paragraph(&t.out, "", fmt.Sprintf("The single figure %s holds in %.0f of 100 trials. Ask for p80 where running short is worse than handing back.", r.SingleFigure, 100*r.Holds))
	t.driven(r)
}

// driven tells what makes the total uncertain.
func (t *table) driven(r *estimate.Range) {
	if len(r.Drivers) == 0 {
		return
	}
	t.out.WriteString("\nWHAT DRIVES IT, as a share of the uncertainty of the total\n")
	g := grid{columns: []column{{"input", false}, {"%", true}, {"more of it", false}}}
	for k, d := range r.Drivers {
		if k == shownDrivers {
			break
		}
		does := "costs more"
		if d.Correlation < 0 {
			does = "costs less"
		}
		g.row(d.Name, fmt.Sprintf("%.1f", 100*d.Share), does)
	}
	g.write(&t.out)
}
