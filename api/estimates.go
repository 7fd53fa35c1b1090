package api

import (
	"bytes"
	"net/http"
	"slices"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
	"filmbuild/estimate/workbook"
)

// estimates works a job out. It stores nothing.
//
//	@Summary		Work a job out
//	@Description	A job goes in, the whole estimate comes out; nothing is stored. As a workbook (XLSX) its formulas are alive: change a number on the sheet Inputs and the rest follows. As CSV one table is given, ?table=steps (default), order, areas, budget, buyers (who gets which order), lines (of the budget), hours (by role), funding (the rows of the funder's form), narrative (the costs in plain words), range, drivers (what makes the total uncertain) or curve (how likely each total is to be enough); as SVG the range of the total is drawn; as text the table of the command line, ?units=si or us.
//	@Tags			estimates
//	@Accept			json
//	@Produce		json,text/csv,plain,image/svg+xml,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet
//	@Param			job		body		estimate.Job	true	"the job"
//	@Param			table	query		string			false	"which table, for CSV"	Enums(steps, order, areas, budget, buyers, lines, hours, funding, narrative, range, drivers, curve)
//	@Param			trials	query		int				false	"how many times every uncertain number is drawn for the range; without it there is a range where the job states one, from 10000 trials"	minimum(1000)	maximum(1000000)
//	@Param			seed	query		int				false	"of the draws; the same seed gives the same range"	default(1)	minimum(0)	maximum(9007199254740991)
//	@Param			bom		query		string			false	"true puts the byte order mark in front, for spreadsheets that take UTF-8 for another code"	Enums(false, true)
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
	form := accepts(c, "", "application/json", "text/csv", "text/plain", drawn, spreadsheet)
	if form == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "table", "units", "bom", "trials", "seed")
	trials, asked := trialsOf(values, &faults)
	table := oneOf(values, "table", report.Tables(), &faults)
	system := oneOf(values, "units", []string{"si", "us"}, &faults)
	bom := oneOf(values, "bom", []string{"false", "true"}, &faults)
	if refusedQuery(c, &faults) {
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	if form == spreadsheet {
		s.respondWorkbook(c, data)
		return
	}
	worked, err := s.reader.Work(data, s.catalogue)
	if err == nil && (asked || worked.Ranged() || form == drawn || slices.Contains(report.RangeTables(), table)) {
		err = ranges.Add(c.Request.Context(), worked, trials)
	}
	if err != nil {
		refuseError(c, err)
		return
	}
	respondEstimate(c, worked.Estimate(), form, table, system, bom == "true")
}

// spreadsheet is the media type of an Open XML workbook.
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"

// respondWorkbook answers with the workbook of a job.
func (s *Server) respondWorkbook(c *gin.Context, job []byte) {
	g, err := s.reader.Trace(job, s.catalogue)
	var file bytes.Buffer
	if err == nil {
		err = workbook.Write(&file, g)
	}
	if err != nil {
		refuseError(c, err)
		return
	}
	c.Header("Content-Disposition", `attachment; filename="estimate.xlsx"`)
	send(c, http.StatusOK, spreadsheet, file.Bytes())
}

// respondEstimate answers with one of the forms that an estimate is printed in.
func respondEstimate(c *gin.Context, e *estimate.Estimate, form, table, system string, marked bool) {
	switch form {
	case "text/csv":
		text, err := report.CSV(e, table)
		if err != nil {
			refuseError(c, err)
			return
		}
		if marked {
			text = report.Marked(text)
		}
		send(c, http.StatusOK, "text/csv; charset=utf-8; header=present", text)
	case "text/plain":
		shown, err := units.ParseSystem(system)
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, "text/plain; charset=utf-8", []byte(report.Table(e, shown)))
	case drawn:
		drawing, err := report.Chart(e)
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, drawn, drawing)
	default:
		respond(c, e)
	}
}
