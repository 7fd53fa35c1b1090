package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

// Invented products and prices; every figure below is worked by hand (identity).
func soap(packs []doc, more doc) doc {
	p := doc{"id": "soap", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 1, "density_kg_l": 1, "packs": packs}
	for name, value := range more {
		p[name] = value
	}
	return p
}

func washing(id, starts string, areaM2 float64) (doc, doc) {
	step := doc{"id": id, "operation": "wash", "on": []string{"part-" + id}, "product": "soap", "rate_m2_h": 10}
	if starts != "" {
		step["starts"] = starts
	}
	return flat("part-"+id, areaM2, 0), step
}

// washJob washes parts of the areas given, each on its date.
func washJob(product doc, dates []string, areas []float64, more doc) doc {
	var parts, steps []doc
	for i, area := range areas {
		part, step := washing(string(rune('a'+i)), dates[i], area)
		parts, steps = append(parts, part), append(steps, step)
	}
	job := doc{"components": parts, "steps": steps, "products": []doc{product}}
	for name, value := range more {
		job[name] = value
	}
	return job
}

// Ten litres and a tenth are needed: 2 come from stock, 3 of a gift of 6 worth 60
// at 30, and 6 are bought as 5 + 1.
func TestStockAndGiftsComeOffFirst(t *testing.T) {
	e := work(t, washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}, {"pack_l": 1, "price": "9.00"}}, nil), []string{""}, []float64{10}, doc{"allowance_percent": 10,
		"stock": []doc{{"product": "soap", "quantity": 2}, {"product": "soap", "quantity": 3, "donated": true, "value": "30.00", "basis": "list price"}}}))
	line := e.Order[0]
	assert.InDelta(t, 11, line.Needed, 1e-9)
	assert.InDelta(t, 2, line.FromStock, 1e-9)
	assert.InDelta(t, 3, line.FromDonations, 1e-9)
	assert.InDelta(t, 6, line.ToBuy, 1e-9)
	assert.Equal(t, "49.00 30.00", line.Cost.String()+" "+line.DonatedValue.String())
	assert.Equal(t, "71.82", e.Steps[0].MaterialCost.String(), "10 of 11 L, which cost 49 and a gift of 30")
	assert.Equal(t, "49.00 30.00", e.Budget.Cash.String()+" "+e.Budget.InKind.String())
	assert.Equal(t, "list price", e.Budget.Lines[1].Basis)
	assert.Equal(t, "in_kind", e.Budget.Lines[1].Funding)
}

// All of it in stock: nothing is bought, and what stays is told.
func TestEnoughInStock(t *testing.T) {
	e := work(t, washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}}, nil), []string{""}, []float64{10}, doc{"stock": []doc{{"product": "soap", "quantity": 12}, {"product": "detergent", "quantity": 1}}}))
	assert.Zero(t, e.Order[0].ToBuy)
	assert.Empty(t, e.Order[0].Packs)
	assert.True(t, e.Budget.Total.IsZero())
	assert.Empty(t, e.Budget.Unpriced)
	require.Len(t, assumed(e, "stock of soap that is left"), 1)
	assert.InDelta(t, 2, assumed(e, "stock of soap that is left")[0].Value, 1e-9)
	assert.Contains(t, e.Warnings, "detergent in stock is used by no step")
}

// Ordered ten working days before the first use, weekends and a holiday left out:
// from Monday 2027-05-31 back to Friday 2027-05-14.
func TestOrderDate(t *testing.T) {
	product := soap([]doc{{"pack_l": 5, "price": "40.00"}}, doc{"supplier": "Shop Ltd"})
	job := washJob(product, []string{"2027-06-07", "2027-05-31"}, []float64{3, 4}, doc{"suppliers": []doc{{"id": "shop", "name": "Shop Ltd", "lead_time_days": 10}}, "workdays": doc{"free": []string{"saturday", "sunday"}, "holidays": []string{"2027-05-17"}}})
	line := work(t, job).Order[0]
	assert.Equal(t, []string{"2027-05-14", "2027-05-31", "2027-06-07", "shop"}, []string{line.OrderBy, line.UseFrom, line.UseTo, line.Supplier})
	product["lead_time_days"] = 1
	assert.Equal(t, "2027-05-28", work(t, job).Order[0].OrderBy, "the product's own lead time comes first")
	job["workdays"] = doc{"free": []string{}}
	assert.Equal(t, "2027-05-30", work(t, job).Order[0].OrderBy, "people who work all week")
}

// A product that keeps 30 days and is used on three days in 70 takes two
// deliveries; of one batch it takes one, and a warning.
func TestShelfLifePartsDeliveries(t *testing.T) {
	job := washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}}, doc{"shelf_life_days": 30}), []string{"2027-03-01", "2027-03-31", "2027-05-10"}, []float64{3, 4, 1}, nil)
	e := work(t, job)
	require.Len(t, e.Order, 2)
	assert.Equal(t, []string{"a", "b"}, e.Order[0].Steps)
	assert.InDelta(t, 7, e.Order[0].Needed, 1e-9)
	assert.Equal(t, "2027-05-10", e.Order[1].OrderBy)
	assert.Len(t, e.OrderBySupplier, 2)
	assert.Equal(t, "40.00", e.Order[1].Cost.String())
	assert.Equal(t, "120.00", e.Budget.Total.String())
	job["same_batch"] = []string{"soap"}
	e = work(t, job)
	require.Len(t, e.Order, 1)
	assert.Contains(t, e.Warnings[0], "keeps 30 days and is used from 2027-03-01 to 2027-05-10")
}

// Stock that has passed its date by the last use stays where it is.
func TestStockPastItsDate(t *testing.T) {
	job := washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}}, nil), []string{"2027-03-01"}, []float64{3}, doc{"stock": []doc{{"product": "soap", "quantity": 3, "use_by": "2027-02-28"}}})
	assert.InDelta(t, 3, work(t, job).Order[0].ToBuy, 1e-9)
	job["stock"] = []doc{{"product": "soap", "quantity": 3, "use_by": "2027-03-01"}}
	assert.Zero(t, work(t, job).Order[0].ToBuy)
}

// One batch comes in one size: 12 L as 3 of 4 L for 99, and not as 2 of 5 L and 2
// of 1 L for 98.
func TestOneBatchInOneSize(t *testing.T) {
	packs := []doc{{"pack_l": 5, "price": "40.00"}, {"pack_l": 4, "price": "33.00"}, {"pack_l": 1, "price": "9.00"}}
	job := washJob(soap(packs, nil), []string{""}, []float64{12}, nil)
	assert.Equal(t, "98.00", work(t, job).Budget.Total.String())
	job["same_batch"] = []string{"soap"}
	e := work(t, job)
	assert.Equal(t, []estimate.OrderPack{{Pack: 4, Count: 3, Price: e.Order[0].Packs[0].Price}}, e.Order[0].Packs)
	assert.True(t, e.OrderBySupplier[0].Lines[0].SameBatch)
}

// A mix of 4 to 1 sold apart: 6 L need 4.8 of base and 1.2 of hardener.
func TestPartsAreBoughtInTheirRatio(t *testing.T) {
	paint := doc{"id": "two", "kind": "paint", "volume_solids_percent": 100, "mix": doc{"base": 4, "hardener": 1}, "dry_film_density_kg_l": 1.5,
		"packs": []doc{{"part": "base", "pack_l": 4, "price": "80.00"}, {"part": "base", "pack_l": 1, "price": "25.00"}, {"part": "hardener", "pack_l": 1, "price": "30.00"}}}
	e := work(t, doc{"components": []doc{flat("a", 60, 0)}, "products": []doc{paint}, "steps": []doc{{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "two", "dry_film_um": 100, "method": "brush", "transfer_efficiency_percent": 100}}})
	line := e.Order[0]
	assert.InDelta(t, 6, line.Needed, 1e-9)
	counts := map[string]int{}
	for _, p := range line.Packs {
		counts[p.Part] += p.Count
	}
	assert.Equal(t, map[string]int{"base": 2, "hardener": 2}, counts, "4 + 1 L of base, 2 of hardener")
	assert.Equal(t, "165.00", line.Cost.String())
	assert.InDelta(t, 6.25, line.Bought, 1e-9, "5 L of base mix 6.25 L, 2 L of hardener 10")
	assert.InDelta(t, 0.25, line.LeftOver, 1e-9)
}

// Freight, dangerous goods, and an order below its minimum.
func TestWhatASupplierTakes(t *testing.T) {
	shop := doc{"id": "shop", "products": []string{"soap"}, "freight": "12.50", "freight_free_from": "100", "hazardous_freight": "40", "minimum_order": "50", "small_order_charge": "7.50"}
	bought := func(area float64, more doc) estimate.Purchase {
		e := work(t, washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}}, more), []string{""}, []float64{area}, doc{"suppliers": []doc{shop}, "tax_percent": 10}))
		assert.Zero(t, e.OrderBySupplier[0].Total.Add(e.Budget.Tax).Cmp(e.Budget.Total), "freight is in the budget, and taxed")
		return e.OrderBySupplier[0]
	}
	p := bought(3, doc{"hazards": []string{"alkali"}})
	assert.Equal(t, "40.00 12.50 40.00 7.50 100.00", p.Goods.String()+" "+p.Freight.String()+" "+p.HazardousFreight.String()+" "+p.SmallOrderCharge.String()+" "+p.Total.String())
	assert.Equal(t, "10.00", p.BelowMinimum.String())
	p = bought(12, nil)
	assert.Equal(t, "120.00 0.00 0.00 0.00", p.Goods.String()+" "+p.Freight.String()+" "+p.HazardousFreight.String()+" "+p.SmallOrderCharge.String())
	assert.Nil(t, p.BelowMinimum)
	assert.Equal(t, "40.00", bought(3, doc{"hazardous_freight": true}).HazardousFreight.String())
	assert.Equal(t, "0.00", bought(3, doc{"hazards": []string{"solvent"}, "hazardous_freight": false}).HazardousFreight.String())
}

// Orders that fall due within a fortnight go out as one, as far as the goods keep.
func TestOrdersAreCombined(t *testing.T) {
	job := func(second string, days any, keeps any) int {
		other := doc{"id": "wax", "kind": "liquid", "use": "protective", "coverage_l_m2": 1, "packs": []doc{{"pack_l": 5, "price": "40.00"}}, "shelf_life_days": keeps}
		a, s := washing("a", "2027-03-01", 3)
		b, u := washing("b", second, 3)
		u["operation"], u["product"] = "protect", "wax"
		shop := doc{"id": "shop", "products": []string{"soap", "wax"}}
		if days != nil {
			shop["combine_days"] = days
		}
		return len(work(t, doc{"components": []doc{a, b}, "steps": []doc{s, u}, "products": []doc{soap([]doc{{"pack_l": 5, "price": "40.00"}}, nil), other}, "suppliers": []doc{shop}}).OrderBySupplier)
	}
	assert.Equal(t, 1, job("2027-03-15", nil, 365))
	assert.Equal(t, 2, job("2027-03-16", nil, 365))
	assert.Equal(t, 2, job("2027-03-15", nil, 13), "it would not keep")
	assert.Equal(t, 1, job("2027-04-30", 60, 365))
	assert.Equal(t, 2, job("2027-03-02", 0, 365))
}

// 3 L are needed and 8 L is the least that is sold: two packs of 5.
func TestLeastQuantity(t *testing.T) {
	e := work(t, washJob(soap([]doc{{"pack_l": 5, "price": "40.00"}}, doc{"minimum_order": 8}), []string{""}, []float64{3}, nil))
	assert.Equal(t, 2, e.Order[0].Packs[0].Count)
	assert.InDelta(t, 7, e.Order[0].LeftOver, 1e-9)
	assert.Equal(t, "1 unopened of 5 L and 2 L in an opened one", e.Order[0].LeftOverNote)
}
