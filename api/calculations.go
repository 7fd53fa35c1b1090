package api

import (
	"net/http"
	"net/url"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/calculate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
)

// calculation answers one calculator, from a JSON body or from query
// parameters. With ?field= only that value is answered: bare text for a
// spreadsheet, or a JSON object of one member where JSON is asked for.
//
// Its routes are described in openapi/build, from the list of calculators
// itself.
func (s *Server) calculation(calculator calculate.Calculator) gin.HandlerFunc {
	return func(c *gin.Context) {
		values, ok := parameters(c)
		if !ok {
			return
		}
		field := values.Get("field")
		form := calculationForm(c, field)
		if form == "" {
			return
		}
		var faults fault.List
		node, ok := calculationInput(c, values, &faults)
		if !ok {
			return
		}
		answer, err := s.calculate(calculator, node, &faults)
		switch {
		case err != nil:
			refuseError(c, err)
		case field != "":
			respondField(c, answer, field, form)
		default:
			respond(c, answer)
		}
	}
}

// calculationForm picks the form of an answer: a whole answer is JSON, one
// field is text unless JSON is liked better.
func calculationForm(c *gin.Context, field string) string {
	if field == "" {
		return accepts(c, "; for one value as text name it, as in ?field=paint_l", "application/json")
	}
	return accepts(c, "", "text/plain", "application/json")
}

// calculationInput reads the query of a GET and the body of a POST as the same
// kind of document.
func calculationInput(c *gin.Context, values url.Values, faults *fault.List) (*wire.Node, bool) {
	var beside fault.List
	if c.Request.Method != http.MethodPost {
		onlyKnown(url.Values{"field": values["field"]}, &beside, "field")
		values.Del("field")
		return wire.Query(values, faults), !refusedQuery(c, &beside)
	}
	if onlyKnown(values, &beside, "field"); refusedQuery(c, &beside) {
		return nil, false
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return nil, false
	}
	node, err := wire.Parse(data, faults)
	if err != nil {
		refuseError(c, err)
		return nil, false
	}
	return node, true
}

func (s *Server) calculate(calculator calculate.Calculator, node *wire.Node, faults *fault.List) (any, error) {
	in := calculator.New()
	s.reader.Decode(node, in.Fields(), faults)
	in.Check(s.catalogue, faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return in.Answer()
}
