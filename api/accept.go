package api

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strconv"
	"strings"

	"github.com/gin-gonic/gin"
)

// negotiate picks the offered media type that an Accept header likes best, the
// earlier offer where it likes two alike, and "" where it refuses them all. No
// header accepts everything. Of several ranges that fit a type the most
// precise one decides, and a weight of 0 refuses.
//
// Source: RFC 9110 section 12.5.1.
func negotiate(accept string, offers []string) string {
	if strings.TrimSpace(accept) == "" {
		return offers[0]
	}
	chosen, most := "", 0.0
	for _, offer := range offers {
		if weight := weightOf(offer, accept); weight > most {
			chosen, most = offer, weight
		}
	}
	return chosen
}

// weightOf is how much an Accept header likes a media type, from 0 to 1. Our
// types have no parameters: a range that asks for some, as a charset, fits, but
// less precisely than one that asks for none.
func weightOf(offer, accept string) float64 {
	family, _, _ := strings.Cut(offer, "/")
	precision := map[string]int{offer: 3, family + "/*": 2, "*/*": 1}
	weight, most := 0.0, 0
	for part := range strings.SplitSeq(accept, ",") {
		name, parameters, _ := strings.Cut(part, ";")
		q, further := quality(parameters)
		precise := 2 * precision[strings.ToLower(strings.TrimSpace(name))]
		if precise > 0 && further {
			precise--
		}
		if precise > most {
			weight, most = q, precise
		}
	}
	return weight
}

// quality reads the weight among the parameters of a media range, and whether
// there are further ones; a weight that is no number counts as 0.
func quality(parameters string) (weight float64, further bool) {
	weight = 1
	for parameter := range strings.SplitSeq(parameters, ";") {
		name, value, _ := strings.Cut(parameter, "=")
		switch name = strings.TrimSpace(name); {
		case strings.EqualFold(name, "q"):
			q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
			if err != nil || !(q >= 0 && q <= 1) {
				q = 0
			}
			weight = q
		case name != "":
			further = true
		}
	}
	return weight, further
}

// accepts picks the form of the answer from the Accept header, the first of
// offers where anything goes. It answers 406 and returns "" when none fits.
// hint says what else the caller might do; it may be empty.
func accepts(c *gin.Context, hint string, offers ...string) string {
	c.Writer.Header().Add("Vary", "Accept")
	accept := strings.Join(c.Request.Header.Values("Accept"), ",")
	form := negotiate(accept, offers)
	if form == "" {
		refuse(c, http.StatusNotAcceptable, "the answer comes as "+strings.Join(offers, " or ")+"; Accept asks for "+accept+hint)
	}
	return form
}

// respond encodes a value before the status is written, so that a value that
// cannot be encoded, such as one with a NaN in it, is a 500 and not an empty
// 200.
func respond(c *gin.Context, value any) {
	var buffer bytes.Buffer
	if err := json.NewEncoder(&buffer).Encode(value); err != nil {
		refuseError(c, err)
		return
	}
	send(c, http.StatusOK, "application/json", bytes.TrimSuffix(buffer.Bytes(), []byte("\n")))
}

// send answers with a body whose length is told, also to HEAD.
func send(c *gin.Context, status int, kind string, data []byte) {
	c.Header("Content-Length", strconv.Itoa(len(data)))
	c.Data(status, kind, data)
}
