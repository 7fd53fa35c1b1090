package api

import (
	"encoding/json"
	"net/http"
	"strconv"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/calculate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
)

func calculatorNames() []string {
	var names []string
	for _, c := range calculate.All() {
		names = append(names, c.Name)
	}
	return names
}

// calculation answers one calculator, from a JSON body or from query
// parameters. With ?field= only that number is answered: bare text for a
// spreadsheet, or a JSON object of one member where JSON is asked for.
func (s *Server) calculation(name string) gin.HandlerFunc {
	calculator, _ := calculate.Find(name)
	return func(c *gin.Context) {
		field, values := c.Query("field"), c.Request.URL.Query()
		values.Del("field")
		if field == "" && accepts(c, "application/json") == "" {
			return
		}
		var faults fault.List
		var node *wire.Node
		if c.Request.Method == http.MethodGet {
			node = wire.Query(values, &faults)
		} else {
			if !onlyParameters(c, "field") {
				return
			}
			data, err := body(c)
			if err != nil {
				refuseError(c, err)
				return
			}
			if node, err = wire.Parse(data, &faults); err != nil {
				refuseError(c, err)
				return
			}
		}
		answer, err := s.calculate(calculator, node, &faults)
		switch {
		case err != nil:
			refuseError(c, err)
		case field != "":
			respondField(c, answer, field)
		default:
			respond(c, answer)
		}
	}
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

// respondField answers one value of an answer: a name, or names and indexes
// joined by slashes (faces/0/area_m2).
func respondField(c *gin.Context, answer any, field string) {
	data, err := json.Marshal(answer)
	if err != nil {
		refuseError(c, err)
		return
	}
	var tree any
	decoder := json.NewDecoder(strings.NewReader(string(data)))
	decoder.UseNumber()
	if err := decoder.Decode(&tree); err != nil {
		refuseError(c, err)
		return
	}
	value, ok := pick(tree, strings.Split(strings.Trim(field, "/"), "/"))
	if !ok {
		refuse(c, http.StatusUnprocessableEntity, "the answer has no single value "+field+"; without field the whole answer is given",
			fault.Fault{Pointer: "/field", Code: "unknown_field", Detail: "no single value " + field + " in this answer: it may need an input that was not given"})
		return
	}
	if acceptsPlain(c) {
		c.Data(http.StatusOK, "text/plain; charset=utf-8", []byte(value))
		return
	}
	respond(c, map[string]any{field: json.RawMessage(quoteUnlessNumber(value))})
}

// pick walks down a tree to a number, a text or a truth value.
func pick(tree any, path []string) (string, bool) {
	for _, step := range path {
		switch node := tree.(type) {
		case map[string]any:
			tree = node[step]
		case []any:
			k, err := strconv.Atoi(step)
			if err != nil || k < 0 || k >= len(node) {
				return "", false
			}
			tree = node[k]
		default:
			return "", false
		}
	}
	switch value := tree.(type) {
	case json.Number:
		return plain(value), true
	case string:
		return value, true
	case bool:
		return strconv.FormatBool(value), true
	}
	return "", false
}

// plain writes a number without an exponent, which some spreadsheets misread.
func plain(n json.Number) string {
	x, err := n.Float64()
	if err != nil {
		return n.String()
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

func quoteUnlessNumber(value string) string {
	if _, err := strconv.ParseFloat(value, 64); err == nil || value == "true" || value == "false" {
		return value
	}
	quoted, _ := json.Marshal(value) // a text always has a JSON form
	return string(quoted)
}
