package api

import (
	"net/http"
	"net/url"
	"slices"
	"sort"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
)

// parameters reads the query. net/url leaves out what it cannot read; here
// that is answered with 400 and false, so that nobody gets a figure from half
// of what was asked.
func parameters(c *gin.Context) (url.Values, bool) {
	values, err := url.ParseQuery(c.Request.URL.RawQuery)
	if err != nil {
		detail := "the query cannot be read: " + err.Error() + "; in a query % is written %25, + is written %2B and a space %20"
		refuse(c, http.StatusBadRequest, detail, fault.Fault{Code: "syntax", Detail: detail})
		return nil, false
	}
	return values, true
}

// onlyKnown notes the parameters that a route does not know, and those given
// more than once.
func onlyKnown(values url.Values, faults *fault.List, known ...string) {
	names := make([]string, 0, len(values))
	for name := range values {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		switch {
		case !slices.Contains(known, name):
			faults.Addf(pointerTo(name), "unknown_field", "there is no parameter %q here%s", name, knownHint(known))
		case len(values[name]) > 1:
			faults.Addf(pointerTo(name), "duplicate_name", "%s is given more than once; keep one of them", name)
		}
	}
}

// oneOf returns the value of a parameter that is one of a few words, the first
// where it is not given, and notes another word as a fault.
func oneOf(values url.Values, name string, words []string, faults *fault.List) string {
	value := values.Get(name)
	if value == "" {
		return words[0]
	}
	if !slices.Contains(words, value) {
		faults.Addf(pointerTo(name), "unknown_kind", "%s is %q; it must be one of %s", name, value, strings.Join(words, ", "))
	}
	return value
}

func knownHint(known []string) string {
	if len(known) == 0 {
		return "; this route takes none"
	}
	return "; known here: " + strings.Join(known, ", ")
}

// pointerTo is the JSON pointer of a parameter, taking the query for an object
// (RFC 6901 section 3).
func pointerTo(name string) string {
	return "/" + strings.NewReplacer("~", "~0", "/", "~1").Replace(name)
}

// refusedQuery answers 400 where there are faults.
func refusedQuery(c *gin.Context, faults *fault.List) bool {
	err, bad := faults.Err().(*fault.Error)
	if bad {
		refuse(c, http.StatusBadRequest, summary(err.Faults), err.Faults...)
	}
	return bad
}
