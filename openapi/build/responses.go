package build

import (
	"net/http"
	"strconv"
)

// responses describes what a calculator may send back: the answer, whole or
// one value of it, and the errors.
func responses(answer *object, draws bool, errors ...int) *object {
	content := obj(
		"application/json", obj("schema", obj("anyOf", []any{answer, ref("OneValue")})),
		"text/plain", obj("schema", obj("type", "string"), "example", "0.3694545454545454"))
	if draws {
		content.set("image/svg+xml", obj("schema", obj("type", "string")))
	}
	out := obj("200", obj("description", "the answer; with field, one value of it", "content", content))
	for _, code := range errors {
		out.set(strconv.Itoa(code), obj("description", http.StatusText(code),
			"content", obj("application/problem+json", obj("schema", ref("Problem")))))
	}
	return out
}
