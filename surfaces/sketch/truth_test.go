package sketch

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces"
)

// extentOf returns width and height of the main view of a shape, in m, from its
// dimensions alone. Identities.
func extentOf(s surfaces.Shape) (width, height float64) {
	switch s := s.(type) {
	case *surfaces.Measured:
		return math.Sqrt(s.AreaM2), math.Sqrt(s.AreaM2)
	case *surfaces.Panel:
		if s.WidthM != nil {
			return *s.WidthM, *s.HeightM
		}
		b := nowhere()
		for _, q := range s.Outline {
			b.add(point{q[0], q[1]})
		}
		return b.width(), b.height()
	case *surfaces.Box:
		return s.LengthM, s.HeightM
	case *surfaces.Cylinder:
		return s.LengthM, 2 * radiusOf(s.Round)
	case *surfaces.Frustum:
		return s.LengthM, 2 * max(s.Radius1M, *s.Radius2M)
	case *surfaces.Sphere:
		return 2 * radiusOf(s.Round), 2 * radiusOf(s.Round)
	case *surfaces.Cap:
		r := radiusOf(s.Round)
		if s.HeightM >= r {
			return 2 * r, s.HeightM
		}
		return 2 * math.Sqrt(s.HeightM*(2*r-s.HeightM)), s.HeightM
	case *surfaces.Torus:
		return 2 * (s.RingRadiusM + s.TubeRadiusM), 2 * s.TubeRadiusM
	case *surfaces.Ellipsoid:
		if s.Part == "half" {
			return 2 * s.BM, s.AM
		}
		return 2 * s.AM, 2 * s.CM
	case *surfaces.Nose:
		return s.LengthM, 2 * radiusOf(s.Round)
	case *surfaces.Vessel:
		return s.LengthM + 2*domeDepth(s), 2 * radiusOf(s.Round)
	case *surfaces.Wing:
		aft := s.SpanM * math.Tan(s.SweepLEDeg*math.Pi/180)
		return s.SpanM, max(s.RootChordM, aft+*s.TipChordM) - min(0, aft)
	case *surfaces.Body:
		low, high := math.Inf(1), math.Inf(-1)
		for _, q := range s.Stations {
			low, high = min(low, q.ZM-q.HeightM/2), max(high, q.ZM+q.HeightM/2)
		}
		return s.Stations[len(s.Stations)-1].XM - s.Stations[0].XM, high - low
	case *surfaces.Bar:
		if p := s.Profile; p.DiameterMM != nil {
			return *p.DiameterMM / 1000, *p.DiameterMM / 1000
		}
		return *s.Profile.WidthMM / 1000, *s.Profile.HeightMM / 1000
	case *surfaces.Revolved:
		most := 0.0
		for _, p := range s.Profile {
			most = max(most, p[1])
		}
		return s.Profile[len(s.Profile)-1][0] - s.Profile[0][0], 2 * most
	case *surfaces.Swept:
		return s.LengthM, s.PerimeterM
	case *surfaces.Mesh:
		box, _ := s.Box()
		return box.High[0] - box.Low[0], box.High[2] - box.Low[2]
	case *surfaces.Corrugated:
		if s.WidthM >= s.PitchMM/1000 {
			return s.WidthM, s.DepthMM / 1000
		}
	}
	return math.NaN(), math.NaN()
}

// domeDepth is how far a head stands out: for the torispherical one the height
// of the crown's top over the plane of the knuckle's centre, by Pythagoras.
func domeDepth(s *surfaces.Vessel) float64 {
	r := radiusOf(s.Round)
	switch s.Head {
	case "hemisphere":
		return r
	case "ellipsoidal":
		return *s.HeadDepthM
	case "torispherical":
		R, k := *s.CrownRadiusM, *s.KnuckleRadiusM
		return R - math.Sqrt(max(0, (R-k)*(R-k)-(r-k)*(r-k)))
	}
	return 0
}

// trueToScale says whether the main view is as large as the shape is at the
// scale printed, to 0.1 mm.
func trueToScale(t require.TestingT, p picture, s surfaces.Shape) bool {
	width, height := extentOf(s)
	b, k := boxOf(p.main(t, "a-")), p.perMetre(t)
	if nose, ok := s.(*surfaces.Nose); ok && nose.Profile == "secant_ogive" && b.height() > height*k {
		height = b.height() / k // it may be wider than its base
	}
	return math.Abs(b.width()-width*k) <= 0.1 && math.Abs(b.height()-height*k) <= 0.1
}

// saysSo says whether a picture tells that something is not to scale.
func (p picture) saysSo() bool {
	return p.says("Underlined: not to scale") || p.says("differ in scale") || p.says("Break lines")
}

func TestEverydayShapesAreTrueToScale(t *testing.T) {
	forEveryKind(t, everyday, func(t *rapid.T, s surfaces.Shape) {
		p := readBack(t, sketched(t, s, SI))
		switch s := s.(type) {
		case *surfaces.Corrugated:
			if s.WidthM > 4*s.PitchMM/1000 || s.WidthM < s.PitchMM/1000 || s.DepthMM < 60 {
				return // its width is broken, less than a whole wave is seen, or it is too flat to be seen
			}
		case *surfaces.Body, *surfaces.Revolved:
			if p.saysSo() { // forty stations of a thin part
				return
			}
		case *surfaces.Bar: // only its length is not to scale
		default:
			require.False(t, p.saysSo(), "%+v", s)
		}
		require.True(t, trueToScale(t, p, s), "%+v", s)
	})
}

func TestWhatIsNotToScaleIsSaid(t *testing.T) {
	forEveryKind(t, extreme, func(t *rapid.T, s surfaces.Shape) {
		if c, ok := s.(*surfaces.Corrugated); ok && c.WidthM < c.PitchMM/1000 {
			return
		}
		p := readBack(t, sketched(t, s, SI))
		width, height := extentOf(s)
		require.True(t, p.saysSo() || trueToScale(t, p, s), "%v m by %v m drawn at %s as %v", width, height, p.Scale, boxOf(p.main(t, "a-")))
	})
}

// A bar of 20 m by 5 mm, of which nothing could be seen at one scale.
func TestLongThinPartsStayReadable(t *testing.T) {
	for name, s := range map[string]surfaces.Shape{
		"bar":      &surfaces.Bar{LengthM: 20, Profile: surfaces.Profile{Kind: "round", DiameterMM: pointer(5.0)}},
		"cylinder": &surfaces.Cylinder{Round: surfaces.Round{DiameterM: pointer(0.005)}, LengthM: 20},
		"swept":    &surfaces.Swept{PerimeterM: 0.005, LengthM: 20},
		"box":      &surfaces.Box{LengthM: 20, WidthM: 0.005, HeightM: 0.005},
	} {
		t.Run(name, func(t *testing.T) {
			p := wellMade(t, sketched(t, s, SI))
			assert.True(t, p.says("Break lines"))
			assert.True(t, p.says("Underlined"))
			underlined := ""
			for _, e := range p.texts() {
				if e.Decoration == "underline" {
					underlined += e.Text
				}
			}
			if name == "bar" {
				assert.Equal(t, "20000", underlined)
			} else {
				assert.Equal(t, "20", underlined)
			}
			b := boxOf(p.main(t, "a-"))
			assert.GreaterOrEqual(t, min(b.width(), b.height()), 5.0)
		})
	}
}

// The outline of a round part, turned about its axis, has the area that is
// computed for the part: the profile is drawn as it is measured. 1 %, as curves
// are drawn in short straight lines.
func TestRoundOutlinesHaveTheMeasuredArea(t *testing.T) {
	for _, kind := range []string{"cylinder", "frustum", "sphere", "nose", "vessel", "revolved"} {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := everyday(t, kind)
				closed := 0.0 // discs that close the outline but are no faces
				disc := func(r float64) float64 { return math.Pi * r * r }
				switch s := s.(type) {
				case *surfaces.Cylinder:
					s.Ends = 2
				case *surfaces.Frustum:
					s.Ends = 2
				case *surfaces.Nose:
					closed = disc(radiusOf(s.Round))
				case *surfaces.Revolved:
					last := len(s.Profile) - 1
					closed = disc(s.Profile[0][1]) + disc(s.Profile[last][1])
				}
				p := readBack(t, sketched(t, s, SI))
				if p.saysSo() {
					return
				}
				m, err := surfaces.Measure(s)
				require.NoError(t, err)
				k := p.perMetre(t)
				require.InEpsilon(t, m.AreaM2()+closed, turned(p.main(t, "a-"))/(k*k), 0.01, "%+v", s)
			})
		})
	}
}

// The line round a bar's section, times its length, is the area of its faces.
func TestBarSectionsHaveTheMeasuredPerimeter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := everyday(t, "bar").(*surfaces.Bar)
		m, err := surfaces.Measure(s)
		require.NoError(t, err)
		p := readBack(t, sketched(t, s, SI))
		require.InEpsilon(t, m.AreaM2()/s.LengthM, lengthOf(p.main(t, "a-"))/p.perMetre(t), 0.005, "%+v", s)
	})
}

// The line along a corrugated sheet is as much longer than the sheet is wide as
// its area is larger; over whole waves, since a part of one differs.
func TestCorrugationsHaveTheMeasuredLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := everyday(t, "corrugated").(*surfaces.Corrugated)
		s.WidthM, s.Sides = 2*s.PitchMM/1000, 1
		m, err := surfaces.Measure(s)
		require.NoError(t, err)
		p := readBack(t, sketched(t, s, SI))
		if p.says("differ") {
			return
		}
		require.InEpsilon(t, m.AreaM2()/s.LengthM, lengthOf(p.main(t, "a-"))/p.perMetre(t), 0.005, "%+v", s)
	})
}

// The sections drawn at root and tip are as long round as the wing's lines
// there are measured to be.
func TestWingSectionsHaveTheMeasuredOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := everyday(t, "wing").(*surfaces.Wing)
		s.Tip = "open"
		if s.Section == "flat" || *s.TipChordM == 0 {
			return
		}
		m, err := surfaces.Measure(s)
		require.NoError(t, err)
		p := readBack(t, sketched(t, s, SI))
		drawn := 0.0
		for _, e := range p.paths() {
			if e.Class == "sketch-edge" {
				drawn += lengthOf(trace(t, e.D))
			}
		}
		require.InEpsilon(t, m.FaceEdgeM(surfaces.Open), drawn/p.perMetre(t), 0.01, "%+v", s)
	})
}

// A panel's outline and the rims of its holes are as long as they are measured.
func TestPanelLinesHaveTheMeasuredLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := everyday(t, "panel").(*surfaces.Panel)
		s.Sides, s.ThicknessMM = 1, nil
		m, err := surfaces.Measure(s)
		require.NoError(t, err)
		p := readBack(t, sketched(t, s, SI))
		drawn := 0.0
		for _, e := range p.paths() {
			if e.Class == "sketch-outline" {
				drawn += lengthOf(trace(t, e.D))
			}
		}
		require.InEpsilon(t, m.EdgeM(), drawn/p.perMetre(t), 0.01, "%+v", s)
	})
}
