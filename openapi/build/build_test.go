package build

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sample has one field of each form that the rules tell apart.
type sample struct {
	Needed   string   `json:"needed" doc:"a name"`
	Usual    float64  `json:"usual_um" limit:"(0,50]"`
	Measured float64  `json:"length_m" limit:"(0,50]"`
	Counted  int      `json:"count,omitempty" limit:"[1,9]"`
	Open     *float64 `json:"exponent" limit:"[1,inf)"`
	Listed   []string `json:"listed,omitempty"`
}

func (s *sample) Defaults() { s.Usual, s.Counted = 20, 1 }

func sampleSchema(t *testing.T, on side) string {
	t.Helper()
	s, err := newSchemas("../..")
	require.NoError(t, err)
	_, err = s.component(reflect.TypeFor[sample](), on)
	require.NoError(t, err)
	text, err := encode(s.components.get("Sample").(*object).set("description", ""))
	require.NoError(t, err)
	return string(text)
}

func TestWhatIsAsked(t *testing.T) {
	assert.JSONEq(t, `{"type": "object", "description": "", "additionalProperties": false, "required": ["needed", "length_m", "exponent"], "properties": {
	 "needed": {"type": "string", "description": "a name"},
	 "usual_um": {"$ref": "#/components/schemas/Quantity", "x-unit": "µm", "exclusiveMinimum": 0, "maximum": 50, "x-limits": "above 0 µm and at most 50 µm", "default": 20},
	 "length_m": {"$ref": "#/components/schemas/Quantity", "x-unit": "m", "exclusiveMinimum": 0, "maximum": 50, "x-limits": "above 0 m and at most 50 m"},
	 "count": {"$ref": "#/components/schemas/Count", "minimum": 1, "maximum": 9, "x-limits": "at least 1 and at most 9", "default": 1},
	 "exponent": {"$ref": "#/components/schemas/Number", "minimum": 1, "x-limits": "at least 1"},
	 "listed": {"type": "array", "items": {"type": "string"}}}}`, sampleSchema(t, asked))
}

func TestWhatIsAnswered(t *testing.T) {
	var schema struct {
		Required   []string
		Properties map[string]json.RawMessage
	}
	require.NoError(t, json.Unmarshal([]byte(sampleSchema(t, answered)), &schema))
	assert.Equal(t, []string{"needed", "usual_um", "length_m", "exponent"}, schema.Required)
	assert.JSONEq(t, `{"anyOf": [{"type": "number", "minimum": 1, "x-limits": "at least 1"}, {"type": "null"}]}`, string(schema.Properties["exponent"]))
}

func TestObjectsKeepTheirOrder(t *testing.T) {
	text, err := encode(obj("b", 1, "a", "<&>").set("b", 2))
	require.NoError(t, err)
	assert.Equal(t, `{"b":2,"a":"<&>"}`, string(text))
}

func TestOperationIDs(t *testing.T) {
	assert.Equal(t, "postCalculationsDewPoint", operationID("POST", "/v1/calculations/dew-point"))
	assert.Equal(t, "getExamplesId", operationID("GET", "/v1/examples/{id}"))
	assert.Equal(t, "getOpenapiJson", operationID("GET", "/openapi.json"))
}
