package takeoff

import (
	"bytes"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate/fault"
)

// workbook reads the sheets of an XLSX file that hold anything. Sheets whose
// name begins with about or note are for people and are left out.
func workbook(data []byte, at fault.Cell, faults *gathered) []grid {
	seen, bad := scan(data)
	if bad != "" {
		faults.add(at, "", "too_many", bad)
		return nil
	}
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: mostUnzip, UnzipXMLSizeLimit: mostUnzip})
	if err != nil {
		faults.add(at, "", "wrong_type", "the file is no workbook that can be read: "+err.Error())
		return nil
	}
	defer f.Close() // nothing was written
	properties, err := f.GetWorkbookProps()
	in := opened{file: f, from1904: err == nil && properties.Date1904 != nil && *properties.Date1904}
	var found []grid
	for _, name := range f.GetSheetList() {
		low := plainName(name)
		if strings.HasPrefix(low, "about") || strings.HasPrefix(low, "note") {
			continue
		}
		g, err := in.sheet(name, seen.unvalued[seen.parts[name]])
		if err != nil {
			faults.add(fault.Cell{Sheet: name}, "", "wrong_type", "the sheet cannot be read: "+err.Error())
			continue
		}
		if len(g.rows) > 0 {
			found = append(found, g)
		}
	}
	return found
}

// opened is a workbook with what its dates count from.
type opened struct {
	file     *excelize.File
	from1904 bool
}

// sheet reads the cells of a sheet. unvalued are its formulas without a value.
func (o opened) sheet(name string, unvalued []string) (grid, error) {
	g := grid{name: name, sheet: true}
	rows, err := o.file.GetRows(name, excelize.Options{RawCellValue: true})
	if err != nil {
		return g, err
	}
	filled := len(unvalued) > 0
	for i, row := range rows {
		cells := make([]cell, len(row))
		for k, raw := range row {
			at, err := excelize.CoordinatesToCellName(k+1, i+1)
			if err != nil {
				return g, err
			}
			if cells[k], err = o.cell(name, at, raw); err != nil {
				return g, err
			}
			filled = filled || !cells[k].blank()
		}
		g.rows = append(g.rows, cells)
	}
	for _, reference := range unvalued {
		column, row, err := excelize.CellNameToCoordinates(reference)
		if err != nil {
			return g, err
		}
		for len(g.rows) < row {
			g.rows = append(g.rows, nil)
		}
		for len(g.rows[row-1]) < column {
			g.rows[row-1] = append(g.rows[row-1], cell{})
		}
		g.rows[row-1][column-1].bad = &trouble{"required", "the formula was saved without its value; recalculate and save the workbook, or write the value"}
	}
	if !filled {
		g.rows = nil
	}
	return g, nil
}

// cell is the text of a cell: a number with all its digits, a date as ISO 8601
// writes it, the value that was saved with a formula.
func (o opened) cell(sheet, at, raw string) (cell, error) {
	if raw == "" {
		return cell{}, nil
	}
	kind, err := o.file.GetCellType(sheet, at)
	if err != nil {
		return cell{}, err
	}
	switch kind {
	case excelize.CellTypeError:
		return cell{said: raw, bad: &trouble{"not_a_number", "the cell holds the error " + raw + "; mend its formula, or write the value"}}, nil
	case excelize.CellTypeBool:
		if raw == "1" || strings.EqualFold(raw, "true") {
			return cell{said: "true"}, nil
		}
		return cell{said: "false"}, nil
	case excelize.CellTypeUnset, excelize.CellTypeNumber:
		said, err := o.shown(sheet, at, raw)
		return cell{said: said}, err
	}
	return cell{said: raw}, nil
}

// shown is a number as its format means it: 0.55 shown as 55 % is 55 %.
func (o opened) shown(sheet, at, raw string) (string, error) {
	id, err := o.file.GetCellStyle(sheet, at)
	if err != nil || id == 0 {
		return raw, err
	}
	style, err := o.file.GetStyle(id)
	if err != nil {
		return raw, err
	}
	x, err := decimal.NewFromString(raw)
	if err != nil || len(raw) > 40 {
		return raw, nil
	}
	switch {
	case percentage(style):
		return x.Shift(2).String() + " %", nil
	case dated(style):
		serial := x.InexactFloat64()
		if serial < 1 || serial > 2_958_465 { // 9999-12-31
			return raw, nil
		}
		moment, err := excelize.ExcelDateToTime(serial, o.from1904)
		if err != nil {
			return raw, nil
		}
		if serial == float64(int(serial)) {
			return moment.Format("2006-01-02"), nil
		}
		return moment.Format("2006-01-02T15:04"), nil
	}
	return raw, nil
}

func percentage(s *excelize.Style) bool {
	return s.NumFmt == 9 || s.NumFmt == 10 || (s.CustomNumFmt != nil && strings.Contains(*s.CustomNumFmt, "%")) // ECMA-376 part 1, 18.8.30
}

func dated(s *excelize.Style) bool {
	if s.CustomNumFmt != nil {
		return strings.Contains(strings.ToLower(*s.CustomNumFmt), "yy")
	}
	return (s.NumFmt >= 14 && s.NumFmt <= 17) || s.NumFmt == 22
}
