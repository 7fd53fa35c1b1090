package surfaces

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"

	"pgregory.net/rapid"
)

// number draws a length or the like within a span of values.
func number(t *rapid.T, low, high float64, label string) float64 {
	return rapid.Float64Range(low, high).Draw(t, label)
}

// drawn lists a generator of faultless shapes for every kind.
func drawn() map[string]func(*rapid.T) Shape {
	round := func(t *rapid.T) Round {
		if rapid.Bool().Draw(t, "by diameter") {
			return Round{DiameterM: pointer(number(t, 0.1, 10, "diameter"))}
		}
		return Round{RadiusM: pointer(number(t, 0.1, 5, "radius"))}
	}
	ends := func(t *rapid.T) int { return rapid.IntRange(0, 2).Draw(t, "ends") }
	return map[string]func(*rapid.T) Shape{
		"measured": func(t *rapid.T) Shape { return &Measured{number(t, 0.1, 100, "area"), number(t, 0, 50, "edge")} },
		"panel":    func(t *rapid.T) Shape { return drawnPanel(t) },
		"box": func(t *rapid.T) Shape {
			return &Box{number(t, 0.1, 9, "length"), number(t, 0.1, 9, "width"), number(t, 0.1, 9, "height")}
		},
		"cylinder": func(t *rapid.T) Shape { return &Cylinder{round(t), number(t, 0.1, 9, "length"), ends(t)} },
		"frustum": func(t *rapid.T) Shape {
			return &Frustum{number(t, 0.1, 5, "r1"), pointer(number(t, 0, 5, "r2")), number(t, 0.1, 9, "length"), ends(t)}
		},
		"sphere": func(t *rapid.T) Shape { return &Sphere{round(t)} },
		"cap": func(t *rapid.T) Shape {
			r := round(t)
			return &Cap{r, 2 * r.radius() * number(t, 0.05, 1, "height")}
		},
		"ellipsoid": func(t *rapid.T) Shape {
			return &Ellipsoid{number(t, 0.1, 9, "a"), number(t, 0.1, 9, "b"), number(t, 0.1, 9, "c"), rapid.SampledFrom([]string{"whole", "half"}).Draw(t, "part")}
		},
		"torus": func(t *rapid.T) Shape {
			r := number(t, 0.05, 2, "tube")
			return &Torus{r + number(t, 0, 5, "ring"), r}
		},
		"vessel": func(t *rapid.T) Shape {
			v := &Vessel{Round: round(t), LengthM: number(t, 0, 9, "length"), Head: rapid.SampledFrom([]string{"flat", "hemisphere", "ellipsoidal", "torispherical"}).Draw(t, "head")}
			switch v.Head {
			case "ellipsoidal":
				v.HeadDepthM = pointer(number(t, 0.05, 5, "depth"))
			case "torispherical":
				v.CrownRadiusM, v.KnuckleRadiusM = pointer(v.radius()*number(t, 1, 3, "crown")), pointer(v.radius()*number(t, 0, 1, "knuckle"))
			}
			return v
		},
		"nose":       func(t *rapid.T) Shape { return drawnNose(t, round(t)) },
		"bar":        func(t *rapid.T) Shape { return drawnBar(t) },
		"corrugated": func(t *rapid.T) Shape { return drawnCorrugated(t) },
		"revolved": func(t *rapid.T) Shape {
			s, x := &Revolved{}, 0.0
			for range rapid.IntRange(2, 7).Draw(t, "points") {
				s.Profile = append(s.Profile, [2]float64{x, number(t, 0.05, 3, "r")})
				x += number(t, 0.05, 2, "spacing")
			}
			return s
		},
		"swept": func(t *rapid.T) Shape { return &Swept{number(t, 0.1, 9, "perimeter"), number(t, 0.1, 9, "length")} },
		"wing":  func(t *rapid.T) Shape { return drawnWing(t) },
		"body":  func(t *rapid.T) Shape { return drawnBody(t) },
	}
}

func drawnPanel(t *rapid.T) *Panel {
	w, h := number(t, 0.5, 5, "width"), number(t, 0.5, 5, "height")
	p := &Panel{WidthM: &w, HeightM: &h, Sides: rapid.IntRange(1, 2).Draw(t, "sides")}
	if rapid.Bool().Draw(t, "thick") {
		p.ThicknessMM = pointer(number(t, 0.5, 20, "thickness"))
	}
	if rapid.Bool().Draw(t, "round hole") {
		p.Holes = append(p.Holes, roundHole(number(t, 0.05, 0.2, "diameter"), w*0.25, h/2))
	}
	if rapid.Bool().Draw(t, "slot") {
		p.Holes = append(p.Holes, slot(0.1, number(t, 0.05, 0.2, "slot height"), number(t, 0, 0.02, "corner"), w*0.75, h/2))
	}
	return p
}

func drawnWing(t *rapid.T) *Wing {
	w := plainWing(rapid.SampledFrom([]string{"naca", "biconvex", "double_wedge", "elliptic", "flat"}).Draw(t, "section"),
		number(t, 0.3, 6, "root"), number(t, 0, 6, "tip"), number(t, 0.3, 20, "span"), number(t, -60, 60, "sweep"),
		number(t, 0.02, 0.25, "root thickness"), number(t, 0.02, 0.25, "tip thickness"))
	w.Tip = rapid.SampledFrom([]string{"open", "capped"}).Draw(t, "tip form")
	if w.Section == "naca" && rapid.Bool().Draw(t, "cambered") {
		w.CamberRatio, w.CamberPositionRatio = number(t, 0, 0.06, "camber"), pointer(number(t, 0.2, 0.6, "position"))
	}
	if w.Section == "naca" && rapid.Bool().Draw(t, "open edge") {
		w.TrailingEdge = "open"
	}
	return w
}

// drawnBody has one exponent throughout and no steps.
func drawnBody(t *rapid.T) *Body {
	b := newBody()
	n := pointer(number(t, 1, 6, "exponent"))
	x := 0.0
	for range rapid.IntRange(2, 6).Draw(t, "stations") {
		b.Stations = append(b.Stations, Station{
			XM: x, WidthM: number(t, 0.1, 4, "width"), HeightM: number(t, 0.1, 4, "height"), Exponent: n, ZM: number(t, -1, 1, "z"),
		})
		x += number(t, 0.1, 4, "spacing")
	}
	b.Nose = rapid.SampledFrom([]string{"open", "flat"}).Draw(t, "nose")
	b.Tail = rapid.SampledFrom([]string{"open", "flat"}).Draw(t, "tail")
	return b
}

func drawnNose(t *rapid.T, r Round) *Nose {
	n := &Nose{Round: r, LengthM: r.radius() * number(t, 1, 8, "fineness")}
	n.Profile = rapid.SampledFrom([]string{"tangent_ogive", "secant_ogive", "haack", "paraboloid", "power", "elliptic"}).Draw(t, "profile")
	switch n.Profile {
	case "secant_ogive":
		least := (r.radius()*r.radius() + n.LengthM*n.LengthM) / (2 * r.radius())
		n.ArcRadiusM = pointer(least * number(t, 1.001, 9, "arc"))
	case "haack":
		n.HaackC = pointer(number(t, 0, 0.6667, "C"))
	case "power":
		n.Exponent = pointer(number(t, 0.2, 1, "exponent"))
	}
	return n
}

func drawnBar(t *rapid.T) *Bar {
	h, b := number(t, 50, 400, "height"), number(t, 50, 400, "width")
	bar := &Bar{LengthM: number(t, 0.1, 9, "length")}
	p := &bar.Profile
	p.Kind = rapid.SampledFrom(profileKinds()).Draw(t, "kind")
	form, _ := profileOf(p.Kind)
	for _, d := range form.needs {
		switch d {
		case "height_mm":
			p.HeightMM = &h
		case "width_mm":
			p.WidthMM = &b
		case "web_mm":
			p.WebMM = pointer(number(t, 1, 20, "web"))
		case "diameter_mm":
			p.DiameterMM = &h
		}
	}
	for _, d := range form.takes {
		if d == "radius_mm" && rapid.Bool().Draw(t, "rounded") {
			p.RadiusMM = pointer(number(t, 0, 12, "radius"))
		}
	}
	if len(form.faces) > 1 && rapid.Bool().Draw(t, "hidden") {
		bar.HiddenFaces = []string{form.faces[rapid.IntRange(0, len(form.faces)-1).Draw(t, "face")].name}
	}
	return bar
}

func drawnCorrugated(t *rapid.T) *Corrugated {
	c := &Corrugated{WidthM: number(t, 0.1, 5, "width"), LengthM: number(t, 0.1, 5, "length"), PitchMM: number(t, 20, 300, "pitch"), Sides: rapid.IntRange(1, 2).Draw(t, "sides")}
	c.DepthMM = c.PitchMM * number(t, 0.02, 0.5, "depth")
	c.Form = rapid.SampledFrom([]string{"sine", "arc", "trapezoid"}).Draw(t, "form")
	if c.Form == "trapezoid" {
		c.CrestMM, c.ValleyMM = pointer(c.PitchMM*number(t, 0, 0.5, "crest")), pointer(c.PitchMM*number(t, 0, 0.5, "valley"))
	}
	return c
}

// copied returns a deep copy of a shape.
func copied(s Shape) Shape {
	text, err := json.Marshal(s)
	if err != nil {
		panic(err)
	}
	c, _ := New(s.Kind())
	if err := json.Unmarshal(text, c); err != nil {
		panic(err)
	}
	return c
}

// scaled returns a shape k times as large, going by the units of its fields.
func scaled(s Shape, k float64) Shape {
	c := copied(s)
	scaleFields(reflect.ValueOf(c).Elem(), k)
	return c
}

func scaleFields(v reflect.Value, k float64) {
	for i := range v.NumField() {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		power := 0.0
		switch {
		case strings.HasSuffix(name, "_m"), strings.HasSuffix(name, "_mm"), name == "outline", v.Type().Field(i).Tag.Get("unit") == "m":
			power = 1
		case strings.HasSuffix(name, "_m2"):
			power = 2
		}
		scaleValue(v.Field(i), k, power)
	}
}

func scaleValue(v reflect.Value, k, power float64) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			scaleValue(v.Elem(), k, power)
		}
	case reflect.Struct:
		scaleFields(v, k)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			scaleValue(v.Index(i), k, power)
		}
	case reflect.Float64:
		v.SetFloat(v.Float() * math.Pow(k, power))
	}
}
