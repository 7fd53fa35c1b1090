package build

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"path/filepath"
	"strings"

	"github.com/getkin/kin-openapi/openapi2"
	"github.com/getkin/kin-openapi/openapi2conv"
	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3conv"
	"github.com/swaggo/swag"
)

// annotated reads the annotations of the handlers and carries them from
// Swagger 2.0, which is what their reader writes, to OpenAPI 3.1. The schemas
// in it are those of the annotations' reader, which knows neither limits nor
// kinds: only their names are used here.
func annotated(root string) (*openapi3.T, error) {
	parser := swag.New(swag.SetDebugger(log.New(io.Discard, "", 0)), swag.SetStrict(true))
	var directories []string
	for _, name := range []string{"api", "estimate", "surfaces", "products"} { // those of the types that are named
		directories = append(directories, filepath.Join(root, name))
	}
	if err := parser.ParseAPIMultiSearchDir(directories, "server.go", 0); err != nil {
		return nil, fmt.Errorf("reading annotations: %w", err)
	}
	text, err := json.Marshal(parser.GetSwagger())
	if err != nil {
		return nil, err
	}
	var old openapi2.T
	if err := json.Unmarshal(text, &old); err != nil {
		return nil, err
	}
	doc, err := openapi2conv.ToV3(&old)
	if err != nil {
		return nil, fmt.Errorf("converting: %w", err)
	}
	if err := doc.Validate(context.Background()); err != nil {
		return nil, fmt.Errorf("the converted document: %w", err)
	}
	openapi3conv.Upgrade(doc)
	doc.OpenAPI = version // the upgrade writes a later one, which client generators refuse
	return doc, nil
}

// version is the edition of OpenAPI that the document is written in.
const version = "3.1.1"

// mend gives an operation what annotations cannot say: text forms are text, and
// errors are problem documents whatever the answer is.
func mend(operation *openapi3.Operation) {
	for code, response := range operation.Responses.Map() {
		content := response.Value.Content
		var schema *openapi3.SchemaRef
		for _, form := range content {
			schema = form.Schema
		}
		switch {
		case schema == nil:
		case code >= "400":
			response.Value.Content = openapi3.Content{"application/problem+json": {Schema: schema}}
		default:
			for kind := range content {
				if strings.HasPrefix(kind, "text/") || strings.HasPrefix(kind, "image/") {
					content[kind] = &openapi3.MediaType{Schema: openapi3.NewStringSchema().NewRef()}
				}
			}
		}
	}
}

// operationID names an operation by its method and path: getExample for
// GET /v1/examples/{id}.
func operationID(method, path string) string {
	words := strings.FieldsFunc(strings.TrimPrefix(path, "/v1"), func(r rune) bool { return strings.ContainsRune("/{}.-", r) })
	id := strings.ToLower(method)
	for _, word := range words {
		id += title(word)
	}
	return id
}
