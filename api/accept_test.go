package api

import (
	"math"
	"net/http/httptest"
	"testing"

	"github.com/gin-gonic/gin"
	"github.com/stretchr/testify/assert"
)

// The weights of RFC 9110 section 12.5.1, whose example this is, for types
// without parameters.
func TestWeights(t *testing.T) {
	const accept = "text/*;q=0.3, text/plain;q=0.7, text/plain;format=flowed, text/plain;format=fixed;q=0.4, */*;q=0.5"
	assert.Equal(t, 0.7, weightOf("text/plain", accept))
	assert.Equal(t, 0.3, weightOf("text/html", accept))
	assert.Equal(t, 0.5, weightOf("image/jpeg", accept))
}

func TestNegotiate(t *testing.T) {
	offers := []string{"application/json", "text/csv", "text/plain"}
	for accept, want := range map[string]string{
		"":                                      "application/json",
		"*/*":                                   "application/json",
		"text/csv":                              "text/csv",
		"TEXT/CSV":                              "text/csv",
		"text/*":                                "text/csv",
		"text/plain;q=0.4, text/csv;q=0.5":      "text/csv",
		"text/csv;q=0.1, application/json;q=.9": "application/json",
		"*/*, application/json;q=0":             "text/csv",
		"text/csv;q=0":                          "",
		"image/png":                             "",
		"application/json;q=2":                  "",
		"application/json;charset=utf-8":        "application/json",
		"text/html, application/xhtml+xml, */*;q=0.8": "application/json",
	} {
		assert.Equal(t, want, negotiate(accept, offers), accept)
	}
}

// Source: RFC 9110 section 13.1.2, weak comparison; section 8.8.3 for tags.
func TestEntityTags(t *testing.T) {
	for list, want := range map[string]bool{`"a"`: true, `W/"a"`: true, `"b", "a"`: true, `*`: true, `"b"`: false, `a`: false, ``: false} {
		assert.Equal(t, want, matches([]string{list}, `"a"`), list)
	}
	assert.False(t, matches(nil, `"a"`))
}

// A value that JSON has no word for must not become an empty 200.
func TestNotANumberIsOurFault(t *testing.T) {
	for _, value := range []float64{math.NaN(), math.Inf(1)} {
		for _, answer := range []func(*gin.Context){
			func(c *gin.Context) { respond(c, map[string]float64{"paint_l": value}) },
			func(c *gin.Context) { respondField(c, map[string]float64{"paint_l": value}, "paint_l", "text/plain") },
		} {
			got := httptest.NewRecorder()
			c, _ := gin.CreateTestContext(got)
			c.Request = httptest.NewRequest("GET", "/", nil)
			answer(c)
			assert.Equal(t, 500, got.Code)
			p := problemOf(t, got)
			assert.Equal(t, 500, p.Status)
			assert.NotContains(t, p.Detail, "NaN", "the cause is for the log")
		}
	}
}
