package report

import (
	"fmt"
	"strings"

	"filmbuild/estimate/compare"
	"filmbuild/estimate/units"
)

// waysAbreast is how many ways stand side by side in 80 columns; with more of
// them the base is repeated beside the next.
const waysAbreast = 4

// Comparison returns ways side by side as text of at most 80 columns.
func Comparison(r *compare.Result, system units.System) string {
	t := comparison{table: table{system: system}, r: r}
	paragraph(&t.out, "", r.Name)
	paragraph(&t.out, "", fmt.Sprintf("Money in %s; catalogue %s, engine %s; %d trials from seed %d.", r.Currency, r.CatalogueVersion, r.EngineVersion, r.Trials, r.Seed))
	for _, w := range r.Ways {
		paragraph(&t.out, "- ", w.ID+": "+w.Name)
	}
	for _, group := range t.groups() {
		t.whole(group)
	}
	for _, group := range t.groups() {
		t.steps(group)
	}
	t.warned()
	t.section("HOW TO READ THIS")
	for _, m := range r.Method {
		paragraph(&t.out, "- ", m)
	}
	return t.out.String()
}

type comparison struct {
	table
	r *compare.Result
}

// groups are the ways that stand side by side, by their places.
func (t *comparison) groups() [][]int {
	var list [][]int
	for first := 1; first < len(t.r.Ways); first += waysAbreast - 1 {
		group := []int{0}
		for k := first; k < min(first+waysAbreast-1, len(t.r.Ways)); k++ {
			group = append(group, k)
		}
		list = append(list, group)
	}
	return list
}

// heads are the columns of a group: the figure, then the ways by their ids.
func (t *comparison) heads(group []int, first string) []column {
	columns := []column{{first, false}}
	for _, k := range group {
		columns = append(columns, column{clipped(t.r.Ways[k].ID, 14), true})
	}
	return columns
}

func clipped(text string, most int) string {
	if letters := []rune(text); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return text
}

// whole is what each way comes to in all.
func (t *comparison) whole(group []int) {
	t.section("IN ALL")
	g := grid{columns: t.heads(group, "figure")}
	add := func(name string, cell func(w *compare.Way) string) {
		row := []string{name}
		for _, k := range group {
			row = append(row, cell(&t.r.Ways[k]))
		}
		g.row(row...)
	}
	add("cost", func(w *compare.Way) string { return w.Figures.Cost.String() })
	add("cost, p80", func(w *compare.Way) string { return w.Figures.P80.String() })
	add("cash", func(w *compare.Way) string { return w.Figures.Cash.String() })
	add("in kind", func(w *compare.Way) string { return w.Figures.InKind.String() })
	t.amounts(add, func(w *compare.Way) compare.Figures { return w.Figures })
	add("cheapest in, of 100 trials", func(w *compare.Way) string { return fmt.Sprintf("%.1f", 100*w.Cheapest) })
	difference := func(name string, cell func(w *compare.Way) string) {
		add(name, func(w *compare.Way) string {
			if w.Difference == nil {
				return "·"
			}
			return cell(w)
		})
	}
	difference("cost more than the base", func(w *compare.Way) string { return w.Difference.Cost.String() })
	difference("cash more than the base", func(w *compare.Way) string { return w.Difference.Cash.String() })
	difference("hours more than the base", func(w *compare.Way) string { return fixed(w.Difference.Hours, 1) })
	difference("cost more, p10", func(w *compare.Way) string { return w.Against.P10.String() })
	difference("cost more, p50", func(w *compare.Way) string { return w.Against.P50.String() })
	difference("cost more, p90", func(w *compare.Way) string { return w.Against.P90.String() })
	difference("below the base in, of 100", func(w *compare.Way) string { return fmt.Sprintf("%.1f", 100*w.Against.Cheaper) })
	add("class of estimate", func(w *compare.Way) string { return fmt.Sprint(w.Class) })
	g.write(&t.out)
}

// amounts adds the rows of what is not money.
func (t *comparison) amounts(add func(string, func(*compare.Way) string), of func(*compare.Way) compare.Figures) {
	add("hours", func(w *compare.Way) string { return fixed(of(w).Hours, 1) })
	add("liquids "+t.unit("l"), func(w *compare.Way) string { return t.number(of(w).Litres, "l", 1) })
	add("abrasive "+t.unit("kg"), func(w *compare.Way) string { return t.number(of(w).Kilograms, "kg", 0) })
	add("waste "+t.unit("kg"), func(w *compare.Way) string { return t.number(of(w).WasteKg, "kg", 0) })
	add("VOC "+t.unit("kg"), func(w *compare.Way) string { return t.number(of(w).VOCKg, "kg", 2) })
}

// steps sets each step side by side.
func (t *comparison) steps(group []int) {
	t.section("BY STEP (what it uses up, and its hours)")
	g := grid{columns: t.heads(group, "step")}
	for _, row := range t.r.Steps {
		same := true
		for _, k := range group {
			same = same && alike(&row.Cells[0], &row.Cells[k])
		}
		add := func(name string, cell func(c *compare.Cell) string) {
			cells := []string{name}
			for _, k := range group {
				text := "–"
				if row.Cells[k].Present {
					text = cell(&row.Cells[k])
				}
				cells = append(cells, text)
			}
			g.row(cells...)
		}
		add(row.Step+", cost", func(c *compare.Cell) string { return c.Figures.Cost.String() })
		if same {
			continue // alike in all ways: one line is enough
		}
		add("- operation", func(c *compare.Cell) string { return c.Operation })
		add("- cost, p80", func(c *compare.Cell) string { return c.Figures.P80.String() })
		add("- cash", func(c *compare.Cell) string { return c.Figures.Cash.String() })
		add("- hours", func(c *compare.Cell) string { return fixed(c.Figures.Hours, 1) })
		add("- liquids "+t.unit("l"), func(c *compare.Cell) string { return t.number(c.Figures.Litres, "l", 1) })
		add("- abrasive "+t.unit("kg"), func(c *compare.Cell) string { return t.number(c.Figures.Kilograms, "kg", 0) })
		add("- waste "+t.unit("kg"), func(c *compare.Cell) string { return t.number(c.Figures.WasteKg, "kg", 1) })
		add("- VOC "+t.unit("kg"), func(c *compare.Cell) string { return t.number(c.Figures.VOCKg, "kg", 2) })
	}
	g.write(&t.out)
}

// alike reports whether a step is the same in two ways.
func alike(a, b *compare.Cell) bool {
	f, g := a.Figures, b.Figures
	money := f.Cost.Cmp(g.Cost) == 0 && f.Cash.Cmp(g.Cash) == 0 && f.P80.Cmp(g.P80) == 0
	return a.Present == b.Present && a.Operation == b.Operation && money && f.Hours == g.Hours && f.Litres == g.Litres && f.Kilograms == g.Kilograms && f.WasteKg == g.WasteKg && f.VOCKg == g.VOCKg
}

// warned lists the cautions and warnings that not all ways share.
func (t *comparison) warned() {
	shared := map[string]int{}
	for i := range t.r.Ways {
		for _, c := range append(t.r.Ways[i].Cautions[:len(t.r.Ways[i].Cautions):len(t.r.Ways[i].Cautions)], t.r.Ways[i].Warnings...) {
			shared[c]++
		}
	}
	t.section("WHAT TO LOOK AT, beyond what all ways share")
	for i := range t.r.Ways {
		w := &t.r.Ways[i]
		var own []string
		for _, c := range w.Cautions {
			if shared[c] < len(t.r.Ways) {
				own = append(own, strings.ReplaceAll(c, "_", " "))
			}
		}
		if len(own) > 0 {
			paragraph(&t.out, "- ", w.ID+", cautions: "+strings.Join(own, ", ")+"; read them in its estimate")
		}
		for _, warning := range w.Warnings {
			if shared[warning] < len(t.r.Ways) {
				paragraph(&t.out, "- ", w.ID+": "+warning)
			}
		}
	}
}
