package api

import (
	"bytes"
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/api/web"
	"filmbuild/estimate/calculate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
)

// formulaPath is where the page stands that builds formulas.
const formulaPath = "/docs/formula"

// formulaView is what the page shows.
type formulaView struct {
	Calculations, Kinds, Answers, Faults []string
	Name, Kind, Doc, Field               string
	Inputs                               []formulaInput
	Excel, Calc                          string // the formula
	Path                                 string // of the call, where no cell is in it
	Answer                               string // what it gives, where no cell is in it
	values                               url.Values
	calculator                           calculate.Calculator
}

type formulaInput struct{ Name, Unit, Doc, Limits, Value string }

// formulaPage builds the formula that asks a calculator from a spreadsheet.
func (s *Server) formulaPage(page web.File) gin.HandlerFunc {
	laid := template.Must(template.New("formula").Parse(string(page.Data))) // part of the program; every test of a page runs it
	return func(c *gin.Context) {
		values, ok := parameters(c)
		if !ok {
			return
		}
		view, known := s.formulaView(values)
		if !known {
			refuse(c, http.StatusNotFound, "there is no calculation "+values.Get("calculation")+"; /v1/formulas lists them")
			return
		}
		origin := "http://" + c.Request.Host
		if c.Request.TLS != nil {
			origin = "https://" + c.Request.Host
		}
		pieces := view.pieces(origin)
		view.Excel, view.Calc = spreadsheetFormula(pieces, ","), spreadsheetFormula(pieces, ";")
		var out bytes.Buffer
		if err := laid.Execute(&out, view); err != nil {
			refuseError(c, err)
			return
		}
		static(c, web.NewFile(page.Kind, out.Bytes()))
	}
}

// usualQuestion is what the page shows first.
func usualQuestion() url.Values {
	return url.Values{"calculation": {"coating"}, "field": {"paint_l"}, "area_m2": {"A2"}, "dry_film_um": {"20"},
		"volume_solids_percent": {"55"}, "transfer_efficiency_percent": {"60"}, "loss_percent": {"10"}}
}

func (s *Server) formulaView(values url.Values) (*formulaView, bool) {
	if len(values) == 0 {
		values = usualQuestion()
	}
	v := &formulaView{Name: values.Get("calculation"), Field: strings.TrimSpace(values.Get("field")), values: values}
	for _, one := range calculate.All() {
		v.Calculations = append(v.Calculations, one.Name)
		if one.Name == v.Name {
			v.calculator, v.Doc = one, one.Doc
		}
	}
	if v.calculator.New == nil {
		return nil, false
	}
	for _, f := range v.fields() {
		v.Inputs = append(v.Inputs, formulaInput{f.Name, f.Unit, f.Doc, f.Limits, strings.TrimSpace(values.Get(f.Name))})
	}
	s.askOnce(v)
	return v, true
}

// fields are those of the calculator, or of the kind that is chosen.
func (v *formulaView) fields() []quantity.Field {
	fields := map[string][]quantity.Field{}
	switch v.Name {
	case "area":
		for _, k := range surfaces.Kinds() {
			v.Kinds, fields[k.Name] = append(v.Kinds, k.Name), k.Fields
		}
	case "marking":
		for _, k := range marking.Kinds() {
			v.Kinds, fields[k.Name] = append(v.Kinds, k.Name), k.Fields
		}
	default:
		return quantity.Describe(v.calculator.New().Fields())
	}
	v.Kind = v.values.Get("kind")
	if !slices.Contains(v.Kinds, v.Kind) {
		v.Kind = v.Kinds[0]
	}
	return fields[v.Kind]
}

// askOnce asks the calculator where no cell is needed, for the answer and the
// names of the numbers in it.
func (s *Server) askOnce(v *formulaView) {
	asked := url.Values{}
	if v.Kind != "" {
		asked.Set("kind", v.Kind)
	}
	for _, in := range v.Inputs {
		if isCell(in.Value) {
			return
		}
		if in.Value != "" {
			asked.Set(in.Name, in.Value)
		}
	}
	var faults fault.List
	in, err := s.input(v.calculator, wire.Query(asked, &faults), &faults)
	var answer any
	if err == nil {
		answer, err = in.Answer()
	}
	var faulty *fault.Error
	if errors.As(err, &faulty) {
		for _, f := range faulty.Faults {
			v.Faults = append(v.Faults, f.Detail)
		}
	}
	if err != nil {
		return
	}
	tree, err := treeOf(answer)
	if err != nil {
		return
	}
	v.Answers = singles(tree)
	value, found := pick(tree, strings.Split(strings.Trim(v.Field, "/"), "/"))
	if !found {
		v.Faults = append(v.Faults, "name the number that is wanted: one of "+strings.Join(v.Answers, ", "))
		return
	}
	v.Answer = plain(value)
	asked.Set("field", v.Field)
	v.Path = "/v1/calculations/" + v.Name + "?" + asked.Encode()
}
