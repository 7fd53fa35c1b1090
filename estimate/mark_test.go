package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A roundel of 0.6 m with rings 1:2:3, painted twice: π/4·0.6² in shares of 1, 3
// and 5 ninths, edges π·0.6·(1+2+3)/3 (identity).
func TestMarkingsTakeTheirColours(t *testing.T) {
	job := doc{
		"components": []doc{flat("a", 10, 4)},
		"markings": []doc{{"id": "m", "kind": "roundel", "size_m": 0.6, "count": 2, "on": "a",
			"rings": []doc{{"ratio": 1, "colour": "orange"}, {"ratio": 2, "colour": "white"}, {"ratio": 3, "colour": "green"}}}},
		"steps": []doc{{"id": "s", "operation": "mark", "markings": []string{"m"}, "dry_film_um": 30, "method": "brush", "transfer_efficiency_percent": 100, "paints": doc{"green": "polyurethane-gloss-black"}}},
	}
	whole := 2 * math.Pi / 4 * 0.36
	e := work(t, job)
	s := e.Steps[0]
	assert.InEpsilon(t, whole, s.AreaM2, 1e-9)
	assert.InEpsilon(t, 2*math.Pi*0.6*2, edgeM(s), 1e-9, "each border once")
	assert.InEpsilon(t, 1.1*edgeM(s), quantityOf(s, "fine-line-tape-6"), 1e-12)
	assert.InEpsilon(t, 1.1*edgeM(s), quantityOf(s, "masking-tape-24"), 1e-12, "the wide tape behind it")
	assert.InEpsilon(t, 2*1.1*edgeM(s), s.MaskingTapeM, 1e-12)
	orange, white, black := quantityOf(s, "polyurethane-gloss-orange"), quantityOf(s, "polyurethane-gloss-white"), quantityOf(s, "polyurethane-gloss-black")
	assert.InEpsilon(t, 3.0, white/orange, 1e-9)
	assert.InEpsilon(t, 5.0, black/orange, 1e-9)
	assert.Zero(t, quantityOf(s, "polyurethane-gloss-green"))
	require.Len(t, s.Mixing, 3)

	step := job["steps"].([]doc)[0]
	step["film"] = "stencil-film" // cut instead of taped: the box with 50 mm all round, on film 0.6 m wide
	s = work(t, job).Steps[0]
	assert.Zero(t, s.MaskingTapeM)
	assert.InEpsilon(t, 2*0.7*0.7/0.6, quantityOf(s, "stencil-film"), 1e-9)

	delete(step, "film")
	step["mask"] = false
	assert.Zero(t, work(t, job).Steps[0].MaskingTapeM)
}
