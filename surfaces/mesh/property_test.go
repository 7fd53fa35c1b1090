package mesh

import (
	"bytes"
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// measureTriangles measures without a file between, so that coordinates keep
// their double precision.
func measureTriangles(t assert.TestingT, triangles []triangle) Result {
	o := DefaultOptions("m")
	o.Samples = 0
	m := newMeter(o)
	m.read = &reading{contents: Contents{Solids: []string{""}}}
	for _, f := range triangles {
		if err := m.facet(Facet{Corners: f[:]}); err != nil {
			assert.NoError(t, err)
		}
	}
	r, err := m.result(context.Background(), Contents{Format: FormatOBJ, Solids: []string{""}})
	assert.NoError(t, err)
	return r
}

func drawTriangles(t *rapid.T) []triangle {
	value := rapid.Float64Range(-100, 100)
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) (f triangle) {
		for i := range f {
			for k := range f[i] {
				f[i][k] = value.Draw(t, "v")
			}
		}
		return f
	}), 1, 60).Draw(t, "triangles")
}

// drawRotation is a proper rotation by three angles.
func drawRotation(t *rapid.T) [3]Point {
	m := [3]Point{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	for k := range 3 {
		a := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "angle")
		i, j := (k+1)%3, (k+2)%3
		for r := range m {
			x, y := m[r][i], m[r][j]
			m[r][i], m[r][j] = x*math.Cos(a)-y*math.Sin(a), x*math.Sin(a)+y*math.Cos(a)
		}
	}
	return m
}

// near allows for rounding: coordinates of 200 at 1e-16, against an area that
// may be small.
func near(t assert.TestingT, want, got, scale float64, message string) {
	assert.InDelta(t, want, got, 1e-12*(math.Abs(want)+scale), message)
}

func TestRigidMotionChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		triangles := drawTriangles(t)
		turn := drawRotation(t)
		shift := Point{rapid.Float64Range(-100, 100).Draw(t, "shift"), 7, -3}
		moved := slices.Clone(triangles)
		for i := range moved {
			for k, p := range moved[i] {
				moved[i][k] = Point{turn[0].dot(p), turn[1].dot(p), turn[2].dot(p)}.plus(shift)
			}
		}
		near(t, measureTriangles(t, triangles).AreaM2, measureTriangles(t, moved).AreaM2, 1e4, "area")
	})
}

func TestClosedVolumeIsTheSameEverywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shift := rapid.Float64Range(-1000, 1000)
		size := rapid.Float64Range(0.1, 10).Draw(t, "size")
		cube := cubeTriangles(Point{shift.Draw(t, "x"), shift.Draw(t, "y"), shift.Draw(t, "z")}, size)
		assert.InEpsilon(t, size*size*size, measureTriangles(t, cube).VolumeM3, 1e-9)
	})
}

func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		triangles := drawTriangles(t)
		f := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		scaled := slices.Clone(triangles)
		for i := range scaled {
			for k, p := range scaled[i] {
				scaled[i][k] = p.times(f)
			}
		}
		a, b := measureTriangles(t, triangles), measureTriangles(t, scaled)
		near(t, a.AreaM2*f*f, b.AreaM2, 1e4*f*f, "area")
		near(t, a.VolumeM3*f*f*f, b.VolumeM3, 1e6*f*f*f, "volume")
	})
}

// On a grid, on which products are exact: whether a needle thinner than what
// numbers can tell has an area would depend on the corner it is seen from.
func TestOrderOfFacetsAndCornersDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		triangles := drawTriangles(t)
		for n := range triangles {
			f := &triangles[n]
			for i := range f {
				for k := range f[i] {
					f[i][k] = math.Round(f[i][k]*1024) / 1024
				}
			}
		}
		mixed := slices.Clone(triangles)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "order"), 1))
		random.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		for i, f := range mixed {
			mixed[i] = triangle{f[1], f[2], f[0]}
		}
		a, b := measureTriangles(t, triangles), measureTriangles(t, mixed)
		near(t, a.AreaM2, b.AreaM2, 1e4, "area")
		near(t, a.VolumeM3, b.VolumeM3, 1e6, "volume")
		assert.Equal(t, a.Box, b.Box)
		if a.AreaM2 == 0 {
			assert.Nil(t, b.Checks, "nothing to check without area")
			return
		}
		assert.Equal(t, a.Checks.BoundaryEdges, b.Checks.BoundaryEdges)
		assert.Equal(t, a.Checks.Components, b.Checks.Components)
	})
}

func TestDoublingIsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cube := cubeTriangles(Point{}, 1)
		extra := rapid.SliceOfNDistinct(rapid.IntRange(0, 11), 1, 12, rapid.ID).Draw(t, "copied")
		for _, i := range extra {
			cube = append(cube, cube[i])
		}
		r := measureTriangles(t, cube)
		assert.EqualValues(t, len(extra), r.Checks.DuplicateFacets)
		assert.InEpsilon(t, r.AreaM2-6, r.Checks.DuplicateAreaM2, 1e-12)
	})
}

func TestHowAFileIsCutIntoReadsDoesNotMatter(t *testing.T) {
	data := binarySTL(cubeTriangles(Point{1, 2, 3}, 4))
	whole := measureBytes(t, data, DefaultOptions("m"))
	o := DefaultOptions("m")
	bit, err := Measure(context.Background(), oneByte(data), o)
	assert.NoError(t, err)
	assert.Equal(t, whole, bit)
	var text bytes.Buffer
	for i := range 3 {
		text.WriteString("solid " + string(rune('a'+i)) + oneFacet[len("solid a"):])
	}
	o.Size = 0
	slow, err := Measure(context.Background(), oneByte(text.Bytes()), o)
	assert.NoError(t, err)
	assert.Equal(t, measureBytes(t, text.Bytes(), DefaultOptions("m")), slow)
}
