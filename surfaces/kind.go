package surfaces

import (
	"sync"

	"filmbuild/surfaces/quantity"
)

// Kind describes one kind of shape for the catalogue.
type Kind struct {
	Name    string
	Doc     string
	Faces   []string // all that a shape of the kind may have
	Fields  []quantity.Field
	Example Shape
}

// kind is one row of the list of kinds.
type kind struct {
	name, doc string
	faces     []string
	make      func() Shape // with the defaults set
	example   func() Shape
}

// New returns a pointer to the struct of a kind with its defaults set, and
// false for a kind that does not exist.
func New(name string) (Shape, bool) {
	for _, k := range kindList() {
		if k.name == name {
			return k.make(), true
		}
	}
	return nil, false
}

// Kinds lists every kind, in a fixed order. The examples are invented.
func Kinds() []Kind {
	list := make([]Kind, 0, len(kindList()))
	for _, k := range kindList() {
		list = append(list, Kind{k.name, k.doc, k.faces, quantity.Describe(k.make()), k.example()})
	}
	return list
}

var kindList = sync.OnceValue(kinds)

func kinds() []kind {
	return []kind{
		{
			"measured", "a surface whose area and edge are known", []string{"surface"},
			func() Shape { return &Measured{} },
			func() Shape { return &Measured{AreaM2: 3.2, EdgeM: 8.4} },
		},
		{
			"panel", "a flat sheet with holes, painted on one side or on both", []string{"front", "back", "edges"},
			func() Shape { return &Panel{Sides: 1} },
			func() Shape {
				return &Panel{WidthM: pointer(1.2), HeightM: pointer(0.8), Sides: 2, Holes: []Hole{
					{DiameterM: pointer(0.09), XM: pointer(0.2), YM: pointer(0.2)},
					{WidthM: pointer(0.25), HeightM: pointer(0.15), CornerRadiusM: pointer(0.03), XM: pointer(0.8), YM: pointer(0.4)},
				}}
			},
		},
		{
			"box", "a rectangular block", []string{"top", "bottom", "left", "right", "front", "back"},
			func() Shape { return &Box{} },
			func() Shape { return &Box{LengthM: 2, WidthM: 0.8, HeightM: 0.5} },
		},
		{
			"cylinder", "a round tube or tank with flat ends or open ones", []string{"side", "end_1", "end_2"},
			func() Shape { return &Cylinder{} },
			func() Shape { return &Cylinder{Round: Round{DiameterM: pointer(0.6)}, LengthM: 2.5, Ends: 2} },
		},
		{
			"frustum", "a cone, or a cone with its point cut off", []string{"side", "end_1", "end_2"},
			func() Shape { return &Frustum{} },
			func() Shape { return &Frustum{Radius1M: 0.5, Radius2M: pointer(0.3), LengthM: 1.1, Ends: 1} },
		},
		{
			"sphere", "a whole ball", []string{"outside"},
			func() Shape { return &Sphere{} },
			func() Shape { return &Sphere{Round{RadiusM: pointer(0.4)}} },
		},
		{
			"cap", "part of a sphere cut off by a plane", []string{"outside"},
			func() Shape { return &Cap{} },
			func() Shape { return &Cap{Round: Round{RadiusM: pointer(0.9)}, HeightM: 0.2} },
		},
		{
			"torus", "a round tube bent to a ring: a tyre, a handwheel", []string{"outer", "inner"},
			func() Shape { return &Torus{} },
			func() Shape { return &Torus{RingRadiusM: 0.35, TubeRadiusM: 0.11} },
		},
		{
			"ellipsoid", "a body with three elliptic outlines, whole or half", []string{"outside"},
			func() Shape { return &Ellipsoid{Part: "whole"} },
			func() Shape { return &Ellipsoid{AM: 1.4, BM: 0.6, CM: 0.5, Part: "half"} },
		},
		{
			"nose", "a round nose or tail cone, open at its base", []string{"outside"},
			func() Shape { return &Nose{} },
			func() Shape {
				return &Nose{Round: Round{DiameterM: pointer(1.0)}, Profile: "haack", HaackC: pointer(0.0), LengthM: 2.5}
			},
		},
		{
			"vessel", "a tank of a straight part and two heads", []string{"side", "head_1", "head_2"},
			func() Shape { return &Vessel{} },
			func() Shape {
				return &Vessel{Round: Round{RadiusM: pointer(0.6)}, LengthM: 2.5, Head: "ellipsoidal", HeadDepthM: pointer(0.3)}
			},
		},
		{
			"wing", "one side of a wing, tailplane or fin, root to tip", []string{"upper", "lower", "trailing_edge", "tip"},
			func() Shape { return newWing() },
			func() Shape {
				w := newWing()
				w.RootChordM, w.TipChordM, w.SpanM, w.SweepLEDeg = 1.45, pointer(0.9), 2.1, 12
				w.RootThicknessRatio = pointer(0.09)
				return w
			},
		},
		{
			"body", "a fuselage, hull or pod from sections along its length", []string{"left", "right", "nose", "tail"},
			func() Shape { return newBody() },
			func() Shape {
				b := newBody()
				b.Tail = "flat"
				b.Stations = []Station{
					{XM: 0}, {XM: 0.6, WidthM: 0.7, HeightM: 0.8}, {XM: 1.6, WidthM: 1, HeightM: 1.3, Exponent: pointer(2.5)},
					{XM: 4, WidthM: 0.9, HeightM: 1.2}, {XM: 6, WidthM: 0.3, HeightM: 0.5, ZM: 0.2},
				}
				return b
			},
		},
		{
			"bar", "a rolled section, tube or flat of some length", []string{"top", "bottom", "sides", "back", "inside", "back_1", "back_2", "left", "right", "outside"},
			func() Shape { return &Bar{} },
			func() Shape {
				return &Bar{LengthM: 6, HiddenFaces: []string{"top"}, Profile: Profile{
					Kind: "i", HeightMM: pointer(200.0), WidthMM: pointer(100.0), WebMM: pointer(5.6), FlangeMM: pointer(8.5), RadiusMM: pointer(12.0),
				}}
			},
		},
		{
			"corrugated", "a sheet pressed into waves or ribs", []string{"front", "back"},
			func() Shape { return &Corrugated{Form: "sine", Sides: 1} },
			func() Shape {
				return &Corrugated{WidthM: 2.4, LengthM: 3, PitchMM: 76.2, DepthMM: 19.05, Form: "sine", Sides: 1}
			},
		},
		{
			"revolved", "a free profile turned about an axis", []string{"outside"},
			func() Shape { return &Revolved{} },
			func() Shape { return &Revolved{Profile: [][2]float64{{0, 0.05}, {0.1, 0.12}, {0.3, 0.2}, {0.6, 0.22}}} },
		},
		{
			"swept", "an outline carried along a length", []string{"side"},
			func() Shape { return &Swept{} },
			func() Shape { return &Swept{PerimeterM: 0.48, LengthM: 5.2} },
		},
		{
			"mesh", "a surface of facets from a scan or a drawing program", []string{"surface", "upper", "lower", "side", "left", "right", "middle"},
			func() Shape { return newMesh() },
			exampleMesh,
		},
	}
}
