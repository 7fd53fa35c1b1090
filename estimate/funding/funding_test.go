package funding

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/money"
)

// Every row of the tables is whole: a class that the form has, a rule with a
// number, a date and a source; nothing stands twice.
func TestTables(t *testing.T) {
	known := map[string]bool{}
	for _, c := range Classes() {
		known[c.ID] = true
	}
	rows, err := csv.NewReader(strings.NewReader(classesTable)).ReadAll()
	require.NoError(t, err)
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		assert.True(t, known[row[1]], row[1])
		assert.False(t, seen[row[0]], row[0])
		seen[row[0]] = true
		class, ok := ClassOf(" " + strings.ToUpper(strings.ReplaceAll(row[0], "_", " ")) + " ")
		assert.True(t, ok)
		assert.Equal(t, row[1], class)
	}
	rows, err = csv.NewReader(strings.NewReader(rulesTable)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"rule", "since", "value", "source"}, rows[0])
	for _, row := range rows[1:] {
		assert.Len(t, row[1], 10)
		assert.NotEmpty(t, row[3])
		_, err := decimal.NewFromString(row[2])
		assert.NoError(t, err)
	}
	_, ok := ClassOf("toys")
	assert.False(t, ok)
}

func TestRulesOfADay(t *testing.T) {
	_, err := RulesOn("2014-12-25")
	assert.ErrorContains(t, err, "2014-12-26")
	r, err := RulesOn("2014-12-26")
	require.NoError(t, err)
	assert.Equal(t, "5000 25000", r.EquipmentThreshold.String()+" "+r.SubawardCap.String())
	assert.Len(t, r.Sources, 3)
}

// What is in the base and what is left out is all there is (identity).
func TestBaseAndWhatItLeavesOut(t *testing.T) {
	usd, err := money.CurrencyOf("USD")
	require.NoError(t, err)
	rules, err := RulesOn("2026-01-01")
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		var costs []Cost
		all, capped := usd.Zero(), map[string]money.Amount{}
		for range rapid.IntRange(0, 12).Draw(t, "costs") {
			c := Cost{Class: Classes()[rapid.IntRange(0, 7).Draw(t, "class")].ID, Amount: usd.Of(decimal.New(rapid.Int64Range(0, 9_000_000).Draw(t, "cents"), -2)),
				Rented: rapid.Bool().Draw(t, "rented"), Subaward: rapid.SampledFrom([]string{"", "", "x", "y"}).Draw(t, "subaward")}
			costs, all = append(costs, c), all.Add(c.Amount)
			if c.Subaward != "" && !c.Rented && c.Class != "equipment" && c.Class != "construction" {
				capped[c.Subaward] = capped[c.Subaward].Add(c.Amount)
			}
		}
		base, left := Base(usd, costs, rules)
		sum := base
		over := usd.Zero()
		for _, l := range left {
			sum = sum.Add(l.Amount)
			if strings.HasPrefix(l.Why, "a subaward") {
				over = l.Amount
			}
		}
		require.Zero(t, all.Cmp(sum))
		want := usd.Zero()
		for _, total := range capped {
			if beyond := total.Sub(usd.Of(rules.SubawardCap)); beyond.Sign() > 0 {
				want = want.Add(beyond)
			}
		}
		require.Zero(t, want.Cmp(over), "want %s, left %s", want, over)
	})
}
