package marking

import (
	"math"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

const pi = math.Pi

// Skin is the size of a figure on a curved surface, and how great it looks from
// the side.
type Skin struct {
	RadiusM          float64 `json:"radius_m"`
	WidthM           float64 `json:"width_m"`  // along the skin
	HeightM          float64 `json:"height_m"` // along the skin
	ProjectedWidthM  float64 `json:"projected_width_m"`
	ProjectedHeightM float64 `json:"projected_height_m"`
}

func (s *Skin) setProjected(axis string, extent float64) {
	if axis == "upright" {
		s.ProjectedWidthM = extent
		return
	}
	s.ProjectedHeightM = extent
}

// projectedOf is how long a stretch along the skin, its middle facing the
// viewer, looks from the side.
//
//	h = 2·ρ·sin(s/(2·ρ)), and 2·ρ for all beyond half round
//
// Source: arc length, the inverse of SkinLength.
func projectedOf(along, radius float64) float64 {
	return 2 * radius * math.Sin(min(along/(2*radius), pi/2))
}

// SkinLength is the length along the skin of a cylinder of what looks h long
// from the side, its middle facing the viewer.
//
//	s = 2·ρ·asin(h/(2·ρ))
//
// radius in m above 0, h in m from 0 to 2·ρ; outside it returns a
// *quantity.RangeError. Source: arc length, identity.
func SkinLength(projected, radius float64) (float64, error) {
	if err := quantity.Within("radius", radius, "m", quantity.Limits{LowOpen: true, High: 1e6}); err != nil {
		return 0, err
	}
	if err := quantity.Within("projected length", projected, "m", quantity.Limits{High: 2 * radius}); err != nil {
		return 0, err
	}
	return 2 * radius * math.Asin(projected/(2*radius)), nil
}

// fault is one fault found while measuring.
func fault(pointer, code, detail string) error {
	return surfaces.Faults{{Pointer: pointer, Code: code, Detail: detail}}
}
