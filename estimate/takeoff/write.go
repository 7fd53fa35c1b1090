package takeoff

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// writeCSV writes a table as CSV. Text that a spreadsheet would run as a formula
// gets an apostrophe, which reading takes off.
func writeCSV(s sheet) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.Write(s.heads); err != nil {
		return nil, err
	}
	for _, row := range s.rows {
		record := make([]string, len(row))
		for i, v := range row {
			switch x := v.(type) {
			case nil:
			case string:
				record[i] = guarded(x)
			default:
				record[i] = fmt.Sprint(x)
			}
		}
		if err := w.Write(record); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// writeWorkbook writes tables as the sheets of a workbook: heads bold and held in
// view, texts as texts, which no spreadsheet runs.
func writeWorkbook(sheets []sheet) ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close() // it has no file behind it
	bold, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{Vertical: "top"},
		Border: []excelize.Border{{Type: "bottom", Color: "808080", Style: 1}}})
	if err != nil {
		return nil, err
	}
	for i, s := range sheets {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), s.name)
		} else {
			_, err = f.NewSheet(s.name)
		}
		if err == nil {
			err = writeSheet(f, s, bold)
		}
		if err != nil {
			return nil, err
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func writeSheet(f *excelize.File, s sheet, bold int) error {
	w, err := f.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	for i := range s.heads {
		if err := w.SetColWidth(i+1, i+1, width(s, i)); err != nil {
			return err
		}
	}
	if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	heads := make([]any, len(s.heads))
	for i, head := range s.heads {
		heads[i] = excelize.Cell{StyleID: bold, Value: head}
	}
	if err := w.SetRow("A1", heads); err != nil {
		return err
	}
	for i, row := range s.rows {
		cells := make([]any, len(row))
		for k, v := range row {
			cells[k] = spreadsheetValue(v)
		}
		if err := w.SetRow("A"+strconv.Itoa(i+2), cells); err != nil {
			return err
		}
	}
	return w.Flush()
}

// spreadsheetValue is a cell's value: numbers of at most 15 digits as numbers,
// which is what spreadsheets keep, all else as text.
func spreadsheetValue(v any) any {
	n, ok := v.(json.Number)
	if !ok {
		return v
	}
	digits := strings.TrimLeft(strings.NewReplacer("-", "", ".", "").Replace(n.String()), "0")
	x, err := n.Float64()
	if err != nil || len(digits) > 15 || strings.ContainsAny(n.String(), "eE") {
		return n.String()
	}
	return x
}

// width is that of the longest text of a column, within what reads well.
func width(s sheet, column int) float64 {
	most := len(s.heads[column])
	for _, row := range s.rows {
		if row[column] != nil {
			most = max(most, len(fmt.Sprint(row[column])))
		}
	}
	return float64(min(max(most+2, 8), 60))
}
