package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// drawVessel shows a tank from the side.
func drawVessel(d *drawing, s *surfaces.Vessel) {
	r := radiusOf(s.Round)
	d.views = "Tank with two " + s.Head + " heads from the side"
	d.upTo(max(s.LengthM, greatestRound(s.Round), or(s.HeadDepthM, 0), or(s.CrownRadiusM, 0)))
	shown, cut := shortened(s.LengthM, 2*max(r, headDepth(s)))
	f, along := d.stretch(2*r), d.stretch(shown+2*headDepth(s))
	h := headOf(s, d.k*along, d.k*f)
	L, R := shown*d.k*along, r*d.k*f
	way := d.path().move(point{L / 2, -R}).line(point{0, -R})
	h.left(way, R)
	way.line(point{L / 2, R})
	if cut {
		way = d.path().move(point{L/2 - breakGap, -R}).line(point{0, -R})
		h.left(way, R)
		way.line(point{L/2 - breakGap, R}).move(point{L/2 + breakGap, R})
	}
	way.line(point{L, R})
	h.right(way, L, R)
	if cut {
		d.drawMain(outline, way.line(point{L/2 + breakGap, -R}))
		d.breakLines(bounds{point{0, -R}, point{L, R}}, false)
	} else {
		d.drawMain(outline, way.line(point{L / 2, -R}).close())
	}
	d.axis(point{-h.depth, 0}, point{L + h.depth, 0})
	for _, x := range []float64{0, L} {
		d.line(thin, point{x, -R}, point{x, R})
	}
	d.round(s.Round, point{0, 0}, -h.depth, R, -h.depth-firstDimension, "", f != 1)
	y := R + firstDimension
	d.level(point{0, R}, point{L, R}, y, plain("straight length", s.LengthM).unless(cut || along != 1))
	overall := plain("overall length", s.LengthM+2*headDepth(s)).bracketed().unless(cut || along != 1)
	if s.Head != "flat" {
		d.level(point{-h.depth, 0}, point{L + h.depth, 0}, y+nextDimension+1, overall)
	}
	d.within(bounds{point{0, -R}, point{L, 0}}, -R-4, d.face("side"))
	d.headCallouts(s, h, L, R, f != 1 || along != 1)
}

// headCallouts names the heads and gives their radii or depth, at the right.
func (d *drawing) headCallouts(s *surfaces.Vessel, h head, L, R float64, falsified bool) {
	end := L + h.depth
	if s.Head == "ellipsoidal" {
		d.level(point{L, -R}, point{end, 0}, -R-firstDimension, plain("head depth", *s.HeadDepthM).unless(falsified))
	}
	list := []callout{{to: point{L + h.depth*0.5, R * 0.3}, at: R * 0.3, text: d.face("head_2"), dot: h.depth > 2}}
	if s.Head == "torispherical" {
		crown := d.letters(radius("crown radius", *s.CrownRadiusM).unless(falsified))
		list = append(list, callout{to: point{end, 0}, at: -R * 0.2, text: crown})
		if *s.KnuckleRadiusM > 0 {
			knuckle := d.letters(radius("knuckle radius", *s.KnuckleRadiusM).unless(falsified))
			list = append(list, callout{to: h.knuckle(L, R), at: -R * 0.9, text: knuckle})
		}
	}
	d.column(list, end+8, true)
	left := []callout{{to: point{-h.depth * 0.5, R * 0.5}, at: R * 0.5, text: d.face("head_1"), dot: h.depth > 2}}
	d.column(left, -h.depth-firstDimension-6, false)
}

// head is the outline of a head on paper.
type head struct {
	form           string
	depth          float64 // mm
	crown, bend    [2]float64
	angle          float64 // where crown and knuckle meet, seen from the axis
	crownAt, bend1 float64 // centres from the straight part on: of the crown along the axis, of the knuckle across it
}

// headDepth is how far a head reaches beyond the straight part, in m.
func headDepth(s *surfaces.Vessel) float64 {
	r := radiusOf(s.Round)
	switch s.Head {
	case "hemisphere":
		return r
	case "ellipsoidal":
		return or(s.HeadDepthM, r)
	case "torispherical":
		R, k := or(s.CrownRadiusM, r), or(s.KnuckleRadiusM, 0)
		return R - math.Sqrt(max(0, (R-k)*(R-k)-(r-k)*(r-k)))
	}
	return 0
}

// headOf scales a head by kx along the axis and ky across it.
func headOf(s *surfaces.Vessel, kx, ky float64) head {
	h := head{form: s.Head, depth: headDepth(s) * kx}
	if s.Head != "torispherical" {
		return h
	}
	r := radiusOf(s.Round)
	R, k := or(s.CrownRadiusM, r), or(s.KnuckleRadiusM, 0)
	h.crown, h.bend = [2]float64{R * kx, R * ky}, [2]float64{k * kx, k * ky}
	h.crownAt, h.bend1 = h.depth-R*kx, (r-k)*ky
	if R > k {
		h.angle = math.Asin(min(1, (r-k)/(R-k)))
	}
	return h
}

// left goes round the head at the left, from the top of the straight part at
// x = 0 to its bottom.
func (h head) left(w *path, R float64) {
	const half = math.Pi / 2
	switch h.form {
	case "torispherical":
		w.arc(point{0, -h.bend1}, h.bend[0], h.bend[1], -half, -math.Pi+h.angle)
		w.arc(point{-h.crownAt, 0}, h.crown[0], h.crown[1], -math.Pi+h.angle, -math.Pi-h.angle)
		w.arc(point{0, h.bend1}, h.bend[0], h.bend[1], -math.Pi-h.angle, -math.Pi-half)
	case "flat":
		w.line(point{0, R})
	default:
		w.arc(point{}, h.depth, R, -half, -math.Pi-half)
	}
}

// right goes round the head at the right, from the bottom of the straight part
// at x = L to its top.
func (h head) right(w *path, L, R float64) {
	const half = math.Pi / 2
	switch h.form {
	case "torispherical":
		w.arc(point{L, h.bend1}, h.bend[0], h.bend[1], half, h.angle)
		w.arc(point{L + h.crownAt, 0}, h.crown[0], h.crown[1], h.angle, -h.angle)
		w.arc(point{L, -h.bend1}, h.bend[0], h.bend[1], -h.angle, -half)
	case "flat":
		w.line(point{L, -R})
	default:
		w.arc(point{L, 0}, h.depth, R, half, -half)
	}
}

// knuckle is a point in the middle of the upper bend at the right.
func (h head) knuckle(L, R float64) point {
	return onOval(point{L, -h.bend1}, h.bend[0], h.bend[1], -(h.angle+math.Pi/2)/2)
}
