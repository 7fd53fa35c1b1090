// Package build makes the description of the API. The operations come from the
// annotations of the handlers, those of the calculators from the list their
// routes are made of; the schemas come from the Go types themselves, so that
// the fields, units, limits and kinds that are told are those that are enforced.
//
// It is a tool: the service only carries what it wrote.
package build

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"path"
	"reflect"
	"slices"
	"strings"

	"github.com/getkin/kin-openapi/openapi3"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/calculate"
	"filmbuild/estimate/compare"
	"filmbuild/estimate/example"
	"filmbuild/estimate/target"
)

// Document returns the description as JSON, OpenAPI 3.1.1. root is the
// directory of the module, whose source is read for its comments. The same
// source gives the same bytes.
func Document(root string) ([]byte, error) {
	doc, err := annotated(root)
	if err != nil {
		return nil, err
	}
	s, err := newSchemas(root)
	if err != nil {
		return nil, err
	}
	if err := nameTypes(s, doc); err != nil {
		return nil, err
	}
	paths, err := allPaths(s, doc)
	if err != nil {
		return nil, err
	}
	whole := obj("openapi", version,
		"info", obj("title", doc.Info.Title, "version", doc.Info.Version, "summary", "What it takes to strip and repaint a large static machine", "description", doc.Info.Description),
		"servers", []any{obj("url", "/", "description", "the host that this document came from")},
		"security", []any{},
		"tags", doc.Tags, "paths", paths, "components", obj("schemas", s.components))
	text, err := encode(whole)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, text, "", " "); err != nil {
		return nil, err
	}
	out.WriteByte('\n')
	return out.Bytes(), Validate(out.Bytes())
}

// Validate reports whether a document is sound OpenAPI 3.1, its examples too.
func Validate(document []byte) error {
	doc, err := openapi3.NewLoader().LoadFromData(document)
	if err != nil {
		return fmt.Errorf("the document: %w", err)
	}
	if err := doc.Validate(context.Background()); err != nil {
		return fmt.Errorf("the document: %w", err)
	}
	return nil
}

// named lists the types that annotations name. A job comes first, so that its
// parts have the plain names.
func named() []struct {
	of reflect.Type
	on side
} {
	type entry = struct {
		of reflect.Type
		on side
	}
	return []entry{
		{reflect.TypeFor[estimate.Job](), asked},
		{reflect.TypeFor[estimate.Estimate](), answered},
		{reflect.TypeFor[api.Shapes](), answered},
		{reflect.TypeFor[api.Markings](), answered},
		{reflect.TypeFor[api.Products](), answered},
		{reflect.TypeFor[api.Methods](), answered},
		{reflect.TypeFor[api.Sources](), answered},
		{reflect.TypeFor[api.Formulas](), answered},
		{reflect.TypeFor[api.Examples](), answered},
		{reflect.TypeFor[api.Templates](), answered},
		{reflect.TypeFor[api.Health](), answered},
		{reflect.TypeFor[api.Mesh](), answered},
		{reflect.TypeFor[api.Readiness](), answered},
		{reflect.TypeFor[compare.Comparison](), asked},
		{reflect.TypeFor[compare.Result](), answered},
		{reflect.TypeFor[target.Question](), asked},
		{reflect.TypeFor[target.Answer](), answered},
		{reflect.TypeFor[api.Problem](), answered},
	}
}

// nameTypes makes the schemas of the named types and points the annotations'
// references at them.
func nameTypes(s *schemas, doc *openapi3.T) error {
	components := map[string]string{}
	for _, n := range named() {
		reference, err := s.component(n.of, n.on)
		if err != nil {
			return err
		}
		components["#/components/schemas/"+path.Base(n.of.PkgPath())+"."+n.of.Name()] = reference.get("$ref").(string)
	}
	for _, route := range doc.Paths.InMatchingOrder() {
		for _, operation := range doc.Paths.Find(route).Operations() {
			for _, schema := range schemasOf(operation) {
				target, known := components[schema.Ref]
				if schema.Ref != "" && !known {
					return fmt.Errorf("%s names %s, which is not in the list of named types", route, schema.Ref)
				}
				schema.Ref = target
			}
			mend(operation)
		}
	}
	return nil
}

func schemasOf(operation *openapi3.Operation) []*openapi3.SchemaRef {
	var all []*openapi3.SchemaRef
	seen := map[*openapi3.SchemaRef]bool{}
	add := func(content openapi3.Content) {
		for _, form := range content {
			if form.Schema != nil && !seen[form.Schema] {
				seen[form.Schema] = true
				all = append(all, form.Schema)
			}
		}
	}
	if operation.RequestBody != nil && operation.RequestBody.Value != nil {
		add(operation.RequestBody.Value.Content)
	}
	for _, response := range operation.Responses.Map() {
		add(response.Value.Content)
	}
	return all
}

// allPaths lists the paths in the order of the tags, and by name within one.
func allPaths(s *schemas, doc *openapi3.T) (*object, error) {
	ordered := map[string]any{}
	rank := map[string]string{}
	for _, route := range doc.Paths.InMatchingOrder() {
		item := doc.Paths.Find(route)
		for method, operation := range item.Operations() {
			operation.OperationID = operationID(method, route)
			place := slices.IndexFunc(doc.Tags, func(t *openapi3.Tag) bool { return slices.Contains(operation.Tags, t.Name) })
			rank[route] = fmt.Sprint(place) + route
		}
		ordered[route] = item
	}
	if err := showJobs(doc); err != nil {
		return nil, err
	}
	c, err := newCalculations(s)
	if err != nil {
		return nil, err
	}
	place := slices.IndexFunc(doc.Tags, func(t *openapi3.Tag) bool { return t.Name == "calculations" })
	for _, calculator := range calculate.All() {
		route := "/v1/calculations/" + calculator.Name
		if ordered[route], err = c.path(calculator); err != nil {
			return nil, err
		}
		rank[route] = fmt.Sprint(place) + route
	}
	routes := make([]string, 0, len(ordered))
	for route := range ordered {
		routes = append(routes, route)
	}
	slices.SortFunc(routes, func(a, b string) int { return strings.Compare(rank[a], rank[b]) })
	paths := obj()
	for _, route := range routes {
		paths.set(route, ordered[route])
	}
	return paths, nil
}

// showJobs puts the smallest built-in job beside the routes that take a job.
func showJobs(doc *openapi3.T) error {
	small, err := example.Find("one-panel")
	if err != nil {
		return err
	}
	for _, route := range doc.Paths.InMatchingOrder() {
		for _, operation := range doc.Paths.Find(route).Operations() {
			if operation.RequestBody == nil {
				continue
			}
			for _, form := range operation.RequestBody.Value.Content {
				if form.Schema.Ref == "#/components/schemas/Job" {
					form.Examples = openapi3.Examples{small.ID: &openapi3.ExampleRef{Value: &openapi3.Example{Summary: small.Doc, Value: json.RawMessage(small.Job)}}}
				}
			}
		}
	}
	return nil
}
