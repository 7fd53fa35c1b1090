package api

import (
	"encoding/json"
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate"
	"filmbuild/estimate/calculate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
)

// Markings lists the kinds of marking.
type Markings struct {
	Markings []KindEntry `json:"markings"`
}

// markings lists the kinds of marking with their fields and proportions.
//
//	@Summary	Kinds of marking
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Markings
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/markings [get]
func (s *Server) markings(c *gin.Context) {
	var answer Markings
	for _, k := range marking.Kinds() {
		worked, err := marking.Measure(k.Example)
		if err != nil {
			refuseError(c, err)
			return
		}
		answer.Markings = append(answer.Markings, KindEntry{Kind: k.Name, Doc: k.Doc, Fields: k.Fields, Source: k.Source, Example: k.Example, Worked: worked,
			Sheet: "/v1/markings/" + k.Name + "/sheet"})
	}
	s.list(c, answer)
}

// ProductEntry is a product with the source of each of its values.
type ProductEntry struct {
	Product products.Product `json:"product"`
	Values  []products.Value `json:"values"`
	Limits  []products.Limit `json:"limits"`
}

// Products lists products.
type Products struct {
	CatalogueVersion string         `json:"catalogue_version"`
	Currency         string         `json:"currency"` // of the prices, which are invented
	Products         []ProductEntry `json:"products"`
}

// products lists the catalogue.
//
//	@Summary	Products of the catalogue
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Products
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/products [get]
func (s *Server) products(c *gin.Context) { s.list(c, s.entries("")) }

// media lists the abrasives of the catalogue.
//
//	@Summary	Abrasives of the catalogue, with their limits
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Products
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/media [get]
func (s *Server) media(c *gin.Context) { s.list(c, s.entries("media")) }

// entries lists the products of a kind, or all of them.
func (s *Server) entries(kind string) Products {
	answer := Products{CatalogueVersion: s.catalogue.Version(), Currency: s.catalogue.Currency(), Products: []ProductEntry{}}
	for _, p := range s.catalogue.Products() {
		if kind == "" || p.Base().Kind == kind {
			id := p.Base().ID
			answer.Products = append(answer.Products, ProductEntry{Product: p, Values: listOf(s.catalogue.Values(id)), Limits: listOf(s.catalogue.Limits(id))})
		}
	}
	return answer
}

// Methods lists the ways to apply paint, and the rates of other work.
type Methods struct {
	Methods    []products.Method    `json:"methods"`
	Operations []products.Operation `json:"operations"`
}

// methods lists the ways to apply paint.
//
//	@Summary	Ways to apply paint, and rates of other work
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Methods
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/methods [get]
func (s *Server) methods(c *gin.Context) {
	s.list(c, Methods{Methods: s.catalogue.Methods(), Operations: s.catalogue.Operations()})
}

// Sources lists what the catalogue was read from.
type Sources struct {
	Sources []products.Source `json:"sources"`
	Marks   []products.Mark   `json:"marks"` // how sure a value is
}

// sources lists the sources of the catalogue.
//
//	@Summary	Sources of the catalogue's values
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Sources
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/sources [get]
func (s *Server) sources(c *gin.Context) {
	s.list(c, Sources{Sources: s.catalogue.Sources(), Marks: s.catalogue.Marks()})
}

// Formulas lists formulas.
type Formulas struct {
	EngineVersion string             `json:"engine_version"`
	Formulas      []estimate.Formula `json:"formulas"`
	Calculators   []CalculatorEntry  `json:"calculators"`
}

// CalculatorEntry is one calculator with the fields of its input.
type CalculatorEntry struct {
	Name   string           `json:"name"`
	Doc    string           `json:"doc"`
	Fields []quantity.Field `json:"fields"`
}

// formulas lists every formula that the examples and calculators use.
//
//	@Summary	Formulas with their sources
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Formulas
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Failure	500	{object}	Problem
//	@Router		/v1/formulas [get]
func (s *Server) formulas(c *gin.Context) {
	answer := Formulas{EngineVersion: estimate.EngineVersion, Formulas: []estimate.Formula{}}
	all, err := example.All()
	if err != nil {
		refuseError(c, err)
		return
	}
	var worked []*estimate.Estimate
	for _, e := range all {
		done, err := s.reader.Estimate(e.Job, s.catalogue)
		if err != nil {
			refuseError(c, err)
			return
		}
		worked = append(worked, done)
	}
	answer.Formulas = estimate.Formulas(worked...)
	for _, calculator := range calculate.All() {
		answer.Calculators = append(answer.Calculators, CalculatorEntry{Name: calculator.Name, Doc: calculator.Doc, Fields: listOf(quantity.Describe(calculator.New().Fields()))})
	}
	s.list(c, answer)
}

// ExampleEntry is one built-in job.
type ExampleEntry struct {
	ID  string          `json:"id"`
	Doc string          `json:"doc"`
	Job json.RawMessage `json:"job" swaggertype:"object"`
}

// Examples lists the built-in jobs.
type Examples struct {
	Default  string         `json:"default"`
	Examples []ExampleEntry `json:"examples"`
}

// examples lists the built-in jobs.
//
//	@Summary	Built-in jobs
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Examples
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Failure	500	{object}	Problem
//	@Router		/v1/examples [get]
func (s *Server) examples(c *gin.Context) {
	all, err := example.All()
	if err != nil {
		refuseError(c, err)
		return
	}
	answer := Examples{Default: example.Default}
	for _, e := range all {
		answer.Examples = append(answer.Examples, ExampleEntry{ID: e.ID, Doc: e.Doc, Job: e.Job})
	}
	s.list(c, answer)
}

// example gives one built-in job, as it would be posted to /v1/estimates.
//
//	@Summary	One built-in job
//	@Tags		catalogue
//	@Produce	json
//	@Param		id	path		string	true	"id of the example"
//	@Success	200	{object}	estimate.Job
//	@Failure	400	{object}	Problem
//	@Failure	404	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/examples/{id} [get]
func (s *Server) example(c *gin.Context) {
	e, err := example.Find(c.Param("id"))
	if err != nil {
		refuse(c, http.StatusNotFound, err.Error()+"; /v1/examples lists them")
		return
	}
	s.list(c, json.RawMessage(e.Job))
}

// listOf returns a list that JSON writes as [] and never as null.
func listOf[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// list answers a GET without parameters.
func (s *Server) list(c *gin.Context, answer any) {
	if accepts(c, "", "application/json") != "" && bare(c) {
		respond(c, answer)
	}
}

// bare refuses query parameters where a route takes none.
func bare(c *gin.Context) bool {
	values, ok := parameters(c)
	if !ok {
		return false
	}
	var faults fault.List
	onlyKnown(values, &faults)
	return !refusedQuery(c, &faults)
}
