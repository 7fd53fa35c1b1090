package surfaces

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/interp"
)

// Measure implements Shape. The faces are left and right, which meet along the
// top and bottom lines, and nose and tail where an end is flat. The ring of a
// step belongs half to each side. At an open end the sides meet Open.
func (s *Body) Measure() Measurement {
	b := loftBody(s.Stations)
	last := len(s.Stations) - 1
	m := Measurement{Method: fmt.Sprintf("straight lines between %d sections", len(s.Stations))}
	terms := map[string]float64{"stations": float64(len(s.Stations)), "l": s.Stations[last].XM - s.Stations[0].XM}
	const formula = "by ½·Σ ∫∫ |∂r/∂θ × ∂r/∂t| dθ dt, one term per bay, and the rings of steps"
	m.face("left", b.half, formula, terms, "identity (area of a ruled surface)")
	m.face("right", b.half, formula, terms, "identity (area of a ruled surface)")
	m.edge("left", "right", b.crown+b.keel)
	m.bodyEnd("nose", s.Nose, s.Stations[0], b.noseLine)
	m.bodyEnd("tail", s.Tail, s.Stations[last], b.tailLine)
	for i, ring := range b.steps {
		m.note(fmt.Sprintf("step_%d_area_m2", i+1), 2*ring, "m²", "abs(A1−A0)", map[string]float64{"A0": s.stepAt(i, 0), "A1": s.stepAt(i, 1)}, "identity; counted half in left, half in right")
	}
	m.noteMissed(missedPercent(s.Stations, b))
	return m
}

// stepAt is the area enclosed by one of the two sections of a step, which are
// numbered from the nose.
func (s *Body) stepAt(number, which int) float64 {
	for i := 1; i < len(s.Stations); i++ {
		if s.Stations[i].XM > s.Stations[i-1].XM {
			continue
		}
		if number == 0 {
			return s.Stations[i-1+which].area()
		}
		number--
	}
	return 0
}

// noteMissed adds what straight lines between sections leave out to the
// accuracy, rounded up to 0.1 %.
func (m *Measurement) noteMissed(missed float64) {
	m.note("missed_by_stations_percent", missed, "%", "by 100·4/3·|S′−S|/S, S′ with a smooth section between each two",
		map[string]float64{"S": m.AreaM2()}, "identity (Richardson: the error of straight lines falls with the square of the spacing)")
	m.AccuracyPercent = math.Ceil(10*(accuracy(wayStations)+missed)) / 10
}

// bodyEnd closes an end or leaves it open. An end without area is a point, or
// a line along which left and right meet.
func (m *Measurement) bodyEnd(name, form string, s Station, line float64) {
	switch area := s.area(); {
	case area == 0:
		m.edge("left", "right", line)
	case form == "flat":
		formula := "by w·h·Γ(1+1/n)²/Γ(1+2/n)"
		if s.power() == 1 {
			formula = "π·w·h/4"
		}
		m.face(name, area, formula, map[string]float64{"w": s.WidthM, "h": s.HeightM, "n": or(s.Exponent, 2)}, "identity (area of a superellipse)")
		m.edge("left", name, line)
		m.edge("right", name, line)
	default:
		m.edge("left", Open, line)
		m.edge("right", Open, line)
	}
}

// missedPercent estimates how much straight lines between the stations leave
// out of a smooth skin through them, in % of the area. Between each two
// stations of a run without steps it places a section by shape-preserving
// cubic interpolation, as a fairing batten would lie.
func missedPercent(stations []Station, coarse bodyLoft) float64 {
	if coarse.half == 0 {
		return 0
	}
	missed := 0.0
	for start := 0; start < len(stations); {
		end := start + 1
		for end < len(stations) && stations[end].XM > stations[end-1].XM {
			end++
		}
		missed += missedBy(stations[start:end])
		start = end
	}
	return 100 * 4 / 3.0 * math.Abs(missed) / coarse.half
}

// missedBy is the area of one side of a run of stations with a smooth section
// between each two, less that without. Both are left as few nodes find them: it
// is only for an error bar.
func missedBy(run []Station) float64 {
	nodes := rough()
	ends := [3][]arcPoint{make([]arcPoint, len(nodes)), make([]arcPoint, len(nodes)), make([]arcPoint, len(nodes))}
	area := func(s0, s1 Station, arc0, arc1 []arcPoint) float64 {
		all, _ := bay(arc0, arc1, s1.XM-s0.XM, s1.ZM-s0.ZM)
		return all
	}
	missed, before := 0.0, sectionArc(ends[0], run[0], nodes)
	spare := ends[1]
	for i, middle := range halved(run) {
		s0, s1 := run[i], run[i+1]
		after := sectionArc(spare, s1, nodes)
		if middle.between {
			arc := sectionArc(ends[2], middle.Station, nodes)
			missed += area(s0, middle.Station, before, arc) + area(middle.Station, s1, arc, after) - area(s0, s1, before, after)
		}
		before, spare = after, before
	}
	return missed
}

// fairing is a section half way between two stations, where there is one.
type fairing struct {
	Station
	between bool
}

// halved makes a section half way between each two of a run of increasing x.
func halved(run []Station) []fairing {
	if len(run) < 3 {
		return nil // two stations say nothing about a curve
	}
	x := make([]float64, len(run))
	for i, s := range run {
		x[i] = s.XM
	}
	width := fitted(x, run, func(s *Station) float64 { return s.WidthM })
	height := fitted(x, run, func(s *Station) float64 { return s.HeightM })
	z := fitted(x, run, func(s *Station) float64 { return s.ZM })
	exponent := fitted(x, run, func(s *Station) float64 { return or(s.Exponent, 2) })
	if width == nil || height == nil || z == nil || exponent == nil {
		return nil
	}
	middles := make([]fairing, len(run)-1)
	for i := range middles {
		at := x[i] + (x[i+1]-x[i])/2
		n := exponent(at)
		middles[i] = fairing{Station{XM: at, WidthM: width(at), HeightM: height(at), ZM: z(at), Exponent: &n}, at > x[i] && at < x[i+1]}
	}
	return middles
}

// fitted is the shape-preserving curve through one number of each station, nil
// where there is none.
func fitted(x []float64, run []Station, of func(*Station) float64) func(float64) float64 {
	y, same := make([]float64, len(run)), true
	for i := range run {
		y[i] = of(&run[i])
		same = same && y[i] == y[0]
	}
	if same {
		return func(float64) float64 { return y[0] }
	}
	var curve interp.FritschButland
	if err := curve.Fit(x, y); err != nil {
		return nil
	}
	return curve.Predict
}
