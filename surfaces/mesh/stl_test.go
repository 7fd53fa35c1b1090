package mesh

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const oneFacet = "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid a\n"

func TestBinarySTLByLengthOrContents(t *testing.T) {
	data := binarySTL(cubeTriangles(Point{1, 2, 3}, 2))
	for name, r := range map[string]struct {
		size int64
	}{"length known": {int64(len(data))}, "length unknown": {0}} {
		var area float64
		contents, err := Read(context.Background(), oneByte(data), FormatSTL, r.size, func(f Facet) error {
			area += measurePolygon(f.Corners).area
			return nil
		})
		require.NoError(t, err, name)
		assert.Equal(t, FormatSTLBinary, contents.Format, name)
		assert.EqualValues(t, 12, contents.Facets, name)
		assert.Equal(t, 24.0, area, name)
	}
}

func TestBinarySTLFaults(t *testing.T) {
	whole := binarySTL(cubeTriangles(Point{}, 1))
	counted := func(n uint32) []byte {
		d := bytes.Clone(whole)
		binary.LittleEndian.PutUint32(d[80:], n)
		return d
	}
	with := func(v float32) []byte {
		d := bytes.Clone(whole)
		binary.LittleEndian.PutUint32(d[84+50*7+12+16:], math.Float32bits(v))
		return d
	}
	for name, c := range map[string]struct {
		data      []byte
		known     bool
		code      string
		at        int64
		want, got int64
	}{
		"cut short, length known":     {whole[:84+50*5+7], true, "count_mismatch", 80, 684, 341},
		"cut short, length unknown":   {whole[:84+50*5+7], false, "truncated", 84 + 50*5, 12, 5},
		"more than counted":           {counted(11), false, "count_mismatch", 84 + 50*11, 11, 12},
		"more than counted, known":    {counted(11), true, "count_mismatch", 80, 634, 684},
		"counts four thousand mills.": {counted(math.MaxUint32), false, "truncated", 684, math.MaxUint32, 12},
		"the same, length known":      {counted(math.MaxUint32), true, "count_mismatch", 80, 84 + 50*math.MaxUint32, 684},
		"counts none":                 {counted(0), false, "count_mismatch", 80, 0, 1},
		"header alone":                {whole[:60], true, "wrong_format", 0, 84, 60},
		"NaN corner":                  {with(float32(math.NaN())), true, "not_a_number", 84 + 50*7, 0, 0},
		"infinite corner":             {with(float32(math.Inf(-1))), false, "not_a_number", 84 + 50*7, 0, 0},
		"absurd corner":               {with(2e12), true, "out_of_range", 84 + 50*7, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			for _, checks := range []int{0, CheckLimit} { // in blocks and facet by facet
				o := Options{Unit: "m", Format: FormatSTL, CheckFacets: checks}
				if c.known {
					o.Size = int64(len(c.data))
				}
				_, err := Measure(context.Background(), bytes.NewReader(c.data), o)
				var broken *FileError
				require.ErrorAs(t, err, &broken)
				assert.Equal(t, c.code, broken.Code)
				assert.Equal(t, Place{Byte: c.at}, broken.At)
				assert.Equal(t, []int64{c.want, c.got}, []int64{broken.Want, broken.Got})
			}
		})
	}
}

func TestTextSTL(t *testing.T) {
	for name, text := range map[string]string{
		"as usual":            oneFacet,
		"line ends of two":    strings.ReplaceAll(oneFacet, "\n", "\r\n"),
		"byte order mark":     "\xef\xbb\xbf" + oneFacet,
		"capitals":            strings.ToUpper(oneFacet),
		"all on two lines":    "solid a\n" + strings.ReplaceAll(oneFacet[8:], "\n", " "),
		"no last line end":    strings.TrimSuffix(oneFacet, "\n"),
		"NaN normal":          strings.Replace(oneFacet, "normal 0 0 1", "normal nan nan nan", 1),
		"no normal":           strings.Replace(oneFacet, " normal 0 0 1", "", 1),
		"exponents and signs": strings.Replace(oneFacet, "vertex 1 0 0", "vertex +1.0E+0 -0e9 .0", 1),
	} {
		t.Run(name, func(t *testing.T) {
			r := measureText(t, text)
			assert.Equal(t, FormatSTLText, r.Format)
			assert.Equal(t, 0.5, r.AreaM2)
		})
	}
}

func TestTextSTLFaults(t *testing.T) {
	for name, c := range map[string]struct {
		text, code string
		line       int64
	}{
		"ends in a facet":     {oneFacet[:70], "truncated", 6},
		"comma":               {strings.Replace(oneFacet, "1 0 0", "1,5 0 0", 1), "syntax", 5},
		"NaN corner":          {strings.Replace(oneFacet, "1 0 0", "1 NaN 0", 1), "not_a_number", 5},
		"infinite corner":     {strings.Replace(oneFacet, "1 0 0", "1 -inf 0", 1), "not_a_number", 5},
		"beyond any number":   {strings.Replace(oneFacet, "1 0 0", "1e999 0 0", 1), "not_a_number", 5},
		"beyond any part":     {strings.Replace(oneFacet, "1 0 0", "1e13 0 0", 1), "out_of_range", 5},
		"hexadecimal":         {strings.Replace(oneFacet, "1 0 0", "0x1p0 0 0", 1), "syntax", 5},
		"corner of two":       {strings.Replace(oneFacet, "1 0 0", "1 0", 1), "syntax", 6},
		"unknown word":        {strings.Replace(oneFacet, "endfacet", "endface", 1), "syntax", 8},
		"facet outside":       {oneFacet + "facet", "syntax", 10},
		"normal of five":      {strings.Replace(oneFacet, "0 0 1", "0 0 1 0 0", 1), "syntax", 2},
		"zero byte":           {oneFacet[:27] + strings.Repeat(" ", peekBytes) + "\x00" + oneFacet[27:], "wrong_format", 3},
		"carriage return":     {strings.Replace(oneFacet, "0 0 1\n", "0 0 1\r", 1), "syntax", 2},
		"line without an end": {"solid a facet " + strings.Repeat("x", MaxLineBytes), "line_too_long", 1},
		"empty":               {"solid a\nendsolid a\n", "empty", 1},
	} {
		t.Run(name, func(t *testing.T) {
			var broken *FileError
			require.ErrorAs(t, readText(FormatSTL, c.text), &broken)
			assert.Equal(t, c.code, broken.Code, broken.Error())
			assert.Equal(t, Place{Line: c.line}, broken.At)
		})
	}
}

func TestWrongNames(t *testing.T) {
	for name, c := range map[string]struct{ format, text string }{
		"prose named .stl": {FormatSTL, strings.Repeat("A list of parts, not a mesh.\n", 10)},
		"short text":       {FormatSTL, "hello"},
		"PLY named .stl":   {FormatSTL, "ply\nformat ascii 1.0\nelement vertex 0\nend_header\n"},
		"STL named .ply":   {FormatPLY, oneFacet},
		"no such format":   {"step", oneFacet},
	} {
		var broken *FileError
		require.ErrorAs(t, readText(c.format, c.text), &broken, name)
		assert.Equal(t, "wrong_format", broken.Code, name)
	}
	assert.Equal(t, "obj", FormatOf("a/Wing.OBJ"))
	assert.Equal(t, "", FormatOf("wing.off"))
}

func TestSinkAndContextEndReading(t *testing.T) {
	stop := errors.New("enough")
	_, err := Read(context.Background(), strings.NewReader(oneFacet), "", 0, func(Facet) error { return stop })
	assert.ErrorIs(t, err, stop)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = Measure(ended, bytes.NewReader(binarySTL(cubeTriangles(Point{}, 1))), Options{Unit: "m"})
	assert.ErrorIs(t, err, context.Canceled)
}
