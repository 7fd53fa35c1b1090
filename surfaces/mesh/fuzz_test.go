package mesh

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/json"
	"errors"
	"math"
	"testing"
)

// fuzzMesh measures any bytes at all. Either they are refused with a fault of
// this package, or every number that comes out is finite and the parts add up;
// and how the bytes arrive changes nothing.
func fuzzMesh(t *testing.T, format string, data []byte, sized bool) {
	o := DefaultOptions("mm")
	o.Format, o.Samples, o.Split, o.AngleDeg = format, 20, SplitUpDown, 45
	if sized {
		o.Size = int64(len(data))
	}
	r, err := Measure(context.Background(), bytes.NewReader(data), o)
	again, err2 := Measure(context.Background(), oneByte(data), o)
	if (err == nil) != (err2 == nil) || (err != nil && err.Error() != err2.Error()) {
		t.Fatalf("in one piece: %v; byte by byte: %v", err, err2)
	}
	plain, err3 := Measure(context.Background(), bytes.NewReader(data), Options{Unit: "mm", Format: o.Format, Size: o.Size}) // in blocks, where it can be
	if (err == nil) != (err3 == nil) || (err != nil && err.Error() != err3.Error()) {
		t.Fatalf("with checks: %v; without: %v", err, err3)
	}
	if err != nil {
		var broken *FileError
		if !errors.As(err, &broken) || broken.Code == "" || broken.Detail == "" {
			t.Fatalf("not a fault of the file: %v", err)
		}
		return
	}
	if r.AreaM2 != again.AreaM2 || r.VolumeM3 != again.VolumeM3 {
		t.Fatalf("in one piece %g m², byte by byte %g m²", r.AreaM2, again.AreaM2)
	}
	if math.Abs(plain.AreaM2-r.AreaM2) > 1e-12*r.AreaM2 || plain.Box != r.Box || plain.Polygons.ZeroArea != r.Polygons.ZeroArea {
		t.Fatalf("with checks %g m² in %v, without %g m² in %v", r.AreaM2, r.Box, plain.AreaM2, plain.Box)
	}
	if _, err := json.Marshal(r); err != nil {
		t.Fatal(err)
	}
	faces, solids := 0.0, 0.0
	for _, f := range r.Faces {
		faces += f.AreaM2
	}
	for _, s := range r.Solids {
		solids += s.AreaM2
	}
	if r.Facets < 1 || r.AreaM2 < 0 || !finite(r.AreaM2, r.VolumeM3, r.Box.Largest(), r.Accuracy.Percent, r.Border.AreaM2) {
		t.Fatalf("%+v", r)
	}
	if math.Abs(faces-r.AreaM2) > 1e-9*r.AreaM2 || math.Abs(solids-r.AreaM2) > 1e-9*r.AreaM2 {
		t.Fatalf("faces %g, solids %g, area %g", faces, solids, r.AreaM2)
	}
	if c := r.Checks; c != nil && (c.DuplicateAreaM2 > r.AreaM2*(1+1e-9) || !finite(c.BoundaryM, c.Tessellation)) {
		t.Fatalf("%+v", c)
	}
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

func FuzzSTL(f *testing.F) {
	whole := binarySTL(cubeTriangles(Point{}, 1))
	for _, seed := range [][]byte{
		whole, whole[:300], whole[:84], append(bytes.Clone(whole), 1),
		[]byte(oneFacet), []byte(oneFacet + oneFacet), []byte(oneFacet[:60]),
		[]byte("solid a\nfacet\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 1\nvertex 0 1 0\nendloop\nendfacet\n"),
		[]byte("\xef\xbb\xbfsolid\nendsolid\n"),
	} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, data []byte, sized bool) { fuzzMesh(t, FormatSTL, data, sized) })
}

func FuzzOBJ(f *testing.F) {
	for _, seed := range []string{
		square + "f 1 2 3 4\n", square + "o a\ng b c\nf -1/1/1 -2//2 -3/3\nf 4 3 2 1\n", square + "f 1 3 2 4\n",
		square + "f 1 2 3\\\n4\n", "v 0 0 0 1\nv 1e9 -1e-9 .5 1 1 1\nv 1 1 1\nf 1 2 3 # end\n", square + "f 1 2 3 4 1 2 3 4\n", "f 1 1 1\n",
	} {
		f.Add([]byte(seed), true)
	}
	f.Fuzz(func(t *testing.T, data []byte, sized bool) { fuzzMesh(t, FormatOBJ, data, sized) })
}

func FuzzPLY(f *testing.F) {
	f.Add([]byte(plyText1), true)
	f.Add(plyBinary1(binary.LittleEndian, "binary_little_endian"), true)
	f.Add(plyBinary1(binary.BigEndian, "binary_big_endian"), false)
	f.Add([]byte("ply\nformat ascii 1.0\nelement vertex 3\nproperty int x\nproperty int y\nproperty int z\nelement face 1\nproperty list char char vertex_index\nend_header\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n"), true)
	f.Add([]byte("ply\r\nformat binary_little_endian 1.0\r\nelement face 99999999999\r\nproperty list uint uint vertex_index\r\nend_header\r\n\xff\xff\xff\xff"), true)
	f.Fuzz(func(t *testing.T, data []byte, sized bool) { fuzzMesh(t, FormatPLY, data, sized) })
}
