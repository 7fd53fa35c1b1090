package estimate_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
	"filmbuild/surfaces"
)

// Any text in the place of a shape is refused with faults, or measured with
// areas and lengths that are numbers and not below 0.
func FuzzShapeFromJSON(f *testing.F) {
	catalogue, err := products.Load()
	require.NoError(f, err)
	reader := estimate.NewReader(nil)
	for _, k := range surfaces.Kinds() {
		text, err := json.Marshal(k.Example)
		require.NoError(f, err)
		f.Add(`{"kind": "` + k.Name + `", ` + string(text[1:]))
	}
	for _, text := range []string{
		`{"kind": "wing", "root_chord_m": "12 ft 10 1/2 in", "tip_chord_m": {"low": 1, "likely": 2, "high": 3}, "span_m": 1e2, "root_thickness_ratio": 0.5, "sweep_le_deg": -84.9}`,
		`{"kind": "panel", "outline": [[0,0],[1,0],[1,1],[0.5,1e-9],[0,1]], "holes": [{"outline": [[0.1,0.1],[0.2,0.1],[0.2,0.2]]}, {"diameter_m": 0.05, "x_m": 0.15, "y_m": 0.12}], "sides": 2, "thickness_mm": 1}`,
		`{"kind": "body", "stations": [{"x_m": 0}, {"x_m": 1e-6, "width_m": 100, "height_m": 1e-9, "exponent": 20}, {"x_m": 1e-6, "width_m": 1}, {"x_m": 500, "z_m": -100}]}`,
		`{"kind": "vessel", "radius_m": 1, "length_m": 0, "head": "torispherical", "crown_radius_m": 1, "knuckle_radius_m": 1}`,
		`{"kind": "bar", "profile": {"kind": "angle", "height_mm": 100, "width_mm": 100, "wall_mm": 10, "toe_radius_mm": -6}, "length_m": 1}`,
		`{"kind": "nose", "profile": "secant_ogive", "radius_m": 0.5, "length_m": 2, "arc_radius_m": 4}`,
		`{"kind": "banana"}`, `{"kind": "box", "length_m": 1e999}`, `[]`, `null`, `{"kind": "sphere", "radius_m": 1, "diameter_m": 2}`,
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, shape string) {
		e, err := reader.Estimate([]byte(`{"name": "a", "currency": "USD", "components": [{"id": "c", "shape": `+shape+`}]}`), catalogue)
		if err != nil {
			var failed *fault.Error
			var malformed *wire.SyntaxError
			if !errors.As(err, &malformed) && (!errors.As(err, &failed) || len(failed.Faults) == 0) {
				t.Fatalf("%v on %s", err, shape)
			}
			return
		}
		for _, a := range e.Areas {
			for _, face := range a.Faces {
				if !(face.AreaM2 >= 0) || math.IsInf(face.AreaM2, 0) || !(face.EdgeM >= 0) || math.IsInf(face.EdgeM, 0) {
					t.Fatalf("%+v on %s", face, shape)
				}
			}
		}
	})
}
