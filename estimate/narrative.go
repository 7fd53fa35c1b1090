package estimate

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"filmbuild/estimate/money"
)

// bookedLine is a line of the budget under a heading, at what it costs there.
type bookedLine struct {
	line   *BudgetLine
	amount money.Amount
}

// narrate tells each heading in plain words, one line to a cost; people who do
// the same work at the same rate stand together.
func (r *run) narrate(v *FundingView, heads []FundingNarrative) {
	v.Narrative = []FundingNarrative{}
	for i := range heads {
		h := &heads[i]
		var keys []string
		groups := map[string][]bookedLine{}
		for _, b := range h.booked {
			key := r.narrativeKey(b.line)
			if groups[key] == nil {
				keys = append(keys, key)
			}
			groups[key] = append(groups[key], b)
		}
		for _, key := range keys {
			if line := r.narrativeLine(groups[key]); !line.Amount.IsZero() {
				h.Lines = append(h.Lines, line)
			}
		}
		if len(h.Lines) > 0 {
			v.Narrative = append(v.Narrative, *h)
		}
	}
}

// narrativeKey is what stands in one line.
func (r *run) narrativeKey(line *BudgetLine) string {
	switch {
	case line.hours != nil:
		return "labour " + line.hours.Role + " " + line.hours.Labour
	case line.Category == "fringe" && strings.HasPrefix(line.ID, "fringe/"):
		return "fringe"
	}
	return line.ID
}

func (r *run) narrativeLine(group []bookedLine) NarrativeLine {
	first := group[0].line
	n := NarrativeLine{Funding: first.Funding, Amount: r.currency.Zero()}
	tax := r.currency.Zero()
	for _, b := range group {
		n.Amount = n.Amount.Add(b.amount)
		if b.amount.Cmp(b.line.Amount) > 0 {
			tax = tax.Add(b.amount.Sub(b.line.Amount))
		}
	}
	switch {
	case first.hours != nil:
		n.Text = r.peopleText(group)
	case strings.HasPrefix(first.ID, "fringe/"):
		n.Text = fmt.Sprintf("Fringe benefits of %g %% on paid wages", r.job.Labour.FringePercent)
	case first.ordered != nil:
		n.Text = r.orderText(first.ordered, first.Funding == "in_kind")
	default:
		n.Text = strings.ToUpper(first.Text[:1]) + first.Text[1:]
	}
	if first.Basis != "" && first.Funding == "in_kind" {
		n.Text += ", valued by " + first.Basis
	}
	if !tax.IsZero() {
		n.Text += fmt.Sprintf(", with %s tax", tax)
	}
	return n
}

// peopleText tells who works how long at what rate.
func (r *run) peopleText(group []bookedLine) string {
	h := group[0].line.hours
	hours := 0.0
	var steps []string
	for _, b := range group {
		hours += b.line.hours.Hours
		steps = append(steps, b.line.step)
	}
	rate := r.job.Labour.rate(h.Role, h.Labour)
	price := r.currency.Of(rate.amount).String() + " an hour"
	if rate.hours != 1 {
		price = fmt.Sprintf("%s for a day of %g h", r.currency.Of(rate.amount), rate.hours)
	}
	if exact := rate.amount; !r.currency.Of(exact).Decimal().Equal(exact) {
		price = exact.String() + " an hour"
	}
	work := map[string]string{"blast": "blasting", "prepare": "preparing surfaces", "mask": "masking", "spray": "painting", "helper": "helping"}[h.Role]
	return fmt.Sprintf("%s of %s by %s at %s (%s)", measure(hours, "h"), work, map[string]string{"volunteer": "volunteers", "paid": "paid staff", "contract": "a contractor"}[h.Labour], price, strings.Join(steps, ", "))
}

// orderText tells what is bought, or given, and for what.
func (r *run) orderText(line *OrderLine, given bool) string {
	name := cmp.Or(line.Name, line.Product)
	if given {
		return fmt.Sprintf("%s of %s, given, %s", measure(line.FromDonations, line.Unit), name, r.purpose(line))
	}
	packs := make([]string, 0, len(line.Packs))
	for _, p := range line.Packs {
		what := "pack"
		if line.kit {
			what = "kit"
		}
		if p.Part != "" {
			what = "tin of " + p.Part
		}
		if p.Count != 1 {
			what = strings.Replace(what, "tin", "tins", 1)
			if p.Part == "" {
				what += "s"
			}
		}
		packs = append(packs, fmt.Sprintf("%d %s of %s at %s", p.Count, what, measure(p.Pack, line.Unit), p.Price))
	}
	if len(packs) == 0 {
		packs = append(packs, "packs not known here")
	}
	return fmt.Sprintf("%s of %s in %s, %s", measure(line.ToBuy, line.Unit), name, inWords(packs), r.purpose(line))
}

// purpose tells what the steps of a line of the order do with it.
func (r *run) purpose(line *OrderLine) string {
	var parts []string
	for _, id := range line.Steps {
		i := slices.IndexFunc(r.estimate.Steps, func(s StepEstimate) bool { return s.ID == id })
		if i < 0 {
			continue
		}
		s := &r.estimate.Steps[i]
		text := measure(s.AreaM2, "m²")
		if painted, ok := r.job.Steps[i].(interface{ film() *FilmPlan }); ok && line.paints(s) {
			text += " in " + coatsText(painted.film().Coats)
		}
		parts = append(parts, fmt.Sprintf("%s (%s)", text, id))
	}
	return "for " + inWords(parts)
}

// paints reports whether the product is what the step paints with, and not tape
// or thinner.
func (line *OrderLine) paints(s *StepEstimate) bool {
	return slices.ContainsFunc(s.Mixing, func(m Mixing) bool { return m.Product == line.Product })
}

func coatsText(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	word := fmt.Sprint(n)
	if n < len(words) {
		word = words[n]
	}
	if n == 1 {
		return word + " coat"
	}
	return word + " coats"
}

// inWords joins a list as people say it: a, b and c.
func inWords(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}
