package mesh

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// TessellationDeficit returns by how much of itself the area of a curved part
// exceeds that of the facets inscribed in it, as a share of the true area.
//
//	deficit = 1 − (N/π)·sin(π/N)
//
// N is the number of facets round a full turn, from 3 up; outside that range
// the error is a *quantity.RangeError. A surface curved both ways loses more:
// a sphere up to six times as much.
//
// Source: identity, the perimeter of a regular polygon inscribed in a circle.
func TessellationDeficit(facetsPerTurn float64) (float64, error) {
	if err := quantity.Within("facets_per_turn", facetsPerTurn, "", quantity.Limits{Low: 3, High: 1e9}); err != nil {
		return 0, err
	}
	return deficit(facetsPerTurn), nil
}

func deficit(facetsPerTurn float64) float64 {
	return 1 - facetsPerTurn/math.Pi*math.Sin(math.Pi/facetsPerTurn)
}

// modelPercent is how far a mesh may be from the real part by its scale, scan
// or drawing; common practice, as no published figure was found.
const modelPercent = 2.0

// unknownFacetsPerTurn is taken where the mesh could not be looked at and the
// user gave no number: the coarsest curve in everyday exports; common practice.
const unknownFacetsPerTurn = 12

// Accuracy is how far the area may be from that of the real part.
type Accuracy struct {
	Percent        float64 `json:"accuracy_percent"`             // half width of the likely error
	DeficitPercent float64 `json:"tessellation_deficit_percent"` // part of it: the true area is larger by up to this
	Basis          string  `json:"basis"`
}

// accuracy adds what the model may be wrong by to what its facets cut off.
func accuracy(o Options, checks *Checks) Accuracy {
	var lacks float64
	var basis string
	switch {
	case o.FacetsPerTurn > 0:
		lacks = 100 * deficit(o.FacetsPerTurn)
		basis = fmt.Sprintf("curved parts drawn with %g facets a turn, as stated", o.FacetsPerTurn)
	case checks != nil:
		lacks = checks.Tessellation
		basis = "the angles between neighbouring facets"
	default:
		lacks = 100 * deficit(unknownFacetsPerTurn)
		basis = fmt.Sprintf("curved parts taken to have %d facets a turn, as the mesh was too large to look", unknownFacetsPerTurn)
	}
	return Accuracy{
		Percent: modelPercent + lacks, DeficitPercent: lacks,
		Basis: fmt.Sprintf("%g %% for scale and scan or drawing, common practice; %.2g %% that facets cut off curves, from %s", modelPercent, lacks, basis),
	}
}
