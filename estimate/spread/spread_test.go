package spread

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/risk"
)

// Every rule gives, of any figure, a spread that can be drawn and holds the
// figure as its likely value.
func TestEveryRule(t *testing.T) {
	rules, err := Load()
	require.NoError(t, err)
	require.Greater(t, len(rules), 20)
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(0, 1000).Draw(t, "value")
		for key, rule := range rules {
			assert.NotEmpty(t, rule.Source)
			s, source, ok := rules.Of(key[0], key[1], value)
			if !ok {
				continue
			}
			assert.Equal(t, rule.Source, source)
			assert.True(t, s.Valid(), "%v %v", key, s)
			assert.Equal(t, value, s.Likely)
			assert.GreaterOrEqual(t, s.Low, 0.0)
		}
	})
	s, _, ok := rules.Of("setting", "transfer_efficiency_percent", 95)
	assert.True(t, ok)
	assert.Equal(t, risk.Spread{Low: 80.75, Likely: 95, High: 100, Distribution: risk.PERT}, s, "no share is above the whole")
	_, _, ok = rules.Of("setting", "dry_film_um", 0)
	assert.False(t, ok)
	_, _, ok = rules.Of("job", "tax_percent", 20)
	assert.False(t, ok, "a figure without a rule does not vary")
}

func TestWithinAndAround(t *testing.T) {
	s, ok := Within(50, 55, 65, 27.5)
	assert.True(t, ok)
	assert.Equal(t, risk.Spread{Low: 25, Likely: 27.5, High: 32.5, Distribution: risk.PERT}, s)
	_, ok = Within(5, 5, 5, 5)
	assert.False(t, ok)
	s, ok = Around(200, 5)
	assert.True(t, ok)
	assert.Equal(t, risk.Spread{Low: 190, Likely: 200, High: 210, Distribution: risk.PERT}, s)
	_, ok = Around(200, 0)
	assert.False(t, ok)
}

func TestBadRulesAreRefused(t *testing.T) {
	for _, row := range [][]string{
		{"a", "b", "0.9", "1.1", "", "", "", "x", ""}, {"a", "b", "0.9", "1.1", "", "", "x", "", ""}, {"a", "b", "1.1", "0.9", "", "", "x", "x", ""},
		{"a", "b", "", "1.1", "", "", "x", "x", ""}, {"a", "b", "0.9", "z", "", "", "x", "x", ""}, {"a", "b", "0.9", "1.1", "3", "2", "x", "x", ""},
	} {
		_, err := read(row)
		assert.Error(t, err, "%v", row)
	}
}
