// Package conform holds what a service says and is asked against its published
// description. Only tests use it.
package conform

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers"
	"github.com/getkin/kin-openapi/routers/legacy"
)

// Description is a description of an API, ready to compare with.
type Description struct {
	doc    *openapi3.T
	router routers.Router
}

// pictures makes drawings known to the checker, as texts.
var pictures = sync.OnceFunc(func() {
	openapi3filter.RegisterBodyDecoder("image/svg+xml", openapi3filter.FileBodyDecoder)
	openapi3filter.RegisterBodyDecoder("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", openapi3filter.FileBodyDecoder)
	openapi3filter.RegisterBodyDecoder("application/zip", openapi3filter.FileBodyDecoder)
})

// Read reads a description.
func Read(document []byte) (*Description, error) {
	pictures()
	doc, err := openapi3.NewLoader().LoadFromData(document)
	if err != nil {
		return nil, err
	}
	router, err := legacy.NewRouter(doc)
	if err != nil {
		return nil, err
	}
	return &Description{doc: doc, router: router}, nil
}

// Operations lists method and path of every operation.
func (d *Description) Operations() []string {
	var all []string
	for path, item := range d.doc.Paths.Map() {
		for method := range item.Operations() {
			all = append(all, method+" "+path)
		}
	}
	return all
}

// Answer holds an answer against what the description promises for the
// request. What stands at paths or methods that are not described must be a
// problem document. HEAD must answer as GET does, without a body.
func (d *Description) Answer(request *http.Request, got *httptest.ResponseRecorder) error {
	asked := request.Clone(context.Background())
	if asked.Method == http.MethodHead {
		asked.Method = http.MethodGet
	}
	asked.URL.Host, asked.Host = "", ""
	route, parameters, err := d.router.FindRoute(asked)
	if err == nil && strings.HasSuffix(request.URL.Path, "/") {
		err = routers.ErrPathNotFound // the router overlooks a slash at the end, the service does not
	}
	if err != nil {
		if got.Code < 400 {
			return fmt.Errorf("%s %s answers %d and is not described: %w", request.Method, request.URL.Path, got.Code, err)
		}
		return d.Problem(got.Code, got.Header(), got.Body.Bytes())
	}
	if got.Code >= 400 {
		if err := d.Problem(got.Code, got.Header(), got.Body.Bytes()); err != nil {
			return err
		}
	}
	options := &openapi3filter.Options{IncludeResponseStatus: true, ExcludeResponseBody: request.Method == http.MethodHead || got.Code == http.StatusNotModified}
	return openapi3filter.ValidateResponse(context.Background(), &openapi3filter.ResponseValidationInput{
		RequestValidationInput: &openapi3filter.RequestValidationInput{Request: asked, PathParams: parameters, Route: route},
		Status:                 got.Code, Header: got.Header(), Options: options,
		Body: io.NopCloser(bytes.NewReader(got.Body.Bytes())),
	})
}

// Problem holds an answer against the schema of problem documents.
func (d *Description) Problem(status int, header http.Header, body []byte) error {
	if kind := header.Get("Content-Type"); kind != "application/problem+json" {
		return fmt.Errorf("an error of status %d comes as %q", status, kind)
	}
	if err := d.Value("Problem", body); err != nil {
		return err
	}
	var said struct{ Status int }
	if err := json.Unmarshal(body, &said); err != nil || said.Status != status {
		return fmt.Errorf("the problem says status %d, the answer %d", said.Status, status)
	}
	return nil
}

// Value holds a JSON text against a component schema.
func (d *Description) Value(component string, text []byte) error {
	schema, known := d.doc.Components.Schemas[component]
	if !known {
		return fmt.Errorf("there is no component %s", component)
	}
	var value any
	if err := json.Unmarshal(text, &value); err != nil {
		return fmt.Errorf("%s: %w", clip(text), err)
	}
	return schema.Value.VisitJSON(value, openapi3.EnableJSONSchema2020(), openapi3.MultiErrors())
}

// Bodies holds the bodies of requests against the description of their
// operation, all in one go, since preparing a schema takes longer than using
// it. The error tells which by its place.
func (d *Description) Bodies(method, path string, texts ...[]byte) error {
	operation := d.doc.Paths.Find(path).GetOperation(method)
	if operation == nil || operation.RequestBody == nil {
		return fmt.Errorf("%s %s takes no body", method, path)
	}
	values := make([]any, len(texts))
	for i, text := range texts {
		if err := json.Unmarshal(text, &values[i]); err != nil {
			return err
		}
	}
	list := openapi3.NewArraySchema()
	list.Items = operation.RequestBody.Value.Content.Get("application/json").Schema
	return list.VisitJSON(values, openapi3.EnableJSONSchema2020(), openapi3.MultiErrors())
}

func clip(text []byte) string {
	return strings.TrimSpace(string(text[:min(len(text), 200)]))
}
