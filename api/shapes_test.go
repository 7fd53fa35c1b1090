package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a kind says of its faces, its extent and its lines is what a job may
// write: each is tried in a region on the kind's own example.
func TestEveryLineExtentAndFaceOfAShapeCanBeUsed(t *testing.T) {
	s := newService(t)
	var answer struct {
		Shapes []struct {
			Kind    string
			Faces   []string
			Example map[string]any
			Worked  struct {
				Faces []struct{ Face string }
			}
			Extent *ExtentEntry
			Lines  []LineEntry
		}
	}
	require.NoError(t, json.Unmarshal(s.get("/v1/shapes").Body.Bytes(), &answer))
	lines, extents, bands := map[string][]string{}, 0, 0
	for _, k := range answer.Shapes {
		k.Example["kind"] = k.Kind
		try := func(region string) int {
			shape, err := json.Marshal(k.Example)
			require.NoError(t, err)
			got := s.post("/v1/estimates", fmt.Sprintf(`{"name":"demo","currency":"USD","components":[{"id":"part","shape":%s}],
				"regions":[%s],"steps":[{"id":"w","operation":"wash","on":["r"],"product":"detergent"}],
				"products":[{"id":"detergent","kind":"liquid","name":"invented","coverage_l_m2":0.2,"packs":[{"pack_l":5,"price":"30.00"}]}]}`, shape, region))
			if got.Code != http.StatusOK {
				t.Log(k.Kind, region, got.Body.String())
			}
			return got.Code
		}
		for _, f := range k.Worked.Faces {
			assert.Contains(t, k.Faces, f.Face)
			if k.Kind != "mesh" { // its example lies in no file
				assert.Equal(t, http.StatusOK, try(fmt.Sprintf(`{"id":"r","of":["part/%s"]}`, f.Face)), k.Kind)
			}
		}
		if e := k.Extent; e != nil {
			extents++
			assert.NotEmpty(t, e.Counted, k.Kind)
			assert.Equal(t, http.StatusOK, try(fmt.Sprintf(`{"id":"r","of":["part"],"from_m":%g,"to_m":%g}`, e.FromM, (e.FromM+e.ToM)/2)), k.Kind)
			assert.Equal(t, http.StatusUnprocessableEntity, try(fmt.Sprintf(`{"id":"r","of":["part"],"from_m":%g}`, e.ToM+1)), k.Kind)
			assert.Equal(t, e.Heights != "", e.ToZM != nil, k.Kind)
			if e.ToZM != nil {
				bands++
				assert.Equal(t, http.StatusOK, try(fmt.Sprintf(`{"id":"r","of":["part"],"from_z_m":%g}`, (*e.FromZM+*e.ToZM)/2)), k.Kind)
			}
		}
		for _, l := range k.Lines {
			lines[k.Kind] = append(lines[k.Kind], l.Line)
			assert.NotEmpty(t, l.Measured, k.Kind)
			assert.Equal(t, http.StatusOK, try(fmt.Sprintf(`{"id":"r","of":["part"],"strip":{"along":%q,"width_m":0.02}}`, l.Line)), k.Kind)
			want := http.StatusUnprocessableEntity
			if l.Stations {
				want = http.StatusOK
			}
			if e := k.Extent; e != nil {
				assert.Equal(t, want, try(fmt.Sprintf(`{"id":"r","of":["part"],"to_m":%g,"strip":{"along":%q,"width_m":0.02}}`, (e.FromM+e.ToM)/2, l.Line)), k.Kind+l.Line)
			}
		}
		if len(k.Lines) == 0 {
			assert.Equal(t, http.StatusUnprocessableEntity, try(`{"id":"r","of":["part"],"strip":{"along":"top","width_m":0.02}}`), k.Kind)
		}
	}
	assert.Equal(t, map[string][]string{
		"panel": {"outline", "holes"}, "box": {"top", "bottom", "left", "right", "front", "back"},
		"cylinder": {"end_1", "end_2"}, "frustum": {"end_1", "end_2"}, "cap": {"rim"}, "nose": {"base"}, "vessel": {"head_1", "head_2"},
		"wing": {"leading_edge", "trailing_edge", "root", "tip"}, "body": {"top", "bottom", "nose", "tail"},
		"corrugated": {"outline"}, "revolved": {"end_1", "end_2"},
	}, lines)
	assert.Equal(t, 16, extents, "all but measured and mesh")
	assert.Positive(t, bands)
}
