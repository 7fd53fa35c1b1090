package report

import (
	"cmp"
	"fmt"
	"strconv"

	"filmbuild/estimate"
)

// purchases prints the lists for the suppliers, where there is anything to tell
// beyond the order: who sells it, when to order, or freight.
func (t *table) purchases() {
	list := t.e.OrderBySupplier
	if len(list) == 0 || (len(list) == 1 && list[0].Supplier == "" && list[0].OrderBy == "") {
		return
	}
	for i := range list {
		p := &list[i]
		title := "ORDER from " + cmp.Or(p.Name, p.Supplier, "whoever sells it")
		if p.OrderBy != "" {
			title += " by " + p.OrderBy
		}
		t.section(title)
		g := grid{columns: []column{{"product", false}, {"packs", true}, {"each", true}, {t.e.Currency, true}}}
		for _, l := range p.Lines {
			name := cmp.Or(l.Name, l.Product)
			if l.Part != "" {
				name += ", " + l.Part
			}
			if note := buyerNote(l); note != "" {
				name += " (" + note + ")"
			}
			g.row(name, fmt.Sprintf("%d × %s", l.Count, t.measured(l.Pack, l.Unit)), l.Price.String(), l.Cost.String())
		}
		for _, beside := range []struct {
			name string
			cost string
			any  bool
		}{{"freight", p.Freight.String(), !p.Freight.IsZero()}, {"freight of dangerous goods", p.HazardousFreight.String(), !p.HazardousFreight.IsZero()},
			{"charge on a small order", p.SmallOrderCharge.String(), !p.SmallOrderCharge.IsZero()}} {
			if beside.any {
				g.row(beside.name, "", "", beside.cost)
			}
		}
		g.row("all", "", "", p.Total.String())
		g.write(&t.out)
	}
}

// stock tells what comes from stock and what is left over of a line of the order.
func (t *table) stock() {
	for i := range t.e.Order {
		line := &t.e.Order[i]
		name := cmp.Or(line.Name, line.Product)
		if line.FromStock > 0 {
			paragraph(&t.out, "", fmt.Sprintf("%s: %s comes from stock.", name, t.measured(line.FromStock, line.Unit)))
		}
		if line.FromDonations > 0 {
			paragraph(&t.out, "", fmt.Sprintf("%s: %s is given, worth %s.", name, t.measured(line.FromDonations, line.Unit), t.amount(line.DonatedValue)))
		}
	}
}

// hours prints the hours by role, where a job has more than one role.
func (t *table) hours() {
	list := t.e.Totals.HoursByRole
	if len(list) < 2 {
		return
	}
	t.section("HOURS by role")
	g := grid{columns: []column{{"role", false}, {"by", false}, {"hours", true}, {t.e.Currency, true}}}
	for _, h := range list {
		g.row(h.Role, h.Labour, fixed(h.Hours, 1), h.Cost.String())
	}
	if t.e.Totals.Sessions > 0 {
		g.row("sessions", "", strconv.Itoa(t.e.Totals.Sessions), "")
	}
	g.write(&t.out)
}

// funding prints the rows of the funder's form, the costs in plain words, and
// what is left out.
func (t *table) funding() {
	v := t.e.Funding
	if v == nil {
		return
	}
	t.section("FUNDING in " + t.e.Currency + ": " + v.Title)
	g := grid{columns: []column{{"", false}, {"", false}, {"requested", true}, {"own cash", true}, {"in kind", true}, {"total", true}}}
	for _, r := range v.Rows {
		g.row(r.Row, r.Category, r.Requested.String(), r.OwnCash.String(), r.InKind.String(), r.Total.String())
	}
	g.write(&t.out)
	paragraph(&t.out, "", fmt.Sprintf("The applicant brings %s of the project (%s); %s is asked for.", t.amount(v.Match), fmt.Sprintf("%.1f %%", v.MatchPercent), t.amount(v.Requested)))
	if !v.Indirect.IsZero() {
		paragraph(&t.out, "", fmt.Sprintf("Indirect cost is %g %% of %s.", v.IndirectPercent, t.amount(v.IndirectBase)))
	}
	if v.CostPerM2 != nil {
		paragraph(&t.out, "", fmt.Sprintf("%s per square metre, %s of it in cash.", t.amount(*v.CostPerM2), t.amount(*v.CashPerM2)))
	}
	for _, n := range v.Narrative {
		t.out.WriteString("\n" + n.Category + "\n")
		for _, l := range n.Lines {
			paragraph(&t.out, "- ", narrated(l))
		}
	}
	t.excluded("Not in the form", "form")
	t.excluded("Not in the base of indirect cost", "indirect_base")
	for _, note := range v.Notes {
		paragraph(&t.out, "* ", note)
	}
}

// excluded prints what the form, or the base of indirect cost, does not hold.
func (t *table) excluded(title, from string) {
	for _, x := range t.e.Funding.Excluded {
		if x.From != from {
			continue
		}
		if title != "" {
			t.out.WriteString("\n" + title + "\n")
			title = ""
		}
		said := x.What
		if x.Amount != nil {
			said += " (" + t.amount(*x.Amount) + ")"
		}
		paragraph(&t.out, "- ", said+": "+x.Why)
	}
}

func narrated(l estimate.NarrativeLine) string {
	if l.Funding == "in_kind" {
		return l.Text + ": " + l.Amount.String() + " in kind"
	}
	return l.Text + ": " + l.Amount.String()
}
