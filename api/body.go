package api

import (
	"fmt"
	"io"
	"mime"
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
)

// MostBody is the largest job that is read, in bytes.
const MostBody = 1 << 20

type mediaTypeError struct{ said string }

func (e *mediaTypeError) Error() string {
	if e.said == "" {
		return "the body has no Content-Type; send application/json"
	}
	return fmt.Sprintf("the body is %s; send application/json", e.said)
}

// body reads a JSON body, up to its limit.
func body(c *gin.Context) ([]byte, error) {
	said := c.GetHeader("Content-Type")
	kind, _, err := mime.ParseMediaType(said)
	if err != nil || kind != "application/json" {
		return nil, &mediaTypeError{said: said}
	}
	return io.ReadAll(http.MaxBytesReader(c.Writer, c.Request.Body, MostBody))
}

// onlyParameters refuses query parameters that a route does not know.
func onlyParameters(c *gin.Context, known ...string) bool {
	var faults fault.List
	for name := range c.Request.URL.Query() {
		found := false
		for _, k := range known {
			found = found || k == name
		}
		if !found {
			faults.Addf("/"+name, "unknown_field", "there is no parameter %q here", name)
		}
	}
	if err, bad := faults.Err().(*fault.Error); bad {
		refuse(c, http.StatusBadRequest, summary(err.Faults), err.Faults...)
		return false
	}
	return true
}
