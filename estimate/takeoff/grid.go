package takeoff

import (
	"path"
	"strings"

	"filmbuild/estimate/fault"
)

// Most that is read, so that no file can hold the program up.
const (
	MostBytes   = 4 << 20  // of one file
	MostFiles   = 40       // at once
	MostRows    = 5000     // of one table
	MostColumns = 400      // of one table
	MostCells   = 200_000  // of all tables that are filled
	mostUnzip   = 32 << 20 // bytes of an unpacked workbook
)

// File is one file of a take-off.
type File struct {
	Name string // tells the table of a CSV file: components.csv
	Data []byte
}

// grid is a table as it stands in a file.
type grid struct {
	name   string // of the sheet, or of the file without its ending
	rows   [][]cell
	commas bool // decimals may have a comma
	sheet  bool // of a workbook: its name must be that of a table
}

// cell is one cell as text.
type cell struct {
	said string
	bad  *trouble // what is wrong with it, whatever its column
}

func (c cell) blank() bool { return strings.TrimSpace(c.said) == "" && c.bad == nil }

// grids reads the tables of a file.
func grids(file File, faults *gathered) []grid {
	name := strings.TrimSuffix(path.Base(strings.ReplaceAll(file.Name, `\`, "/")), path.Ext(file.Name))
	where := fault.Cell{Sheet: name}
	switch {
	case len(file.Data) > MostBytes:
		faults.add(where, "", "too_many", "the file is larger than 4 MiB; no take-off needs that")
	case strings.HasPrefix(string(file.Data), "PK\x03\x04"):
		return workbook(file.Data, where, faults)
	case strings.HasPrefix(string(file.Data), "\xd0\xcf\x11\xe0"):
		faults.add(where, "", "wrong_type", "the file is a workbook of the old binary kind, or one with a password; save it as XLSX without one")
	default:
		if g, ok := readCSV(name, file.Data, faults); ok {
			return []grid{g}
		}
	}
	return nil
}

// letters is the name of a column as spreadsheets count, from 0: A, B, … AA.
func letters(column int) string {
	name := ""
	for column++; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}
