package mesh

import (
	"context"
	"encoding/binary"
	"io"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// heights makes a binary STL of any number of facets without holding it: each
// facet is a right triangle of 3 by 4, so that it has 6 of area, one above the
// other.
type heights struct {
	facets, sent int
	rest         []byte
	block        []byte
}

func newHeights(facets int) *heights {
	h := &heights{facets: facets, rest: make([]byte, stlHeader), block: make([]byte, 1000*stlRecord)}
	binary.LittleEndian.PutUint32(h.rest[80:], uint32(facets))
	for i := range 1000 {
		r := h.block[i*stlRecord:]
		binary.LittleEndian.PutUint32(r[24:], math.Float32bits(3))
		binary.LittleEndian.PutUint32(r[40:], math.Float32bits(4))
	}
	return h
}

func (h *heights) Read(p []byte) (int, error) {
	if len(h.rest) == 0 {
		if h.sent == h.facets {
			return 0, io.EOF
		}
		count := min(1000, h.facets-h.sent)
		for i := range count {
			z := math.Float32bits(float32(h.sent + i))
			for _, at := range []int{20, 32, 44} {
				binary.LittleEndian.PutUint32(h.block[i*stlRecord+at:], z)
			}
		}
		h.rest = h.block[:count*stlRecord]
		h.sent += count
	}
	n := copy(p, h.rest)
	h.rest = h.rest[n:]
	return n, nil
}

// TestTenMillionFacetsInConstantMemory counts everything that is allocated
// while measuring, which is more than what is ever in use at once.
func TestTenMillionFacetsInConstantMemory(t *testing.T) {
	const facets = 10_000_000
	source := newHeights(facets)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	r, err := Measure(context.Background(), source, DefaultOptions("m"))
	runtime.ReadMemStats(&after)
	require.NoError(t, err)
	assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(64<<20), "bytes allocated in all")
	assert.EqualValues(t, facets, r.Facets)
	assert.Equal(t, 6.0*facets, r.AreaM2)
	assert.Equal(t, Point{3, 4, facets - 1}, r.Box.High)
	assert.Contains(t, codes(r), "checks_left_out")
}

// TestMemoryOfChecks holds the stated need of the checks against a mesh of a
// quarter of the largest for which they are made: a field of squares.
func TestMemoryOfChecks(t *testing.T) {
	side := int(math.Sqrt(CheckLimit / 4 / 2))
	m := newMeter(DefaultOptions("m"))
	m.read = &reading{contents: Contents{Solids: []string{""}}}
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for i := range side * side {
		x, y := float64(i%side), float64(i/side)
		a, b, c, d := Point{x, y, 0}, Point{x + 1, y, 0}, Point{x + 1, y + 1, 0}, Point{x, y + 1, 0}
		require.NoError(t, m.facet(Facet{Corners: []Point{a, b, c}}))
		require.NoError(t, m.facet(Facet{Corners: []Point{a, c, d}}))
	}
	r, err := m.result(context.Background(), Contents{Format: FormatOBJ, Solids: []string{""}})
	require.NoError(t, err)
	runtime.ReadMemStats(&after)
	need := float64(after.HeapSys-before.HeapSys) / float64(2*side*side)
	t.Logf("%d facets: %.0f bytes a facet asked of the system", 2*side*side, need)
	assert.Less(t, need, 250.0)
	assert.EqualValues(t, 4*side, r.Checks.BoundaryEdges)
	assert.InEpsilon(t, float64(side*side), r.AreaM2, 1e-12)
}
