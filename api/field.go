package api

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
)

// respondField answers one value of an answer: a name, or names and indexes
// joined by slashes (faces/0/area_m2).
func respondField(c *gin.Context, answer any, field, form string) {
	tree, err := treeOf(answer)
	if err != nil {
		refuseError(c, err)
		return
	}
	value, ok := pick(tree, strings.Split(strings.Trim(field, "/"), "/"))
	switch {
	case !ok:
		var faults fault.List
		faults.Addf("/field", "unknown_field", "the answer has no single value %q; it has %s, and more where more is given", field, strings.Join(singles(tree), ", "))
		refuseError(c, faults.Err())
	case form == "text/plain":
		send(c, http.StatusOK, "text/plain; charset=utf-8", []byte(plain(value)))
	default:
		respond(c, map[string]any{field: value})
	}
}

// singles lists the names of the single values at the top of an answer.
func singles(tree any) []string {
	var names []string
	if object, ok := tree.(map[string]any); ok {
		for name := range object {
			if _, single := pick(tree, []string{name}); single {
				names = append(names, name)
			}
		}
	}
	slices.Sort(names)
	return names
}

// treeOf returns a value as its JSON form would be read, numbers as written.
func treeOf(answer any) (any, error) {
	data, err := json.Marshal(answer)
	if err != nil {
		return nil, err
	}
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	var tree any
	err = decoder.Decode(&tree)
	return tree, err
}

// pick walks down a tree to a number, a text or a truth value.
func pick(tree any, path []string) (any, bool) {
	for _, step := range path {
		switch node := tree.(type) {
		case map[string]any:
			tree = node[step]
		case []any:
			k, err := strconv.Atoi(step)
			if err != nil || k < 0 || k >= len(node) {
				return nil, false
			}
			tree = node[k]
		default:
			return nil, false
		}
	}
	switch tree.(type) {
	case json.Number, string, bool:
		return tree, true
	}
	return nil, false
}

// plain writes a value as bare text, a number without an exponent, which some
// spreadsheets misread.
func plain(value any) string {
	n, number := value.(json.Number)
	if !number {
		return fmt.Sprint(value)
	}
	x, err := n.Float64()
	if err != nil {
		return n.String()
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
