package workbook

import (
	"fmt"
	"strings"

	"filmbuild/surfaces/quantity"
)

func (b *book) writeParts() {
	s := &b.parts
	s.add(cell{value: "Parts", style: title})
	s.add(headings("Part", "Name", "Shape", "Count", "Face", "Area, m²", "Edge, m", "± %", "How the area was found")...)
	first := len(s.rows) + 1
	for i := range b.graph.Estimate.Areas {
		a := &b.graph.Estimate.Areas[i]
		for k, f := range a.Faces {
			row := []cell{empty(), empty(), empty(), empty(), text(f.Face),
				b.figure(quantity.Node{Kind: "face", ID: a.Component, Quantity: f.Face}, figure), {value: f.EdgeM, style: figure}}
			if k == 0 {
				row[0], row[1], row[2], row[3] = text(a.Component), text(a.Name), text(a.Kind), cell{value: a.Count, style: whole}
				row = append(row, cell{value: a.AccuracyPercent, style: figure}, words(a.Method))
			}
			s.add(row...)
		}
	}
	if last := len(s.rows); last >= first {
		s.add(text("All parts"), empty(), empty(), empty(), empty(), worked(fmt.Sprintf("SUM(F%d:F%d)", first, last), b.graph.Estimate.Totals.AreaM2, total))
	}
}

// stepColumn is one column of the sheet Steps.
type stepColumn struct {
	head, name string
	style, sum style
}

func stepColumns() []stepColumn {
	return []stepColumn{{"Area, m²", "area_m2", figure, total}, {"Litres", "litres", figure, total}, {"Abrasive, kg", "kilograms", figure, total},
		{"Tape, m", "masking_tape_m", figure, total}, {"Hours", "hours", figure, total}, {"Waste, kg", "waste_kg", figure, total},
		{"Material", "material_cost", cash, totals}, {"Labour", "labour_cost", cash, totals}, {"Cost", "cost", cash, totals}}
}

func (b *book) writeSteps() {
	s := &b.steps
	s.add(cell{value: "Steps", style: title})
	s.add(cell{value: "Cost is the material that is used up, at the price of the packs in the order, and the hours. What will be paid is on Budget.", style: note})
	heads := headings("Step", "Name", "Operation")
	for _, c := range stepColumns() {
		heads = append(heads, heading(c.head))
	}
	s.add(heads...)
	first := len(s.rows) + 1
	sums := map[string]float64{}
	for i := range b.graph.Estimate.Steps {
		step := &b.graph.Estimate.Steps[i]
		row := []cell{text(step.ID), text(step.Name), text(step.Operation)}
		for _, c := range stepColumns() {
			one := b.figure(quantity.StepWorking(step.ID, c.name, ""), c.style)
			sums[c.name] += one.value.(float64)
			row = append(row, one)
		}
		s.add(row...)
	}
	last := len(s.rows)
	if last < first {
		return
	}
	row := []cell{text("All steps"), empty(), empty()}
	for k, c := range stepColumns() {
		if c.name == "area_m2" {
			row = append(row, empty()) // one surface under several steps does not add up
			continue
		}
		column := string(rune('D' + k))
		row = append(row, worked(fmt.Sprintf("SUM(%s%d:%s%d)", column, first, column, last), sums[c.name], c.sum))
	}
	s.add(row...)
}

// stepSum is a reference to the sum of a column of the sheet Steps.
func (b *book) stepSum(name string) string {
	for k, c := range stepColumns() {
		if c.name == name {
			return b.steps.at(string(rune('D'+k)), len(b.steps.rows))
		}
	}
	return "0"
}

func (b *book) writeOrder() {
	s := &b.order
	e := b.graph.Estimate
	s.add(cell{value: "Order", style: title})
	s.add(cell{value: "Whole packs, the cheapest that cover the need; the packs named are those of the estimate, and the sheet Packs shows the choice.", style: note})
	s.add(headings("Product", "Name", "Supplier", "Needed", "In stock or given", "To buy", "Unit", "Bought", "Left over", "Cost", "Packs in the estimate")...)
	s.widths = append(s.widths, 44)
	first := len(s.rows) + 1
	for i := range e.Order {
		line := &e.Order[i]
		row := len(s.rows) + 1
		s.add(text(line.Product), words(line.Name), text(line.Supplier), b.figure(line.Node("needed"), figure),
			cell{value: line.FromStock + line.FromDonations, style: figure}, b.figure(line.Node("to_buy"), figure), text(line.Unit),
			b.figure(line.Node("bought"), figure), worked(fmt.Sprintf("MAX(0,H%d-F%d)", row, row), line.LeftOver, figure), b.figure(line.Node("cost"), cash), words(packText(e.Order[i].Packs, line.Unit)))
	}
	if last := len(s.rows); last >= first {
		s.add(text("All"), empty(), empty(), empty(), empty(), empty(), empty(), empty(), empty(),
			worked(fmt.Sprintf("SUM(J%d:J%d)", first, last), e.Budget.MaterialsOrdered.Float64(), totals))
	}
}

func (b *book) writeBudget() {
	s := &b.budget
	budget := &b.graph.Estimate.Budget
	s.add(cell{value: "Budget, " + b.graph.Estimate.Currency, style: title})
	s.add(cell{value: "Built from the order, so that it holds what will be paid. Cash is money; in kind is the value of what is given.", style: note})
	s.add(headings("Line", "Category", "Funding", "Amount")...)
	first := len(s.rows) + 1
	for i := range budget.Lines {
		l := &budget.Lines[i]
		amount := cell{value: l.Amount.Float64(), style: cash}
		if l.Node() != (quantity.Node{}) {
			amount = b.figure(l.Node(), cash)
		}
		s.add(words(l.Text), text(l.Category), text(strings.ReplaceAll(l.Funding, "_", " ")), amount)
	}
	last := max(len(s.rows), first)
	s.add(text("Total"), empty(), empty(), worked(fmt.Sprintf("SUM(D%d:D%d)", first, last), budget.Total.Float64(), totals))
	s.add(empty())
	s.add(cell{value: "By category", style: section})
	s.add(headings("Category", "", "", "Cash", "In kind", "Together")...)
	from := len(s.rows) + 1
	for i := range budget.Categories {
		c := &budget.Categories[i]
		row := len(s.rows) + 1
		by := func(funding string) string {
			return fmt.Sprintf(`SUMIFS($D$%d:$D$%d,$B$%d:$B$%d,$A%d,$C$%d:$C$%d,"%s")`, first, last, first, last, row, first, last, funding)
		}
		s.add(text(c.Category), empty(), empty(), worked(by("cash"), c.Cash.Float64(), cash), worked(by("in kind"), c.InKind.Float64(), cash),
			worked(fmt.Sprintf("D%d+E%d", row, row), c.Total.Float64(), cash))
	}
	if to := len(s.rows); to >= from {
		sum := func(column string) string { return fmt.Sprintf("SUM(%s%d:%s%d)", column, from, column, to) }
		s.add(text("Total"), empty(), empty(), worked(sum("D"), budget.CashNeeded.Float64(), totals), worked(sum("E"), budget.InKind.Float64(), totals), worked(sum("F"), budget.Total.Float64(), totals))
	}
}

func (b *book) writeSources() {
	s := &b.sources
	e := b.graph.Estimate
	s.add(cell{value: "Sources, assumptions and cautions", style: title})
	s.add(text("Engine"), text(e.EngineVersion))
	s.add(text("Catalogue"), text(e.CatalogueVersion))
	s.add(empty())
	s.add(headings("Kind", "What", "Value", "Unit", "Source")...)
	for _, a := range e.Assumptions {
		s.add(text("assumption"), words(a.Text), cell{value: a.Value, style: figure}, text(a.Unit), words(a.Source))
	}
	for _, w := range e.Warnings {
		s.add(text("warning"), words(w))
	}
	for i := range e.Steps {
		for _, w := range e.Steps[i].Warnings {
			s.add(text("warning"), words(e.Steps[i].ID+": "+w))
		}
	}
	for _, c := range e.Cautions {
		s.add(text("caution"), words(c.Text), empty(), empty(), words(c.Source))
	}
}
