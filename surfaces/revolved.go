package surfaces

import (
	"fmt"
	"math"
)

// Revolved is a free profile turned about the x axis, straight from point to
// point: a spinner, a turned part, a tank of odd form.
type Revolved struct {
	Profile [][2]float64 `json:"profile" unit:"m" doc:"points [x, r] in order from one end to the other, at least two; r is the distance from the axis"`
}

// Kind implements Shape.
func (*Revolved) Kind() string { return "revolved" }

// Check implements Shape.
func (s *Revolved) Check(report func(pointer, code, detail string)) {
	if len(s.Profile) > maxCorners {
		report("/profile", "too_many", fmt.Sprintf("the profile has %d points; at most %d are taken", len(s.Profile), maxCorners))
		return
	}
	if len(s.Profile) < 2 {
		report("/profile", "required", fmt.Sprintf("the profile has %d points; give two or more", len(s.Profile)))
		return
	}
	clean := checkCoordinates("/profile", s.Profile, [2]string{"x", "r"}, report)
	for i, p := range s.Profile {
		if p[1] < 0 {
			clean = false
			report(fmt.Sprintf("/profile/%d/1", i), "out_of_range", fmt.Sprintf("r is %s; it must be at least 0 m", metres(p[1])))
		}
	}
	if !clean {
		return
	}
	if i, j, found := line(s.Profile).crossing(false); found {
		report("/profile", "self_crossing", crossingDetail(i, j))
	}
	if s.area() == 0 {
		report("/profile", "inconsistent", "the profile lies on the axis; give points with r above 0")
	}
}

// area is that of one cone frustum per stretch of the profile.
func (s *Revolved) area() float64 {
	sum := 0.0
	for i := 1; i < len(s.Profile); i++ {
		a, b := s.Profile[i-1], s.Profile[i]
		sum += math.Pi * (a[1] + b[1]) * math.Hypot(b[0]-a[0], b[1]-a[1])
	}
	return sum
}

// Measure implements Shape. The face, outside, ends where an end of the profile
// does not reach the axis.
func (s *Revolved) Measure() Measurement {
	points, last := float64(len(s.Profile)), len(s.Profile)-1
	m := Measurement{Method: fmt.Sprintf("cone frustums between %d points of the profile", len(s.Profile))}
	m.face("outside", s.area(), "by Σ π·(r1+r2)·√(Δx²+Δr²), one term per side of the profile", map[string]float64{"points": points}, "identity")
	m.edge("outside", Open, 2*math.Pi*(s.Profile[0][1]+s.Profile[last][1]))
	missed := 0.0
	if stations, ok := s.stations(); ok {
		missed = missedPercent(stations, loftBody(stations))
	}
	m.noteMissed(missed)
	return m
}

// stations are the profile's points as round sections of a body, if they run
// one way.
func (s *Revolved) stations() ([]Station, bool) {
	var stations []Station
	for i, p := range s.Profile {
		if i > 0 && p[0] != s.Profile[i-1][0] && p[0]-s.Profile[i-1][0] < leastBay {
			return nil, false
		}
		stations = append(stations, Station{XM: p[0], WidthM: 2 * p[1], HeightM: 2 * p[1]})
	}
	return stations, true
}
