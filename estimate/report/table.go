// Package report prints an estimate for people: as a table for the terminal and
// as CSV. It reads an Estimate and computes nothing.
package report

import (
	"cmp"
	"fmt"
	"math"
	"sort"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
	"filmbuild/estimate/units"
	"filmbuild/surfaces/quantity"
)

// Table returns the whole estimate as text of at most 80 columns.
func Table(e *estimate.Estimate, system units.System) string {
	t := table{e: e, system: system}
	t.head()
	t.warnings()
	t.order()
	t.purchases()
	t.mixing()
	t.films()
	t.wear()
	t.checks()
	t.cautions()
	t.parts()
	t.weights()
	t.steps()
	t.colours()
	t.masking()
	t.placings()
	t.money()
	t.hours()
	t.budget()
	t.funding()
	t.sure()
	t.working()
	t.assumptions()
	t.improve()
	t.foot()
	return t.out.String()
}

type table struct {
	e      *estimate.Estimate
	system units.System
	out    strings.Builder
}

func (t *table) section(title string) {
	t.out.WriteString("\n" + title + "\n")
}

// number prints a wire value as the reader's system shows it.
func (t *table) number(value float64, suffix string, decimals int) string {
	shown, _ := units.Present(value, suffix, t.system)
	return fixed(shown, decimals)
}

// unit is the unit that goes with number.
func (t *table) unit(suffix string) string {
	_, unit := units.Present(0, suffix, t.system)
	return unit
}

// fixed prints a number with a fixed count of decimals, and nothing for zero:
// an empty cell says more than a column of zeros. From 100,000 up there is no
// room for decimals, and nobody needs them.
func fixed(value float64, decimals int) string {
	switch {
	case value == 0:
		return "·"
	case value >= 100_000:
		decimals = 0
	}
	return fmt.Sprintf("%.*f", decimals, value)
}

// measured prints a value that carries its own SI unit.
func (t *table) measured(value float64, unit string) string {
	shown, printed := units.PresentUnit(value, unit, t.system)
	switch { // what people pour by
	case printed == "L" && shown < 0.1 && shown > 0:
		shown, printed = shown*1000, "mL"
	case printed == "gal" && shown < 0.25 && shown > 0:
		shown, printed = shown*128, "fl oz" // a US gallon is 128 of them, by definition
	case printed == "°F":
		shown = math.Round(shown)
	}
	return strings.TrimSpace(units.Format(shown, 3) + " " + printed)
}

func (t *table) head() {
	for _, line := range wrap(t.e.Job, Width) {
		t.out.WriteString(line + "\n")
	}
	t.out.WriteString(strings.Repeat("=", min(Width, max(8, len([]rune(t.e.Job))))) + "\n")
	b := t.e.Budget
	paragraph(&t.out, "", fmt.Sprintf("%s, %s of work, %s in all (%s cash, %s in kind).",
		t.measured(t.e.Totals.AreaM2, "m²"), t.measured(t.e.Totals.Hours, "h"),
		t.amount(b.Total), t.amount(b.CashNeeded), t.amount(b.InKind)))
}

func (t *table) amount(a money.Amount) string { return t.e.Currency + " " + a.String() }

func (t *table) warnings() {
	total := len(t.e.Warnings)
	for i := range t.e.Steps {
		total += len(t.e.Steps[i].Warnings)
	}
	if total == 0 {
		return
	}
	t.section("LOOK AT THESE FIRST")
	for _, w := range t.e.Warnings {
		paragraph(&t.out, "! ", w)
	}
	for i := range t.e.Steps {
		for _, w := range t.e.Steps[i].Warnings {
			paragraph(&t.out, "! ", t.e.Steps[i].ID+": "+w)
		}
	}
}

func (t *table) cautions() {
	if len(t.e.Cautions) == 0 {
		return
	}
	t.section("TAKE CARE")
	for _, c := range t.e.Cautions {
		paragraph(&t.out, "* ", c.Text)
	}
}

func (t *table) wear() {
	if len(t.e.Steps) == 0 {
		return
	}
	t.section("WEAR")
	for i := range t.e.Steps {
		if s := &t.e.Steps[i]; len(s.Wear) > 0 {
			paragraph(&t.out, "- ", s.ID+": "+strings.Join(s.Wear, ", "))
		}
	}
}

func (t *table) checks() {
	var lines []string
	for i := range t.e.Steps {
		for _, c := range t.e.Steps[i].Checks {
			lines = append(lines, t.e.Steps[i].ID+" ("+strings.Join(c.On, ", ")+"): "+c.Text)
		}
	}
	if len(lines) == 0 {
		return
	}
	t.section("TEST BEFORE THE NEXT STEP")
	for _, line := range lines {
		paragraph(&t.out, "- ", line)
	}
}

func (t *table) order() {
	if len(t.e.Order) == 0 {
		return
	}
	t.section("BUY (whole packs)")
	g := grid{columns: []column{{"product", false}, {"needed", true}, {"packs", true}, {"left over", true}, {t.e.Currency, true}}}
	for _, line := range t.e.Order {
		packs := make([]string, 0, len(line.Packs))
		for _, p := range line.Packs {
			packs = append(packs, fmt.Sprintf("%d × %s", p.Count, t.measured(p.Pack, line.Unit)+partOf(p)))
		}
		if len(packs) == 0 {
			packs = append(packs, "no packs known")
		}
		if line.ToBuy == 0 {
			packs[0] = "none"
		}
		for k, pack := range packs {
			if k == 0 {
				g.row(cmp.Or(line.Name, line.Product), t.measured(line.Needed, line.Unit), pack, t.measured(line.LeftOver, line.Unit), line.Cost.String())
			} else {
				g.row("", "", pack, "", "")
			}
		}
	}
	g.write(&t.out)
	t.stock()
}

// partOf names the part of a mix that a pack holds.
func partOf(p estimate.OrderPack) string {
	if p.Part == "" {
		return ""
	}
	return " " + p.Part
}

func (t *table) mixing() {
	var lines []string
	for i := range t.e.Steps {
		for _, m := range t.e.Steps[i].Mixing {
			if len(m.Parts) > 0 || m.BatchL > 0 || m.ThinnerL > 0 {
				lines = append(lines, t.e.Steps[i].ID+": "+t.mix(m))
			}
		}
	}
	if len(lines) == 0 {
		return
	}
	t.section("MIX")
	for _, line := range lines {
		paragraph(&t.out, "- ", line)
	}
}

func (t *table) mix(m estimate.Mixing) string {
	text := m.Product
	parts := make([]string, 0, len(m.Parts)+1)
	for _, p := range m.Parts {
		parts = append(parts, fmt.Sprintf("%s %s", t.measured(p.Litres, "L"), p.Part))
	}
	if m.ThinnerL > 0 {
		if len(parts) == 0 {
			parts = append(parts, t.measured(m.PaintL, "L")+" paint")
		}
		parts = append(parts, t.measured(m.ThinnerL, "L")+" thinner")
	}
	if len(parts) > 0 {
		text += ", in all: " + strings.Join(parts, " + ")
	}
	if m.BatchL > 0 {
		text += fmt.Sprintf("; at most %s at a time (%d in all), used within %s",
			t.measured(m.BatchL, "L"), m.Batches, t.measured(m.UseWithinH, "h"))
		text += " at " + t.measured(m.PotLifeAtC, "°C")
	}
	if m.InductionH > 0 {
		text += fmt.Sprintf("; let each stand %s first", t.measured(m.InductionH, "h"))
	}
	if m.WetFilmUM > 0 && m.Passes > 0 {
		text += fmt.Sprintf("; the wet film gauge should read %s, put on in %s", t.measured(m.WetFilmUM, "µm"), passes(m.Passes))
	}
	if m.CleaningL > 0 {
		text += fmt.Sprintf("; %s of %s to clean up", t.measured(m.CleaningL, "L"), m.CleaningProduct)
	}
	return text
}

func passes(n int) string {
	if n == 1 {
		return "one pass"
	}
	return fmt.Sprintf("%d passes", n)
}

func (t *table) parts() {
	if len(t.e.Areas) == 0 {
		return
	}
	t.section("PARTS (openings off, all of a kind together)")
	g := grid{columns: []column{{"part", false}, {"shape", false}, {"count", true}, {"area " + t.unit("m2"), true}, {"edges " + t.unit("m"), true}, {"± %", true}}}
	for _, a := range t.e.Areas {
		name := a.Component
		if a.Name != "" {
			name += " (" + a.Name + ")"
		}
		g.row(name, a.Kind, fmt.Sprint(a.Count), t.number(a.AreaM2, "m2", 2), t.number(a.EdgeM, "m", 1), fixed(a.AccuracyPercent, 0))
	}
	if len(t.e.Areas) > 1 {
		g.row("all", "", "", t.number(t.e.Totals.AreaM2, "m2", 2), "", "")
	}
	g.write(&t.out)
}

func (t *table) steps() {
	if len(t.e.Steps) == 0 {
		return
	}
	t.section("STEPS: what each takes (litres leave the tins; media are bought)")
	g := grid{columns: []column{{"step", false}, {t.unit("m2"), true}, {"liquid " + t.unit("l"), true}, {"media " + t.unit("kg"), true},
		{"tape " + t.unit("m"), true}, {"hours", true}, {"waste " + t.unit("kg"), true}, {"film " + t.unit("kg"), true}}}
	for i := range t.e.Steps {
		s := &t.e.Steps[i]
		g.row(s.ID+" ("+s.Operation+")", t.number(s.AreaM2, "m2", 2), t.number(s.Litres, "l", 2), t.number(s.Kilograms, "kg", 1),
			t.number(s.MaskingTapeM, "m", 1), fixed(s.Hours, 1), t.number(s.WasteKg, "kg", 1), t.number(s.DryFilmKg, "kg", 2))
	}
	if len(t.e.Steps) > 1 {
		a := t.e.Totals
		g.row("all", "", t.number(a.Litres, "l", 2), t.number(a.Kilograms, "kg", 1), t.number(a.MaskingTapeM, "m", 1), fixed(a.Hours, 1), t.number(a.WasteKg, "kg", 1), t.number(a.DryFilmKg, "kg", 2))
	}
	g.write(&t.out)
}

func (t *table) money() {
	if len(t.e.Steps) == 0 {
		return
	}
	t.section("COST OF EACH STEP in " + t.e.Currency + " (what is used up, not what is bought)")
	g := grid{columns: []column{{"step", false}, {"materials", true}, {"labour", true}, {"by", false}, {"cost", true}}}
	for i := range t.e.Steps {
		s := &t.e.Steps[i]
		g.row(s.ID, s.MaterialCost.String(), s.LabourCost.String(), s.Labour, s.Cost.String())
	}
	a := t.e.Totals
	g.row("all", a.StepsMaterialCost.String(), a.StepsLabourCost.String(), "", a.StepsCost.String())
	g.write(&t.out)
}

func (t *table) budget() {
	b := t.e.Budget
	t.section("BUDGET in " + t.e.Currency + " (from the order: what will be paid)")
	g := grid{columns: []column{{"", false}, {"cash", true}, {"in kind", true}, {"total", true}}}
	for _, c := range b.Categories {
		g.row(c.Category, c.Cash.String(), c.InKind.String(), c.Total.String())
	}
	g.row("all", b.CashNeeded.String(), b.InKind.String(), b.Total.String())
	g.write(&t.out)
	if b.MaterialsOrdered.Cmp(b.MaterialsConsumed) != 0 {
		paragraph(&t.out, "", fmt.Sprintf("Of the materials ordered (%s), %s is used up; the rest is left over in whole packs.", b.MaterialsOrdered, b.MaterialsConsumed))
	}
}

func (t *table) working() {
	t.section("WORKING (SI)")
	for i := range t.e.Areas {
		a := &t.e.Areas[i]
		paragraph(&t.out, "", a.Component+", one part: "+a.Method)
		t.lines(a.Working)
	}
	for i := range t.e.Steps {
		s := &t.e.Steps[i]
		t.out.WriteString(s.ID + "\n")
		t.lines(s.Working)
	}
}

func (t *table) lines(list []quantity.Working) {
	for _, w := range list {
		if w.Unit == t.e.Currency {
			continue // the tables of money above show it; JSON has its working
		}
		names := make([]string, 0, len(w.Terms))
		for name := range w.Terms {
			names = append(names, name)
		}
		sort.Strings(names)
		terms := make([]string, 0, len(names))
		for _, name := range names {
			terms = append(terms, name+" = "+units.Format(w.Terms[name], 5))
		}
		name := w.Quantity
		if w.Of != "" {
			name += " of " + w.Of
		}
		text := fmt.Sprintf("%s = %s = %s %s", name, w.Formula, units.Format(w.Value, 5), w.Unit)
		if len(terms) > 0 {
			text += "; " + strings.Join(terms, ", ")
		}
		paragraph(&t.out, "  ", text+" ["+w.Source+"]")
	}
}

func (t *table) assumptions() {
	if len(t.e.Assumptions) == 0 {
		return
	}
	t.section("ASSUMED, because the job does not say")
	for _, a := range t.e.Assumptions {
		text := a.Text
		if a.Unit != "" {
			text += ": " + t.measured(a.Value, a.Unit)
		}
		if len(a.Steps) > 0 {
			text += " (" + strings.Join(a.Steps, ", ") + ")"
		}
		paragraph(&t.out, "- ", text+" ["+a.Source+"]")
	}
}

func (t *table) improve() {
	if len(t.e.Improve) == 0 {
		return
	}
	t.section("WHAT WOULD MAKE THIS ESTIMATE BETTER, the largest effect first")
	for _, i := range t.e.Improve {
		paragraph(&t.out, "- ", i.Text+" ["+i.Source+"]")
	}
}

func (t *table) foot() {
	t.out.WriteString("\n")
	paragraph(&t.out, "", "Marks behind sources: A, C, H or T read in the source; B or T2 read second-hand; C* read from a scrambled page; D derived; L or M from memory. \"Common practice\" and \"assumption\" have no source.")
	paragraph(&t.out, "", fmt.Sprintf("Catalogue %s, engine %s. An estimate, not a specification: the data sheets of your products and local rules come first.", t.e.CatalogueVersion, t.e.EngineVersion))
}
