package properties

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
)

// fundedJob draws a job with everything that money can do: suppliers, dates,
// stock and gifts, sessions, fringe, escalation, tax in prices and on top, reserve
// and a funder's form.
func fundedJob(t *rapid.T) object {
	job := anyJob(t)
	pick := func(name string, of ...any) any { return of[rapid.IntRange(0, len(of)-1).Draw(t, name)] }
	cents := func(name string, most int) string {
		return decimal.New(int64(rapid.IntRange(0, most).Draw(t, name)), -2).StringFixed(2)
	}
	for i, s := range job["steps"].([]any) {
		step := s.(object)
		if pick("dated", true, false).(bool) {
			step["starts"] = "2027-0" + string(rune('1'+i%9)) + "-04T08:00"
		}
		step["labour"] = pick("labour", "volunteer", "paid", "contract")
	}
	labour := job["labour"].(object)
	for name, value := range (object{"fringe_percent": pick("fringe", 0, 7.65, 22), "session_h": 7, "session_setup_h": 0.5, "session_cleanup_h": pick("cleanup", 0, 0.75),
		"batch_h": pick("batch", 0, 0.3), "availability_percent": pick("availability", 75, 100), "efficiency_percent": pick("efficiency", 67, 100)}) {
		labour[name] = value
	}
	labour["contract_tax"] = pick("contract tax", "added", "included", "none")
	tax := pick("item tax", "added", "included", "none")
	job["items"] = []any{
		object{"id": "hire", "category": "hire", "unit_price": cents("hire", 30000), "quantity": rapid.Float64Range(0, 20).Draw(t, "days"), "unit": "day", "tax": tax},
		object{"id": "drums", "category": "disposal", "unit_price": cents("drum", 50000), "of": "waste_kg", "holds": 0.7, "unit": "drum"},
		object{"id": "by-weight", "category": "disposal", "unit_price": "0.8525", "of": "waste_kg", "supplier": "hauler"},
		object{"id": "by-hour", "category": "training", "unit_price": "1.03", "of": pick("of", "hours", "litres", "area_m2", "kilograms", "sessions"), "supplier": "hauler"},
		object{"id": "rig", "category": "equipment", "amount": cents("rig", 3000000), "useful_life_years": pick("life", 0, 1, 8)},
		object{"id": "survey", "category": "survey", "amount": cents("survey", 9000000), "subaward": pick("subaward", true, false)},
		object{"id": "fee", "category": pick("fee", "contingency", "tax", "labour", "materials"), "class": "other", "amount": cents("fee", 9000)},
		object{"id": "room", "category": "space", "amount": cents("room", 50000), "funding": "in_kind", "basis": "rent next door"},
	}
	job["suppliers"] = []any{object{"id": "shop", "products": []any{"epoxy-primer", "detergent", "garnet", "stripper"}, "freight": cents("freight", 9000), "hazardous_freight": cents("hazard", 9000),
		"freight_free_from": pick("free", "0", "200.00"), "minimum_order": pick("minimum", "0", "150.00"), "small_order_charge": "0", "lead_time_days": 8}}
	if pick("charged", true, false).(bool) {
		job["suppliers"].([]any)[0].(object)["minimum_order"] = "150.00"
		job["suppliers"].([]any)[0].(object)["small_order_charge"] = cents("small", 2000)
	}
	job["stock"] = []any{object{"product": "epoxy-primer", "quantity": rapid.Float64Range(0.01, 5).Draw(t, "stock"), "donated": true, "value": cents("gift", 20000), "basis": "list price"},
		object{"product": "detergent", "quantity": rapid.Float64Range(0.01, 5).Draw(t, "soap")}}
	if pick("alike", true, false).(bool) {
		job["same_batch"] = []any{"epoxy-primer"}
	}
	job["escalation"] = object{"series": "an index", "from_index": 229.815, "to_index": 232.945, "of": pick("of what", []any{"materials", "items"}, []any{"items"})}
	job["tax_rounding"] = pick("rounding", "total", "invoice", "line")
	job["prices_include_tax"] = pick("gross", true, false)
	if job["tax_percent"].(float64) > 0 {
		job["items"] = slices.DeleteFunc(job["items"].([]any), func(i any) bool { return i.(object)["category"] == "tax" }) // tax twice is a fault
	}
	job["management_reserve_percent"] = length(0, 20).Draw(t, "reserve")
	job["currency"] = "USD"
	ask := object{"form": "sf-424a", "date": pick("award", "2023-05-01", "2026-10-01"), "indirect": pick("indirect", "none", "de_minimis"), "match_percent": pick("match", 0, 50),
		"own_cash": cents("own", 900000), "exclude_tax": pick("reclaimed", true, false), "include_contingency": pick("contingent", true, false)}
	if pick("free form", true, false).(bool) {
		ask["form"] = "free"
		delete(ask, "own_cash")
		ask["request"] = cents("request", 900000)
	}
	job["funding"] = ask
	return job
}

// No cent is lost or made: from the packs, the hours and the items to the lines,
// from the lines to the total, and from there to the rows of the form, in JSON,
// in CSV and in the table (identity).
func TestNoCentIsLost(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		e := b.run(t, fundedJob(t))
		chained(t, e)
		purchasesAddUp(t, e)
		linesAddUp(t, e)
		formAddsUp(t, e)
		jsonAddsUp(t, e)
		csvAddsUp(t, e)
		tableAddsUp(t, e)
	})
}

func purchasesAddUp(t *rapid.T, e *estimate.Estimate) {
	var goods, beside, packs money.Amount
	for _, p := range e.OrderBySupplier {
		var sum money.Amount
		for _, l := range p.Lines {
			for range l.Count {
				sum = sum.Add(l.Price)
			}
			packs = packs.Add(l.Cost)
		}
		sameMoney(t, sum, p.Goods, "goods of "+p.Supplier)
		sameMoney(t, p.Goods.Add(p.Freight).Add(p.HazardousFreight).Add(p.SmallOrderCharge), p.Total, "order from "+p.Supplier)
		goods, beside = goods.Add(p.Goods), beside.Add(p.Total).Sub(p.Goods)
	}
	sameMoney(t, packs, goods, "lines sent out")
	sameMoney(t, e.Budget.MaterialsOrdered, goods, "the order is all sent out")
	var freight money.Amount
	for _, l := range e.Budget.Lines {
		if l.Category == "freight" {
			freight = freight.Add(l.Amount)
		}
	}
	sameMoney(t, beside, freight, "freight in the budget")
}

func linesAddUp(t *rapid.T, e *estimate.Estimate) {
	b := e.Budget
	var total, tax money.Amount
	byCategory := map[string]money.Amount{}
	seen := map[string]bool{}
	for _, l := range b.Lines {
		require.False(t, seen[l.ID], "line %s stands once", l.ID)
		seen[l.ID] = true
		require.Contains(t, []string{"cash", "in_kind"}, l.Funding)
		require.NotEmpty(t, l.Category)
		total, tax = total.Add(l.Amount), tax.Add(l.Tax)
		byCategory[l.Category] = byCategory[l.Category].Add(l.Amount)
	}
	sameMoney(t, total, b.Total, "lines")
	sameMoney(t, tax, b.Tax, "tax, line by line")
	require.Len(t, byCategory, len(b.Categories))
	for _, c := range b.Categories {
		sameMoney(t, byCategory[c.Category], c.Total, c.Category)
	}
	hours := 0.0
	var labour money.Amount
	for _, h := range e.Totals.HoursByRole {
		hours, labour = hours+h.Hours, labour.Add(h.Cost)
	}
	same(t, e.Totals.Hours, hours, "hours by role")
	sameMoney(t, e.Totals.StepsLabourCost, labour, "cost by role")
}

func formAddsUp(t *rapid.T, e *estimate.Estimate) {
	v := e.Funding
	var direct, total estimate.FundingRow
	for _, r := range v.Rows {
		if r.ID == "program_income" {
			continue
		}
		sameMoney(t, r.Requested.Add(r.OwnCash).Add(r.InKind), r.Total, r.Category)
		require.GreaterOrEqual(t, r.Requested.Sign(), 0, r.Category)
		switch r.ID {
		case "total_direct":
			direct = r
		case "total":
			total = r
		}
	}
	var sum, indirect money.Amount
	for _, r := range v.Rows {
		switch r.ID {
		case "indirect":
			indirect = r.Total
		case "total_direct", "total", "program_income":
		default:
			sum = sum.Add(r.Total)
		}
	}
	sameMoney(t, sum, direct.Total, "direct cost")
	sameMoney(t, direct.Total.Add(indirect), total.Total, "the form's total")
	sameMoney(t, v.Requested.Add(v.Match), v.Total, "request and match")
	var told, left money.Amount
	for _, n := range v.Narrative {
		for _, l := range n.Lines {
			require.NotEmpty(t, l.Text)
			told = told.Add(l.Amount)
		}
	}
	sameMoney(t, direct.Total, told, "the narrative")
	for _, x := range v.Excluded {
		if x.From == "form" && x.Amount != nil {
			left = left.Add(*x.Amount)
		}
	}
	sameMoney(t, e.Budget.Total, direct.Total.Add(left), "the form and what is left out are the budget")
	var base money.Amount
	for _, x := range v.Excluded {
		if x.From == "indirect_base" {
			base = base.Add(*x.Amount)
		}
	}
	if v.IndirectPercent > 0 {
		sameMoney(t, v.DirectCash, v.IndirectBase.Add(base), "the base and what it leaves out")
	}
}

func jsonAddsUp(t *rapid.T, e *estimate.Estimate) {
	encoded, err := json.Marshal(e)
	require.NoError(t, err)
	var back struct {
		Budget struct {
			Total string
			Lines []struct{ Amount string }
		}
	}
	require.NoError(t, json.Unmarshal(encoded, &back))
	sum := decimal.Zero
	for _, l := range back.Budget.Lines {
		sum = sum.Add(decimalOf(t, l.Amount))
	}
	require.Equal(t, back.Budget.Total, sum.StringFixed(2))
}

// column adds up a column of a CSV table.
func column(t *rapid.T, e *estimate.Estimate, table, name string, choose func(map[string]string) bool) string {
	text, err := report.CSV(e, table)
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	require.NoError(t, err)
	sum := decimal.Zero
	for _, row := range rows[1:] {
		cells := map[string]string{}
		for k, head := range rows[0] {
			cells[head] = row[k]
		}
		require.Contains(t, cells, name)
		if cells[name] != "" && choose(cells) {
			sum = sum.Add(decimalOf(t, cells[name]))
		}
	}
	return sum.StringFixed(2)
}

func csvAddsUp(t *rapid.T, e *estimate.Estimate) {
	all := func(map[string]string) bool { return true }
	require.Equal(t, e.Budget.CashNeeded.String(), column(t, e, "lines", "cash_USD", all))
	require.Equal(t, e.Budget.InKind.String(), column(t, e, "lines", "in_kind_USD", all))
	require.Equal(t, e.Budget.Tax.String(), column(t, e, "lines", "tax_on_it_USD", all))
	require.Equal(t, e.Totals.StepsLabourCost.String(), column(t, e, "hours", "cost_USD", all))
	require.Equal(t, e.Budget.MaterialsOrdered.String(), column(t, e, "order", "line_cost_USD", all))
	require.Equal(t, e.Budget.MaterialsOrdered.String(), column(t, e, "buyers", "cost_USD", func(row map[string]string) bool { return row["product"] != "" }))
	require.Equal(t, e.Budget.Total.String(), column(t, e, "budget", "total_USD", func(row map[string]string) bool { return row["category"] != "total" }))
	require.Equal(t, e.Funding.Total.String(), column(t, e, "funding", "total_USD", func(row map[string]string) bool {
		return !strings.Contains(strings.ToLower(row["category"]), "total") && row["category"] != "Program Income"
	}))
	narrated := decimalOf(t, column(t, e, "narrative", "cash_USD", all)).Add(decimalOf(t, column(t, e, "narrative", "in_kind_USD", all)))
	require.Equal(t, e.Funding.DirectCash.Add(e.Funding.InKind).String(), narrated.StringFixed(2))
}

// tableAddsUp reads the budget of the text table back: the last figures of its
// rows are the totals of the headings.
func tableAddsUp(t *rapid.T, e *estimate.Estimate) {
	_, budget, found := strings.Cut(report.Table(e, units.SI), "\nBUDGET in USD")
	require.True(t, found)
	sum, all := decimal.Zero, ""
	for _, line := range strings.Split(budget, "\n")[3:] {
		cells := strings.Fields(line)
		last := cells[len(cells)-1]
		if cells[0] == "all" {
			all = last
			break
		}
		sum = sum.Add(decimalOf(t, last))
	}
	require.Equal(t, e.Budget.Total.String(), all)
	require.Equal(t, all, sum.StringFixed(2))
}
