// Package openapi holds the description of the API, generated from the
// annotations of its handlers.
package openapi

import _ "embed"

//go:embed openapi.json
var document []byte

// Document returns the description, OpenAPI 3.1 as JSON.
func Document() []byte { return document }
