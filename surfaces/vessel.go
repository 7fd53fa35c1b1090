package surfaces

import (
	"fmt"
	"math"
)

// Vessel is a tank: a straight round part between two equal heads.
type Vessel struct {
	Round
	LengthM        float64  `json:"length_m" limit:"[0,500]" doc:"of the straight part; 0 for two heads joined"`
	Head           string   `json:"head" doc:"flat, hemisphere, ellipsoidal (head_depth_m) or torispherical (crown_radius_m, knuckle_radius_m)"`
	HeadDepthM     *float64 `json:"head_depth_m,omitempty" limit:"[0.0005,250]" doc:"of an ellipsoidal head: from the straight part to its top"`
	CrownRadiusM   *float64 `json:"crown_radius_m,omitempty" limit:"[0.0005,1000]" doc:"of a torispherical head: of the sphere at its middle"`
	KnuckleRadiusM *float64 `json:"knuckle_radius_m,omitempty" limit:"[0,250]" doc:"of a torispherical head: of the bend at its rim"`
}

// Kind implements Shape.
func (*Vessel) Kind() string { return "vessel" }

// Check implements Shape.
func (s *Vessel) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	clean = s.checkRound(report) && clean
	if !oneOf("/head", s.Head, report, "flat", "hemisphere", "ellipsoidal", "torispherical") {
		return
	}
	if s.Head == "ellipsoidal" {
		given("/head_depth_m", s.HeadDepthM, report)
	} else {
		notApplicable("/head_depth_m", s.HeadDepthM, "only an ellipsoidal head is given by its depth", report)
	}
	if s.Head != "torispherical" {
		notApplicable("/crown_radius_m", s.CrownRadiusM, "only a torispherical head has a crown", report)
		notApplicable("/knuckle_radius_m", s.KnuckleRadiusM, "only a torispherical head has a knuckle", report)
		return
	}
	clean = given("/crown_radius_m", s.CrownRadiusM, report) && clean
	clean = given("/knuckle_radius_m", s.KnuckleRadiusM, report) && clean
	if !clean {
		return
	}
	if *s.CrownRadiusM < s.radius() {
		report("/crown_radius_m", "inconsistent", fmt.Sprintf("crown_radius_m is %s, less than the vessel's radius of %s", metres(*s.CrownRadiusM), metres(s.radius())))
	}
	if *s.KnuckleRadiusM > s.radius() {
		report("/knuckle_radius_m", "inconsistent", fmt.Sprintf("knuckle_radius_m is %s, more than the vessel's radius of %s", metres(*s.KnuckleRadiusM), metres(s.radius())))
	}
}

// Measure implements Shape. The faces are side, head_1 and head_2.
func (s *Vessel) Measure() Measurement {
	r := s.radius()
	m := Measurement{Method: "tank of a straight part and two " + s.Head + " heads", AccuracyPercent: accuracy(wayTaped)}
	m.face("side", 2*math.Pi*r*s.LengthM, "2π·r·l", map[string]float64{"r": r, "l": s.LengthM}, "identity")
	area, formula, terms, source := s.head()
	for _, name := range []string{"head_1", "head_2"} {
		m.face(name, area, formula, terms, source)
		if s.LengthM > 0 {
			m.edge("side", name, 2*math.Pi*r)
		}
	}
	if s.LengthM == 0 {
		m.edge("head_1", "head_2", 2*math.Pi*r)
	}
	return m
}

// head returns the area of one head.
func (s *Vessel) head() (area float64, formula string, terms map[string]float64, source string) {
	r := s.radius()
	terms = map[string]float64{"r": r}
	switch s.Head {
	case "hemisphere":
		return 2 * math.Pi * r * r, "2π·r²", terms, "identity"
	case "ellipsoidal":
		terms["h"] = or(s.HeadDepthM, r)
		return ellipsoidArea(r, r, terms["h"]) / 2, "by 2π·R_G(r⁴, r²h², r²h²)", terms, "DLMF 19.33.1 (section number from memory)"
	case "torispherical":
		terms["R"], terms["k"] = or(s.CrownRadiusM, r), or(s.KnuckleRadiusM, 0)
		return torispherical(r, terms["R"], terms["k"]),
			"by 2π·R²·(1−cos φ) + 2π·k·((r−k)·(π/2−φ) + k·cos φ), sin φ = (r−k)/(R−k)", terms, "identity (sphere cap and torus, tangent)"
	}
	return math.Pi * r * r, "π·r²", terms, "identity"
}

// torispherical returns the area of a dished head of outer radius r: a sphere
// of radius crown that runs smoothly into a bend of radius knuckle.
//
//	S = 2πR²(1−cos φ) + 2πk·[(r−k)(π/2−φ) + k·cos φ],  sin φ = (r−k)/(R−k)
//
// knuckle ≤ r ≤ crown. Source: identity.
func torispherical(r, crown, knuckle float64) float64 {
	angle := 0.0 // where all three radii are one, the head is a hemisphere
	if crown > knuckle {
		angle = math.Asin(min(1, (r-knuckle)/(crown-knuckle)))
	}
	half := math.Sin(angle / 2) // 1−cos φ = 2·sin²(φ/2), good for flat heads
	return 4*math.Pi*crown*crown*half*half +
		2*math.Pi*knuckle*((r-knuckle)*(math.Pi/2-angle)+knuckle*math.Cos(angle))
}
