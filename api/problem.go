package api

import (
	"encoding/json"
	"errors"
	"log/slog"
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
)

// Problem is an error as RFC 9457 tells it.
type Problem struct {
	Type   string        `json:"type"`             // about:blank: the status says it all
	Title  string        `json:"title"`            // the status in words
	Status int           `json:"status"`           // HTTP status
	Detail string        `json:"detail"`           // what is wrong, and what to do
	Errors []fault.Fault `json:"errors,omitempty"` // every fault of the input
}

// refuse answers with a problem.
func refuse(c *gin.Context, status int, detail string, faults ...fault.Fault) {
	body, err := json.Marshal(Problem{Type: "about:blank", Title: http.StatusText(status), Status: status, Detail: detail, Errors: faults})
	if err != nil {
		slog.Error("a problem could not be written", "error", err)
		body = []byte(`{"type":"about:blank","title":"Internal Server Error","status":500,"detail":"the error could not be written"}`)
	}
	c.Abort()
	c.Data(status, "application/problem+json", body)
}

// refuseError answers with the problem that an error stands for.
func refuseError(c *gin.Context, err error) {
	var syntax *wire.SyntaxError
	var faulty *fault.Error
	var large *http.MaxBytesError
	var kind *mediaTypeError
	switch {
	case errors.As(err, &syntax):
		refuse(c, http.StatusBadRequest, syntax.Detail, fault.Fault{Pointer: syntax.Pointer, Code: syntax.Code, Detail: syntax.Detail})
	case errors.As(err, &faulty):
		refuse(c, http.StatusUnprocessableEntity, summary(faulty.Faults), faulty.Faults...)
	case errors.As(err, &large):
		refuse(c, http.StatusRequestEntityTooLarge, "the body is larger than 1 MiB; send less, or use count for parts that are alike")
	case errors.As(err, &kind):
		refuse(c, http.StatusUnsupportedMediaType, kind.Error())
	default:
		slog.Error("request failed", "path", c.Request.URL.Path, "error", err)
		refuse(c, http.StatusInternalServerError, "something went wrong on our side; the input may be right")
	}
}

func summary(faults []fault.Fault) string {
	if len(faults) == 1 {
		return faults[0].Detail
	}
	return "the input has several faults; each is in errors, with where it is and what to do"
}
