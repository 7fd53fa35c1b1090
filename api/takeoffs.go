package api

import (
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/takeoff"
)

// Templates lists the templates of a take-off.
type Templates struct {
	Templates []TemplateEntry `json:"templates"`
	Tables    []string        `json:"tables"` // that a take-off may have
}

// TemplateEntry is one file to fill in.
type TemplateEntry struct {
	Name string `json:"name"`
	Doc  string `json:"doc"`
	Path string `json:"path"`
}

// templates lists the templates.
//
//	@Summary	Tables to fill in
//	@Tags		take-offs
//	@Produce	json
//	@Success	200	{object}	Templates
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/templates [get]
func (s *Server) templates(c *gin.Context) {
	answer := Templates{Tables: takeoff.Tables()}
	for _, t := range takeoff.Templates() {
		answer.Templates = append(answer.Templates, TemplateEntry{t.Name, t.Doc, "/v1/templates/" + t.Name})
	}
	s.list(c, answer)
}

// template gives one template.
//
//	@Summary		A table to fill in
//	@Description	Each has an example, which is invented, and the unit in each head. A cell may have a unit of its own.
//	@Tags			take-offs
//	@Produce		text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet
//	@Param			name	path		string	true	"name of the template"	Enums(job.xlsx, components.csv, steps.csv, products.csv, items.csv)
//	@Success		200		{string}	string
//	@Failure		400		{object}	Problem
//	@Failure		404		{object}	Problem
//	@Failure		406		{object}	Problem
//	@Failure		500		{object}	Problem
//	@Router			/v1/templates/{name} [get]
func (s *Server) template(c *gin.Context) {
	name := c.Param("name")
	kind := "text/csv"
	if strings.HasSuffix(name, ".xlsx") {
		kind = spreadsheet
	}
	if accepts(c, "", kind) == "" || !bare(c) {
		return
	}
	data, err := takeoff.WriteTemplate(name)
	if err != nil {
		refuse(c, http.StatusNotFound, err.Error()+"; /v1/templates lists them")
		return
	}
	if kind == "text/csv" {
		kind = "text/csv; charset=utf-8; header=present"
	}
	attached(c, name, kind, data)
}

// attached answers with a file that a browser saves under its name.
func attached(c *gin.Context, name, kind string, data []byte) {
	c.Header("Content-Disposition", `attachment; filename="`+name+`"`)
	send(c, http.StatusOK, kind, data)
}

// takeoffs makes a job of tables. It stores nothing.
//
//	@Summary		Turn tables into a job
//	@Description	Tables (components, steps, products with prices, items and what belongs to them) as CSV or as the sheets of a workbook go in, the job document comes out, checked. Send one file as the body (text/csv with ?table=components where its heads do not tell, or the media type of XLSX), or several as parts of multipart/form-data, whose file names tell the tables. Every fault of the tables is told at once with sheet, row and column in cell. Columns may be parted by commas, semicolons or tabs; a number such as 1,250, which may be one or a thousand, is refused.
//	@Tags			take-offs
//	@Accept			text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,multipart/form-data
//	@Produce		json
//	@Param			tables	body		string	true	"a table, a workbook, or several in parts"
//	@Param			table	query		string	false	"which table a CSV body is"
//	@Success		200		{object}	estimate.Job
//	@Failure		400		{object}	Problem
//	@Failure		406		{object}	Problem
//	@Failure		413		{object}	Problem
//	@Failure		415		{object}	Problem
//	@Failure		422		{object}	Problem
//	@Failure		500		{object}	Problem
//	@Router			/v1/takeoffs [post]
func (s *Server) takeoffs(c *gin.Context) {
	if accepts(c, "", "application/json") == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "table")
	oneOf(values, "table", append([]string{""}, takeoff.Tables()...), &faults)
	if refusedQuery(c, &faults) {
		return
	}
	files, err := takeoffFiles(c, values)
	if err != nil {
		refuseError(c, err)
		return
	}
	job, err := takeoff.Import(files, s.reader, s.catalogue)
	if err != nil {
		refuseError(c, err)
		return
	}
	respond(c, json.RawMessage(job))
}

// takeoffFiles reads the tables of a request. The errors are those of body.
func takeoffFiles(c *gin.Context, values url.Values) ([]takeoff.File, error) {
	c.Request.Body = http.MaxBytesReader(c.Writer, c.Request.Body, takeoff.MostBytes)
	kind, _, err := mime.ParseMediaType(c.GetHeader("Content-Type"))
	switch {
	case err == nil && kind == "multipart/form-data":
		return takeoffParts(c)
	case err == nil && (kind == "text/csv" || kind == spreadsheet):
		data, err := io.ReadAll(c.Request.Body)
		name := values.Get("table")
		if name == "" {
			name = "body"
		}
		return []takeoff.File{{Name: name + ".csv", Data: data}}, cutOff(err)
	}
	return nil, &mediaTypeError{"send tables as text/csv, as " + spreadsheet + ", or as parts of multipart/form-data with file names"}
}

func takeoffParts(c *gin.Context) ([]takeoff.File, error) {
	reader, err := c.Request.MultipartReader()
	if err != nil {
		return nil, &mediaTypeError{"the parts cannot be read: " + err.Error()}
	}
	var files []takeoff.File
	for {
		part, err := reader.NextPart()
		if errors.Is(err, io.EOF) {
			return files, nil
		}
		if err != nil {
			return nil, cutOff(err)
		}
		data, err := io.ReadAll(part)
		if err != nil {
			return nil, cutOff(err)
		}
		name := part.FileName()
		if name == "" {
			name = part.FormName() + ".csv"
		}
		if files = append(files, takeoff.File{Name: name, Data: data}); len(files) > takeoff.MostFiles {
			return files, nil // refused by who reads them
		}
	}
}

// packedTables is the media type of CSV files in one archive.
const packedTables = "application/zip"

// tables writes a job as tables. It stores nothing.
//
//	@Summary		Turn a job into tables
//	@Description	A job goes in; out come its tables, as a workbook or as CSV files in a ZIP archive, which /v1/takeoffs turns back into the same job. What no column holds stands in the column rest as JSON; what tables cannot give back at all is refused.
//	@Tags			take-offs
//	@Accept			json
//	@Produce		application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,application/zip
//	@Param			job	body		estimate.Job	true	"the job"
//	@Success		200	{string}	string
//	@Failure		400	{object}	Problem
//	@Failure		406	{object}	Problem
//	@Failure		413	{object}	Problem
//	@Failure		415	{object}	Problem
//	@Failure		422	{object}	Problem
//	@Failure		500	{object}	Problem
//	@Router			/v1/tables [post]
func (s *Server) tables(c *gin.Context) {
	form := accepts(c, "", spreadsheet, packedTables)
	if form == "" || !bare(c) {
		return
	}
	job, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	write, name := takeoff.Export, "take-off.xlsx"
	if form == packedTables {
		write, name = takeoff.ExportArchive, "take-off.zip"
	}
	data, err := write(job, s.reader, s.catalogue)
	if err != nil {
		refuseError(c, err)
		return
	}
	attached(c, name, form, data)
}
