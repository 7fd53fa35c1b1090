package sketch

import (
	"encoding/xml"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces"
)

func sketched(t require.TestingT, s surfaces.Shape, system System) []byte {
	svg, err := SVG(s, system, "a-")
	require.NoError(t, err)
	return svg
}

// wellMade checks what holds for every sketch: it stays on the sheet, texts keep
// clear of each other, line widths are from the set, and nothing needs a style
// sheet, a script or another document.
func wellMade(t require.TestingT, svg []byte) picture {
	p := readBack(t, svg)
	require.Equal(t, "0 0 180 120", p.ViewBox)
	require.Equal(t, "180mm", p.Width)
	require.Equal(t, "120mm", p.Height)
	sheet := bounds{point{-0.01, -0.01}, point{180.01, 120.01}}
	inside := func(b bounds, what string) {
		require.True(t, b.low.x >= sheet.low.x && b.low.y >= sheet.low.y && b.high.x <= sheet.high.x && b.high.y <= sheet.high.y, "%s leaves the sheet: %v", what, b)
	}
	for _, e := range p.paths() {
		inside(boxOf(trace(t, e.D)), e.Class)
		if e.Width != "" {
			require.Contains(t, []string{"0.35", "0.5", "0.7"}, e.Width)
		}
	}
	var boxes []bounds
	for _, e := range p.texts() {
		b := e.box()
		inside(b, e.Text)
		for i, o := range boxes {
			// Coordinates are rounded to 0.01 mm.
			shrunk := bounds{b.low.plus(0.02, 0.02), b.high.plus(-0.02, -0.02)}
			require.False(t, shrunk.meets(o), "%q stands on %q", e.Text, p.texts()[i].Text)
		}
		boxes = append(boxes, b)
	}
	for _, banned := range []string{"NaN", "Inf", " style=", "<style", "<script", "href", "url(", "\x00"} {
		require.False(t, strings.Contains(string(svg), banned), banned)
	}
	return p
}

func TestEveryExampleIsWellMade(t *testing.T) {
	for _, k := range surfaces.Kinds() {
		for _, system := range []System{SI, US} {
			t.Run(k.Name+" "+string(system), func(t *testing.T) {
				svg := sketched(t, k.Example, system)
				p := wellMade(t, svg)
				assert.NotEmpty(t, p.Title)
				m, err := surfaces.Measure(k.Example)
				require.NoError(t, err)
				for _, f := range m.Faces {
					name := strings.ReplaceAll(f.Name, "_", " ")
					assert.True(t, p.says(name), "face %s is not named", f.Name)
					assert.Contains(t, p.Desc, name)
				}
				assert.Equal(t, svg, sketched(t, k.Example, system), "a second sketch differs")
				if dir := os.Getenv("SKETCHES"); dir != "" { // to look at them
					require.NoError(t, os.WriteFile(filepath.Join(dir, k.Name+"-"+string(system)+".svg"), svg, 0o644))
				}
			})
		}
	}
}

func TestEverydayShapesAreWellMade(t *testing.T) {
	forEveryKind(t, everyday, func(t *rapid.T, s surfaces.Shape) {
		wellMade(t, sketched(t, s, rapid.SampledFrom([]System{SI, US}).Draw(t, "system")))
	})
}

func TestShapesUpToTheLimitsAreWellMade(t *testing.T) {
	forEveryKind(t, extreme, func(t *rapid.T, s surfaces.Shape) {
		wellMade(t, sketched(t, s, rapid.SampledFrom([]System{SI, US}).Draw(t, "system")))
	})
}

// Two sketches in one page must not share an id, and every id that is referred
// to must exist.
func TestIdsDoNotRepeat(t *testing.T) {
	seen := map[string]bool{}
	id := regexp.MustCompile(` id="([^"]*)"`)
	for _, prefix := range []string{"", "a-", "b_2"} {
		for _, k := range surfaces.Kinds()[:1] {
			svg, err := SVG(k.Example, SI, prefix)
			require.NoError(t, err)
			found := id.FindAllStringSubmatch(string(svg), -1)
			require.Len(t, found, 3)
			for _, f := range found {
				assert.False(t, seen[f[1]], f[1])
				seen[f[1]] = true
				assert.True(t, strings.HasPrefix(f[1], prefix))
			}
			assert.Contains(t, string(svg), `aria-labelledby="`+prefix+`title `+prefix+`desc"`)
		}
	}
}

func TestWhatCannotBeDrawnIsRefused(t *testing.T) {
	_, err := SVG(&surfaces.Box{LengthM: -1}, SI, "")
	var faults surfaces.Faults
	require.ErrorAs(t, err, &faults)
	assert.Len(t, faults, 3)

	good := &surfaces.Box{LengthM: 1, WidthM: 1, HeightM: 1}
	_, err = SVG(good, "furlongs", "")
	assert.ErrorContains(t, err, `"furlongs"`)
	for _, prefix := range []string{"1a", "-a", `a"`, "a b", "a<", "ä"} {
		_, err = SVG(good, SI, prefix)
		assert.ErrorContains(t, err, "prefix", prefix)
	}
	_, err = SVG(odd{}, SI, "")
	assert.ErrorContains(t, err, "there is no drawing of a odd")
}

// odd is a kind without a drawing.
type odd struct{ surfaces.Shape }

func (odd) Kind() string                             { return "odd" }
func (odd) Check(func(pointer, code, detail string)) {}

// The box is that of the file, whatever the facets are.
func TestMeshIsShownByItsBox(t *testing.T) {
	p := wellMade(t, sketched(t, resolved([3]float64{-1, 0, 2}, [3]float64{3, 1, 2.5}), SI))
	for _, text := range []string{"4", "1", "0.5", "its form is not drawn"} {
		assert.True(t, p.says(text), text)
	}
	b, k := boxOf(p.main(t, "a-")), p.perMetre(t)
	assert.InDelta(t, 4*k, b.width(), 0.1)
	assert.InDelta(t, 0.5*k, b.height(), 0.1)
	_, err := SVG(resolved([3]float64{}, [3]float64{1e12, 1, 1e12}), SI, "")
	assert.ErrorContains(t, err, "too large")
}

func TestMeshThatWasNotReadIsRefused(t *testing.T) {
	_, err := SVG(&surfaces.Mesh{Mesh: "door.stl", Unit: "mm"}, SI, "")
	var faults surfaces.Faults
	require.ErrorAs(t, err, &faults)
}

// Text from outside is escaped, though none reaches a sketch today.
func TestTextIsEscaped(t *testing.T) {
	d := newDrawing(scale{1, 1}, SI)
	d.write(lettering{text: `<b>&"`, class: noteText, face: `"><script>`}, point{50, 50})
	var back struct {
		Texts []textElement `xml:"text"`
	}
	require.NoError(t, xml.Unmarshal([]byte("<g>"+string(d.words)+"</g>"), &back))
	assert.Equal(t, `<b>&"`, back.Texts[0].Text)
	assert.Equal(t, `"><script>`, back.Texts[0].Face)
}

func BenchmarkSVG(b *testing.B) {
	for _, k := range surfaces.Kinds() {
		b.Run(k.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := SVG(k.Example, SI, "a-"); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
