package wire

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestByID(t *testing.T) {
	type leaf struct {
		ID string  `json:"id"`
		X  float64 `json:"x"`
	}
	type holes struct {
		Holes []struct {
			D float64 `json:"d"`
		} `json:"holes"`
	}
	document := &struct {
		Parts []any  `json:"parts"`
		Shape *holes `json:"shape"`
	}{Parts: []any{&leaf{"wing", 1}, &leaf{"", 2}, nil}, Shape: &holes{}}
	for pointer, want := range map[string]string{
		"/parts/0/x": "/parts/wing/x", "/parts/1/x": "/parts/1/x", "/parts/2/x": "/parts/2/x", "/parts/9/x": "/parts/9/x",
		"/shape/holes/0/d": "/shape/holes/0/d", "/nothing/0": "/nothing/0", "": "",
	} {
		assert.Equal(t, want, ByID(document, pointer))
	}
}
