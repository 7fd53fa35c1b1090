package api

import (
	"errors"
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
		field, system, layer := values.Get("field"), values.Get("units"), values.Get("layer")
		_, draws := calculator.New().(calculate.Drawer)
		form := calculationForm(c, field, draws)
		if form == "" {
			return
		}
		own := []string{"field"}
		if form == drawn {
			if own, ok = lookOf(c, calculator, values); !ok {
				return
			}
		}
		var faults fault.List
		node, ok := calculationInput(c, values, own, &faults)
		if !ok {
			return
		}
		in, err := s.input(calculator, node, &faults)
		if err != nil {
			refuseError(c, err)
			return
		}
		if form == drawn {
			draw(c, in.(calculate.Drawer), layer, system)
			return
		}
		answer, err := in.Answer()
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

// drawn is the media type of a drawing.
const drawn = "image/svg+xml"

// lookOf checks the parameters of a drawing that stand beside its input, and
// returns their names.
func lookOf(c *gin.Context, calculator calculate.Calculator, values url.Values) ([]string, bool) {
	var faults fault.List
	own := []string{"units"}
	if layered, ok := calculator.New().(calculate.Layered); ok {
		own = append(own, "layer")
		oneOf(values, "layer", layered.Layers(), &faults)
	}
	oneOf(values, "units", []string{"si", "us"}, &faults)
	return own, !refusedQuery(c, &faults)
}

// draw answers with a drawing in the units that the caller chose.
func draw(c *gin.Context, in calculate.Drawer, layer, system string) {
	if system == "" {
		system = "si"
	}
	var picture []byte
	var err error
	if layered, ok := in.(calculate.Layered); ok {
		picture, err = layered.DrawLayer(layer, system)
	} else {
		picture, err = in.Draw(system)
	}
	var faulty *fault.Error
	switch {
	case errors.As(err, &faulty):
		refuseError(c, err)
	case err != nil:
		refuse(c, http.StatusUnprocessableEntity, err.Error(), fault.Fault{Pointer: "/units", Code: "not_applicable", Detail: err.Error()})
	default:
		send(c, http.StatusOK, drawn, picture)
	}
}

// calculationForm picks the form of an answer: a whole answer is JSON, or a
// drawing where there is one; one field is text unless JSON is liked better.
func calculationForm(c *gin.Context, field string, draws bool) string {
	switch {
	case field == "" && draws:
		return accepts(c, "; for one value as text name it, as in ?field=area_m2", "application/json", drawn)
	case field == "":
		return accepts(c, "; for one value as text name it, as in ?field=paint_l", "application/json")
	}
	return accepts(c, "", "text/plain", "application/json")
}

// calculationInput reads the query of a GET and the body of a POST as the same
// kind of document. own are the parameters that are not part of it.
func calculationInput(c *gin.Context, values url.Values, own []string, faults *fault.List) (*wire.Node, bool) {
	var beside fault.List
	if c.Request.Method != http.MethodPost {
		apart := url.Values{}
		for _, name := range own {
			if values.Has(name) {
				apart[name] = values[name]
			}
			values.Del(name)
		}
		onlyKnown(apart, &beside, own...)
		return wire.Query(values, faults), !refusedQuery(c, &beside)
	}
	if onlyKnown(values, &beside, own...); refusedQuery(c, &beside) {
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

// input reads the input of a calculator and checks it.
func (s *Server) input(calculator calculate.Calculator, node *wire.Node, faults *fault.List) (calculate.Input, error) {
	in := calculator.New()
	s.reader.Decode(node, in.Fields(), faults)
	in.Check(s.catalogue, faults)
	return in, faults.Err()
}
