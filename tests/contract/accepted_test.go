package contract

import (
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
)

// Whatever the service takes, the description must allow: each value of a
// built-in job is replaced by others in turn, and the two must agree. A null,
// which counts as left out, is the one thing that is taken and not described.
func TestWhatIsTakenIsDescribed(t *testing.T) {
	s, d := service(t), description(t)
	e, err := example.Find("lock-gate")
	require.NoError(t, err)
	var job any
	require.NoError(t, json.Unmarshal(e.Job, &job))
	var taken [][]byte
	var places []string
	all := variants(t, job)
	for _, changed := range all {
		if post(s, "/v1/estimates", changed.text).Code == http.StatusOK {
			taken, places = append(taken, changed.text), append(places, changed.at)
		}
	}
	assert.Greater(t, len(taken), 100)
	assert.Greater(t, len(all)-len(taken), 100)
	assert.NoError(t, d.Bodies(http.MethodPost, "/v1/estimates", taken...), "the numbers stand for %q", places)
}

type variant struct {
	at   string
	text []byte
}

// variants returns copies of a document with one value replaced in each.
func variants(t testing.TB, document any) []variant {
	t.Helper()
	others := []any{0.0, 1.0, 2.5, "1", "2 m", "40 mil", "5 %", "x", true, []any{}, map[string]any{},
		map[string]any{"low": 1.0, "likely": 2.0, "high": 3.0}, map[string]any{"low": "1 m", "likely": "2 m", "high": "3 m", "distribution": "triangular"}}
	var all []variant
	visit(document, "", func(at string, set func(any), was any) {
		for i, other := range others {
			set(other)
			text, err := json.Marshal(document)
			require.NoError(t, err)
			all = append(all, variant{fmt.Sprintf("%s (%d)", at, i), text})
		}
		set(was)
	})
	return all
}

// visit calls do for every value in lists and objects, in a fixed order.
func visit(node any, at string, do func(at string, set func(any), was any)) {
	switch node := node.(type) {
	case map[string]any:
		names := make([]string, 0, len(node))
		for name := range node {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			below := at + "/" + name
			do(below, func(v any) { node[name] = v }, node[name])
			visit(node[name], below, do)
		}
	case []any:
		for i := range node {
			below := fmt.Sprintf("%s/%d", at, i)
			do(below, func(v any) { node[i] = v }, node[i])
			visit(node[i], below, do)
		}
	}
}
