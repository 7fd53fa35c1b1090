package api

import (
	"net/http"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
)

// estimates works a job out. It stores nothing.
//
//	@Summary		Work a job out
//	@Description	A job goes in, the whole estimate comes out; nothing is stored. As CSV one table is given, ?table=steps (default), order, areas or budget; as text the table of the command line, ?units=si or us.
//	@Tags			estimates
//	@Accept			json
//	@Produce		json,text/csv,plain
//	@Param			job		body		estimate.Job	true	"the job"
//	@Param			table	query		string			false	"which table, for CSV"	Enums(steps, order, areas, budget)
//	@Param			units	query		string			false	"units of the text form"	Enums(si, us)
//	@Success		200		{object}	estimate.Estimate
//	@Failure		400		{object}	Problem
//	@Failure		406		{object}	Problem
//	@Failure		413		{object}	Problem
//	@Failure		415		{object}	Problem
//	@Failure		422		{object}	Problem
//	@Failure		500		{object}	Problem
//	@Router			/v1/estimates [post]
func (s *Server) estimates(c *gin.Context) {
	form := accepts(c, "application/json", "text/csv", "text/plain")
	if form == "" || !onlyParameters(c, "table", "units") {
		return
	}
	system, err := units.ParseSystem(c.DefaultQuery("units", "si"))
	if err != nil {
		refuse(c, http.StatusBadRequest, err.Error())
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	e, err := s.reader.Estimate(data, s.catalogue)
	if err != nil {
		refuseError(c, err)
		return
	}
	switch form {
	case "text/csv":
		table, err := report.CSV(e, c.DefaultQuery("table", "steps"))
		if err != nil {
			refuse(c, http.StatusBadRequest, err.Error())
			return
		}
		c.Data(http.StatusOK, "text/csv; charset=utf-8; header=present", table)
	case "text/plain":
		c.Data(http.StatusOK, "text/plain; charset=utf-8", []byte(report.Table(e, system)))
	default:
		respond(c, e)
	}
}

// acceptsPlain reports whether a caller asks for a bare number: it names text,
// or has no wish at all, as a spreadsheet's web function.
func acceptsPlain(c *gin.Context) bool {
	accept := c.GetHeader("Accept")
	return accept == "" || strings.HasPrefix(accept, "*/*") || strings.Contains(accept, "text/plain") || !strings.Contains(accept, "application/json")
}
