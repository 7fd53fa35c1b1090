package report

import (
	"fmt"
	"strings"

	"filmbuild/estimate/target"
	"filmbuild/estimate/units"
)

// Solution returns what a budget or a stock covers as text of at most 80 columns.
func Solution(a *target.Answer, system units.System) string {
	t := table{e: a.Estimate, system: system}
	paragraph(&t.out, "", a.Estimate.Job)
	for _, words := range a.Words {
		paragraph(&t.out, "- ", words)
	}
	t.section("WHAT FITS")
	g := grid{columns: []column{{"", false}, {"planned", true}, {"fits", true}, {"unit", false}}}
	for _, c := range a.Areas {
		g.row(c.Component, t.number(c.PlanAreaM2, "m2", 3), t.number(c.AreaM2, "m2", 3), t.unit("m2"))
	}
	for _, f := range a.Films {
		g.row("dry film of "+f.Step, t.number(f.PlanUM, "um", 2), t.number(f.DryFilmUM, "um", 2), t.unit("um"))
	}
	g.write(&t.out)
	t.section("TARGETS")
	g = grid{columns: []column{{"target", false}, {"at most", true}, {"takes", true}, {"unit", false}}}
	for _, h := range a.Held {
		if h.Budget != nil {
			g.row(h.Target, h.Budget.String(), h.Needed.String(), h.Unit)
			continue
		}
		most, unit := units.PresentUnit(h.Most, h.Unit, system)
		takes, _ := units.PresentUnit(h.Takes, h.Unit, system)
		g.row(h.Target, units.Format(most, 6), units.Format(takes, 6), unit)
	}
	g.write(&t.out)
	t.section("THE ESTIMATE FOR IT, in short")
	b := a.Estimate.Budget
	paragraph(&t.out, "", fmt.Sprintf("Cash needed %s, in kind %s, in all %s %s; %s hours.", b.CashNeeded, b.InKind, b.Total, a.Estimate.Currency, fixed(a.Estimate.Totals.Hours, 1)))
	for _, w := range a.Estimate.Warnings {
		paragraph(&t.out, "! ", w)
	}
	for i := range a.Estimate.Steps {
		for _, w := range a.Estimate.Steps[i].Warnings {
			paragraph(&t.out, "! ", a.Estimate.Steps[i].ID+": "+w)
		}
	}
	return strings.TrimRight(t.out.String(), "\n") + "\n"
}
