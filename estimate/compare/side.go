package compare

import (
	"filmbuild/estimate"
	"filmbuild/estimate/money"
)

// side sets the steps of all ways side by side: those of the base in their order,
// then those that only variants have.
func side(graphs []*estimate.Graph, ways []Way, currency money.Currency) []StepRow {
	rows := []StepRow{}
	at := map[string]int{}
	for _, g := range graphs {
		for i := range g.Estimate.Steps {
			id := g.Estimate.Steps[i].ID
			if _, known := at[id]; known {
				continue
			}
			at[id] = len(rows)
			row := StepRow{Step: id}
			for k := range graphs {
				row.Cells = append(row.Cells, cell(graphs[k].Estimate, &ways[k], id, currency))
			}
			for k := range row.Cells {
				row.Cells[k].Difference = row.Cells[k].Figures.Cost.Sub(row.Cells[0].Figures.Cost)
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// cell is a step of one way.
func cell(e *estimate.Estimate, w *Way, id string, currency money.Currency) Cell {
	zero := currency.Zero()
	c := Cell{Way: w.ID, Figures: Figures{Cost: zero, Cash: zero, InKind: zero, P80: zero}, Difference: zero}
	for i := range e.Steps {
		s := &e.Steps[i]
		if s.ID != id {
			continue
		}
		c.Present, c.Operation = true, s.Operation
		c.Figures = Figures{Cost: s.Cost, Cash: s.Cost, InKind: zero, P80: w.Range.Steps[i].Cost.P80, Hours: s.Hours, Litres: s.Litres, Kilograms: s.Kilograms, WasteKg: s.WasteKg, VOCKg: s.VOCKg}
		if s.Labour == "volunteer" {
			c.Figures.Cash, c.Figures.InKind = s.MaterialCost, s.LabourCost
		}
	}
	return c
}
