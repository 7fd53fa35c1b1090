package placing

import (
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
)

func (t Tape) point() planar.Point { return planar.Point{X: t.XM, Y: t.YM} }

// from is the distance from the tape's point to p.
func (t Tape) from(p planar.Point) float64 { return math.Hypot(p.X-t.XM, p.Y-t.YM) }

// meet finds the points at two taped distances from points d apart: to the left
// of the way from the first to the second, and to the right.
//
//	x = (d² + r₁² − r₂²)/(2·d) along that way,  y = ±√(r₁² − x²)
//
// why says what is wrong where there is none. Source: intersection of two
// circles, identity.
func meet(a, b Tape) (left, right planar.Point, why string) {
	d := math.Hypot(b.XM-a.XM, b.YM-a.YM)
	r1, r2 := a.DistanceM, b.DistanceM
	switch {
	case d < 1e-9:
		return left, right, "the two points are one; take points apart from each other"
	case r1+r2 < d:
		return left, right, fmt.Sprintf("the points are %.6g m apart and the tapes reach %.6g m and %.6g m, %.3g m too short to meet", d, r1, r2, d-r1-r2)
	case math.Abs(r1-r2) > d:
		return left, right, fmt.Sprintf("the points are %.6g m apart and the tapes %.6g m and %.6g m, whose difference is greater: one circle lies inside the other", d, r1, r2)
	}
	x := (d*d + (r1-r2)*(r1+r2)) / (2 * d)
	y := math.Sqrt(max(0, (r1-x)*(r1+x)))
	ux, uy := (b.XM-a.XM)/d, (b.YM-a.YM)/d
	left = planar.Point{X: a.XM + x*ux - y*uy, Y: a.YM + x*uy + y*ux}
	right = planar.Point{X: a.XM + x*ux + y*uy, Y: a.YM + x*uy - y*ux}
	return left, right, ""
}

// angleAt is the angle at p between the ways to two points, in degrees.
func angleAt(p planar.Point, a, b Tape) float64 {
	ax, ay, bx, by := a.XM-p.X, a.YM-p.Y, b.XM-p.X, b.YM-p.Y
	return math.Abs(math.Atan2(ax*by-ay*bx, ax*bx+ay*by)) * 180 / math.Pi
}

func (p *Place) twoTapes(f *Fix, report reporter) {
	a, b := p.Tapes[0], p.Tapes[1]
	left, right, why := meet(a, b)
	if why != "" {
		report("/tapes", "inconsistent", "the tapes do not meet: "+why)
		return
	}
	at := left
	if p.Side == "right" {
		at = right
	}
	angle := angleAt(at, a, b)
	if refuseAngle(angle, "/tapes", "the tapes meet", report) {
		return
	}
	f.XM, f.YM = at.X, at.Y
	d := math.Hypot(b.XM-a.XM, b.YM-a.YM)
	terms := map[string]float64{"d": d, "r1": a.DistanceM, "r2": b.DistanceM}
	f.note("along_m", (d*d+a.DistanceM*a.DistanceM-b.DistanceM*b.DistanceM)/(2*d), "(d^2 + r1^2 − r2^2)/(2·d)", terms, "intersection of two circles: identity")
	f.setError(p.ways(at), angle, p.TapeErrorMM)
	f.warnWeak("the tapes meet")
}

// disagreeing is the residual over the tape error beyond which one of three
// tapes was probably read wrong (four standard deviations), and the least
// residual that is refused, for tapes taken as exact.
const (
	disagreeing   = 4
	leastResidual = 1e-6 // m
)

// threeTapes finds the point whose distances agree best with three tapes.
//
//	least Σ (|p − pᵢ| − rᵢ)²,  error = s·√trace((JᵀJ)⁻¹),  J the unit vectors to the points
//
// Source: least squares; for two tapes the error is s·√2/sin γ.
func (p *Place) threeTapes(f *Fix, report reporter) {
	starts := p.starts()
	if len(starts) == 0 {
		_, _, why := meet(p.Tapes[0], p.Tapes[1])
		report("/tapes", "inconsistent", "the tapes do not meet: "+why)
		return
	}
	best, least := planar.Point{}, math.Inf(1)
	var found []planar.Point
	for _, s := range starts {
		at := p.fit(s)
		found = append(found, at)
		if r := p.residual(at); r < least {
			best, least = at, r
		}
	}
	if p.inLine() { // both sides fit alike, to what the tapes are good for
		nearest := least + max(p.TapeErrorMM/1000, 1e-9)
		for _, at := range found {
			if r := p.residual(at); r <= nearest && p.leftOf(at) == (p.Side == "left") {
				best, least, nearest = at, r, r
			}
		}
		f.Warnings = append(f.Warnings, "the three points lie in one line, so that the tapes cannot tell its sides apart: the "+p.Side+" one was taken")
	}
	if least > max(disagreeing*p.TapeErrorMM/1000, leastResidual) {
		report("/tapes", "inconsistent", fmt.Sprintf("the tapes do not meet: the best point is off by %.3g m (root mean square), for tapes good to %.3g m; measure again, one of them was probably read wrong", least, p.TapeErrorMM/1000))
		return
	}
	if n := normalOf(p.ways(best)); !(n.ratio() < math.Sqrt2/math.Sin(leastDeg*math.Pi/180)) {
		report("/tapes", "inconsistent", "the tapes lie so nearly in one line that the point may be anywhere along it; measure from other references, best at about 90°")
		return
	}
	f.XM, f.YM, f.ResidualM = best.X, best.Y, least
	for _, t := range p.Tapes {
		f.ResidualsM = append(f.ResidualsM, t.DistanceM-t.from(best))
	}
	f.setError(p.ways(best), p.steepest(best), p.TapeErrorMM)
	f.note("residual_m", least, "√((e1^2 + e2^2 + e3^2)/3)", map[string]float64{"e1": f.ResidualsM[0], "e2": f.ResidualsM[1], "e3": f.ResidualsM[2]}, "least squares")
	f.warnWeak("the tapes meet")
}
