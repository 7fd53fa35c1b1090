package chart

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func sample() Figure {
	f := Figure{Title: "Range of the total", Description: "P50 12 000, P80 14 000", Unit: "USD",
		Marks: []Mark{{"P10 10 000", 10000, false}, {"P50 12 000", 12000, false}, {"P80 14 000", 14000, false}, {"P90 14 900", 14900, false}, {"single figure 11 000", 11000, true}}}
	for i := range 40 {
		x := 8000 + 250*float64(i)
		f.Bars = append(f.Bars, Bar{x, x + 250, math.Exp(-math.Pow(float64(i-18)/9, 2)) / 16})
	}
	sum := 0.0
	for _, b := range f.Bars {
		f.Curve = append(f.Curve, Point{b.From, sum})
		sum += b.Share
	}
	return f
}

// parsed reads a drawing as XML and returns its elements by name.
func parsed(t require.TestingT, svg []byte) map[string]int {
	count := map[string]int{}
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return count
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			count[start.Name.Local]++
			for _, a := range start.Attr {
				assert.NotContains(t, a.Value, "NaN")
				assert.NotContains(t, a.Value, "Inf")
			}
		}
	}
}

func TestTheDrawing(t *testing.T) {
	svg := sample().SVG()
	count := parsed(t, svg)
	assert.Equal(t, 40, count["rect"])
	assert.Equal(t, 1, count["path"])
	assert.Equal(t, 1, count["desc"])
	for _, words := range []string{"Range of the total", "P80 14 000", "single figure 11 000", "12\u202f000", `role="img"`, "prefers-color-scheme:dark"} {
		assert.Contains(t, string(svg), words)
	}
	assert.NotContains(t, string(svg), "<script")
	assert.Equal(t, svg, sample().SVG())
}

// Any words and any numbers make a drawing that is well-formed.
func TestAnyFigureIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(-1e12, 1e12)
		f := Figure{Title: rapid.String().Draw(t, "title"), Description: rapid.String().Draw(t, "words"), Unit: rapid.String().Draw(t, "unit")}
		x := number.Draw(t, "from")
		for range rapid.IntRange(0, 5).Draw(t, "bars") {
			to := x + rapid.Float64Range(0, 1e9).Draw(t, "wide")
			f.Bars = append(f.Bars, Bar{x, to, rapid.Float64Range(0.01, 1).Draw(t, "share")})
			f.Curve = append(f.Curve, Point{x, rapid.Float64Range(0, 1).Draw(t, "likely")})
			x = to
		}
		for range rapid.IntRange(0, 6).Draw(t, "marks") {
			f.Marks = append(f.Marks, Mark{rapid.String().Draw(t, "label"), number.Draw(t, "value"), rapid.Bool().Draw(t, "plain")})
		}
		parsed(t, f.SVG())
	})
}

func TestTicks(t *testing.T) {
	assert.Equal(t, []float64{0, 2, 4, 6, 8, 10}, ticks(0, 10, 6))
	assert.Equal(t, []float64{1200, 1300, 1400}, ticks(1190, 1450, 3))
	assert.Equal(t, []float64{3}, ticks(3, 3, 6))
	assert.Equal(t, "1\u202f234\u202f567", short(1234567, 1000))
	assert.Equal(t, "−0.25", short(-0.25, 0.05))
	assert.Equal(t, "999", short(999, 1))
}
