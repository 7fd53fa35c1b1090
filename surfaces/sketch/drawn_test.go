package sketch

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"filmbuild/surfaces"
	"filmbuild/surfaces/mesh"
)

// maker draws shapes whose lengths lie between two bounds, in m, evenly on a
// logarithmic scale. All of its numbers are invented.
type maker struct {
	*rapid.T
	low, high float64
}

func pointer[T any](v T) *T { return &v }

// length is a length within the bounds, and within those of a field.
func (m maker) length(label string, low, high float64) float64 {
	low, high = max(low, m.low), min(high, m.high)
	v := math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(m.T, label))
	return min(max(v, low), high)
}

func (m maker) number(label string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(m.T, label)
}

func (m maker) count(label string, low, high int) int {
	return rapid.IntRange(low, high).Draw(m.T, label)
}

func (m maker) yes(label string) bool { return rapid.Bool().Draw(m.T, label) }

func (m maker) word(label string, words ...string) string {
	return rapid.SampledFrom(words).Draw(m.T, label)
}

func (m maker) round() surfaces.Round {
	r := m.length("radius", 0.0005, 250)
	if m.yes("by diameter") {
		return surfaces.Round{DiameterM: pointer(2 * r)}
	}
	return surfaces.Round{RadiusM: &r}
}

// shape draws a shape of a kind; it need not be faultless.
func (m maker) shape(kind string) surfaces.Shape {
	l := func(label string) float64 { return m.length(label, 0.001, 500) }
	switch kind {
	case "measured":
		return &surfaces.Measured{AreaM2: math.Pow(l("side"), 2) * 0.4, EdgeM: m.number("edge", 0, 50)}
	case "panel":
		return m.panel()
	case "box":
		return &surfaces.Box{LengthM: l("length"), WidthM: l("width"), HeightM: l("height")}
	case "cylinder":
		return &surfaces.Cylinder{Round: m.round(), LengthM: l("length"), Ends: m.count("ends", 0, 2)}
	case "frustum":
		s := &surfaces.Frustum{Radius1M: m.length("r1", 0.0005, 250), Radius2M: pointer(0.0), LengthM: l("length"), Ends: m.count("ends", 0, 2)}
		if m.yes("cut") {
			*s.Radius2M = m.length("r2", 0.0005, 250)
		}
		return s
	case "sphere":
		return &surfaces.Sphere{Round: m.round()}
	case "cap":
		r := m.round()
		return &surfaces.Cap{Round: r, HeightM: m.length("height", 0.001, max(0.001, 2*radiusOf(r)))}
	case "torus":
		r := m.length("tube", 0.0005, 250)
		return &surfaces.Torus{TubeRadiusM: r, RingRadiusM: m.length("ring", r, 250)}
	case "ellipsoid":
		a := func(label string) float64 { return m.length(label, 0.0005, 250) }
		return &surfaces.Ellipsoid{AM: a("a"), BM: a("b"), CM: a("c"), Part: m.word("part", "whole", "half")}
	case "mesh":
		low := [3]float64{m.number("x", -5, 5), m.number("y", -5, 5), m.number("z", -5, 5)}
		return resolved(low, [3]float64{low[0] + l("along x"), low[1] + l("along y"), low[2] + l("along z")})
	case "nose":
		return m.nose()
	case "vessel":
		return m.vessel()
	case "wing":
		return m.wing()
	case "body":
		return m.body()
	case "bar":
		return m.bar()
	case "corrugated":
		return m.corrugated()
	case "revolved":
		s, x := &surfaces.Revolved{}, m.number("start", -2, 2)
		for range m.count("points", 2, 40) {
			s.Profile = append(s.Profile, [2]float64{x, m.length("r", 0.0005, 250)})
			x += m.length("step", 0.001, 10)
		}
		return s
	}
	return &surfaces.Swept{PerimeterM: l("perimeter"), LengthM: l("length")}
}

// resolved is a mesh of which the box was found to be this one.
func resolved(low, high [3]float64) surfaces.Shape {
	made, _ := surfaces.New("mesh")
	s := made.(*surfaces.Mesh)
	s.Mesh, s.Unit = "door.stl", "mm"
	s.Resolve(mesh.Result{
		Faces: []mesh.Face{{Name: "surface", AreaM2: 1}}, Box: mesh.Box{Low: low, High: high}, Accuracy: mesh.Accuracy{Percent: 2},
	})
	return s
}

func (m maker) panel() surfaces.Shape {
	w, h := m.length("width", 0.001, 500), m.length("height", 0.001, 500)
	s := &surfaces.Panel{Sides: m.count("sides", 1, 2)}
	if m.yes("outline") {
		n := m.count("corners", 3, 12)
		for i := range n { // star-shaped, so that it cannot cross itself
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			r := m.number("reach", 0.5, 1)
			s.Outline = append(s.Outline, [2]float64{w / 2 * (1 + r*cos), h / 2 * (1 + r*sin)})
		}
	} else {
		s.WidthM, s.HeightM = &w, &h
		if m.yes("rounded") {
			s.CornerRadiusM = pointer(min(w, h) * m.number("corner", 0, 0.5))
		}
	}
	if m.yes("thick") {
		s.ThicknessMM = pointer(m.number("thickness", 0.1, 20))
	}
	columns, rows := m.count("columns", 1, 9), m.count("rows", 0, 4)
	for i := range columns * rows {
		x := w * (0.3 + 0.4*(float64(i%columns)+0.5)/float64(columns))
		y := h * (0.3 + 0.4*(float64(i/columns)+0.5)/float64(rows))
		pitch := min(0.4*w/float64(columns), 0.4*h/float64(rows))
		d := max(0.001, pitch*m.number("share", 0.2, 0.8))
		hole := surfaces.Hole{DiameterM: &d, XM: &x, YM: &y}
		switch m.count("form", 0, 2) {
		case 1:
			hole = surfaces.Hole{WidthM: &d, HeightM: pointer(max(0.001, d*0.7)), CornerRadiusM: pointer(d * 0.1), XM: &x, YM: &y}
		case 2:
			hole = surfaces.Hole{Outline: [][2]float64{{x - d/2, y}, {x, y + d/2}, {x + d/2, y}}}
		}
		s.Holes = append(s.Holes, hole)
	}
	return s
}

func (m maker) nose() surfaces.Shape {
	r := m.round()
	s := &surfaces.Nose{Round: r, LengthM: m.length("length", max(0.001, radiusOf(r)), 500)}
	s.Profile = m.word("profile", "tangent_ogive", "secant_ogive", "haack", "paraboloid", "power", "elliptic")
	switch s.Profile {
	case "secant_ogive":
		least := (radiusOf(r)*radiusOf(r) + s.LengthM*s.LengthM) / (2 * radiusOf(r))
		s.ArcRadiusM = pointer(least * m.number("arc", 1.001, 9))
	case "haack":
		s.HaackC = pointer(m.number("C", 0, 0.6667))
	case "power":
		s.Exponent = pointer(m.number("exponent", 0.2, 1))
	}
	return s
}

func (m maker) vessel() surfaces.Shape {
	s := &surfaces.Vessel{Round: m.round(), LengthM: m.length("length", 0.001, 500), Head: m.word("head", "flat", "hemisphere", "ellipsoidal", "torispherical")}
	if m.yes("two heads joined") {
		s.LengthM = 0
	}
	switch s.Head {
	case "ellipsoidal":
		s.HeadDepthM = pointer(m.length("depth", 0.0005, 250))
	case "torispherical":
		s.CrownRadiusM = pointer(radiusOf(s.Round) * m.number("crown", 1, 3))
		s.KnuckleRadiusM = pointer(radiusOf(s.Round) * m.number("knuckle", 0, 1))
	}
	return s
}

func (m maker) wing() surfaces.Shape {
	made, _ := surfaces.New("wing")
	s := made.(*surfaces.Wing)
	s.RootChordM, s.TipChordM = m.length("root", 0.001, 100), pointer(0.0)
	s.SpanM, s.SweepLEDeg = m.length("span", 0.001, 200), m.number("sweep", -84.9, 84.9)
	if m.low > 0.01 { // everyday proportions
		s.SweepLEDeg = m.number("sweep", -60, 60)
	}
	if m.yes("blunt") {
		*s.TipChordM = m.length("tip", 0.001, 100)
	}
	s.Section = m.word("section", "naca", "biconvex", "double_wedge", "elliptic", "flat")
	if s.Section != "flat" {
		s.RootThicknessRatio = pointer(m.number("thickness", 0.001, 0.5))
		if m.yes("tip differs") {
			s.TipThicknessRatio = pointer(m.number("tip thickness", 0.001, 0.5))
		}
	}
	s.Tip = m.word("tip form", "open", "capped")
	if s.Section == "naca" {
		s.TrailingEdge = m.word("edge", "open", "closed")
		if m.yes("cambered") {
			s.CamberRatio, s.CamberPositionRatio = m.number("camber", 0, 0.15), pointer(m.number("position", 0.1, 0.9))
		}
	}
	return s
}

func (m maker) body() surfaces.Shape {
	made, _ := surfaces.New("body")
	s := made.(*surfaces.Body)
	x := m.number("start", -3, 3)
	lifted := m.yes("lifted")
	for range m.count("stations", 2, 40) {
		q := surfaces.Station{XM: x, WidthM: m.length("width", 0.001, 100), HeightM: m.length("height", 0.001, 100)}
		if lifted {
			q.ZM = m.number("z", -1, 1) * m.high / 10
		}
		if m.yes("boxy") {
			q.Exponent = pointer(m.number("n", 1, 20))
		}
		s.Stations = append(s.Stations, q)
		x += m.length("bay", 0.001, 12)
	}
	s.Nose, s.Tail = m.word("nose", "open", "flat"), m.word("tail", "open", "flat")
	return s
}

func (m maker) bar() surfaces.Shape {
	mm := func(label string, low, high float64) *float64 { return pointer(m.number(label, low, high)) }
	s := &surfaces.Bar{LengthM: m.length("length", 0.001, 500)}
	p := &s.Profile
	p.Kind = m.word("profile", "i", "channel", "angle", "rect_tube", "round_tube", "round", "flat")
	h, b := 1000*m.length("h", 0.05, 5), 1000*m.length("b", 0.05, 5)
	least := min(h, b)
	some := func(label string, low, high float64) *float64 {
		if m.yes(label + " given") {
			return mm(label, low, high)
		}
		return nil
	}
	switch p.Kind {
	case "round_tube", "round":
		p.DiameterMM = &h
		if p.Kind == "round_tube" {
			p.WallMM = some("wall", 0.1, min(h/2, 500))
		}
		return s
	}
	p.HeightMM, p.WidthMM = &h, &b
	switch p.Kind {
	case "i", "channel":
		p.WebMM = mm("web", 0.1, least*0.2)
		p.FlangeMM, p.RadiusMM = some("flange", 0.1, least*0.2), some("radius", 0, least*0.2)
	case "angle":
		p.WallMM = some("wall", least*0.1, least*0.3)
		p.RadiusMM, p.ToeRadiusMM = some("radius", 0, least*0.3), some("toe", 0, least*0.1)
	case "rect_tube":
		p.WallMM, p.RadiusMM = some("wall", 0.1, least*0.3), some("radius", 0, least*0.4)
	}
	return s
}

func (m maker) corrugated() surfaces.Shape {
	s := &surfaces.Corrugated{WidthM: m.length("width", 0.001, 500), LengthM: m.length("length", 0.001, 500), Sides: m.count("sides", 1, 2)}
	s.PitchMM = 1000 * m.length("pitch", 0.0001, 5)
	s.DepthMM = min(2500, max(0.01, s.PitchMM*m.number("depth", 0.02, 0.5)))
	s.Form = m.word("form", "sine", "arc", "trapezoid")
	if s.Form == "trapezoid" {
		s.CrestMM, s.ValleyMM = pointer(s.PitchMM*m.number("crest", 0, 0.5)), pointer(s.PitchMM*m.number("valley", 0, 0.5))
	}
	return s
}

// everyday draws a faultless shape of sizes that are easily drawn to scale.
func everyday(t *rapid.T, kind string) surfaces.Shape {
	return faultless(t, maker{t, 0.3, 3}, kind)
}

// extreme draws a faultless shape of sizes up to the limits.
func extreme(t *rapid.T, kind string) surfaces.Shape {
	return faultless(t, maker{t, 0.0001, 500}, kind)
}

func faultless(t *rapid.T, m maker, kind string) surfaces.Shape {
	s := m.shape(kind)
	s.Check(func(pointer, _, detail string) { t.Skip(pointer, detail) })
	return s
}

// forEveryKind runs a property on shapes of every kind.
func forEveryKind(t *testing.T, draw func(*rapid.T, string) surfaces.Shape, check func(*rapid.T, surfaces.Shape)) {
	for _, k := range surfaces.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) { check(t, draw(t, k.Name)) })
		})
	}
}
