package takeoff

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"strings"

	"github.com/xuri/excelize/v2"
)

// scanned is what a look at the raw parts of a workbook tells.
type scanned struct {
	parts    map[string]string   // name of a sheet -> its part
	unvalued map[string][]string // part -> formulas without a value
	cells    int
}

// scan goes through a workbook as a stream, before any of it is held in memory:
// a small file may unpack to a very large one. It answers what is too much.
func scan(data []byte) (*scanned, string) {
	seen := &scanned{unvalued: map[string][]string{}}
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return seen, "" // told by who opens it
	}
	if len(archive.File) > 1000 {
		return seen, "the workbook has more than 1000 parts; save the tables into a workbook of their own"
	}
	left := int64(mostUnzip)
	for _, part := range archive.File {
		r, err := part.Open()
		if err != nil {
			return seen, ""
		}
		counted := &io.LimitedReader{R: r, N: left + 1}
		bad := ""
		if strings.HasPrefix(part.Name, "xl/worksheets/") {
			bad = seen.sheet(counted, part.Name)
		}
		_, _ = io.Copy(io.Discard, counted) // a part that cannot be read is told by who opens it
		_ = r.Close()
		if left = counted.N - 1; left < 0 {
			return seen, fmt.Sprintf("the workbook unpacks to more than %d MiB; save the tables into a workbook of their own", mostUnzip>>20)
		}
		if bad != "" {
			return seen, bad
		}
	}
	seen.parts = partsOf(archive)
	return seen, ""
}

// sheet reads the XML of a sheet up to where it has more rows, columns or cells
// than any take-off, and notes formulas without a value (ECMA-376 part 1,
// 18.3.1.4).
func (s *scanned) sheet(r io.Reader, part string) string {
	d := xml.NewDecoder(r)
	var at string // of the cell that is read
	merged, rows, formula, valued := 0, 0, false, false
	for {
		token, err := d.RawToken()
		if err != nil {
			return ""
		}
		switch t := token.(type) {
		case xml.StartElement:
			switch t.Name.Local {
			case "mergeCell":
				merged++
			case "row":
				rows++
				if bad := tooFar("A" + attribute(t, "r")); bad != "" {
					return bad
				}
			case "c":
				at, formula, valued = attribute(t, "r"), false, false
				s.cells++
				if bad := tooFar(at); bad != "" {
					return bad
				}
			case "f":
				formula = true
			case "v", "is":
				valued = true
			}
		case xml.EndElement:
			if t.Name.Local == "c" && formula && !valued && at != "" {
				s.unvalued[part] = append(s.unvalued[part], at)
			}
		}
		if s.cells > MostCells || merged > 1000 || rows > MostRows {
			return fmt.Sprintf("the workbook has more than %d cells, 1000 merged ones or %d rows in a sheet; save the tables into a workbook of their own", MostCells, MostRows)
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// tooFar says that a reference lies outside of any table.
func tooFar(reference string) string {
	column, row, err := excelize.CellNameToCoordinates(reference)
	if err == nil && (column > MostColumns || row > MostRows) {
		return fmt.Sprintf("a sheet has something in %s; a table has at most %d rows and %d columns, formats of empty cells included", reference, MostRows, MostColumns)
	}
	return ""
}

// partsOf finds the part of each sheet through the relations of the workbook
// (ECMA-376 part 1, 18.2.19).
func partsOf(archive *zip.Reader) map[string]string {
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
			ID   string `xml:"id,attr"`
		} `xml:"sheets>sheet"`
	}
	var relations struct {
		All []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	found := map[string]string{}
	if readXML(archive, "xl/workbook.xml", &book) != nil || readXML(archive, "xl/_rels/workbook.xml.rels", &relations) != nil {
		return found // told by who opens it
	}
	for _, s := range book.Sheets {
		for _, r := range relations.All {
			if r.ID != s.ID {
				continue
			}
			if absolute, ok := strings.CutPrefix(r.Target, "/"); ok {
				found[s.Name] = absolute
			} else {
				found[s.Name] = path.Join("xl", r.Target)
			}
		}
	}
	return found
}

func readXML(archive *zip.Reader, name string, into any) error {
	r, err := archive.Open(name)
	if err != nil {
		return err
	}
	defer r.Close()
	return xml.NewDecoder(r).Decode(into)
}
