package surfaces

import "math"

// RivetArea returns the area, in m², that domed rivet heads add to the skin
// under them. A head is a cap of a sphere; less the circle that it covers, what
// is left depends on its height alone.
//
//	n·π·h²
//
// height is in mm. Source: identity (sphere cap less its base).
func RivetArea(count int, height float64) float64 {
	return float64(count) * math.Pi * height * height / 1e6
}

// LapArea returns the area, in m², of the edge of a sheet that laps over
// another: its length in m times its thickness in mm.
//
// Source: identity.
func LapArea(length, thickness float64) float64 { return length * thickness / 1000 }

// GapArea returns the area, in m², of the two faces in the gap before a control
// surface: twice its span times the depth of the gap, both in m.
//
// Source: common practice (a gap counted as two flat faces).
func GapArea(span, depth float64) float64 { return 2 * span * depth }
