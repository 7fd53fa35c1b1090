package estimate_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
)

// Every fault of money, supply, labour and funding, at its place and with its
// code; several at once.
func TestFaultsOfMoney(t *testing.T) {
	item := func(more doc) doc {
		members := doc{"id": "i", "amount": "1"}
		for name, value := range more {
			if members[name] = value; value == nil {
				delete(members, name)
			}
		}
		return doc{"items": []doc{members}}
	}
	with := func(name string, value any) doc { return doc{"items": []doc{{"id": "i", "amount": "1"}}, name: value} }
	product := func(pack doc) doc {
		return with("products", []doc{{"id": "soap", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 1, "packs": []doc{{"pack_l": 1, "price": "1.00"}, pack}}})
	}
	ask := func(more doc) doc {
		f := doc{"form": "sf-424a", "date": "2026-01-01"}
		for name, value := range more {
			f[name] = value
		}
		return with("funding", f)
	}
	for name, c := range map[string]struct {
		job  doc
		want map[string]string
	}{
		"no money":                 {item(doc{"amount": nil}), map[string]string{"/items/0/amount": "required"}},
		"two kinds of money":       {item(doc{"unit_price": "1", "quantity": 1}), map[string]string{"/items/0/unit_price": "inconsistent"}},
		"quantity of a lump sum":   {item(doc{"quantity": 2, "of": "hours", "holds": 3}), map[string]string{"/items/0/quantity": "not_applicable", "/items/0/of": "not_applicable", "/items/0/holds": "not_applicable"}},
		"price without quantity":   {item(doc{"amount": nil, "unit_price": "1"}), map[string]string{"/items/0/quantity": "required"}},
		"quantity told twice":      {item(doc{"amount": nil, "unit_price": "1", "quantity": 2, "of": "hours"}), map[string]string{"/items/0/of": "inconsistent"}},
		"an unknown total":         {item(doc{"amount": nil, "unit_price": "1", "of": "smell"}), map[string]string{"/items/0/of": "unknown_kind"}},
		"holds of nothing":         {item(doc{"amount": nil, "unit_price": "1", "quantity": 1, "holds": 2}), map[string]string{"/items/0/holds": "not_applicable"}},
		"a negative price":         {item(doc{"amount": nil, "unit_price": "-1", "quantity": 1}), map[string]string{"/items/0/unit_price": "out_of_range"}},
		"mixed currencies":         {item(doc{"currency": "EUR"}), map[string]string{"/items/0/currency": "inconsistent"}},
		"a price of another":       {product(doc{"pack_l": 2, "price": "1.00", "currency": "GBP"}), map[string]string{"/products/0/packs/1/currency": "inconsistent"}},
		"a date that is none":      {product(doc{"pack_l": 2, "price": "1.00", "price_date": "May 2026"}), map[string]string{"/products/0/packs/1/price_date": "wrong_type"}},
		"packs unlike in tax":      {product(doc{"pack_l": 2, "price": "1.00", "tax": "none"}), map[string]string{"/products/0/packs/1/tax": "inconsistent"}},
		"tax on what is in kind":   {item(doc{"funding": "in_kind", "tax": "added"}), map[string]string{"/items/0/tax": "not_applicable"}},
		"tax twice":                {doc{"items": []doc{{"id": "i", "amount": "1", "category": "VAT"}}, "tax_percent": 20}, map[string]string{"/items/0/category": "inconsistent"}},
		"an unknown rounding":      {with("tax_rounding", "never"), map[string]string{"/tax_rounding": "unknown_kind"}},
		"an index of nothing":      {with("escalation", doc{"from_index": 100}), map[string]string{"/escalation/to_index": "out_of_range"}},
		"an index backwards":       {with("escalation", doc{"from_index": 100, "to_index": 101, "from_date": "2026-02-01", "to_date": "2026-01-01", "of": []string{"wages"}}), map[string]string{"/escalation/to_date": "inconsistent", "/escalation/of/0": "unknown_kind"}},
		"stock of nothing known":   {with("stock", []doc{{"product": "unobtainium", "quantity": 0}}), map[string]string{"/stock/0/product": "unknown_reference", "/stock/0/quantity": "out_of_range"}},
		"value of what is owned":   {with("stock", []doc{{"product": "detergent", "quantity": 1, "value": "5"}}), map[string]string{"/stock/0/value": "not_applicable"}},
		"suppliers at odds":        {with("suppliers", []doc{{"id": "s", "products": []string{"detergent"}}, {"id": "s", "products": []string{"detergent", "x"}, "small_order_charge": "5", "freight": "-1"}}), map[string]string{"/suppliers/1/id": "duplicate_id", "/suppliers/1/products/0": "duplicate_id", "/suppliers/1/products/1": "unknown_reference", "/suppliers/1/minimum_order": "required", "/suppliers/1/freight": "out_of_range"}},
		"no day to work":           {with("workdays", doc{"free": []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}}), map[string]string{"/workdays/free": "inconsistent"}},
		"days that are none":       {with("workdays", doc{"free": []string{"caturday"}, "holidays": []string{"2026-02-30", ""}}), map[string]string{"/workdays/free/0": "unknown_kind", "/workdays/holidays/0": "wrong_type", "/workdays/holidays/1": "wrong_type"}},
		"rates twice":              {with("labour", doc{"volunteer_rate": "1", "volunteer_day_rate": "7"}), map[string]string{"/labour/volunteer_day_rate": "inconsistent"}},
		"a day of no hours":        {with("labour", doc{"volunteer_day_rate": "7", "volunteer_basis": "guess", "contract_tax": "maybe"}), map[string]string{"/labour/volunteer_day_h": "required", "/labour/volunteer_basis": "unknown_kind", "/labour/contract_tax": "unknown_kind"}},
		"sessions of no length":    {with("labour", doc{"session_setup_h": 1}), map[string]string{"/labour/session_h": "required"}},
		"sessions without work":    {with("labour", doc{"session_h": 1, "session_setup_h": 0.5, "session_cleanup_h": 0.5}), map[string]string{"/labour/session_h": "inconsistent"}},
		"an unknown role":          {with("labour", doc{"roles": doc{"wizard": doc{}, "spray": doc{"paid_rate": "-1"}}}), map[string]string{"/labour/roles/wizard": "unknown_kind", "/labour/roles/spray/paid_rate": "out_of_range"}},
		"no availability":          {with("labour", doc{"availability_percent": 0}), map[string]string{"/labour/availability_percent": "out_of_range"}},
		"an unknown form":          {ask(doc{"form": "blue"}), map[string]string{"/funding/form": "unknown_kind"}},
		"a form without date":      {ask(doc{"date": ""}), map[string]string{"/funding/date": "required"}},
		"a form before its rules":  {ask(doc{"date": "1999-01-01"}), map[string]string{"/funding/date": "out_of_range"}},
		"rates of indirect cost":   {ask(doc{"indirect": "de_minimis", "indirect_percent": 16}), map[string]string{"/funding/indirect_percent": "out_of_range"}},
		"a rate nobody agreed on":  {ask(doc{"indirect": "negotiated"}), map[string]string{"/funding/indirect_percent": "required"}},
		"a rate of nothing":        {ask(doc{"indirect_percent": 10}), map[string]string{"/funding/indirect": "inconsistent"}},
		"request and own cash":     {ask(doc{"request": "1", "own_cash": "1"}), map[string]string{"/funding/own_cash": "inconsistent"}},
		"headings of a form":       {ask(doc{"categories": []doc{{"id": "x"}}}), map[string]string{"/funding/categories": "not_applicable"}},
		"another currency":         {doc{"currency": "EUR", "items": []doc{{"id": "i", "amount": "1"}}, "funding": doc{"form": "sf-424a", "date": "2026-01-01"}}, map[string]string{"/currency": "inconsistent"}},
		"a category nobody knows":  {doc{"items": []doc{{"id": "i", "amount": "1", "category": "sundry"}, {"id": "j", "amount": "1", "class": "toys"}}, "funding": doc{"form": "sf-424a", "date": "2026-01-01"}}, map[string]string{"/items/0/class": "required", "/items/1/class": "unknown_kind"}},
		"a category of no heading": {doc{"items": []doc{{"id": "i", "amount": "1", "category": "hire"}}, "funding": doc{"form": "free", "categories": []doc{{"id": "works", "of": []string{"materials", "labour"}}}}}, map[string]string{"/items/0/category": "unknown_reference"}},
		"a heading in two":         {doc{"items": []doc{{"id": "i", "amount": "1", "category": "hire"}}, "funding": doc{"form": "free", "categories": []doc{{"id": "a", "of": []string{"hire"}}, {"id": "b", "of": []string{"hire"}}}}}, map[string]string{"/funding/categories/1/of/0": "duplicate_id"}},
		"steps without a heading":  {doc{"components": []doc{flat("a", 1, 0)}, "steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent"}}, "funding": doc{"form": "free", "categories": []doc{{"id": "materials"}}}}, map[string]string{"/funding/categories": "required"}},
		"a crew of helpers":        {doc{"components": []doc{flat("a", 1, 0)}, "steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent", "crew": 2, "helpers": 2, "role": "wizard"}}}, map[string]string{"/steps/0/helpers": "inconsistent", "/steps/0/role": "unknown_kind"}},
		"one batch of an unknown":  {with("same_batch", []string{"unobtainium"}), map[string]string{"/same_batch/0": "unknown_reference"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := try(t, c.job)
			var list *fault.Error
			require.True(t, errors.As(err, &list), "%v", err)
			found := map[string]string{}
			for _, f := range list.Faults {
				found[f.Pointer] = f.Code
				assert.NotEmpty(t, f.Detail)
			}
			assert.Equal(t, c.want, found)
		})
	}
}
