package contract

import (
	"encoding/json"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
)

// input is one thing a calculator may be asked: its own schema, or one kind.
type input struct {
	path, kind string
	schema     schema
}

// inputs lists every input of every calculator, kinds one by one.
func inputs(t testing.TB) []input {
	t.Helper()
	d := parsed(t)
	var all []input
	for path, item := range d.Paths {
		if item.Post == nil || path == "/v1/estimates" {
			continue
		}
		s := d.resolve(item.Post.RequestBody.Content["application/json"].Schema)
		if s.Discriminator == nil {
			all = append(all, input{path, "", s})
			continue
		}
		for kind, reference := range s.Discriminator.Mapping {
			all = append(all, input{path, kind, d.resolve(schema{Ref: reference})})
		}
	}
	require.Greater(t, len(all), 20)
	return all
}

// faultsOf asks a calculator and returns the code of each fault by pointer.
func faultsOf(t testing.TB, s http.Handler, in input, members map[string]any) map[string]string {
	t.Helper()
	if in.kind != "" {
		members["kind"] = in.kind
	}
	body, err := json.Marshal(members)
	require.NoError(t, err)
	got := post(s, in.path, body)
	var problem struct{ Errors []fault.Fault }
	require.NoError(t, json.Unmarshal(got.Body.Bytes(), &problem))
	codes := map[string]string{}
	for _, f := range problem.Errors {
		codes[f.Pointer] = f.Code
	}
	return codes
}

func TestRequiredMembersAreRequired(t *testing.T) {
	s := service(t)
	for _, in := range inputs(t) {
		codes := faultsOf(t, s, in, map[string]any{})
		for _, name := range in.schema.Required {
			if name != "kind" {
				assert.Contains(t, codes, "/"+name, "%s %s is said to need %s and does not miss it", in.path, in.kind, name)
			}
		}
	}
}

func TestDescribedMembersAreKnown(t *testing.T) {
	s := service(t)
	for _, in := range inputs(t) {
		members := map[string]any{}
		for name := range in.schema.Properties {
			members[name] = []any{} // wrong for all but lists, so that nothing is computed
		}
		delete(members, "kind")
		for pointer, code := range faultsOf(t, s, in, members) {
			assert.NotEqual(t, "unknown_field", code, "%s %s: %s is described and not known", in.path, in.kind, pointer)
		}
	}
}

// One step beyond each limit that is told must be refused at that member.
func TestLimitsToldAreEnforced(t *testing.T) {
	s, tried := service(t), 0
	for _, in := range inputs(t) {
		for name, p := range in.schema.Properties {
			for _, beyond := range beyondLimits(p) {
				tried++
				codes := faultsOf(t, s, in, map[string]any{name: beyond})
				assert.Contains(t, codes, "/"+name, "%s %s: %s = %g lies outside %s", in.path, in.kind, name, beyond, "the limits told")
			}
		}
	}
	assert.Greater(t, tried, 150)
}

func beyondLimits(s schema) []float64 {
	var values []float64
	if s.Minimum != nil {
		values = append(values, *s.Minimum-1)
	}
	if s.Maximum != nil {
		values = append(values, *s.Maximum+1)
	}
	if s.ExclusiveLow != nil {
		values = append(values, *s.ExclusiveLow)
	}
	if s.ExclusiveHigh != nil {
		values = append(values, *s.ExclusiveHigh)
	}
	return values
}
