package api

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
)

// Problem is an error as RFC 9457 tells it.
type Problem struct {
	Type     string        `json:"type"`               // about:blank: the status says it all
	Title    string        `json:"title"`              // the status in words
	Status   int           `json:"status"`             // HTTP status
	Detail   string        `json:"detail"`             // what is wrong, and what to do
	Instance string        `json:"instance,omitempty"` // of a 500: the name of this occurrence, as it stands in the service's log
	Errors   []fault.Fault `json:"errors,omitempty"`   // every fault of the input
}

// refuse answers with a problem.
func refuse(c *gin.Context, status int, detail string, faults ...fault.Fault) {
	write(c, Problem{Status: status, Detail: detail, Errors: faults})
}

// fail answers that we are at fault. The cause goes to the log only, under the
// name that the caller gets.
func fail(c *gin.Context, message string, attributes ...any) {
	occurrence := newOccurrence()
	slog.Error(message, append(attributes, "path", c.Request.URL.Path, "instance", occurrence)...)
	write(c, Problem{Status: http.StatusInternalServerError, Instance: occurrence,
		Detail: "something went wrong on our side; the input may be right. Tell whoever runs this service the instance"})
}

func write(c *gin.Context, p Problem) {
	p.Type, p.Title = "about:blank", http.StatusText(p.Status)
	data, err := json.Marshal(p)
	if err != nil {
		slog.Error("a problem could not be written", "error", err)
		data = []byte(`{"type":"about:blank","title":"Internal Server Error","status":500,"detail":"the error could not be written"}`)
		p.Status = http.StatusInternalServerError
	}
	c.Abort()
	send(c, p.Status, "application/problem+json", data)
}

// newOccurrence returns a URI of its own: a random UUID (RFC 9562 section 5.4).
func newOccurrence() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // never fails: crypto/rand ends the program instead
	b[6], b[8] = b[6]&0x0f|0x40, b[8]&0x3f|0x80
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", b[:4], b[4:6], b[6:8], b[8:10], b[10:])
}

// refuseError answers with the problem that an error stands for.
func refuseError(c *gin.Context, err error) {
	var syntax *wire.SyntaxError
	var faulty *fault.Error
	var large *http.MaxBytesError
	var kind *mediaTypeError
	var cut *cutError
	switch {
	case errors.Is(err, context.Canceled):
		c.Abort() // whoever asked has gone
	case errors.As(err, &syntax):
		refuse(c, http.StatusBadRequest, syntax.Detail, fault.Fault{Pointer: syntax.Pointer, Code: syntax.Code, Detail: syntax.Detail})
	case errors.As(err, &faulty):
		refuse(c, http.StatusUnprocessableEntity, summary(faulty.Faults), faulty.Faults...)
	case errors.As(err, &large):
		refuse(c, http.StatusRequestEntityTooLarge, fmt.Sprintf("the body is larger than %d MiB; send less, use count for parts that are alike, or a coarser mesh", large.Limit>>20))
	case errors.As(err, &kind):
		refuse(c, http.StatusUnsupportedMediaType, kind.Error())
	case errors.As(err, &cut):
		refuse(c, http.StatusBadRequest, cut.Error(), fault.Fault{Code: "syntax", Detail: cut.Error()})
	default:
		fail(c, "request failed", "error", err)
	}
}

func summary(faults []fault.Fault) string {
	if len(faults) == 1 {
		return faults[0].Detail
	}
	return "the input has several faults; each is in errors, with where it is and what to do"
}
