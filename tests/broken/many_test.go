package broken

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/api"
	"filmbuild/estimate/fault"
)

const head = `{"name": "A broken job", "currency": "USD", `

// A job of more parts than one job may have is refused, and told the limit.
func TestMorePartsThanAJobMayHave(t *testing.T) {
	problem := send(t, api.Handler(load(t)), []byte(head+`"components": [`+parts(10_000, `{"id": "c%d", "shape": {"kind": "sphere", "radius_m": 1}}`)+`]}`))
	assert.Equal(t, http.StatusUnprocessableEntity, problem.Status)
	assert.Equal(t, "too_many /components\n", lines(problem.Errors))
	assert.Contains(t, problem.Detail, "10000")
	assert.Contains(t, problem.Detail, "2000")
}

// Every other list has its limit too.
func TestEveryListHasItsLimit(t *testing.T) {
	handler := api.Handler(load(t))
	for name, item := range map[string]string{
		"regions":      `{"id": "r%d", "of": ["c"], "share_ratio": 0.1}`,
		"markings":     `{"id": "m%d", "kind": "star", "size_m": 1, "colour": "white"}`,
		"steps":        `{"id": "s%d", "operation": "wash", "on": ["c"], "product": "detergent"}`,
		"products":     `{"id": "p%d", "kind": "item"}`,
		"items":        `{"id": "i%d", "amount": "1.00"}`,
		"test_patches": `{"for": ["wash"], "area_m2": 1, "minutes": 1, "note": "%d"}`,
	} {
		t.Run(name, func(t *testing.T) {
			steps := `"steps": [{"id": "wash", "operation": "wash", "on": ["c"], "product": "detergent"}], `
			if name == "steps" {
				steps = ""
			}
			problem := send(t, handler, []byte(head+steps+`"components": [{"id": "c", "shape": {"kind": "sphere", "radius_m": 1}}], "`+name+`": [`+parts(2001, item)+`]}`))
			assert.Equal(t, http.StatusUnprocessableEntity, problem.Status)
			assert.Equal(t, "too_many /"+name+"\n", lines(problem.Errors))
		})
	}
}

// A small document may not ask for an answer without end: five hundred steps on a
// region of two thousand boxes.
func TestMoreFacesThanAJobMayChoose(t *testing.T) {
	ids := parts(2000, `"c%d"`)
	problem := send(t, api.Handler(load(t)), []byte(head+`"components": [`+parts(2000, `{"id": "c%d", "shape": {"kind": "box", "length_m": 1, "width_m": 1, "height_m": 1}}`)+`],
		"regions": [{"id": "all", "of": [`+ids+`]}], "steps": [`+parts(500, `{"id": "s%d", "operation": "wash", "on": ["all"], "product": "detergent"}`)+`]}`))
	assert.Equal(t, http.StatusUnprocessableEntity, problem.Status)
	assert.Len(t, problem.Errors, 1)
	assert.Equal(t, "too_many", problem.Errors[0].Code)
	assert.Contains(t, problem.Detail, "200000 faces")
}

// A body beyond the limit is refused before it is read to its end.
func TestABodyBeyondTheLimit(t *testing.T) {
	problem := send(t, api.Handler(load(t)), []byte(head+`"note": "`+strings.Repeat("a", 2<<20)+`"}`))
	assert.Equal(t, http.StatusRequestEntityTooLarge, problem.Status)
	assert.Contains(t, problem.Detail, "1 MiB")
}

// More faults than the list keeps: no part that has a fault is measured all the
// same, and the last entry says how many more there are.
func TestMoreFaultsThanAreListed(t *testing.T) {
	for name, shape := range map[string]string{
		"panel without sizes": `{"kind": "panel"}`,
		"sphere without size": `{"kind": "sphere"}`,
		"body of no stations": `{"kind": "body"}`,
		"wing of no size":     `{"kind": "wing"}`,
		"unknown":             `{"kind": "dodecahedron"}`,
	} {
		t.Run(name, func(t *testing.T) {
			steps := `"steps": [{"id": "wash", "operation": "wash", "on": ["c1400"], "product": "detergent"}], `
			problem := send(t, api.Handler(load(t)), []byte(head+steps+`"components": [`+parts(1500, `{"id": "c%d", "shape": `+shape+`}`)+`]}`))
			assert.Equal(t, http.StatusUnprocessableEntity, problem.Status)
			assert.Len(t, problem.Errors, fault.Most+1)
			assert.Equal(t, "too_many", problem.Errors[fault.Most].Code)
		})
	}
}

func parts(n int, form string) string {
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf(form, i)
	}
	return strings.Join(list, ",\n")
}
