package api

import (
	"net/http"
	"slices"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/report"
)

// exampleEstimate works a built-in job out, for who asks with GET.
//
//	@Summary		The estimate of a built-in job
//	@Description	As JSON, or one table as CSV where Accept asks for it.
//	@Tags			catalogue
//	@Produce		json,text/csv
//	@Param			id		path		string	true	"id of the example"
//	@Param			table	query		string	false	"which table, for CSV"	Enums(steps, order, areas, budget, buyers, lines, hours, funding, narrative)
//	@Success		200		{object}	estimate.Estimate
//	@Failure		400		{object}	Problem
//	@Failure		404		{object}	Problem
//	@Failure		406		{object}	Problem
//	@Failure		422		{object}	Problem
//	@Failure		500		{object}	Problem
//	@Router			/v1/examples/{id}/estimate [get]
func (s *Server) exampleEstimate(c *gin.Context) {
	if form := accepts(c, "", "application/json", "text/csv"); form != "" {
		s.workExample(c, form)
	}
}

// exampleTable gives a table of a built-in job's estimate by its address alone,
// for spreadsheets that fetch tables and say nothing in Accept.
//
//	@Summary	A table of a built-in job's estimate
//	@Tags		catalogue
//	@Produce	text/csv
//	@Param		id		path		string	true	"id of the example"
//	@Param		table	query		string	false	"which table"	Enums(steps, order, areas, budget, buyers, lines, hours, funding, narrative)
//	@Success	200		{string}	string
//	@Failure	400		{object}	Problem
//	@Failure	404		{object}	Problem
//	@Failure	406		{object}	Problem
//	@Failure	422		{object}	Problem
//	@Failure	500		{object}	Problem
//	@Router		/v1/examples/{id}/estimate.csv [get]
func (s *Server) exampleTable(c *gin.Context) {
	if accepts(c, "", "text/csv") != "" {
		s.workExample(c, "text/csv")
	}
}

func (s *Server) workExample(c *gin.Context, form string) {
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "table")
	tables := slices.DeleteFunc(report.Tables(), func(name string) bool { return slices.Contains(report.RangeTables(), name) })
	wanted := forms.Wanted{Format: "csv", Table: oneOf(values, "table", tables, &faults)}
	if refusedQuery(c, &faults) {
		return
	}
	e, err := example.Find(c.Param("id"))
	if err != nil {
		refuse(c, http.StatusNotFound, err.Error()+"; /v1/examples lists them")
		return
	}
	worked, err := s.reader.Work(e.Job, s.catalogue)
	if err != nil {
		refuseError(c, err)
		return
	}
	respondForm(c, worked, form, wanted)
}
