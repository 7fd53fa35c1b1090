package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 60 m² at 10 m²/h with a crew of two, of whom one helps, and half an hour to set
// up: 13 h at work. Three quarters of the time is worked, at 130 % of the rates:
// 13.33 h. A session of 5 h loses one: 6.67 h for each are two sessions, and four
// hours more (identity).
func TestSessionsAvailabilityAndHelpers(t *testing.T) {
	job := doc{"components": []doc{flat("a", 60, 0)},
		"steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent", "rate_m2_h": 10, "setup_h": 0.5, "crew": 2, "helpers": 1}},
		"labour": doc{"volunteer_rate": "24", "availability_percent": 75, "efficiency_percent": 130, "session_h": 5, "session_setup_h": 0.25, "session_cleanup_h": 0.75,
			"roles": doc{"helper": doc{"volunteer_rate": "15.00"}}}}
	e := work(t, job)
	s := e.Steps[0]
	assert.Equal(t, 2, s.Sessions)
	assert.InDelta(t, 13/(0.75*1.3)+2*1*2, s.Hours, 1e-9)
	require.Len(t, s.HoursByRole, 2)
	assert.Equal(t, "prepare helper", s.HoursByRole[0].Role+" "+s.HoursByRole[1].Role)
	assert.InDelta(t, s.Hours/2, s.HoursByRole[0].Hours, 1e-9)
	assert.Equal(t, "208.00 130.00 338.00", s.HoursByRole[0].Cost.String()+" "+s.HoursByRole[1].Cost.String()+" "+s.LabourCost.String(), "8.67 h at 24 and at 15")
	assert.Equal(t, 2, e.Totals.Sessions)

	job["steps"].([]doc)[0]["rate_basis"] = "burdened"
	s = work(t, job).Steps[0]
	assert.InDelta(t, 13, s.Hours, 1e-9, "a burdened rate holds all that already")
	assert.Equal(t, 2, s.Sessions, "6.5 h each in sessions of 5")
}

// Fringe is a line of its own on paid wages; contract work bears tax.
func TestFringeAndContractTax(t *testing.T) {
	step := func(id, labour string) doc {
		return doc{"id": id, "operation": "wash", "on": []string{"a"}, "product": "detergent", "rate_m2_h": 10, "labour": labour}
	}
	e := work(t, doc{"components": []doc{flat("a", 10, 0)}, "steps": []doc{step("s", "paid"), step("t", "contract")}, "tax_percent": 20, "prices_include_tax": true,
		"labour":   doc{"paid_rate": "30", "fringe_percent": 12.5, "contract_rate": "60"},
		"products": []doc{{"id": "detergent", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 0.1, "packs": []doc{{"pack_l": 5, "price": "6.00"}}}}})
	assert.Equal(t, "3.75", e.Budget.Categories[2].Total.String())
	assert.Equal(t, "fringe", e.Budget.Categories[2].Category)
	assert.Equal(t, "99.75", e.Budget.Total.String(), "6 + 30 + 60 + 3.75")
	assert.Equal(t, "0.00 11.00", e.Budget.Tax.String()+" "+e.Budget.TaxIncluded.String(), "a sixth of 66 is held by the prices")
}

// Sessions of a crew that comes at weekends do not fit before the next step.
func TestSessionsFitTheDays(t *testing.T) {
	a, s := washing("a", "2027-05-01", 100)
	b, u := washing("b", "2027-05-09", 1)
	job := doc{"components": []doc{a, b}, "steps": []doc{s, u}, "products": []doc{soap(nil, nil)}, "labour": doc{"session_h": 4},
		"workdays": doc{"free": []string{"monday", "tuesday", "wednesday", "thursday", "friday"}}}
	for _, w := range work(t, job).Warnings {
		assert.NotContains(t, w, "sessions", "the 1st, 2nd and 8th of May are three")
	}
	u["starts"] = "2027-05-08"
	assert.Contains(t, work(t, job).Warnings, "a takes 3 sessions and there are 2 working days before b starts")
}
