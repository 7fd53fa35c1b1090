package surfaces

import (
	"fmt"
	"strings"
)

// Joint is where one part is set on another: both lose the area of the
// footprint, and its outline is an edge.
type Joint struct {
	Kind           string   `json:"kind" doc:"wing_root, tube (on a round body), cylinder_on_sphere (coaxial) or plate (a flat footprint of any form)"`
	ChordM         *float64 `json:"chord_m,omitempty" limit:"[0.001,100]" doc:"of a wing root; that of the wing by default"`
	ThicknessRatio *float64 `json:"thickness_ratio,omitempty" limit:"[0.001,0.5]" doc:"of a wing root: greatest thickness over chord; that of the wing by default"`
	RadiusM        *float64 `json:"radius_m,omitempty" limit:"[0.0005,250]" doc:"of the tube or cylinder that is set on; that of the part by default, if it is a cylinder"`
	BodyRadiusM    *float64 `json:"body_radius_m,omitempty" limit:"[0.0005,250]" doc:"of the round body or sphere it is set on; that of the body by default, if it is a cylinder, vessel, sphere or cap; a wing root without it is taken as flat"`
	AngleDeg       *float64 `json:"angle_deg,omitempty" limit:"[20,90]" doc:"of a tube: between its axis and that of the body, 90 by default"`
	OffsetM        *float64 `json:"offset_m,omitempty" limit:"[0,250]" doc:"of a tube: by how much the axes pass each other, 0 by default"`
	AreaM2         *float64 `json:"area_m2,omitempty" limit:"(0,10000]" doc:"of a plate: area of the footprint"`
	EdgeM          *float64 `json:"edge_m,omitempty" limit:"[0,10000]" doc:"of a plate: length of its outline; 0 by default"`
}

// Footprint is what a joint comes to.
type Footprint struct {
	BodyM2, OwnM2   float64 // area that the body loses, and the closing face of the part set on it
	EdgeM           float64 // length of the line along which they meet, on the body
	OwnEdgeM        float64 // length of the part's own rim there, flat
	AccuracyPercent float64
	Formula, Source string
	Terms           map[string]float64
}

// JointKinds lists the kinds of joint.
func JointKinds() []string { return []string{"wing_root", "tube", "cylinder_on_sphere", "plate"} }

// Check reports what is missing or does not fit for the part that is set on and
// the body that it is set on, both of which passed their own checks.
func (j Joint) Check(part, body Shape, report func(pointer, code, detail string)) {
	clean := inRange(&j, report)
	if !oneOf("/kind", j.Kind, report, JointKinds()...) {
		return
	}
	for _, f := range []struct {
		name  string
		value *float64
		kinds string
	}{
		{"chord_m", j.ChordM, "wing_root"}, {"thickness_ratio", j.ThicknessRatio, "wing_root"},
		{"radius_m", j.RadiusM, "tube cylinder_on_sphere"}, {"body_radius_m", j.BodyRadiusM, "tube cylinder_on_sphere wing_root"},
		{"angle_deg", j.AngleDeg, "tube"}, {"offset_m", j.OffsetM, "tube"}, {"area_m2", j.AreaM2, "plate"}, {"edge_m", j.EdgeM, "plate"},
	} {
		if !strings.Contains(" "+f.kinds+" ", " "+j.Kind+" ") {
			clean = notApplicable("/"+f.name, f.value, "a "+j.Kind+" has no such dimension", report) && clean
		}
	}
	k := j.filled(part, body)
	for _, f := range []struct {
		name  string
		value *float64
		kinds string
	}{
		{"chord_m", k.ChordM, "wing_root"}, {"thickness_ratio", k.ThicknessRatio, "wing_root"}, {"radius_m", k.RadiusM, "tube cylinder_on_sphere"},
		{"body_radius_m", k.BodyRadiusM, "tube cylinder_on_sphere"}, {"area_m2", k.AreaM2, "plate"},
	} {
		if strings.Contains(f.kinds, j.Kind) {
			clean = given("/"+f.name, f.value, report) && clean
		}
	}
	if clean {
		k.checkFit(part, report)
	}
}

// checkFit reports a part too large for the body it is set on.
func (j Joint) checkFit(part Shape, report reporter) {
	body := or(j.BodyRadiusM, 0)
	switch j.Kind {
	case "tube":
		if need := *j.RadiusM + or(j.OffsetM, 0); need > body*(1+1e-12) {
			report("/radius_m", "outside", fmt.Sprintf("the tube reaches %s to the side of the body's axis; the body's radius is only %s", metres(need), metres(body)))
		}
	case "cylinder_on_sphere":
		if *j.RadiusM > body*(1+1e-12) {
			report("/radius_m", "outside", fmt.Sprintf("radius_m is %s, more than the sphere's radius of %s", metres(*j.RadiusM), metres(body)))
		}
	case "wing_root":
		if j.BodyRadiusM == nil {
			return
		}
		if _, ok := rootOnRound(j.rootWing(part), body); !ok {
			report("/body_radius_m", "outside", fmt.Sprintf("the wing is too thick for a body of radius %s: it does not meet its side all round; leave body_radius_m out for a flat root", metres(body)))
		}
	}
}

// filled takes what is not given from the two shapes.
func (j Joint) filled(part, body Shape) Joint {
	if wing, ok := part.(*Wing); ok && j.Kind == "wing_root" {
		if j.ChordM == nil {
			j.ChordM = pointer(wing.RootChordM)
		}
		if j.ThicknessRatio == nil && wing.Section != "flat" {
			j.ThicknessRatio = wing.RootThicknessRatio
		}
		return j
	}
	if cylinder, ok := part.(*Cylinder); ok && j.RadiusM == nil {
		j.RadiusM = pointer(cylinder.radius())
	}
	if j.BodyRadiusM != nil {
		return j
	}
	switch body := body.(type) {
	case *Cylinder:
		if j.Kind == "tube" {
			j.BodyRadiusM = pointer(body.radius())
		}
	case *Vessel:
		if j.Kind == "tube" {
			j.BodyRadiusM = pointer(body.radius())
		}
	case *Sphere:
		if j.Kind == "cylinder_on_sphere" {
			j.BodyRadiusM = pointer(body.radius())
		}
	case *Cap:
		if j.Kind == "cylinder_on_sphere" {
			j.BodyRadiusM = pointer(body.radius())
		}
	}
	return j
}

// Measure finds the footprint of a joint that Check passed for the same shapes.
func (j Joint) Measure(part, body Shape) Footprint {
	j = j.filled(part, body)
	switch j.Kind {
	case "wing_root":
		return j.wingRoot(part)
	case "tube":
		return j.tube()
	case "cylinder_on_sphere":
		return j.onSphere()
	}
	return Footprint{
		BodyM2: *j.AreaM2, OwnM2: *j.AreaM2, EdgeM: or(j.EdgeM, 0), OwnEdgeM: or(j.EdgeM, 0), AccuracyPercent: accuracy(wayGiven),
		Formula: "A", Source: "given by the user", Terms: map[string]float64{"A": *j.AreaM2},
	}
}
