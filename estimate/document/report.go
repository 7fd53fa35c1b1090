package document

import (
	"fmt"
	"io"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/units"
	"filmbuild/surfaces/sketch"
)

// Report writes the report of an estimate: what and why in one paragraph, the
// parts with their sketches, steps, order, budget, how sure, assumptions with
// their sources, cautions. The errors are those of writing.
func Report(w io.Writer, g *estimate.Graph, o Options) error {
	e := g.Estimate
	versions := "filmbuild " + e.EngineVersion + ", catalogue " + e.CatalogueVersion
	foot := e.Job + " · " + versions
	p := newPaper(o, e.Job, foot)
	p.AddPage()
	p.title(e.Job)
	p.small(strings.Join(notEmpty("Estimate of taking off old paint and painting anew", o.Date, versions), " · "))
	p.Ln(3)
	p.text(p.inBrief(e))
	p.Ln(1)
	p.figures(e)
	p.sureness(g)
	if err := p.parts(g); err != nil {
		return err
	}
	p.steps(e)
	p.order(e)
	p.budget(e)
	p.beware(e)
	p.assumptions(e)
	return p.finish(w)
}

func notEmpty(texts ...string) []string {
	var list []string
	for _, t := range texts {
		if t != "" {
			list = append(list, t)
		}
	}
	return list
}

// figures is the row of the numbers that people ask for first.
func (p *paper) figures(e *estimate.Estimate) {
	list := [][2]string{{"Total, " + e.Currency, grouped(e.Budget.Total)}, {"Cash needed", grouped(e.Budget.CashNeeded)}, {"In kind", grouped(e.Budget.InKind)}}
	if len(e.Areas) > 0 {
		list = append(list, [2]string{"Area", p.amount(e.Totals.AreaM2, "m2", 3)})
	}
	if len(e.Steps) > 0 {
		list = append(list, [2]string{"Person-hours", units.Format(e.Totals.Hours, 3)}, [2]string{"Waste", p.amount(e.Totals.WasteKg, "kg", 3)})
	}
	p.room(18)
	p.Ln(2)
	width, y := p.width/float64(len(list)), p.GetY()
	c := ground()
	p.SetFillColor(c.r, c.g, c.b)
	p.Rect(margin, y, p.width, 14, "F")
	for i, f := range list {
		x := margin + float64(i)*width
		p.SetXY(x+2, y+1.8)
		p.face("", smallSize, muted())
		p.CellFormat(width-3, 4, f[0], "", 0, "L", false, 0, "")
		p.SetXY(x+2, y+6.2)
		p.face("B", 11.5, ink())
		p.CellFormat(width-3, 5.5, f[1], "", 0, "L", false, 0, "")
	}
	p.SetXY(margin, y+15)
}

// sketchWidth is how wide a sketch is printed, two to a row.
const sketchWidth = 84.0

func (p *paper) parts(g *estimate.Graph) error {
	e := g.Estimate
	if len(e.Areas) == 0 {
		return nil
	}
	p.heading("Parts and their areas")
	var rows [][]string
	for i := range e.Areas {
		a := &e.Areas[i]
		for k, f := range a.Faces {
			row := []string{"", "", f.Face, p.bare(f.AreaM2, "m2", 4), p.bare(f.EdgeM, "m", 3), ""}
			if k == 0 {
				row[0], row[1], row[5] = named(a.Name, a.Component), fmt.Sprint(a.Count), fmt.Sprintf("%s; ± %s %%", a.Method, units.Format(a.AccuracyPercent, 2))
			}
			rows = append(rows, row)
		}
	}
	rows = append(rows, []string{"\tAll parts", "", "", p.bare(e.Totals.AreaM2, "m2", 4), "", ""})
	p.table([]column{{"Part", 26, "L"}, {"No.", 6, "R"}, {"Face", 12, "L"}, {"Area, " + p.unit("m2"), 12, "R"}, {"Edge, " + p.unit("m"), 11, "R"}, {"How the area was found", 33, "L"}}, rows)
	return p.sketches(g)
}

func (p *paper) sketches(g *estimate.Graph) error {
	system := sketch.SI
	if p.system == units.US {
		system = sketch.US
	}
	left := true
	y, tallest := p.GetY(), 0.0
	for i := range g.Estimate.Areas {
		a := &g.Estimate.Areas[i]
		shape := g.Shape(a.Component)
		if shape == nil {
			continue
		}
		svg, err := sketch.SVG(shape, system, "s")
		if err != nil {
			return err
		}
		_, wide, high, err := readDrawing(string(svg))
		if err != nil {
			return err
		}
		height := high * sketchWidth / wide
		if left {
			p.room(height + 8)
			y, tallest = p.GetY(), 0
		}
		x := margin
		if !left {
			x = margin + p.width - sketchWidth
		}
		p.SetAutoPageBreak(false, bottom)
		p.SetXY(x, y)
		p.face("B", smallSize, ink())
		p.CellFormat(sketchWidth, 4, p.clip(named(a.Name, a.Component), sketchWidth), "", 0, "L", false, 0, "")
		if err := p.sketch(string(svg), x, y+5, sketchWidth); err != nil {
			return err
		}
		p.SetAutoPageBreak(true, bottom)
		tallest = max(tallest, height+8)
		if !left || i == len(g.Estimate.Areas)-1 {
			p.SetXY(margin, y+tallest)
		}
		left = !left
	}
	p.SetXY(margin, max(p.GetY(), y+tallest))
	return nil
}

func (p *paper) steps(e *estimate.Estimate) {
	if len(e.Steps) == 0 {
		return
	}
	p.heading("Steps")
	p.small("Cost is the material that is used up, at the price of the packs in the order, and the hours. What will be paid is in the budget.")
	p.Ln(1)
	var rows [][]string
	for i := range e.Steps {
		s := &e.Steps[i]
		var used []string
		for _, m := range s.Materials {
			used = append(used, p.inUnit(m.Quantity, m.Unit, 3)+" "+m.Name)
		}
		rows = append(rows, []string{named(s.Name, s.ID), p.bare(s.AreaM2, "m2", 3), strings.Join(used, "; "), units.Format(s.Hours, 3), p.bare(s.WasteKg, "kg", 3), grouped(s.Cost)})
	}
	rows = append(rows, []string{"\tAll steps", "", "", units.Format(e.Totals.Hours, 3), p.bare(e.Totals.WasteKg, "kg", 3), grouped(e.Totals.StepsCost)})
	p.table([]column{{"Step", 27, "L"}, {p.unit("m2"), 9, "R"}, {"Takes", 36, "L"}, {"Hours", 8, "R"}, {"Waste, " + p.unit("kg"), 9, "R"}, {"Cost, " + e.Currency, 13, "R"}}, rows)
}

func (p *paper) order(e *estimate.Estimate) {
	if len(e.Order) == 0 {
		return
	}
	p.heading("Order, in whole packs")
	var rows [][]string
	for i := range e.Order {
		o := &e.Order[i]
		buy := packs(o.Packs, o.Unit)
		switch {
		case o.ToBuy == 0:
			buy = "in stock"
		case buy == "":
			buy = "ask: no packs are known"
		}
		cost := grouped(o.Cost)
		if !o.Priced {
			cost = "no price"
		}
		rows = append(rows, []string{o.Name, p.inUnit(o.Needed, o.Unit, 3), buy, p.inUnit(o.LeftOver, o.Unit, 2), cost})
	}
	rows = append(rows, []string{"\tThe whole order", "", "", "", grouped(e.Budget.MaterialsOrdered)})
	p.table([]column{{"Product", 38, "L"}, {"Needed", 12, "R"}, {"Buy", 26, "L"}, {"Left over", 12, "R"}, {"Cost, " + e.Currency, 14, "R"}}, rows)
}

func (p *paper) budget(e *estimate.Estimate) {
	b := &e.Budget
	p.heading("Budget")
	p.small("Built from the order, so that it holds what will be paid. In kind is the value of volunteers' hours and of gifts.")
	p.Ln(1)
	var rows [][]string
	for _, c := range b.Categories {
		rows = append(rows, []string{c.Category, grouped(c.Cash), grouped(c.InKind), grouped(c.Total)})
	}
	rows = append(rows, []string{"\tTotal", grouped(b.CashNeeded), grouped(b.InKind), grouped(b.Total)})
	p.table([]column{{"Category", 40, "L"}, {"Cash, " + e.Currency, 20, "R"}, {"In kind, " + e.Currency, 20, "R"}, {"Together, " + e.Currency, 20, "R"}}, rows)
	rows = nil
	for _, l := range b.Lines {
		rows = append(rows, []string{l.Text, l.Category, funding(l.Funding), grouped(l.Amount)})
	}
	p.table([]column{{"Line", 52, "L"}, {"Category", 18, "L"}, {"Funding", 12, "L"}, {"Amount, " + e.Currency, 18, "R"}}, rows)
	if len(b.Unpriced) > 0 {
		p.text("Without a price, and in no figure: " + strings.Join(b.Unpriced, ", ") + ".")
	}
}

// beware lists the warnings and the cautions, which come before the small print.
func (p *paper) beware(e *estimate.Estimate) {
	var warnings []string
	warnings = append(warnings, e.Warnings...)
	for i := range e.Steps {
		for _, w := range e.Steps[i].Warnings {
			warnings = append(warnings, named(e.Steps[i].Name, e.Steps[i].ID)+": "+w)
		}
	}
	if len(warnings) > 0 {
		p.heading("Look at this before the figures are used")
		for _, w := range warnings {
			p.point("", w, "")
		}
	}
	if len(e.Cautions) > 0 {
		p.heading("Cautions")
		for _, c := range e.Cautions {
			p.point("", c.Text, c.Source)
		}
		p.small("Local codes, safety data sheets and licensed practice come first; this list replaces none of them.")
	}
}

func (p *paper) assumptions(e *estimate.Estimate) {
	if len(e.Assumptions) == 0 {
		return
	}
	p.heading("Assumptions and sources")
	var rows [][]string
	for _, a := range e.Assumptions {
		value := ""
		if a.Value != 0 || a.Unit != "" {
			value = p.inUnit(a.Value, a.Unit, 4)
		}
		rows = append(rows, []string{a.Text, value, a.Source})
	}
	p.table([]column{{"What is assumed", 46, "L"}, {"Value", 14, "R"}, {"Source", 40, "L"}}, rows)
}

// sureness tells the class of the estimate.
func (p *paper) sureness(g *estimate.Graph) {
	c := &g.Estimate.Class
	p.heading("How sure it is")
	p.text(fmt.Sprintf("Class %d, %s: actual cost is expected between %g to %g %% and +%g to +%g %% of the total.",
		c.Class, c.Name, c.LowPercent[0], c.LowPercent[1], c.HighPercent[0], c.HighPercent[1]))
	for _, why := range c.Why {
		p.point("·", why, "")
	}
	if len(c.Up) > 0 {
		p.text("What would make it surer:")
		for _, up := range c.Up {
			p.point("·", up, "")
		}
	}
	p.small(c.Source)
	if g.Estimate.Range != nil {
		p.span(g.Estimate)
	}
}
