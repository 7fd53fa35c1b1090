package marking

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/quantity"
)

func stencilled(change func(*StencilText)) *StencilText {
	f := newStencilText()
	f.Text, f.HeightM, f.BridgeWidthM, f.Colour = "NO STEP", 0.05, 0.003, "red"
	change(f)
	return f
}

// No letter of either font keeps an island once it has its bridges, and bridges
// only take paint away.
func TestBridgesHoldEveryIsland(t *testing.T) {
	const block = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-"
	const sans = block + "abcdefghijklmnopqrstuvwxyzÄÖÅäöåéß&@%#?!$"
	for font, letters := range map[string]string{"block": block, "sans": sans} {
		for _, bold := range []bool{false, true} {
			if bold && font == "block" {
				continue
			}
			for _, r := range letters {
				whole := newLettering()
				whole.Text, whole.Font, whole.Bold, whole.HeightM, whole.Colour = string(r), font, bold, 1, "red"
				before, err := Measure(whole)
				require.NoError(t, err, string(r))
				f := stencilled(func(f *StencilText) {
					f.Text, f.Font, f.Bold, f.HeightM, f.BridgeWidthM = string(r), font, bold, 1, 0.03
				})
				after, err := Measure(f)
				require.NoError(t, err, string(r))
				assert.Zero(t, after.Islands, "%c in %s", r, font)
				if before.Islands == 0 {
					assert.InEpsilon(t, before.AreaM2, after.AreaM2, 1e-12, string(r))
					continue
				}
				assert.Less(t, after.AreaM2, before.AreaM2, string(r))
				assert.Greater(t, after.AreaM2, 0.8*before.AreaM2, string(r))
				at := slices.IndexFunc(after.Working, func(w quantity.Working) bool { return w.Quantity == "bridges" })
				require.GreaterOrEqual(t, at, 0, string(r))
				assert.InDelta(t, 2*before.Islands, after.Working[at].Value, 0, string(r))
			}
		}
	}
}

func TestStencilsAreChecked(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*StencilText)
		want   map[string]string
	}{
		"sound":         {func(*StencilText) {}, map[string]string{}},
		"no bridge":     {func(f *StencilText) { f.BridgeWidthM = 0 }, map[string]string{"/bridge_width_m": "out_of_range"}},
		"wide bridge":   {func(f *StencilText) { f.BridgeWidthM = 0.04 }, map[string]string{"/bridge_width_m": "inconsistent"}},
		"three bridges": {func(f *StencilText) { f.Bridges = 3 }, map[string]string{"/bridges": "out_of_range"}},
		"no repeat":     {func(f *StencilText) { f.Repeat = 0 }, map[string]string{"/repeat": "out_of_range"}},
		"bold block":    {func(f *StencilText) { f.Bold = true }, map[string]string{"/bold": "not_applicable"}},
		"small block":   {func(f *StencilText) { f.Text = "No" }, map[string]string{"/text": "unknown_reference"}},
		"small sans":    {func(f *StencilText) { f.Text, f.Font = "No", "sans" }, map[string]string{}},
		"lines in lines": {func(f *StencilText) {
			f.Text, f.Font, f.BridgeWidthM, f.LinePitchRatio = strings.Repeat("jg\n", 400), "sans", 0.001, pointer(0.8)
		}, map[string]string{"/line_pitch_ratio": "overlap"}},
		"too many":           {func(f *StencilText) { f.Text, f.Repeat = strings.Repeat("L", 200), 1000 }, map[string]string{"/repeat": "too_many"}},
		"repeated on a skin": {func(f *StencilText) { f.Repeat, f.Sizes, f.SkinRadiusM = 2, "projected", pointer(9) }, map[string]string{"/repeat": "not_applicable"}},
		"no such sans":       {func(f *StencilText) { f.Text, f.Font = "中", "sans" }, map[string]string{"/text": "unknown_reference"}},
	} {
		assert.Equal(t, c.want, faultsOf(stencilled(c.change)), name)
	}
}

// Lines stand one pitch apart, aligned as asked; repeated stencils have as many
// times the area and edge (identities).
func TestParagraphs(t *testing.T) {
	one, err := Measure(stencilled(func(f *StencilText) { f.Text = "LL\nLLLL" }))
	require.NoError(t, err)
	assert.InEpsilon(t, 2.3*0.05, one.HeightM, 1e-12, "two lines of capitals at 1.3")
	many, err := Measure(stencilled(func(f *StencilText) { f.Text, f.Repeat = "LL\nLLLL", 7 }))
	require.NoError(t, err)
	assert.InEpsilon(t, 7*one.AreaM2, many.AreaM2, 1e-12)
	assert.InEpsilon(t, 7*one.OutlineM, many.OutlineM, 1e-12)
	assert.InEpsilon(t, 7*one.WidthM+6*0.05, many.WidthM, 1e-12)

	left := func(align string) float64 {
		f := newLettering()
		f.Text, f.HeightM, f.Align, f.Colour, f.LinePitchRatio = "L\nLL", 6, align, "red", pointer(2)
		m, err := Measure(f)
		require.NoError(t, err)
		assert.InEpsilon(t, 18, m.HeightM, 1e-12)
		return m.CentroidXM
	}
	assert.InEpsilon(t, 2.5/3, left("centre")-left("left"), 1e-9, "a third of the paint moves by half of 5")
	assert.InEpsilon(t, 5.0/3, left("right")-left("left"), 1e-9)
}

func TestGapRules(t *testing.T) {
	width := func(rule, font string) float64 {
		f := newLettering()
		f.Text, f.HeightM, f.GapRule, f.Font, f.Colour = "HH", 60, rule, font, "red"
		m, err := Measure(f)
		require.NoError(t, err)
		return m.WidthM
	}
	for rule, gap := range map[string]float64{"rule": 10, "quarter": 10, "half": 20, "stroke": 10, "iso_3098_b": 12} {
		assert.InEpsilon(t, 80+gap, width(rule, "block"), 1e-12, rule)
	}
	assert.InDelta(t, 10, width("half", "sans")-width("quarter", "sans"), 1e-9)
	assert.InDelta(t, width("iso_3098_b", "sans")-2, width("quarter", "sans"), 1e-9)
}

func BenchmarkStencilParagraph(b *testing.B) {
	for _, font := range []string{"block", "sans"} {
		b.Run(font, func(b *testing.B) {
			f := stencilled(func(f *StencilText) {
				f.Text, f.Font, f.HeightM, f.BridgeWidthM = strings.Repeat("NO STEP HERE 8469 BDPQR LIFT MWK ABCDEFG\n", 60)[:2000], font, 0.0125, 0.0005
			})
			for b.Loop() {
				if _, err := Measure(f); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
