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
	const formula = "½·Σ ∫∫ |∂r/∂θ × ∂r/∂t| dθ dt, one term per bay, and the rings of steps"
	m.face("left", b.half, formula, terms, "identity (area of a ruled surface)")
	m.face("right", b.half, formula, terms, "identity (area of a ruled surface)")
	m.edge("left", "right", b.crown+b.keel)
	m.bodyEnd("nose", s.Nose, s.Stations[0], b.noseLine)
	m.bodyEnd("tail", s.Tail, s.Stations[last], b.tailLine)
	for i, ring := range b.steps {
		m.note(fmt.Sprintf("step_%d_area_m2", i+1), 2*ring, "m²", "|A1−A0|, counted in left and right", nil, "identity")
	}
	m.noteMissed(missedPercent(s.Stations, b))
	return m
}

// noteMissed adds what straight lines between sections leave out to the
// accuracy, rounded up to 0.1 %.
func (m *Measurement) noteMissed(missed float64) {
	m.note("missed_by_stations_percent", missed, "%", "100·4/3·|S'−S|/S, S' with a smooth section between each two",
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
		m.face(name, area, "w·h·Γ(1+1/n)²/Γ(1+2/n)", map[string]float64{"w": s.WidthM, "h": s.HeightM, "n": or(s.Exponent, 2)}, "identity (area of a superellipse)")
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
	var fine []Station
	for start := 0; start < len(stations); {
		end := start + 1
		for end < len(stations) && stations[end].XM > stations[end-1].XM {
			end++
		}
		fine = append(fine, halved(stations[start:end])...)
		start = end
	}
	return 100 * 4 / 3.0 * math.Abs(loftRoughly(fine, rough()).half-loftRoughly(stations, rough()).half) / coarse.half
}

// halved puts a section half way between each two of a run of increasing x.
func halved(run []Station) []Station {
	if len(run) < 3 {
		return run // two stations say nothing about a curve
	}
	x := make([]float64, len(run))
	for i, s := range run {
		x[i] = s.XM
	}
	fit := func(of func(Station) float64) func(float64) float64 {
		y := make([]float64, len(run))
		for i, s := range run {
			y[i] = of(s)
		}
		var curve interp.FritschButland
		if err := curve.Fit(x, y); err != nil {
			return nil
		}
		return curve.Predict
	}
	width := fit(func(s Station) float64 { return s.WidthM })
	height := fit(func(s Station) float64 { return s.HeightM })
	z := fit(func(s Station) float64 { return s.ZM })
	exponent := fit(func(s Station) float64 { return or(s.Exponent, 2) })
	if width == nil || height == nil || z == nil || exponent == nil {
		return run
	}
	fine := []Station{run[0]}
	for i := 1; i < len(run); i++ {
		middle := x[i-1] + (x[i]-x[i-1])/2
		n := exponent(middle)
		if middle > x[i-1] && middle < x[i] {
			fine = append(fine, Station{XM: middle, WidthM: width(middle), HeightM: height(middle), ZM: z(middle), Exponent: &n})
		}
		fine = append(fine, run[i])
	}
	return fine
}
