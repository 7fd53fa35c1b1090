package published

import (
	"strings"
	"testing"

	"filmbuild/estimate"
	"filmbuild/estimate/report"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asked works out a job of items with a federal form.
func asked(t *testing.T, date string, ask document, items ...document) *estimate.FundingView {
	t.Helper()
	form := document{"form": "sf-424a", "date": date}
	for name, value := range ask {
		form[name] = value
	}
	e := workedOut(t, document{"items": items, "funding": form})
	require.NotNil(t, e.Funding)
	return e.Funding
}

func rowOf(t *testing.T, v *estimate.FundingView, number string) estimate.FundingRow {
	t.Helper()
	for _, r := range v.Rows {
		if r.Row == number {
			return r
		}
	}
	require.Fail(t, "no such row", number)
	return estimate.FundingRow{}
}

// G01: the lines of Standard Form 424A, section B, in their order (mark A).
func TestG01RowsOfTheForm(t *testing.T) {
	e := workedOut(t, document{"items": []document{{"id": "a", "amount": "1"}}, "funding": document{"form": "sf-424a", "date": "2026-01-01"}})
	table, err := report.CSV(e, "funding")
	require.NoError(t, err)
	var rows []string
	for _, line := range strings.Split(strings.TrimSpace(string(table)), "\r\n")[1:] {
		cells := strings.SplitN(line, ",", 3)
		rows = append(rows, cells[0]+" "+cells[1])
	}
	assert.Equal(t, []string{"6a Personnel", "6b Fringe Benefits", "6c Travel", "6d Equipment", "6e Supplies", "6f Contractual", "6g Construction", "6h Other",
		"6i Total Direct Charges (sum of 6a-6h)", "6j Indirect Charges", "6k TOTALS (sum of 6i and 6j)", "7 Program Income"}, rows)
}

// G04: the form has no line for contingency (mark B).
func TestG04NoContingency(t *testing.T) {
	e := workedOut(t, document{"items": []document{{"id": "a", "amount": "100"}}, "contingency_percent": 10, "funding": document{"form": "sf-424a", "date": "2026-01-01"}})
	assert.Equal(t, "110.00", e.Budget.Total.String())
	assert.Equal(t, "100.00", e.Funding.Total.String())
	assert.Equal(t, "10.00", e.Funding.Excluded[0].Amount.String())
}

// G08: up to 15 % for awards from 2024-10-01, 10 % before (2 CFR 200.414, mark A).
func TestG08DeMinimis(t *testing.T) {
	for date, percent := range map[string]float64{"2024-09-30": 10, "2024-10-01": 15, "2026-03-01": 15, "2019-01-01": 10} {
		v := asked(t, date, document{"indirect": "de_minimis"}, document{"id": "a", "amount": "1000", "category": "supplies"})
		assert.Equal(t, percent, v.IndirectPercent, date)
		assert.InDelta(t, 10*percent, v.Indirect.Float64(), 1e-9, date)
	}
}

// G09 and G12: a thing of 10,000 is equipment, one of 9,999 is supplies and stays
// in the base; the threshold was 5,000 (2 CFR 200.439, marks A and D).
func TestG09G12EquipmentThreshold(t *testing.T) {
	for _, c := range []struct{ date, amount, row, base string }{
		{"2025-01-01", "9999", "6e", "9999.00"}, {"2025-01-01", "10000", "6d", "0.00"},
		{"2024-09-30", "4999", "6e", "4999.00"}, {"2024-09-30", "5000", "6d", "0.00"},
	} {
		v := asked(t, c.date, document{"indirect": "de_minimis"}, document{"id": "rig", "amount": c.amount, "category": "equipment", "useful_life_years": 5})
		assert.Equal(t, c.amount+".00", rowOf(t, v, c.row).Total.String(), "%s on %s", c.amount, c.date)
		assert.Equal(t, c.base, v.IndirectBase.String(), "%s on %s", c.amount, c.date)
	}
}

// G11: the worked case of modified total direct cost (mark D, from G08 and G10,
// whose 50,000 is from memory): base 115,000, indirect 17,250, total 174,250.
func TestG11ModifiedTotalDirectCost(t *testing.T) {
	v := asked(t, "2025-01-01", document{"indirect": "de_minimis"},
		document{"id": "staff", "amount": "40000", "category": "personnel"}, document{"id": "fringe", "amount": "8000", "category": "fringe"},
		document{"id": "trips", "amount": "2000", "category": "travel"}, document{"id": "paint", "amount": "15000", "category": "supplies"},
		document{"id": "booth", "amount": "12000", "category": "equipment", "useful_life_years": 10}, document{"id": "partner", "amount": "80000", "class": "contractual", "subaward": true})
	assert.Equal(t, "115000.00", v.IndirectBase.String())
	assert.Equal(t, "17250.00", v.Indirect.String())
	assert.Equal(t, "174250.00", v.Total.String())
	assert.Equal(t, "17250.00", rowOf(t, v, "6j").Total.String())
	assert.Equal(t, "174250.00", rowOf(t, v, "6k").Total.String())
}

// G10: of each subaward the first 25,000 counted before 2024-10-01 (mark A), the
// first 50,000 since (from memory, mark C); several to one body are one.
func TestG10Subawards(t *testing.T) {
	part := func(id, amount, to string) document {
		return document{"id": id, "amount": amount, "class": "contractual", "subaward": true, "supplier": to}
	}
	for date, base := range map[string]string{"2024-01-01": "45000.00", "2025-01-01": "70000.00"} {
		v := asked(t, date, document{"indirect": "de_minimis"}, part("a", "30000", "yard"), part("b", "30000", "yard"), part("c", "20000", "school"))
		assert.Equal(t, base, v.IndirectBase.String(), date)
	}
}

// G20: applicants who reclaim tax leave it out (small-museum conservation scheme,
// mark A); half and half from 1,500 up is a match of 50 %.
func TestG20TaxLeftOutAndHalfMatch(t *testing.T) {
	e := workedOut(t, document{"currency": "GBP", "tax_percent": 20, "items": []document{{"id": "conservator", "amount": "4000", "category": "conservator"}, {"id": "case", "amount": "1200", "tax": "included", "category": "supplies"}},
		"funding": document{"form": "free", "exclude_tax": true, "own_cash": "2500", "match_percent": 50}})
	assert.Equal(t, "6000.00", e.Budget.Total.String())
	assert.Equal(t, "5000.00", e.Funding.Total.String())
	assert.Equal(t, "1000.00", e.Funding.Excluded[0].Amount.String(), "800 on top and 200 held by the price")
	assert.Equal(t, 50.0, e.Funding.MatchPercent)
	assert.True(t, e.Funding.MatchShort.IsZero())
}

// G21: a match of one to one, in cash or in kind (national treasures grant, mark A).
func TestG21OneToOne(t *testing.T) {
	e := workedOut(t, document{"items": []document{{"id": "work", "amount": "40000", "category": "contract"}, {"id": "crane", "amount": "15000", "category": "equipment", "funding": "in_kind"}},
		"funding": document{"form": "sf-424a", "date": "2024-01-01", "request": "25000", "match_percent": 50}})
	assert.Equal(t, "25000.00 15000.00 15000.00 30000.00", strings.Join([]string{e.Funding.Requested.String(), e.Funding.OwnCash.String(), e.Funding.InKind.String(), e.Funding.Match.String()}, " "))
	assert.InDelta(t, 100*30.0/55, e.Funding.MatchPercent, 1e-9)
	assert.True(t, e.Funding.MatchShort.IsZero())
}

// G06: a volunteer hour is worth what is paid for similar work, and a national
// average is told to be none of that (2 CFR 200.306, mark B).
func TestG06VolunteerRate(t *testing.T) {
	warned := func(basis string) bool {
		e := workedOut(t, document{"components": []document{plainPart(10)}, "steps": []document{{"id": "wash", "operation": "wash", "on": []string{"part"}, "product": "detergent"}},
			"labour": document{"volunteer_rate": "24.00", "volunteer_basis": basis}, "funding": document{"form": "sf-424a", "date": "2026-01-01"}})
		return strings.Contains(strings.Join(e.Warnings, "\n"), "2 CFR 200.306")
	}
	assert.True(t, warned("national_average"))
	assert.False(t, warned("similar_work"))
}
