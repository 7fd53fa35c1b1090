package marking

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/planar"
)

// onGrid measures one form of a letter in grid units.
func onGrid(t *testing.T, g glyph) (area, perimeter float64, box planar.Box) {
	t.Helper()
	a, err := planar.Arrange([]planar.Layer{{Colour: "black", Outline: g.parts}})
	require.NoError(t, err)
	require.Len(t, a.Areas(), 1)
	return a.Areas()[0].Area, a.Lengths()[0].Length, a.Box()
}

func TestBlockAlphabetIsComplete(t *testing.T) {
	letters, err := blockAlphabet()
	require.NoError(t, err)
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-" {
		assert.NotEmpty(t, letters[r], string(r))
	}
	assert.Len(t, letters, 37)
	for r, forms := range letters {
		for _, g := range forms {
			area, perimeter, box := onGrid(t, g)
			assert.InDelta(t, g.width, box.Width(), 1e-9, "%c fills its width", r)
			assert.InDelta(t, 0, box.Min.X, 1e-9, "%c", r)
			if r != '-' {
				assert.InDelta(t, gridHeight, box.Height(), 1e-9, "%c fills its height", r)
				assert.InDelta(t, 0, box.Min.Y, 1e-9, "%c", r)
			}
			// A figure of strokes one unit wide has about half its perimeter for area.
			assert.InDelta(t, 0.5, area/perimeter, 0.1, "%c has strokes one unit wide", r)
		}
	}
	for r, forms := range letters {
		want := 1
		if r == 'M' || r == 'W' {
			want = 2
		}
		assert.Len(t, forms, want, string(r))
	}
}

// Slanting strokes are one unit across: twice the distance between the long
// sides of the parallelogram, to the nine decimals of the table.
func TestSlantingStrokes(t *testing.T) {
	letters, err := blockAlphabet()
	require.NoError(t, err)
	slanting := 0
	for r, forms := range letters {
		for _, g := range forms {
			for _, part := range g.parts {
				if len(part) != 4 || part[0].At.X == part[3].At.X {
					continue // upright sides, or a chamfered bar
				}
				run, rise := part[3].At.X-part[0].At.X, part[3].At.Y-part[0].At.Y
				width := part[1].At.X - part[0].At.X
				if r == 'Q' {
					continue // drawn square to its length
				}
				assert.InDelta(t, 1, width*math.Abs(rise)/math.Hypot(run, rise), 1e-8, "%c", r)
				slanting++
			}
		}
	}
	assert.Equal(t, 20, slanting, "K K, M M twice, N, R, V V, W W twice, X X, Y Y, Z, 7")
}

func TestAlphabetIsReadStrictly(t *testing.T) {
	const head = "letter,width,parts,source,note\n"
	for text, said := range map[string]string{
		"":                                        "columns",
		"letter,width,parts\n":                    "columns",
		head + "A,4,0 0 1 6,,\n":                  "source is missing",
		head + "AB,4,0 0 1 6,x,\n":                "not one letter",
		head + ",4,0 0 1 6,x,\n":                  "not one letter",
		head + "A,four,0 0 1 6,x,\n":              "invalid syntax",
		head + "A,4,0 0 1,x,\n":                   "not a list of pairs",
		head + "A,4,0 0 1 up,x,\n":                "invalid syntax",
		head + "A,4,,x,\n":                        "not a list of pairs",
		head + "A,4,0 0 1 6,x,\nA,4,0 0 1 6,x,\n": "given twice",
		head + "A,4,0 0 1 6,x\n":                  "wrong number of fields",
	} {
		_, err := readAlphabet(text)
		require.ErrorContains(t, err, said, text)
	}
	letters, err := readAlphabet(head + "A,4,0 0 0 6 1 6 1 0,x,clockwise\nA,1,0 0 1 6,x,\n")
	require.NoError(t, err)
	assert.Equal(t, 1.0, letters['A'][0].width, "the narrowest first")
	assert.InDelta(t, 6, letters['A'][1].parts[0].SignedArea(), 1e-12, "turned counter-clockwise")
}

func FuzzReadAlphabet(f *testing.F) {
	f.Add(blockLettersCSV)
	f.Add("letter,width,parts,source,note\nA,1e999,0 0 NaN 6,x,\n")
	f.Add("letter,width,parts,source,note\n\xff,4,0 0 1 6; 0 0 1 6,x,\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		letters, err := readAlphabet(text)
		if err != nil {
			return
		}
		for r, forms := range letters {
			require.NotEmpty(t, forms, string(r))
			for _, g := range forms {
				require.NotEmpty(t, g.parts)
			}
		}
	})
}

func TestLetteringFaults(t *testing.T) {
	f := newLettering()
	f.HeightM, f.Colour = 0.3, "black"
	for text, want := range map[string]string{
		"": "required", "   ": "required", "abc": "unknown_reference", "A/B": "unknown_reference", "N1 23": "", "É": "unknown_reference",
		strings.Repeat("A", 2001): "too_many", "A\xff": "unknown_reference",
	} {
		f.Text = text
		assert.Equal(t, want, faultsOf(f)["/text"], text)
	}
	f.Text = "A?B?*"
	var said []string
	f.Check(func(_, _, detail string) { said = append(said, detail) })
	require.Len(t, said, 2, "each missing letter once")
	assert.Contains(t, said[0], "'?'")
	assert.Contains(t, said[1], "'*'")
	f.Text, f.Font, f.GapRule, f.Rule, f.Align = "A", "script", "third", "own", "top"
	assert.Equal(t, map[string]string{"/font": "unknown_kind", "/gap_rule": "unknown_kind", "/rule": "unknown_kind", "/align": "unknown_kind"}, faultsOf(f))
}

// Spaces before and after the text paint nothing; one between words stands for
// the width of a letter in place of the gap.
func TestSpacesBetweenWords(t *testing.T) {
	width := func(text string) float64 {
		f := newLettering()
		f.Text, f.HeightM, f.Colour = text, 6, "black"
		m, err := Measure(f)
		require.NoError(t, err)
		return m.WidthM
	}
	assert.InDelta(t, 4+1+4, width("AA"), 1e-9)
	assert.InDelta(t, 4+4+4, width("A A"), 1e-9)
	assert.InDelta(t, 4, width("  A "), 1e-9)
}

func BenchmarkLettering2000(b *testing.B) {
	f := newLettering()
	f.Text, f.HeightM, f.Colour = strings.Repeat("NO STEP HERE-KLM 8W ", 100), 0.025, "black"
	for b.Loop() {
		if _, err := Measure(f); err != nil {
			b.Fatal(err)
		}
	}
}
