package mesh

import (
	"bytes"
	"context"
	"encoding/binary"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// triangle is three corners.
type triangle [3]Point

// binarySTL writes triangles as a binary STL with NaN normals, which are
// accepted, and a header that begins like a text STL.
func binarySTL(triangles []triangle) []byte {
	data := make([]byte, stlHeader)
	copy(data, "solid made by a program that does not know better")
	binary.LittleEndian.PutUint32(data[80:], uint32(len(triangles)))
	for _, t := range triangles {
		for range 3 {
			data = binary.LittleEndian.AppendUint32(data, math.Float32bits(float32(math.NaN())))
		}
		for _, p := range t {
			for _, v := range p {
				data = binary.LittleEndian.AppendUint32(data, math.Float32bits(float32(v)))
			}
		}
		data = append(data, 0, 0)
	}
	return data
}

// cubeTriangles is a cube of the given size, outward facing.
func cubeTriangles(corner Point, size float64) []triangle {
	at := func(n int) Point {
		return corner.plus(Point{float64(n & 1), float64(n >> 1 & 1), float64(n >> 2 & 1)}.times(size))
	}
	var list []triangle
	for _, f := range [][4]int{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		list = append(list, triangle{at(f[0]), at(f[1]), at(f[2])}, triangle{at(f[0]), at(f[2]), at(f[3])})
	}
	return list
}

// revolve is a closed body of revolution about z with the given profile of
// (radius, height), inscribed with so many facets a turn, outward facing.
func revolve(profile [][2]float64, facetsPerTurn int) []triangle {
	at := func(p [2]float64, k int) Point {
		turn := 2 * math.Pi * float64(k%facetsPerTurn) / float64(facetsPerTurn)
		return Point{p[0] * math.Cos(turn), p[0] * math.Sin(turn), p[1]}
	}
	var list []triangle
	for i := 0; i+1 < len(profile); i++ {
		for k := range facetsPerTurn {
			a, b, c, d := at(profile[i], k), at(profile[i], k+1), at(profile[i+1], k+1), at(profile[i+1], k)
			if profile[i][0] > 0 {
				list = append(list, triangle{a, b, c})
			}
			if profile[i+1][0] > 0 {
				list = append(list, triangle{a, c, d})
			}
		}
	}
	return list
}

func measureBytes(t testing.TB, data []byte, o Options) Result {
	t.Helper()
	o.Size = int64(len(data))
	r, err := Measure(context.Background(), bytes.NewReader(data), o)
	require.NoError(t, err)
	return r
}

func measureText(t testing.TB, text string) Result {
	t.Helper()
	return measureBytes(t, []byte(text), DefaultOptions("m"))
}

// readText reads without measuring and returns the fault.
func readText(format, text string) error {
	_, err := Read(context.Background(), strings.NewReader(text), format, int64(len(text)), func(Facet) error { return nil })
	return err
}

// oneByte gives a reader that returns a byte at a time and hides its length.
func oneByte(data []byte) io.Reader { return &slowReader{data} }

type slowReader struct{ rest []byte }

func (s *slowReader) Read(p []byte) (int, error) {
	if len(s.rest) == 0 {
		return 0, io.EOF
	}
	if len(p) == 0 {
		return 0, nil
	}
	p[0], s.rest = s.rest[0], s.rest[1:]
	return 1, nil
}

func codes(r Result) []string {
	var list []string
	for _, w := range r.Warnings {
		list = append(list, w.Code)
	}
	return list
}
