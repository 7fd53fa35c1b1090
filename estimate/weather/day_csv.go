package weather

import (
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"filmbuild/estimate/units"
	"filmbuild/surfaces/quantity"
)

// recordColumns are the columns of a record; all but the wind must be there.
func recordColumns() []string {
	return []string{"time", "air_c", "relative_humidity_percent", "surface_c", "wind_m_s"}
}

// readRecord reads a record from text: a header with the columns in any order,
// then one reading a line. Commas, semicolons or tabs part the cells, whichever
// the header has. A fault names its row, counted from 1 with the header, and its
// column.
func readRecord(text string, report func(pointer, code, detail string)) record {
	text = strings.TrimPrefix(text, "\ufeff")
	first, _, _ := strings.Cut(text, "\n")
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord, r.TrimLeadingSpace = -1, true
	for _, comma := range []rune{';', '\t'} {
		if strings.ContainsRune(first, comma) {
			r.Comma = comma
		}
	}
	var lines []int
	rec := record{cell: func(i int, column string) string { return fmt.Sprintf("/csv/%d/%s", lines[i], column) }}
	rows, err := r.ReadAll()
	if err != nil {
		var bad *csv.ParseError
		row := 1
		if errors.As(err, &bad) {
			row = bad.Line
		}
		report(fmt.Sprintf("/csv/%d", row), "syntax", fmt.Sprintf("row %d: %s", row, err))
		return rec
	}
	if len(rows) < 2 {
		report("/csv", "required", "csv has no readings; write a header and one reading a line")
		return rec
	}
	if len(rows)-1 > mostReadings {
		report("/csv", "too_many", fmt.Sprintf("csv has %d readings; the most is %d", len(rows)-1, mostReadings))
		return rec
	}
	if !recordHeader(rows[0], report) {
		return rec
	}
	for i, row := range rows[1:] {
		line := i + 2
		if len(row) != len(rows[0]) {
			report(fmt.Sprintf("/csv/%d", line), "wrong_type", fmt.Sprintf("row %d has %d cells; the header has %d", line, len(row), len(rows[0])))
			continue
		}
		lines = append(lines, line)
		rec.hours = append(rec.hours, recordRow(rows[0], row, line, report))
	}
	return rec
}

// recordHeader notes columns that are unknown, doubled or missing.
func recordHeader(header []string, report func(pointer, code, detail string)) bool {
	good := true
	fault := func(column, code, detail string) {
		good = false
		report("/csv/1/"+column, code, "row 1: "+detail)
	}
	for i := range header {
		header[i] = strings.TrimSpace(header[i])
		switch {
		case !slices.Contains(recordColumns(), header[i]):
			fault(strconv.Itoa(i+1), "unknown_field", fmt.Sprintf("there is no column %q; known are %s", short(header[i]), strings.Join(recordColumns(), ", ")))
		case slices.Contains(header[:i], header[i]):
			fault(strconv.Itoa(i+1), "duplicate_name", fmt.Sprintf("column %s stands twice", header[i]))
		}
	}
	for _, column := range recordColumns()[:4] {
		if !slices.Contains(header, column) {
			fault(column, "required", "column "+column+" is missing")
		}
	}
	return good
}

// recordRow reads one reading. An empty cell of the wind is a reading without
// one.
func recordRow(header, row []string, line int, report func(pointer, code, detail string)) Hour {
	var h Hour
	limits := map[string]quantity.Field{}
	for _, f := range quantity.Describe(h) {
		limits[f.Name] = f
	}
	for k, column := range header {
		text := strings.TrimSpace(row[k])
		at := fmt.Sprintf("/csv/%d/%s", line, column)
		if column == "time" {
			h.Time = text
			continue
		}
		if text == "" {
			if column != "wind_m_s" {
				report(at, "required", fmt.Sprintf("row %d, column %s is empty", line, column))
			}
			continue
		}
		value, err := units.ParseBare(text, quantity.SuffixOf(column))
		if err != nil {
			report(at, "not_a_number", fmt.Sprintf("row %d, column %s: %s", line, column, err))
			continue
		}
		switch column {
		case "air_c":
			h.AirC = &value
		case "relative_humidity_percent":
			h.RelativeHumidityPercent = value
		case "surface_c":
			h.SurfaceC = &value
		case "wind_m_s":
			h.WindMS = &value
		}
		if !limits[column].Holds(value) {
			report(at, "out_of_range", fmt.Sprintf("row %d, column %s is %s; it must be %s", line, column, short(text), limits[column].Limits))
		}
	}
	return h
}

func short(text string) string {
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return text
}
