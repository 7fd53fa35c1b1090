package api

import (
	"fmt"
	"io"
	"mime"
	"net/http"

	"github.com/gin-gonic/gin"
)

// MostBody is the largest job that is read, in bytes.
const MostBody = 1 << 20

// mediaTypeError says that a body does not come as plain JSON.
type mediaTypeError struct{ detail string }

func (e *mediaTypeError) Error() string { return e.detail }

// cutError says that a body ended before all of it had come.
type cutError struct{ cause error }

func (e *cutError) Error() string { return "the body broke off: " + e.cause.Error() }
func (e *cutError) Unwrap() error { return e.cause }

// body reads a JSON body, up to its limit. The error is a *mediaTypeError, a
// *http.MaxBytesError or a *cutError.
func body(c *gin.Context) ([]byte, error) {
	if err := plainJSON(c.Request.Header); err != nil {
		return nil, err
	}
	data, err := io.ReadAll(http.MaxBytesReader(c.Writer, c.Request.Body, MostBody))
	return data, cutOff(err)
}

func plainJSON(header http.Header) error {
	said := header.Get("Content-Type")
	if said == "" {
		return &mediaTypeError{"the body has no Content-Type; send it as application/json"}
	}
	if kind, _, err := mime.ParseMediaType(said); err != nil || kind != "application/json" {
		return &mediaTypeError{fmt.Sprintf("the body is %s; send application/json", said)}
	}
	if coding := header.Get("Content-Encoding"); coding != "" && coding != "identity" {
		return &mediaTypeError{fmt.Sprintf("the body is packed as %s; send it unpacked", coding)}
	}
	return nil
}
