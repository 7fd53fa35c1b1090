package published

import (
	"encoding/json"
	"testing"

	"filmbuild/estimate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// document is a JSON object of a job.
type document map[string]any

// workedOut works a job out that consists of the members given.
func workedOut(t *testing.T, members document) *estimate.Estimate {
	t.Helper()
	job := document{"name": "A published case", "currency": "USD"}
	for name, value := range members {
		job[name] = value
	}
	text, err := json.Marshal(job)
	require.NoError(t, err)
	e, err := estimate.NewReader(nil).Estimate(text, catalogueOf(t))
	require.NoError(t, err)
	return e
}

func plainPart(areaM2 float64) document {
	return document{"id": "part", "shape": document{"kind": "measured", "area_m2": areaM2, "edge_m": 0}}
}

// C-1 as a job: an hour of blasting with aluminium oxide at 700 $ a ton, 2000 lb
// an hour, a tenth of it lost, 20 $ of labour and 25 $ a ton for disposal (OSHA
// silica eTool, economics of aluminium oxide; mark C): 92.50 $ for 285 ft².
func TestC1AsAJob(t *testing.T) {
	const tonKg = 2000 * poundKg
	e := workedOut(t, document{
		"components": []document{plainPart(285 * squareFoot)},
		"products":   []document{{"id": "oxide", "kind": "media", "bulk_density_kg_m3": 2000, "breakdown_percent": 10, "packs": []document{{"pack_kg": tonKg / 10, "price": "70.00"}}}},
		"steps": []document{{"id": "bare", "operation": "blast", "on": []string{"part"}, "media": "oxide", "nozzle_bore_mm": 12.7, "pressure_kpa": 100 * psiKPa,
			"media_flow_kg_h": tonKg, "strip_rate_m2_h": 285 * squareFoot, "recovered": true, "labour": "paid"}},
		"labour": document{"paid_rate": "20.00"},
		"items":  []document{{"id": "disposal", "of": "waste_kg", "unit_price": "0.02755778", "category": "disposal"}},
	})
	step := e.Steps[0]
	assert.InDelta(t, 200, e.Order[0].Needed/poundKg, 1e-6, "lb used")
	assert.Equal(t, "70.00", step.MaterialCost.String(), "media")
	assert.Equal(t, "20.00", step.LabourCost.String(), "labour")
	assert.Equal(t, "2.50", e.Items[0].Amount.String(), "disposal")
	assert.Equal(t, "92.50", e.Budget.Total.String(), "the hour")
	assert.InDelta(t, 0.325, e.Budget.Total.Float64()/285, 0.0005, "per ft², to the digits printed")
}

// E7 and E8 as jobs: material cost of a square foot (a painting contractors'
// magazine on estimating; mark T). The source cuts to the cent.
func TestE7E8MaterialCostOfASquareFoot(t *testing.T) {
	for id, c := range map[string]struct {
		solids    float64
		price     string
		cents     int
		feet, tol float64
	}{"E7": {46, "43.50", 14, 294, 1.2}, "E8": {56, "44.75", 12, 358, 1.4}} {
		const feet = 100_000
		e := workedOut(t, document{
			"components": []document{plainPart(feet * squareFoot)},
			"products":   []document{{"id": "paint", "kind": "paint", "volume_solids_percent": c.solids, "packs": []document{{"pack_l": litresGal, "price": c.price}}}},
			"steps": []document{{"id": "coat", "operation": "coat", "on": []string{"part"}, "product": "paint", "dry_film_um": 2.5 * mil,
				"method": "brush", "transfer_efficiency_percent": 100, "mask": false}},
		})
		assert.Equal(t, c.cents, int(e.Steps[0].MaterialCost.Float64()/feet*100), "%s: cents, cut", id)
		assert.InDelta(t, c.feet, feet/(e.Steps[0].Litres/litresGal), c.tol, "%s: ft²/gal", id)
	}
}

// M07 and M08 as jobs of items: lines are rounded, and tax by line or in all, as
// computed there (mark D).
func TestM07M08AsJobs(t *testing.T) {
	lines := func(quantity float64, price string, n int) []document {
		var list []document
		for i := range n {
			list = append(list, document{"id": "item-" + string(rune('a'+i)), "unit_price": price, "quantity": quantity})
		}
		return list
	}
	assert.Equal(t, "0.36", workedOut(t, document{"items": lines(1, "0.1249", 3)}).Budget.Total.String(), "M07, three lines")
	assert.Equal(t, "0.37", workedOut(t, document{"items": lines(3, "0.1249", 1)}).Budget.Total.String(), "M07, one line of three")
	for rounding, want := range map[string]string{"line": "0.69", "total": "0.68", "invoice": "0.69"} {
		e := workedOut(t, document{"currency": "GBP", "items": lines(1, "1.13", 3), "tax_percent": 20, "tax_rounding": rounding})
		assert.Equal(t, want, e.Budget.Tax.String(), "M08, %s; every item without a supplier is an invoice of its own", rounding)
	}
	items := lines(1, "1.13", 3)
	for i := range items {
		items[i]["supplier"] = "shop"
	}
	assert.Equal(t, "0.68", workedOut(t, document{"currency": "GBP", "items": items, "tax_percent": 20, "tax_rounding": "invoice"}).Budget.Tax.String(), "M08, one invoice")
}

// E04 (BLS PPI guide) and E01 (consumer price index) of planning, mark A: an
// amount of 10,000 at 100 is 12,000 at 120; 229.815 to 232.945 is 1.4 %.
func TestE01E04Escalation(t *testing.T) {
	carried := func(amount string, from, to float64) *estimate.Estimate {
		return workedOut(t, document{"items": []document{{"id": "hire", "amount": amount}}, "escalation": document{"from_index": from, "to_index": to}})
	}
	assert.Equal(t, "12000.00", carried("10000", 100, 120).Budget.Total.String(), "E04")
	e := carried("1000000", 229.815, 232.945)
	assert.InDelta(t, 0.0136, e.Budget.Total.Float64()/1e6-1, 0.00005, "E01: 0.0136")
	for _, a := range e.Assumptions {
		if a.Unit == "%" && a.Value > 1 && a.Value < 2 {
			assert.InDelta(t, 1.4, a.Value, 0.05, "E01: 1.4 %, and not the 3.1 points (E02)")
			return
		}
	}
	assert.Fail(t, "the escalation is not told")
}

// G17: fixed values of a volunteer's day of 7 h (UK lottery guidance 2011 to
// 2017, mark A; the hourly values are its division).
func TestG17VolunteerDay(t *testing.T) {
	for rate, hour := range map[string]string{"50": "7.14", "150": "21.43", "350": "50.00"} {
		e := workedOut(t, document{"currency": "GBP", "components": []document{plainPart(10)},
			"steps":  []document{{"id": "wash", "operation": "wash", "on": []string{"part"}, "product": "detergent", "rate_m2_h": 10}},
			"labour": document{"volunteer_day_rate": rate, "volunteer_day_h": 7, "volunteer_basis": "funder_rate", "volunteer_source": "guidance 2011 to 2017"}})
		assert.Equal(t, 1.0, e.Steps[0].Hours)
		assert.Equal(t, hour, e.Steps[0].LabourCost.String())
		assert.Equal(t, hour, e.Budget.InKind.String(), "and stays out of the cash")
	}
}
