package document

import (
	"fmt"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
	"filmbuild/estimate/units"
)

// amount prints a value of the wire with its unit, as the reader's system shows
// it.
func (p *paper) amount(value float64, suffix string, digits int) string {
	x, unit := units.Present(value, suffix, p.system)
	return units.Format(x, digits) + " " + unit
}

// bare prints a value without its unit, for a column that has it in its head.
func (p *paper) bare(value float64, suffix string, digits int) string {
	x, _ := units.Present(value, suffix, p.system)
	return units.Format(x, digits)
}

func (p *paper) unit(suffix string) string {
	_, unit := units.Present(0, suffix, p.system)
	return unit
}

// inUnit prints a value that carries its printed SI unit.
func (p *paper) inUnit(value float64, unit string, digits int) string {
	x, shown := units.PresentUnit(value, unit, p.system)
	return strings.TrimSpace(units.Format(x, digits) + " " + shown)
}

// inBrief is the paragraph that says what is done and what it takes.
func (p *paper) inBrief(e *estimate.Estimate) string {
	var s strings.Builder
	if len(e.Areas) > 0 {
		fmt.Fprintf(&s, "%s of surface on %s. ", p.amount(e.Totals.AreaM2, "m2", 3), plural(len(e.Areas), "part", "kinds of part"))
	}
	if n := len(e.Steps); n > 0 {
		names := make([]string, n)
		for i := range e.Steps {
			names[i] = e.Steps[i].Name
			if names[i] == "" {
				names[i] = e.Steps[i].ID
			}
		}
		fmt.Fprintf(&s, "The work in its order: %s. ", strings.Join(names, "; "))
		fmt.Fprintf(&s, "It takes about %s person-hours", units.Format(e.Totals.Hours, 3))
		if e.Totals.Litres > 0 {
			fmt.Fprintf(&s, ", %s from the tins", p.amount(e.Totals.Litres, "l", 3))
		}
		if e.Totals.Kilograms > 0 {
			fmt.Fprintf(&s, ", %s of abrasive", p.amount(e.Totals.Kilograms, "kg", 3))
		}
		if e.Totals.MaskingTapeM > 0 {
			fmt.Fprintf(&s, ", %s of masking tape", p.amount(e.Totals.MaskingTapeM, "m", 3))
		}
		fmt.Fprintf(&s, ", and leaves about %s of waste. ", p.amount(e.Totals.WasteKg, "kg", 3))
	}
	fmt.Fprintf(&s, "It is estimated at %s %s: %s to be paid, contingency and tax within, and %s in kind.",
		e.Currency, grouped(e.Budget.Total), grouped(e.Budget.CashNeeded), grouped(e.Budget.InKind))
	return s.String()
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "one " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// grouped sets commas between the thousands of an amount.
func grouped(a money.Amount) string {
	whole, places, _ := strings.Cut(a.String(), ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	var out strings.Builder
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			out.WriteByte(',')
		}
		out.WriteRune(digit)
	}
	if places != "" {
		return sign + out.String() + "." + places
	}
	return sign + out.String()
}

func named(name, id string) string {
	if name == "" {
		return id
	}
	return name
}

func packs(list []estimate.OrderPack, unit string) string {
	texts := make([]string, len(list))
	for i, k := range list {
		texts[i] = strings.TrimSpace(fmt.Sprintf("%d × %s %s %s", k.Count, units.Format(k.Pack, 5), unit, k.Part))
	}
	return strings.Join(texts, ", ")
}

func funding(word string) string { return strings.ReplaceAll(word, "_", " ") }
