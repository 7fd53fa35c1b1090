package surfaces

import "math"

// tube finds the footprint of a round tube on a round body. A point of the
// body a distance s to the side of its axis is within the tube where
//
//	|x·sin β − √(R²−s²)·cos β| ≤ √(r² − (s−e)²),  s = e + r·sin α
//	A = 2R·r²/sin β · ∫ cos²α / √(R²−s²) dα,  α from −90° to 90°
//
// β is the angle between the axes, e their offset. For β = 90° and e = 0 it is
// 4r²·B(r²/R²), B the complete elliptic integral. The line along which they
// meet is x = (±r·cos α + z·cos β)/sin β, y = s, z = √(R²−s²).
//
// Source: identity.
func (j Joint) tube() Footprint {
	r, R, e, beta := *j.RadiusM, *j.BodyRadiusM, or(j.OffsetM, 0), or(j.AngleDeg, 90)*math.Pi/180
	sin, cos := math.Sincos(beta)
	if or(j.AngleDeg, 90) == 90 {
		cos = 0
	}
	// Room to the body's side: (R−s)(R+s), without cancelling where tube and body are as wide.
	room := func(alpha float64) float64 {
		half := math.Sin((math.Pi/2 - alpha) / 2) // 1 − sin α = 2·sin²((90°−α)/2)
		above := max(0, R-e-r) + 2*r*half*half
		half = math.Cos((math.Pi/2 - alpha) / 2)
		below := max(0, R+e-r) + 2*r*half*half
		return math.Sqrt(above * below)
	}
	area, line := 0.0, 0.0
	for _, span := range [][2]float64{{-math.Pi / 2, 0}, {0, math.Pi / 2}} {
		part, _ := adaptive(func(alpha float64) float64 {
			c := math.Cos(alpha)
			return c * c / room(alpha)
		}, span[0], span[1])
		area += part
		part, _ = adaptive(func(alpha float64) float64 {
			s, c := math.Sincos(alpha)
			side, up := r*c, -(e+r*s)*r*c/room(alpha)
			near, far := (-r*s+up*cos)/sin, (r*s+up*cos)/sin
			return math.Sqrt(near*near+side*side+up*up) + math.Sqrt(far*far+side*side+up*up)
		}, span[0], span[1])
		line += part
	}
	return Footprint{
		BodyM2: 2 * R * r * r / sin * area, OwnM2: math.Pi * r * r, EdgeM: line, OwnEdgeM: 2 * math.Pi * r, AccuracyPercent: accuracy(wayTaped),
		Formula: "by 2R·r²/sin β·∫ cos²α/√(R²−s²) dα, s = e+r·sin α", Source: "identity (two round tubes)",
		Terms: map[string]float64{"r": r, "R": R, "e": e, "β": beta * 180 / math.Pi},
	}
}

// onSphere finds the footprint of a cylinder whose axis goes through the middle
// of a sphere.
//
//	A = 2π·R·(R − √(R²−r²)) = 2π·R·r²/(R + √(R²−r²)),  edge = 2π·r
//
// Source: identity.
func (j Joint) onSphere() Footprint {
	r, R := *j.RadiusM, *j.BodyRadiusM
	return Footprint{
		BodyM2: 2 * math.Pi * R * r * r / (R + math.Sqrt(max(0, (R-r)*(R+r)))), OwnM2: math.Pi * r * r, EdgeM: 2 * math.Pi * r, OwnEdgeM: 2 * math.Pi * r,
		AccuracyPercent: accuracy(wayTaped), Formula: "2π·R·r²/(R+√(R²−r²))", Source: "identity (sphere cap)",
		Terms: map[string]float64{"r": r, "R": R},
	}
}
