package properties

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// shapesOfEveryForm are shapes whose workings differ from those of the examples
// of their kinds; all invented.
func shapesOfEveryForm(t *testing.T) []surfaces.Shape {
	var list []surfaces.Shape
	for _, k := range surfaces.Kinds() {
		list = append(list, k.Example)
	}
	for kind, texts := range map[string][]string{
		"panel": {`{"outline": [[0,0],[2,0],[2,1],[0,1.5]], "sides": 2, "thickness_mm": 1.2}`,
			`{"width_m": 1, "height_m": 1, "holes": [{"diameter_m": 0.2, "x_m": 0.4, "y_m": 0.5}, {"diameter_m": 0.2, "x_m": 0.5, "y_m": 0.5}]}`},
		"frustum":   {`{"radius_1_m": 0.5, "radius_2_m": 0, "length_m": 1, "ends": 1}`, `{"radius_1_m": 0.5, "radius_2_m": 0.4, "length_m": 1, "ends": 2}`},
		"ellipsoid": {`{"a_m": 1, "b_m": 2, "c_m": 3}`},
		"nose": {`{"radius_m": 0.5, "length_m": 2, "profile": "tangent_ogive"}`, `{"radius_m": 0.5, "length_m": 2, "profile": "secant_ogive", "arc_radius_m": 6}`,
			`{"radius_m": 0.5, "length_m": 2, "profile": "paraboloid"}`, `{"radius_m": 0.5, "length_m": 2, "profile": "power", "exponent": 0.6}`, `{"radius_m": 0.5, "length_m": 2, "profile": "elliptic"}`},
		"vessel": {`{"radius_m": 0.6, "length_m": 2, "head": "flat"}`, `{"radius_m": 0.6, "length_m": 2, "head": "hemisphere"}`,
			`{"radius_m": 0.6, "length_m": 2, "head": "torispherical", "crown_radius_m": 1.2, "knuckle_radius_m": 0.12}`},
		"wing": {`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "root_thickness_ratio": 0.1, "trailing_edge": "open", "tip": "capped"}`, `{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "section": "flat"}`},
		"body": {`{"stations": [{"x_m": 0, "width_m": 2, "height_m": 2}, {"x_m": 1, "width_m": 2, "height_m": 2}, {"x_m": 1, "width_m": 1, "height_m": 1, "exponent": 3}, {"x_m": 3, "width_m": 1, "height_m": 1}], "nose": "flat", "tail": "flat"}`},
		"bar": {`{"length_m": 2, "profile": {"kind": "channel", "height_mm": 200, "width_mm": 80, "web_mm": 6, "flange_mm": 11, "radius_mm": 13}}`,
			`{"length_m": 2, "profile": {"kind": "channel", "height_mm": 200, "width_mm": 80, "web_mm": 6}}`,
			`{"length_m": 2, "profile": {"kind": "angle", "height_mm": 100, "width_mm": 80, "wall_mm": 10, "radius_mm": 12, "toe_radius_mm": 6}}`,
			`{"length_m": 2, "profile": {"kind": "round_tube", "diameter_mm": 100, "wall_mm": 5}}`, `{"length_m": 2, "profile": {"kind": "rect_tube", "height_mm": 100, "width_mm": 80, "wall_mm": 5, "radius_mm": 10}}`,
			`{"length_m": 2, "profile": {"kind": "round", "diameter_mm": 100}}`, `{"length_m": 2, "profile": {"kind": "flat", "height_mm": 100, "width_mm": 8}}`},
		"corrugated": {`{"width_m": 2, "length_m": 3, "pitch_mm": 76.2, "depth_mm": 19.05, "form": "arc", "sides": 2}`, `{"width_m": 2, "length_m": 3, "pitch_mm": 200, "depth_mm": 38, "form": "trapezoid", "crest_mm": 100, "valley_mm": 40}`},
	} {
		for _, text := range texts {
			s, ok := surfaces.New(kind)
			require.True(t, ok, kind)
			require.NoError(t, json.Unmarshal([]byte(text), s), kind)
			list = append(list, s)
		}
	}
	return list
}

// The formulas of shapes, of their bays, bands and strips give the areas beside
// which they stand (identity), and no quantity of a shape has two.
func TestFormulasOfShapesGiveTheirAreas(t *testing.T) {
	for _, s := range shapesOfEveryForm(t) {
		m, err := surfaces.Measure(s)
		require.NoError(t, err, s.Kind())
		check := func(m surfaces.Measurement, what string) {
			values := map[string]float64{}
			for i := range m.Working {
				w := &m.Working[i]
				worksOut(t, s.Kind()+what, w)
				assert.NotContains(t, values, w.Quantity, s.Kind()+what)
				values[w.Quantity] = w.Value
			}
			seen := map[string]bool{}
			for _, f := range m.Faces {
				assert.False(t, seen[f.Name], "%s%s has %s twice", s.Kind(), what, f.Name)
				seen[f.Name] = true
				close(t, f.AreaM2, values[f.Name+"_area_m2"], "%s%s: %s", s.Kind(), what, f.Name)
			}
		}
		check(m, "")
		if d, ok := s.(surfaces.Divisible); ok {
			e := d.Extent()
			middle := e.From + 0.4*(e.To-e.From)
			p, err := surfaces.MeasurePart(s, surfaces.Part{FromM: &middle})
			require.NoError(t, err, s.Kind())
			check(p, ", bay")
			if e.Height != "" {
				z := e.Low + 0.4*(e.High-e.Low)
				p, err := surfaces.MeasurePart(s, surfaces.Part{ToM: &middle, FromZM: &z})
				require.NoError(t, err, s.Kind())
				check(p, ", band")
			}
		}
		if striped, ok := s.(surfaces.Striped); ok {
			for _, l := range striped.Lines() {
				strip := surfaces.Part{Along: l.Name, WidthM: 0.01}
				if d, ok := s.(surfaces.Divisible); ok && l.Stations { // behind a step
					at := d.Extent().From + 0.5*(d.Extent().To-d.Extent().From)
					strip.FromM = &at
				}
				p, err := surfaces.MeasurePart(s, strip)
				require.NoError(t, err, s.Kind()+l.Name)
				check(p, ", strip along "+l.Name)
			}
		}
	}
}

// So do those of joints.
func TestFormulasOfJointsGiveTheirAreas(t *testing.T) {
	number := func(v float64) *float64 { return &v }
	for _, j := range []surfaces.Joint{
		{Kind: "wing_root", ChordM: number(2), ThicknessRatio: number(0.1)}, {Kind: "wing_root", ChordM: number(2), ThicknessRatio: number(0.1), BodyRadiusM: number(1)},
		{Kind: "tube", RadiusM: number(0.2), BodyRadiusM: number(1)}, {Kind: "cylinder_on_sphere", RadiusM: number(0.2), BodyRadiusM: number(1)},
		{Kind: "plate", AreaM2: number(0.3)},
	} {
		plain := &surfaces.Measured{AreaM2: 1}
		j.Check(plain, plain, func(pointer, code, detail string) { t.Error(j.Kind, pointer, detail) })
		f := j.Measure(plain, plain)
		worksOut(t, j.Kind, &quantity.Working{Quantity: "joint_m2", Value: f.BodyM2, Formula: f.Formula, Terms: f.Terms})
	}
}
