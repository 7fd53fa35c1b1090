package api

import (
	"encoding/json"
	"net/http"
	"strings"

	"github.com/gin-gonic/gin"
)

// accepts picks the form of the answer from the Accept header, the first of
// offers where anything goes. It answers 406 and returns "" when none fits.
func accepts(c *gin.Context, offers ...string) string {
	if c.GetHeader("Accept") == "" {
		return offers[0]
	}
	if form := c.NegotiateFormat(offers...); form != "" {
		return form
	}
	refuse(c, http.StatusNotAcceptable, "the answer comes as "+strings.Join(offers, ", ")+"; Accept asks for "+c.GetHeader("Accept"))
	return ""
}

// respond encodes a value before the status is written, so that a value that
// cannot be encoded is a 500 and not an empty 200.
func respond(c *gin.Context, value any) {
	data, err := json.Marshal(value)
	if err != nil {
		refuseError(c, err)
		return
	}
	c.Data(http.StatusOK, "application/json", data)
}
