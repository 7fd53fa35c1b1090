// Package forms writes an estimate in every form that people take away: table,
// JSON, CSV, chart, workbook and PDF. The command line and the API write through it, so
// that both say the same.
package forms

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/document"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
	"filmbuild/estimate/workbook"
)

// Wanted is the form that a caller asks for.
type Wanted struct {
	Format string       // one of Formats
	Table  string       // of csv: one of report.Tables
	Marked bool         // of csv: a byte order mark in front
	System units.System // of table and pdf
	Pages  string       // of pdf: one of Pages
	Paper  string       // of pdf: one of document.Papers
	Date   string       // of pdf: printed in the head
}

// Formats lists the forms of an estimate.
func Formats() []string { return []string{"table", "json", "csv", "svg", "xlsx", "pdf"} }

// Pages lists what a PDF can hold.
func Pages() []string { return []string{"report", "job-sheets"} }

// Check reports what is wrong with what is asked for, each with its field.
func (f Wanted) Check(report func(field, detail string)) {
	oneOf := func(field, value string, known []string) {
		if value != "" && !slices.Contains(known, value) {
			report(field, fmt.Sprintf("%s %q is not known; give %s", field, value, strings.Join(known, ", ")))
		}
	}
	oneOf("format", f.Format, Formats())
	oneOf("table", f.Table, tables())
	oneOf("pages", f.Pages, Pages())
	f.Printed().Check(report)
}

func tables() []string { return report.Tables() }

// Printed is what a PDF is printed with.
func (f Wanted) Printed() document.Options {
	return document.Options{Date: f.Date, Paper: f.Paper, System: f.System}
}

// Write writes an estimate in the form that is asked for. The errors are those
// of writing.
func Write(w io.Writer, worked *estimate.Worked, f Wanted) error {
	e := worked.Estimate()
	switch f.Format {
	case "json":
		encoder := json.NewEncoder(w)
		encoder.SetIndent("", "  ")
		return encoder.Encode(e)
	case "csv":
		return writeCSV(w, e, f)
	case "svg":
		drawn, err := report.Chart(e)
		if err == nil {
			_, err = w.Write(drawn)
		}
		return err
	case "xlsx", "pdf":
		g, err := worked.Graph()
		if err != nil {
			return err
		}
		if f.Format == "xlsx" {
			return workbook.Write(w, g)
		}
		if f.Pages == "job-sheets" {
			return document.JobSheets(w, g, f.Printed())
		}
		return document.Report(w, g, f.Printed())
	}
	_, err := io.WriteString(w, report.Table(e, f.System))
	return err
}

func writeCSV(w io.Writer, e *estimate.Estimate, f Wanted) error {
	text, err := report.CSV(e, f.Table)
	if err == nil && f.Marked {
		text = report.Marked(text)
	}
	if err == nil {
		_, err = w.Write(text)
	}
	return err
}
