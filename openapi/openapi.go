// Package openapi holds the description of the API, generated from the
// annotations of its handlers and the types they read and write.
package openapi

import _ "embed"

//go:generate go run ./generate

//go:embed openapi.json
var document []byte

// Document returns the description, OpenAPI 3.1 as JSON.
func Document() []byte { return document }
