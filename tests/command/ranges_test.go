package command

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const ranged = `{"name": "Invented", "currency": "USD", "items": [{"id": "a", "amount": {"low": 100, "likely": 200, "high": 600}}]}`

func TestTheTableHasTheRange(t *testing.T) {
	code, out, err := call(ranged, "estimate", "-")
	assert.Equal(t, done, code, err)
	assert.Contains(t, out, "RANGE in USD, from 10000 trials")
	assert.Contains(t, out, "WHAT DRIVES IT")
	code, again, _ := call(ranged, "estimate", "-trials", "10000", "-seed", "1", "-")
	assert.Equal(t, done, code)
	assert.Equal(t, out, again, "the usual trials and seed")
	_, other, _ := call(ranged, "estimate", "-seed", "2", "-")
	assert.NotEqual(t, out, other)
	code, single, _ := call(ranged, "estimate", "-single", "-")
	assert.Equal(t, done, code)
	assert.NotContains(t, single, "RANGE in")
	assert.Contains(t, single, "HOW SURE")
}

func TestTheRangeAsDrawing(t *testing.T) {
	code, out, err := call(ranged, "estimate", "-format", "svg", "-trials", "1000", "-")
	assert.Equal(t, done, code, err)
	assert.True(t, strings.HasPrefix(out, "<svg"))
}

func TestTrialsThatCannotBe(t *testing.T) {
	for _, args := range [][]string{{"-trials", "0"}, {"-trials", "999"}, {"-trials", "1000001"}, {"-trials", "x"}, {"-seed", "-1"}, {"-single", "-trials", "1000"}, {"-single", "-format", "svg"}, {"-seed", "9007199254740992"}} {
		code, out, err := call(ranged, append(append([]string{"estimate"}, args...), "-")...)
		assert.Equal(t, lineFault, code, "%v", args)
		assert.Empty(t, out)
		assert.NotEmpty(t, err)
	}
}

func TestCompareWithoutAFileSetsThreeWaysSideBySide(t *testing.T) {
	code, out, err := call("", "compare", "-trials", "1000")
	assert.Equal(t, done, code, err)
	for _, words := range []string{"bead blasting", "chemical stripping", "sanding by hand", "cheapest in, of 100 trials"} {
		assert.Contains(t, out, words)
	}
	code, out, err = call("", "compare", "-trials", "1000", "-format", "csv")
	assert.Equal(t, done, code, err)
	assert.Contains(t, out, "by-hand,bare,sand,")
	code, out, err = call("", "compare", "-trials", "1000", "-format", "json")
	assert.Equal(t, done, code, err)
	assert.Contains(t, out, `"cheapest_ratio"`)
}

func TestCompareRefuses(t *testing.T) {
	code, _, err := call(`{"base": `+ranged+`, "variants": [{"id": "v", "patch": {}}]}`, "compare", "-")
	assert.Equal(t, jobFault, code)
	assert.Contains(t, err, "the patch changes nothing")
	for _, args := range [][]string{{"-trials", "0"}, {"-single"}, {"-format", "svg"}, {"-units", "x"}, {"nothing.json"}, {"a", "b"}} {
		code, out, err := call("", append([]string{"compare"}, args...)...)
		assert.Equal(t, lineFault, code, "%v", args)
		assert.Empty(t, out)
		assert.NotEmpty(t, err)
	}
}

func TestSolve(t *testing.T) {
	code, out, err := call(goodJob, "solve", "-find", "area", "-stock", "epoxy-primer=5", "-")
	assert.Equal(t, done, code, err)
	assert.Contains(t, out, "The largest area that fits is")
	code, out, err = call(goodJob, "solve", "-find", "film", "-stock", "epoxy-primer=5", "-format", "json", "-")
	assert.Equal(t, done, code, err)
	assert.Contains(t, out, `"limited_by": "epoxy-primer"`)
	code, _, err = call(goodJob, "solve", "-find", "area", "-budget", "0.01", "-")
	assert.Equal(t, jobFault, code)
	assert.Contains(t, err, "fixed costs")
	code, _, err = call("{", "solve", "-find", "area", "-budget", "1", "-")
	assert.Equal(t, jobFault, code)
	assert.NotEmpty(t, err)
	code, _, _ = call(goodJob, "solve", "-stock", "epoxy-primer=x", "-")
	assert.Equal(t, lineFault, code)
}
