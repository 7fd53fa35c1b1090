package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

func told(v *estimate.FundingView) []string {
	var lines []string
	for _, n := range v.Narrative {
		for _, l := range n.Lines {
			lines = append(lines, n.ID+": "+l.Text+": "+l.Amount.String())
		}
	}
	return lines
}

// What a funder reads: quantities, packs, prices, areas, coats, rates and their
// basis, in plain words. Invented figures; by hand: 118 m² at 100 µm of a paint
// without solvent are 11.8 L, in three kits of 4 L.
func TestNarrativeInPlainWords(t *testing.T) {
	paint := doc{"id": "primer", "name": "epoxy primer", "kind": "paint", "volume_solids_percent": 100, "dry_film_density_kg_l": 1.5, "mix": doc{"base": 3, "hardener": 1}, "packs": []doc{{"pack_l": 4, "price": "150.00"}}}
	coat := func(id, labour string) doc {
		return doc{"id": id, "operation": "coat", "on": []string{"a"}, "product": "primer", "dry_film_um": 50, "method": "brush", "cleaning_l": 0, "transfer_efficiency_percent": 100, "rate_m2_h": 11.8, "labour": labour}
	}
	e := work(t, doc{"components": []doc{flat("a", 118, 0)}, "products": []doc{paint}, "steps": []doc{coat("first", "volunteer"), coat("second", "paid")},
		"labour": doc{"volunteer_rate": "24", "paid_rate": "31.255", "volunteer_basis": "similar_work", "volunteer_source": "pay scale of 2026"}, "tax_percent": 10,
		"items":   []doc{{"id": "air", "name": "compressor on hire", "category": "hire", "unit_price": "120", "quantity": 5, "unit": "days"}},
		"funding": doc{"form": "free", "categories": []doc{{"id": "people", "name": "People", "of": []string{"labour"}}, {"id": "things", "of": []string{"materials", "hire"}}}, "request": "1000"}})
	assert.Equal(t, []string{
		"people: 10 h of painting by volunteers at 24.00 an hour (first), valued by pay for similar work: pay scale of 2026: 240.00",
		"people: 10 h of painting by paid staff at 31.255 an hour (second): 312.55",
		"things: 11.8 L of epoxy primer in 3 kits of 4 L at 150.00, for 118 m² in one coat (first) and 118 m² in one coat (second), with 45.00 tax: 495.00",
		"things: Compressor on hire: 5 days at 120.00, with 60.00 tax: 660.00",
	}, told(e.Funding))
	assert.Equal(t, "1707.55", e.Funding.Total.String())
	assert.Equal(t, "14.47", e.Funding.CostPerM2.String(), "1707.55 over 118 m²")
	assert.Equal(t, "12.44", e.Funding.CashPerM2.String())
	assert.Equal(t, "1000.00 467.55", e.Funding.Requested.String()+" "+e.Funding.OwnCash.String())
	var rows []string
	for _, r := range e.Funding.Rows {
		rows = append(rows, r.Row+" "+r.Category+" "+r.Total.String())
	}
	assert.Equal(t, []string{"1 People 552.55", "2 things 1155.00", " Total direct cost 1707.55", " Indirect cost 0.00", " Total 1707.55"}, rows)
}

// A request beyond the cash is taken down to it; own cash beyond it leaves nothing
// to ask for; a match that is missing is told. Each is warned of.
func TestRequestsBeyondTheCash(t *testing.T) {
	asked := func(ask doc) (*estimate.FundingView, string) {
		ask["form"] = "free"
		e := work(t, doc{"items": []doc{{"id": "a", "amount": "100"}}, "funding": ask})
		return e.Funding, strings.Join(e.Warnings, "\n")
	}
	v, warned := asked(doc{"request": "150"})
	assert.Equal(t, "100.00", v.Requested.String())
	assert.Contains(t, warned, "50.00 more than the cash")
	v, warned = asked(doc{"own_cash": "150"})
	assert.Equal(t, "0.00 100.00", v.Requested.String()+" "+v.OwnCash.String())
	assert.Contains(t, warned, "nothing need be asked for")
	v, warned = asked(doc{"own_cash": "20", "match_percent": 50})
	assert.Equal(t, "30.00", v.MatchShort.String())
	assert.Contains(t, warned, "30.00 is missing")
}

// A negotiated rate, of all direct cost or of the modified base.
func TestNegotiatedRate(t *testing.T) {
	asked := func(base string) string {
		ask := doc{"form": "sf-424a", "date": "2026-01-01", "indirect": "negotiated", "indirect_percent": 26, "indirect_base": base}
		return work(t, doc{"items": []doc{{"id": "a", "amount": "100", "category": "supplies"}, {"id": "b", "amount": "100", "category": "hire"}}, "funding": ask}).Funding.Indirect.String()
	}
	assert.Equal(t, "52.00", asked("direct"))
	assert.Equal(t, "26.00", asked("mtdc"))
}

// Drums are counted whole, and disposal by weight is not: 2 kg of solids are lost
// of 4 (identity).
func TestDisposalByWeightAndByDrum(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 20, 0)},
		"products": []doc{{"id": "p", "kind": "paint", "volume_solids_percent": 100, "dry_film_density_kg_l": 1}},
		"steps":    []doc{{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "p", "dry_film_um": 100, "method": "hvlp", "cleaning_l": 0, "transfer_efficiency_percent": 50}},
		"items":    []doc{{"id": "kg", "of": "waste_kg", "unit_price": "0.85"}, {"id": "drum", "of": "waste_kg", "holds": 1.5, "unit_price": "310"}}})
	require.InDelta(t, 2, e.Totals.WasteKg, 1e-9)
	assert.Equal(t, "1.70 620.00", e.Items[0].Amount.String()+" "+e.Items[1].Amount.String())
	assert.Equal(t, 2.0, e.Items[1].Quantity)
}

// Prices dated on or after the date they are carried to stand as they are.
func TestPricesOfTheDayAreNotCarried(t *testing.T) {
	carried := func(date string) string {
		return work(t, doc{"items": []doc{{"id": "a", "amount": "100", "price_date": date}}, "escalation": doc{"from_index": 100, "to_index": 110, "from_date": "2025-01-01", "to_date": "2026-01-01"}}).Budget.Total.String()
	}
	assert.Equal(t, "110.00 110.00 100.00", carried("")+" "+carried("2025-12-31")+" "+carried("2026-01-01"))
}

// Contingency and management reserve are two lines, both of the cash.
func TestReserveBesideContingency(t *testing.T) {
	b := work(t, doc{"items": []doc{{"id": "a", "amount": "100"}, {"id": "b", "amount": "50", "funding": "in_kind"}}, "contingency_percent": 10, "management_reserve_percent": 5}).Budget
	assert.Equal(t, "10.00 5.00 115.00 165.00", b.Contingency.String()+" "+b.ManagementReserve.String()+" "+b.CashNeeded.String()+" "+b.Total.String())
}
