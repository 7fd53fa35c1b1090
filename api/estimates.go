package api

import (
	"bytes"
	"net/http"
	"slices"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/report"
)

// estimates works a job out. It stores nothing.
//
//	@Summary		Work a job out
//	@Description	A job goes in, the whole estimate comes out; nothing is stored. As PDF it is the report, or with ?pages=job-sheets one page to each step. As a workbook (XLSX) its formulas are alive: change a number on the sheet Inputs and the rest follows. As CSV one table is given, ?table=steps (default), order, areas, budget, buyers (who gets which order), lines (of the budget), hours (by role), funding (the rows of the funder's form), narrative (the costs in plain words), range, drivers (what makes the total uncertain) curve (how likely each total is to be enough) or inputs (what was drawn, and by which spread); as SVG the range of the total is drawn; as text the table of the command line, ?units=si or us.
//	@Tags			estimates
//	@Accept			json
//	@Produce		json,text/csv,plain,image/svg+xml,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,application/pdf
//	@Param			job		body		estimate.Job	true	"the job"
//	@Param			table	query		string			false	"which table, for CSV"	Enums(steps, order, areas, budget, buyers, lines, hours, funding, narrative, range, drivers, curve, inputs)
//	@Param			trials	query		int				false	"how many times every uncertain number is drawn for the range; without it there is a range where the job states one, from 10000 trials"	minimum(1000)	maximum(1000000)
//	@Param			seed	query		int				false	"of the draws; the same seed gives the same range"	default(1)	minimum(0)	maximum(9007199254740991)
//	@Param			bom		query		string			false	"true puts the byte order mark in front, for spreadsheets that take UTF-8 for another code"	Enums(false, true)
//	@Param			units	query		string			false	"units of the text and printed forms"	Enums(si, us)
//	@Param			pages	query		string			false	"what PDF holds"	Enums(report, job-sheets)
//	@Param			date	query		string			false	"date printed in PDF, as 2026-11-25"
//	@Param			paper	query		string			false	"size of PDF pages"	Enums(a4, letter)
//	@Success		200		{object}	estimate.Estimate
//	@Failure		400		{object}	Problem
//	@Failure		406		{object}	Problem
//	@Failure		413		{object}	Problem
//	@Failure		415		{object}	Problem
//	@Failure		422		{object}	Problem
//	@Failure		500		{object}	Problem
//	@Router			/v1/estimates [post]
func (s *Server) estimates(c *gin.Context) {
	form := accepts(c, "", "application/json", "text/csv", "text/plain", drawn, spreadsheet, portable)
	if form == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "table", "units", "bom", "trials", "seed", "pages", "date", "paper")
	trials, asked := trialsOf(values, &faults)
	table := oneOf(values, "table", report.Tables(), &faults)
	system := oneOf(values, "units", []string{"si", "us"}, &faults)
	wanted := formWanted(values, table, system, &faults)
	wanted.Marked = oneOf(values, "bom", []string{"false", "true"}, &faults) == "true"
	if refusedQuery(c, &faults) {
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	worked, err := s.reader.Work(data, s.catalogue)
	if err == nil && (asked || worked.Ranged() || form == drawn || form == spreadsheet || form == portable || slices.Contains(report.RangeTables(), table)) {
		err = ranges.Add(c.Request.Context(), worked, trials)
	}
	if err != nil {
		refuseError(c, err)
		return
	}
	wanted.Format = formats()[form].name
	respondForm(c, worked, form, wanted)
}

// spreadsheet is the media type of an Open XML workbook.
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"

// format is one form of an estimate as it goes over HTTP.
type format struct {
	name string // of forms.Formats
	kind string // media type with its parameters
	file string // name that a browser saves it under; empty to show it
}

func formats() map[string]format {
	return map[string]format{
		"text/csv":   {"csv", "text/csv; charset=utf-8; header=present", ""},
		"text/plain": {"table", "text/plain; charset=utf-8", ""},
		drawn:        {"svg", drawn, ""},
		spreadsheet:  {"xlsx", spreadsheet, "estimate.xlsx"},
		portable:     {"pdf", portable, ""},
	}
}

// respondForm answers with an estimate in one of its forms.
func respondForm(c *gin.Context, w *estimate.Worked, media string, wanted forms.Wanted) {
	f, known := formats()[media]
	if !known {
		respond(c, w.Estimate())
		return
	}
	var out bytes.Buffer
	if err := forms.Write(&out, w, wanted); err != nil {
		refuseError(c, err)
		return
	}
	if f.file != "" {
		c.Header("Content-Disposition", `attachment; filename="`+f.file+`"`)
	}
	send(c, http.StatusOK, f.kind, out.Bytes())
}
