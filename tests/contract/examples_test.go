package contract

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
	"filmbuild/openapi"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
)

func TestBuiltInJobsConform(t *testing.T) {
	d := description(t)
	all, err := example.All()
	require.NoError(t, err)
	require.NotEmpty(t, all)
	for _, e := range all {
		assert.NoError(t, d.Bodies(http.MethodPost, "/v1/estimates", e.Job), e.ID)
	}
}

// document is the part of the description that these tests walk through.
type document struct {
	Paths map[string]struct {
		Post *struct {
			RequestBody struct {
				Content map[string]struct {
					Schema  schema
					Example json.RawMessage
				}
			}
		}
	}
	Components struct{ Schemas map[string]schema }
}

type schema struct {
	Ref           string `json:"$ref"`
	Const         *string
	Properties    map[string]schema
	Required      []string
	Minimum       *float64
	Maximum       *float64
	ExclusiveLow  *float64 `json:"exclusiveMinimum"`
	ExclusiveHigh *float64 `json:"exclusiveMaximum"`
	Discriminator *struct{ Mapping map[string]string }
}

func parsed(t testing.TB) document {
	t.Helper()
	var d document
	require.NoError(t, json.Unmarshal(openapi.Document(), &d))
	return d
}

func (d document) resolve(s schema) schema {
	if s.Ref == "" {
		return s
	}
	return d.Components.Schemas[s.Ref[len("#/components/schemas/"):]]
}

func TestCalculatorExamplesWork(t *testing.T) {
	s, d := service(t), description(t)
	tried := 0
	for path, item := range parsed(t).Paths {
		if item.Post == nil || !strings.HasPrefix(path, "/v1/calculations/") {
			continue
		}
		tried++
		body := item.Post.RequestBody.Content["application/json"].Example
		assert.NoError(t, d.Bodies(http.MethodPost, path, body), path)
		assert.Equal(t, http.StatusOK, post(s, path, body).Code, path)
	}
	assert.Equal(t, 12, tried)
}

// The catalogue's examples of shapes and markings are inputs of their
// calculators as they stand.
func TestKindExamplesConform(t *testing.T) {
	d := description(t)
	for _, k := range surfaces.Kinds() {
		assert.NoError(t, d.Value("Shape", withKind(t, k.Name, k.Example)), k.Name)
	}
	for _, k := range marking.Kinds() {
		assert.NoError(t, d.Value("Figure", withKind(t, k.Name, k.Example)), k.Name)
	}
}

// withKind adds the kind to an example and leaves out what it leaves open.
func withKind(t testing.TB, kind string, value any) []byte {
	t.Helper()
	text, err := json.Marshal(value)
	require.NoError(t, err)
	var members map[string]any
	require.NoError(t, json.Unmarshal(text, &members))
	members["kind"] = kind
	for name, member := range members {
		if member == nil {
			delete(members, name)
		}
	}
	text, err = json.Marshal(members)
	require.NoError(t, err)
	return text
}

// The comparison must be able to fail, or the other tests say nothing.
func TestComparisonFindsFaults(t *testing.T) {
	d := description(t)
	for name, body := range map[string]string{
		"unknown member":    `{"name":"x","currency":"USD","colour":"red"}`,
		"missing name":      `{"currency":"USD"}`,
		"wrong type":        `{"name":7,"currency":"USD"}`,
		"unknown kind":      `{"name":"x","currency":"USD","components":[{"id":"a","shape":{"kind":"blob"}}]}`,
		"field of another":  `{"name":"x","currency":"USD","components":[{"id":"a","shape":{"kind":"sphere","radius_m":1,"span_m":2}}]}`,
		"outside limits":    `{"name":"x","currency":"USD","components":[{"id":"a","shape":{"kind":"box","length_m":1,"width_m":1,"height_m":5000}}]}`,
		"money as nonsense": `{"name":"x","currency":"USD","items":[{"id":"a","amount":"twelve"}]}`,
		"range cut short":   `{"name":"x","currency":"USD","tax_percent":{"low":1,"high":2}}`,
		"unknown operation": `{"name":"x","currency":"USD","steps":[{"id":"a","operation":"dip"}]}`,
	} {
		assert.Error(t, d.Bodies(http.MethodPost, "/v1/estimates", []byte(body)), name)
	}
	good := `{"name":"x","currency":"USD","tax_percent":{"low":1,"likely":2,"high":3},"components":[{"id":"a","shape":{"kind":"box","length_m":"3 ft","width_m":1,"height_m":5}}],"items":[{"id":"a","amount":12},{"id":"b","amount":"12.50"}]}`
	assert.NoError(t, d.Bodies(http.MethodPost, "/v1/estimates", []byte(good)))
}
