package marking

import (
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Stripe is a stripe of one width or tapering to another. It runs straight along
// x, bends on a radius, or goes right round a body, where it has no ends. A
// straight stripe may have shaped ends, which lie within its length: a cheat
// line along a body.
//
//	straight: area = (w + w₂)/2 · L less what the ends lack
//	curved:   area = w·R·θ, both long edges together 2·R·θ whatever the width
//	round:    area = π·d·w, edges 2·π·d
//
// Source: plane geometry; a band wrapped on a cylinder keeps its area.
type Stripe struct {
	LengthM        float64  `json:"length_m" limit:"[0,1000]" doc:"along the middle line, ends included; left out where an angle or a body says how long it is"`
	WidthM         float64  `json:"width_m" limit:"[0.0005,100]" doc:"at the beginning"`
	EndWidthM      *float64 `json:"end_width_m" limit:"[0,100]" doc:"of a straight stripe at the other end, 0 for a point; as width_m unless given"`
	RadiusM        *float64 `json:"radius_m" limit:"[0.001,10000]" doc:"of the middle line of a curved stripe, turning left; straight unless given"`
	AngleDeg       *float64 `json:"angle_deg" limit:"(0,350]" doc:"through which a curved stripe turns, in place of length_m"`
	RoundDiameterM *float64 `json:"round_diameter_m" limit:"[0.001,300]" doc:"of the round body that the stripe goes right round; it has no ends then"`
	BodyHeightM    *float64 `json:"body_height_m" limit:"[-100,100]" doc:"height of the middle line above the axis of a body with skin_radius_m, as seen from the side; the working says how far that is along the skin"`
	StartShape     string   `json:"start_shape" doc:"of a straight stripe: square (taken unless given), point, round, slant (longer below) or notch"`
	EndShape       string   `json:"end_shape" doc:"as start_shape, at the other end"`
	StartLengthM   *float64 `json:"start_length_m" limit:"(0,100]" doc:"length of a shaped start; half its width for round, its width for others unless given"`
	EndLengthM     *float64 `json:"end_length_m" limit:"(0,100]" doc:"length of a shaped end, likewise"`
	Colour         string   `json:"colour" doc:"lower-case words"`
	Shared
}

func newStripe() *Stripe {
	return &Stripe{StartShape: "square", EndShape: "square", Shared: usualShared()}
}

// Kind implements Figure.
func (*Stripe) Kind() string { return "stripe" }

// Check implements Figure.
func (f *Stripe) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	checkColour("/colour", f.Colour, report)
	for at, shape := range map[string]string{"/start_shape": f.StartShape, "/end_shape": f.EndShape} {
		oneOf(at, shape, report, "square", "point", "round", "slant", "notch")
	}
	f.checkApplicable(report)
	if !clean {
		return
	}
	switch {
	case f.RoundDiameterM != nil:
	case f.RadiusM != nil:
		f.checkCurved(report)
	case f.LengthM < leastExtent:
		report("/length_m", "required", fmt.Sprintf("length_m is %s; a straight stripe is at least %s long", metres(f.LengthM), metres(leastExtent)))
	default:
		f.checkEnds(report)
	}
	if f.BodyHeightM != nil && f.SkinRadiusM != nil && math.Abs(*f.BodyHeightM) > *f.SkinRadiusM {
		report("/body_height_m", "inconsistent", fmt.Sprintf("body_height_m is %s and the body's radius only %s", metres(*f.BodyHeightM), metres(*f.SkinRadiusM)))
	}
}

// checkApplicable reports fields that go with another form of stripe.
func (f *Stripe) checkApplicable(report reporter) {
	curved, round := f.RadiusM != nil, f.RoundDiameterM != nil
	refuse := func(given bool, pointer, why string) {
		if given {
			report(pointer, "not_applicable", last(pointer)+" is given "+why+"; leave one of them out")
		}
	}
	refuse(f.LengthM != 0 && round, "/length_m", "and round_diameter_m says how long the stripe is")
	refuse(f.LengthM != 0 && curved && f.AngleDeg != nil, "/length_m", "and so is angle_deg")
	refuse(f.AngleDeg != nil && !curved, "/angle_deg", "without radius_m")
	refuse(curved && round, "/radius_m", "with round_diameter_m")
	refuse(f.EndWidthM != nil && (curved || round), "/end_width_m", "and only a straight stripe tapers")
	refuse(f.StartShape != "square" && (curved || round), "/start_shape", "and only a straight stripe has shaped ends")
	refuse(f.EndShape != "square" && (curved || round), "/end_shape", "and only a straight stripe has shaped ends")
	refuse(f.StartLengthM != nil && f.StartShape == "square", "/start_length_m", "with a square start")
	refuse(f.EndLengthM != nil && f.EndShape == "square", "/end_length_m", "with a square end")
	refuse(f.BodyHeightM != nil && f.SkinRadiusM == nil, "/body_height_m", "without skin_radius_m")
}

func (f *Stripe) checkCurved(report reporter) {
	angle := f.angle()
	switch {
	case f.AngleDeg == nil && f.LengthM == 0:
		report("/angle_deg", "required", "angle_deg is missing; give it, or length_m along the middle line")
	case f.WidthM > 2**f.RadiusM*(1-1e-6):
		report("/width_m", "inconsistent", fmt.Sprintf("width_m is %s; a stripe on a radius of %s must be narrower than %s", metres(f.WidthM), metres(*f.RadiusM), metres(2**f.RadiusM)))
	case angle > 350*degree*(1+1e-12):
		report("/length_m", "inconsistent", fmt.Sprintf("length_m is %s and turns through %.6g°; at most 350°: use ring for a whole turn", metres(f.LengthM), angle/degree))
	case angle**f.RadiusM < leastExtent:
		report("/angle_deg", "inconsistent", fmt.Sprintf("the stripe is %s long; it must be at least %s", metres(angle**f.RadiusM), metres(leastExtent)))
	}
}

func (f *Stripe) checkEnds(report reporter) {
	start, end := f.ends()
	if start+end > f.LengthM*(1+1e-12) {
		report("/length_m", "inconsistent", fmt.Sprintf("length_m is %s and the shaped ends take %s of it; make the stripe longer or the ends shorter", metres(f.LengthM), metres(start+end)))
	}
	if f.EndWidthM != nil && *f.EndWidthM != f.WidthM && (f.StartShape != "square" || f.EndShape != "square") {
		report("/end_width_m", "not_applicable", "end_width_m differs from width_m and an end is shaped; a tapering stripe has square ends")
	}
	for at, c := range map[string]struct {
		shape string
		depth *float64
	}{"/start_length_m": {f.StartShape, f.StartLengthM}, "/end_length_m": {f.EndShape, f.EndLengthM}} {
		if c.shape == "round" && c.depth != nil && *c.depth > f.WidthM/2*(1+1e-12) {
			report(at, "inconsistent", fmt.Sprintf("%s is %s; a round end is at most half as long as the stripe is wide, %s", last(at), metres(*c.depth), metres(f.WidthM/2)))
		}
	}
}

// angle is that through which a curved stripe turns, in radians.
func (f *Stripe) angle() float64 {
	if f.AngleDeg != nil {
		return *f.AngleDeg * degree
	}
	return f.LengthM / *f.RadiusM
}

// ends are the lengths of the shaped ends.
func (f *Stripe) ends() (start, end float64) {
	depth := func(shape string, given *float64) float64 {
		switch {
		case shape == "square":
			return 0
		case given != nil:
			return *given
		case shape == "round":
			return f.WidthM / 2
		}
		return f.WidthM
	}
	return depth(f.StartShape, f.StartLengthM), depth(f.EndShape, f.EndLengthM)
}

// Layers implements Figure. A band round a body is laid out flat, from seam to
// seam; a curved stripe turns about the origin.
func (f *Stripe) Layers() []planar.Layer {
	half := f.WidthM / 2
	switch {
	case f.RoundDiameterM != nil:
		return []planar.Layer{layer(f.Colour, planar.Rectangle(planar.Point{Y: -half}, planar.Point{X: pi * *f.RoundDiameterM, Y: half}))}
	case f.RadiusM != nil:
		return []planar.Layer{layer(f.Colour, bent(*f.RadiusM, half, f.angle()))}
	case f.StartShape != "square" || f.EndShape != "square":
		return []planar.Layer{layer(f.Colour, f.shaped())}
	}
	end := half
	if f.EndWidthM != nil {
		end = *f.EndWidthM / 2
	}
	return []planar.Layer{layer(f.Colour, planar.Polygon(
		planar.Point{X: 0, Y: -half}, planar.Point{X: f.LengthM, Y: -end},
		planar.Point{X: f.LengthM, Y: end}, planar.Point{X: 0, Y: half}))}
}

// bent is a stripe about the origin, in pieces of less than half a turn.
func bent(radius, half, angle float64) planar.Outline {
	pieces := int(math.Ceil(angle / 2))
	step := angle / float64(pieces)
	var o planar.Outline
	for i := range pieces {
		o = append(o, planar.Corner{At: planar.Polar(planar.Point{}, radius+half, float64(i)*step), Sweep: step})
	}
	o = append(o, planar.Corner{At: planar.Polar(planar.Point{}, radius+half, angle)})
	for i := pieces; i > 0; i-- {
		o = append(o, planar.Corner{At: planar.Polar(planar.Point{}, radius-half, float64(i)*step), Sweep: -step})
	}
	return append(o, planar.Corner{At: planar.Polar(planar.Point{}, radius-half, 0)})
}

// shaped is a straight stripe with its ends, counter-clockwise from below.
func (f *Stripe) shaped() planar.Outline {
	start, end := f.ends()
	right := endOf(f.EndShape, f.LengthM, end, f.WidthM/2)
	left := endOf(f.StartShape, 0, start, f.WidthM/2)
	// The left end is the right end of the stripe looked at from behind.
	mirrored := make(planar.Outline, 0, len(left))
	for i := len(left) - 1; i >= 0; i-- {
		c := planar.Corner{At: planar.Point{X: -left[i].At.X, Y: left[i].At.Y}}
		if i > 0 {
			c.Sweep = left[i-1].Sweep
		}
		mirrored = append(mirrored, c)
	}
	return append(right, mirrored...)
}

// endOf is the end of a stripe to the right, from its lower to its upper corner.
// A flatter round end is an arc of height depth.
func endOf(shape string, x, depth, half float64) planar.Outline {
	at := func(x, y float64) planar.Corner { return planar.Corner{At: planar.Point{X: x, Y: y}} }
	switch shape {
	case "point":
		return planar.Outline{at(x-depth, -half), at(x, 0), at(x-depth, half)}
	case "round":
		first := at(x-depth, -half)
		first.Sweep = 4 * math.Atan(depth/half)
		return planar.Outline{first, at(x-depth, half)}
	case "slant":
		return planar.Outline{at(x, -half), at(x-depth, half)}
	case "notch":
		return planar.Outline{at(x, -half), at(x-depth, 0), at(x, half)}
	}
	return planar.Outline{at(x, -half), at(x, half)}
}

// closeSeam takes off the two ends of a band that goes right round: they meet.
func (f *Stripe) closeSeam(lengths []planar.Length) {
	if f.RoundDiameterM == nil {
		return
	}
	for i, l := range lengths {
		if l.Between == [2]string{f.Colour, planar.Base} {
			lengths[i].Length = l.Length - 2*f.WidthM
		}
	}
}

func (f *Stripe) dimensions() []quantity.Working {
	var list []quantity.Working
	if f.RadiusM != nil {
		list = append(list, length("middle_line_m", f.angle()**f.RadiusM, "R·θ", map[string]float64{"R": *f.RadiusM, "θ": f.angle()}, identity))
	}
	if f.RoundDiameterM != nil {
		list = append(list, length("middle_line_m", pi**f.RoundDiameterM, "π·d", map[string]float64{"d": *f.RoundDiameterM}, identity))
	}
	if f.BodyHeightM != nil && f.SkinRadiusM != nil {
		y, r := math.Abs(*f.BodyHeightM), *f.SkinRadiusM
		list = append(list, length("along_skin_from_side_m", r*math.Asin(y/r), "by unrolling: ρ·asin(y/ρ) from the side of the body", map[string]float64{"y": y, "ρ": r}, "identity: arc length"))
	}
	return list
}
