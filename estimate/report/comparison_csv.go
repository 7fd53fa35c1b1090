package report

import (
	"bytes"
	"encoding/csv"

	"filmbuild/estimate/compare"
)

// ComparisonCSV returns ways side by side as one table: a line for each way in
// all, and for each step in each way that has it; the base comes first.
func ComparisonCSV(r *compare.Result) ([]byte, error) {
	in := "_" + r.Currency
	rows := [][]string{{"way", "step", "operation", "cost" + in, "cost_p80" + in, "cash" + in, "in_kind" + in, "hours", "litres", "kilograms", "waste_kg", "voc_kg",
		"cost_difference" + in, "cheapest_ratio", "below_base_ratio"}}
	line := func(way, step, operation string, f compare.Figures, difference, cheapest, below string) {
		rows = append(rows, []string{text(way), text(step), operation, f.Cost.String(), f.P80.String(), f.Cash.String(), f.InKind.String(), number(f.Hours), number(f.Litres), number(f.Kilograms),
			number(f.WasteKg), number(f.VOCKg), difference, cheapest, below})
	}
	for i := range r.Ways {
		w := &r.Ways[i]
		difference, below := "", ""
		if w.Difference != nil {
			difference, below = w.Difference.Cost.String(), number(w.Against.Cheaper)
		}
		line(w.ID, "", "", w.Figures, difference, number(w.Cheapest), below)
	}
	for _, step := range r.Steps {
		for k := range step.Cells {
			if c := &step.Cells[k]; c.Present {
				line(c.Way, step.Step, c.Operation, c.Figures, c.Difference.String(), "", "")
			}
		}
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	err := w.WriteAll(rows)
	return out.Bytes(), err
}
