package takeoff

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate/fault"
)

// parts is a workbook with a sheet of components that a test goes on with.
func parts(t *testing.T, more func(f *excelize.File, s string)) []byte {
	t.Helper()
	f := excelize.NewFile()
	const s = "Components"
	require.NoError(t, f.SetSheetName("Sheet1", s))
	for at, v := range map[string]any{"A1": "id", "B1": "kind", "C1": "area [m²]", "D1": "extra_area [%]", "A2": "a", "B2": "measured", "C2": 2.5} {
		require.NoError(t, f.SetCellValue(s, at, v))
	}
	more(f, s)
	b, err := f.WriteToBuffer()
	require.NoError(t, err)
	return b.Bytes()
}

func readWorkbook(t *testing.T, data []byte) (map[string]any, []fault.Fault) {
	t.Helper()
	reader, catalogue := engine(t)
	job, err := Import([]File{{Name: "mine.xlsx", Data: data}}, reader, catalogue)
	var bad *fault.Error
	if errors.As(err, &bad) {
		return nil, bad.Faults
	}
	require.NoError(t, err)
	var read map[string]any
	require.NoError(t, json.Unmarshal(job, &read))
	return read, nil
}

// A share that is shown as 5 % is stored as 0.05: it must not become 0.05 %.
func TestCellsMeanWhatTheyShow(t *testing.T) {
	job, faults := readWorkbook(t, parts(t, func(f *excelize.File, s string) {
		percent, err := f.NewStyle(&excelize.Style{NumFmt: 9})
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue(s, "D2", 0.05))
		require.NoError(t, f.SetCellStyle(s, "D2", "D2", percent))
		_, err = f.NewSheet("job")
		require.NoError(t, err)
		date := "yyyy-mm-dd"
		day, err := f.NewStyle(&excelize.Style{CustomNumFmt: &date})
		require.NoError(t, err)
		require.NoError(t, f.SetSheetRow("job", "A1", &[]any{"field", "value"}))
		require.NoError(t, f.SetSheetRow("job", "A2", &[]any{"name", 46357})) // identity: 2026-12-01 is day 46357 since 1899-12-30
		require.NoError(t, f.SetCellStyle("job", "B2", "B2", day))
		_, err = f.NewSheet("Notes of ours")
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue("Notes of ours", "A1", "whatever"))
	}))
	require.Empty(t, faults)
	assert.Equal(t, "5 %", part(job)["extra_area_percent"])
	assert.Equal(t, "2026-12-01", job["name"])
}

func TestFormulasCountWithTheirSavedValue(t *testing.T) {
	_, faults := readWorkbook(t, parts(t, func(f *excelize.File, s string) {
		require.NoError(t, f.SetCellValue(s, "C2", nil))
		require.NoError(t, f.SetCellFormula(s, "C2", "1+1.5"))
	}))
	require.NotEmpty(t, faults)
	assert.Equal(t, fault.Cell{Sheet: "Components", Row: 2, Column: "C", Head: "area [m²]"}, *faults[0].Cell)
	assert.Contains(t, faults[0].Detail, "recalculate")
	job, faults := readWorkbook(t, parts(t, func(f *excelize.File, s string) {
		require.NoError(t, f.SetCellFormula(s, "C2", "1+1.5")) // beside the value 2.5 that is there
	}))
	require.Empty(t, faults)
	assert.Equal(t, 2.5, part(job)["shape"].(map[string]any)["area_m2"])
}

func TestUnknownSheetsAreRefused(t *testing.T) {
	_, faults := readWorkbook(t, parts(t, func(f *excelize.File, s string) {
		_, err := f.NewSheet("componants")
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue("componants", "A1", "id"))
	}))
	require.Len(t, faults, 1)
	assert.Equal(t, "unknown_kind", faults[0].Code)
	assert.Equal(t, "componants", faults[0].Cell.Sheet)
}

// bomb is a workbook whose sheet holds other XML.
func bomb(t *testing.T, sheet func(w *bytes.Buffer)) []byte {
	t.Helper()
	whole := parts(t, func(*excelize.File, string) {})
	in, err := zip.NewReader(bytes.NewReader(whole), int64(len(whole)))
	require.NoError(t, err)
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, file := range in.File {
		if file.Name == "xl/worksheets/sheet1.xml" {
			part, err := w.Create(file.Name)
			require.NoError(t, err)
			var b bytes.Buffer
			sheet(&b)
			_, err = part.Write(b.Bytes())
			require.NoError(t, err)
			continue
		}
		require.NoError(t, w.Copy(file))
	}
	require.NoError(t, w.Close())
	return out.Bytes()
}

func TestBombsAreRefused(t *testing.T) {
	head, tail := `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`, `</sheetData></worksheet>`
	for name, inner := range map[string]string{
		"unpacks to more": strings.Repeat(" ", mostUnzip+1),
		"in XFD1;":        `<row r="1"><c r="XFD1" t="n"><v>1</v></c></row>`,
		"in A1048576;":    `<row r="1048576"></row>`,
		"200000 cells":    strings.Repeat(`<row>`+strings.Repeat(`<c/>`, 300)+`</row>`, 700),
	} {
		data := bomb(t, func(b *bytes.Buffer) { b.WriteString(head + inner + tail) })
		_, faults := readWorkbook(t, data)
		require.Len(t, faults, 1, name)
		assert.Equal(t, "too_many", faults[0].Code, name)
		assert.Contains(t, faults[0].Detail, name)
		assert.Less(t, len(data), 1<<20, "a small file")
	}
}
