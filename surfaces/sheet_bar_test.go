package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCorrugatedLimits(t *testing.T) {
	sheet := func(form string, depth float64) *Corrugated {
		return &Corrugated{WidthM: 2, LengthM: 3, PitchMM: 100, DepthMM: depth, Form: form, Sides: 1}
	}
	assert.InEpsilon(t, 6, must(t, sheet("sine", 0.01)).AreaM2(), 1e-6, "hardly pressed")
	assert.InEpsilon(t, 6, must(t, sheet("arc", 0.01)).AreaM2(), 1e-6)
	assert.InEpsilon(t, 6*math.Pi/2, must(t, sheet("arc", 50)).AreaM2(), 1e-12, "half circles (identity)")
	ribs := sheet("trapezoid", 40)
	ribs.CrestMM, ribs.ValleyMM, ribs.Sides = pointer(50.0), pointer(50.0), 2
	m := must(t, ribs)
	assert.InEpsilon(t, 2*6*1.8, m.AreaM2(), 1e-12, "upright webs (identity)")
	assert.InEpsilon(t, 2*3+2*2*1.8, m.FaceEdgeM("back"), 1e-12)
}

func TestCorrugatedChecks(t *testing.T) {
	base := `"width_m": 1, "length_m": 1, "pitch_mm": 100, `
	for i, c := range []struct {
		text string
		want map[string]string
	}{
		{`{` + base + `"depth_mm": 60, "form": "arc"}`, map[string]string{"/depth_mm": "inconsistent"}},
		{`{` + base + `"depth_mm": 20, "form": "square"}`, map[string]string{"/form": "unknown_kind"}},
		{`{` + base + `"depth_mm": 20, "form": "trapezoid"}`, map[string]string{"/crest_mm": "required", "/valley_mm": "required"}},
		{`{` + base + `"depth_mm": 20, "form": "trapezoid", "crest_mm": 60, "valley_mm": 50}`, map[string]string{"/pitch_mm": "inconsistent"}},
		{`{` + base + `"depth_mm": 20, "crest_mm": 60, "valley_mm": 50, "sides": 0}`, map[string]string{"/crest_mm": "not_applicable", "/valley_mm": "not_applicable", "/sides": "out_of_range"}},
	} {
		assert.Equal(t, c.want, codes(read(t, "corrugated", c.text)), "case %d", i)
	}
}

func TestBarHidesFaces(t *testing.T) {
	read := func(hidden string) Measurement {
		return must(t, read(t, "bar", `{"length_m": 2, "hidden_faces": [`+hidden+`],
			"profile": {"kind": "flat", "height_mm": 10, "width_mm": 100}}`))
	}
	whole := read(``)
	assert.InEpsilon(t, 0.22*2, whole.AreaM2(), 1e-12)        // identity
	assert.InEpsilon(t, 4*2+2*0.22, whole.EdgeM(), 1e-12)     // four corners and two ends
	assert.InEpsilon(t, 2*0.22, whole.FaceEdgeM(Open), 1e-12) // the ends
	assert.InEpsilon(t, 2*2+2*0.1, whole.FaceEdgeM("top"), 1e-12)
	seated := read(`"bottom"`)
	assert.InEpsilon(t, 0.12*2, seated.AreaM2(), 1e-12)
	assert.Zero(t, seated.FaceEdgeM("bottom"))
	assert.InEpsilon(t, 2*0.12+2*2, seated.FaceEdgeM(Open), 1e-12, "the ends, and two lines at the hidden face")
	cornered := read(`"bottom", "left"`)
	assert.InEpsilon(t, 2*0.11+2*2+2, cornered.EdgeM(), 1e-12, "no line between two hidden faces")
}

// Identities: a section without radii by its sharp outline; a square tube
// whose corners are half its side is round.
func TestBarProfiles(t *testing.T) {
	area := func(profile string) float64 {
		return must(t, read(t, "bar", `{"length_m": 1, "profile": `+profile+`}`)).AreaM2() * 1000
	}
	assert.InEpsilon(t, 2*200+4*100-2*6.0, area(`{"kind": "i", "height_mm": 200, "width_mm": 100, "web_mm": 6}`), 1e-12)
	assert.InEpsilon(t, 2*200+4*100-2*6.0, area(`{"kind": "channel", "height_mm": 200, "width_mm": 100, "web_mm": 6}`), 1e-12)
	assert.InEpsilon(t, 2*(50+40.0), area(`{"kind": "angle", "height_mm": 50, "width_mm": 40}`), 1e-12)
	assert.InEpsilon(t, math.Pi*60, area(`{"kind": "rect_tube", "height_mm": 60, "width_mm": 60, "radius_mm": 30}`), 1e-12)
	assert.InEpsilon(t, math.Pi*60, area(`{"kind": "round_tube", "diameter_mm": 60, "wall_mm": 3}`), 1e-12)
	assert.InEpsilon(t, math.Pi*60, area(`{"kind": "round", "diameter_mm": 60}`), 1e-12)
}

func TestBarChecks(t *testing.T) {
	for i, c := range []struct {
		text string
		want map[string]string
	}{
		{`{"length_m": 1}`, map[string]string{"/profile/kind": "unknown_kind"}},
		{`{"length_m": 1, "profile": {"kind": "i", "height_mm": 200, "diameter_mm": 50}}`,
			map[string]string{"/profile/width_mm": "required", "/profile/web_mm": "required", "/profile/diameter_mm": "not_applicable"}},
		{`{"length_m": 1, "profile": {"kind": "i", "height_mm": 40, "width_mm": 20, "web_mm": 10, "radius_mm": 12, "flange_mm": 10}}`,
			map[string]string{"/profile/web_mm": "inconsistent", "/profile/flange_mm": "inconsistent"}},
		{`{"length_m": 1, "profile": {"kind": "rect_tube", "height_mm": 40, "width_mm": 20, "wall_mm": 11, "radius_mm": 12}}`,
			map[string]string{"/profile/wall_mm": "inconsistent", "/profile/radius_mm": "inconsistent"}},
		{`{"length_m": 1, "profile": {"kind": "angle", "height_mm": 40, "width_mm": 20, "wall_mm": 5, "radius_mm": 16, "toe_radius_mm": 6}}`,
			map[string]string{"/profile/radius_mm": "inconsistent", "/profile/toe_radius_mm": "inconsistent"}},
		{`{"length_m": 1, "profile": {"kind": "channel", "height_mm": 40, "width_mm": 20, "web_mm": 21, "flange_mm": 21}}`,
			map[string]string{"/profile/web_mm": "inconsistent", "/profile/flange_mm": "inconsistent"}},
		{`{"length_m": 1, "profile": {"kind": "round_tube", "diameter_mm": 20, "wall_mm": 11}}`, map[string]string{"/profile/wall_mm": "inconsistent"}},
		{`{"length_m": 1, "hidden_faces": ["inside"], "profile": {"kind": "round", "diameter_mm": 20}}`, map[string]string{"/hidden_faces/0": "unknown_reference"}},
		{`{"length_m": 1, "hidden_faces": ["outside"], "profile": {"kind": "round", "diameter_mm": 20}}`, map[string]string{"/hidden_faces": "inconsistent"}},
		{`{"length_m": 0, "profile": {"kind": "flat", "height_mm": -1, "width_mm": 20}}`,
			map[string]string{"/length_m": "out_of_range", "/profile/height_mm": "out_of_range"}},
	} {
		assert.Equal(t, c.want, codes(read(t, "bar", c.text)), "case %d", i)
	}
}
