package mesh

import (
	"bytes"
	"context"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const plyText1 = `ply
format ascii 1.0
comment invented
element material 1
property int number
property list uchar uchar name
element vertex 4
property uchar red
property float x
property list uchar float weights
property double y
property short z
element face 2
property list uint8 int32 neighbours
property list uchar int vertex_indices
property float quality
end_header
7 2 65 66
255 0 1 9.5 0 0
255 2 2 1 1 0 0
255 2 0 2 0
255 0 0 2 0
2 9 9 3 0 1 2 nan
0 3 0 2 3 0.5
`

// plyBinary1 is the same file in a binary encoding.
func plyBinary1(order binary.AppendByteOrder, name string) []byte {
	data := []byte(strings.Replace(plyText1[:strings.Index(plyText1, "end_header")], "ascii", name, 1) + "end_header\n")
	whole := func(v int32) { data = order.AppendUint32(data, uint32(v)) }
	float := func(v float64) { data = order.AppendUint32(data, math.Float32bits(float32(v))) }
	whole(7)
	data = append(data, 2, 65, 66)
	for _, v := range [][2]float64{{0, 0}, {2, 0}, {2, 2}, {0, 2}} {
		data = append(data, 255)
		float(v[0])
		data = append(data, 1)
		float(9.5)
		data = order.AppendUint64(data, math.Float64bits(v[1]))
		data = order.AppendUint16(data, 0)
	}
	for _, f := range [][3]int32{{0, 1, 2}, {0, 2, 3}} {
		data = append(data, 1)
		whole(9)
		data = append(data, 3)
		for _, i := range f {
			whole(i)
		}
		float(math.NaN())
	}
	return data
}

func TestPLY(t *testing.T) {
	little, big := plyBinary1(binary.LittleEndian, "binary_little_endian"), plyBinary1(binary.BigEndian, "binary_big_endian")
	for format, data := range map[string][]byte{
		FormatPLYText:   []byte(plyText1),
		FormatPLYLittle: little,
		FormatPLYBig:    big,
	} {
		r := measureBytes(t, data, DefaultOptions("m"))
		assert.Equal(t, format, r.Format)
		assert.Equal(t, 4.0, r.AreaM2, format)
		assert.Equal(t, Box{Point{}, Point{2, 2, 0}}, r.Box, format)
	}
}

func TestPLYFaults(t *testing.T) {
	little := plyBinary1(binary.LittleEndian, "binary_little_endian")
	change := func(old, new string) []byte {
		require.Contains(t, plyText1, old)
		return []byte(strings.Replace(plyText1, old, new, 1))
	}
	for name, c := range map[string]struct {
		data []byte
		code string
		at   Place
	}{
		"cut in the header":      {[]byte(plyText1[:strings.Index(plyText1, "property list")]), "truncated", Place{Line: 5}},
		"cut in the vertices":    {[]byte(plyText1[:strings.Index(plyText1, "255 0 0")]), "truncated", Place{Line: 21}},
		"more rows":              {[]byte(plyText1 + "0 3 0 1 2 1\n"), "count_mismatch", Place{Line: 25}},
		"row too short":          {change("255 2 0 2 0", "255 2 0 2"), "syntax", Place{Line: 21}},
		"row too long":           {change("255 2 0 2 0", "255 2 0 2 0 1"), "syntax", Place{Line: 21}},
		"no such vertex":         {change("3 0 1 2 nan", "3 0 1 4 nan"), "unknown_reference", Place{Line: 23}},
		"vertex below 0":         {change("3 0 1 2 nan", "3 0 1 -1 nan"), "unknown_reference", Place{Line: 23}},
		"two corners":            {change("3 0 1 2 nan", "2 0 1 nan"), "too_few_corners", Place{Line: 23}},
		"length below 0":         {change("3 0 1 2 nan", "-3 0 1 2 nan"), "syntax", Place{Line: 23}},
		"NaN corner":             {change("255 2 0 2 0", "255 nan 0 2 0"), "not_a_number", Place{Line: 21}},
		"no x":                   {change("float x", "float u"), "syntax", Place{Line: 17}},
		"no list of corners":     {change("vertex_indices", "corners"), "syntax", Place{Line: 17}},
		"unknown type":           {change("double y", "real y"), "syntax", Place{Line: 11}},
		"length not whole":       {change("list uchar float", "list float float"), "syntax", Place{Line: 10}},
		"encoding unknown":       {change("ascii", "packed"), "wrong_format", Place{Line: 2}},
		"no format":              {change("format ascii 1.0", "comment"), "syntax", Place{Line: 17}},
		"count below 0":          {change("vertex 4", "vertex -4"), "syntax", Place{Line: 7}},
		"element twice":          {change("element material 1", "element vertex 1"), "syntax", Place{Line: 7}},
		"property twice":         {change("short z", "short x"), "syntax", Place{Line: 12}},
		"strips":                 {change("element face 2", "element tristrips 2"), "wrong_format", Place{Line: 13}},
		"no vertices":            {change("element vertex 4", "element corner 4"), "unknown_reference", Place{Line: 23}},
		"binary, cut":            {little[:len(little)-3], "truncated", Place{Byte: int64(len(little) - 3)}},
		"binary, more":           {append(bytes.Clone(little), 0), "count_mismatch", Place{Byte: int64(len(little))}},
		"binary, list of 255":    {overwrite(little, strings.Index(string(little), "end_header\n")+len("end_header\n")+4, 255), "unknown_reference", Place{}},
		"binary, header of text": {[]byte("ply\nformat binary_little_endian 1.0\nelement vertex 1000000000\nproperty float x\nproperty float y\nproperty float z\nend_header\n"), "truncated", Place{Byte: 124}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read(context.Background(), bytes.NewReader(c.data), FormatPLY, int64(len(c.data)), func(Facet) error { return nil })
			var broken *FileError
			require.ErrorAs(t, err, &broken)
			if c.at == (Place{}) {
				return // what comes of misread bytes does not matter, but that it is refused
			}
			assert.Equal(t, c.code, broken.Code, broken.Error())
			assert.Equal(t, c.at, broken.At, broken.Error())
		})
	}
}

func overwrite(data []byte, at int, with byte) []byte {
	data = bytes.Clone(data)
	data[at] = with
	return data
}
