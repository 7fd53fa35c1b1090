package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// writeInOrder writes a file with its parts in the order of their names: the
// library takes them in another order each time, and the same estimate is to
// give the same bytes.
func writeInOrder(w io.Writer, f *excelize.File) error {
	made, err := f.WriteToBuffer()
	if err != nil {
		return err
	}
	archive, err := zip.NewReader(bytes.NewReader(made.Bytes()), int64(made.Len()))
	if err != nil {
		return err
	}
	slices.SortFunc(archive.File, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	out := zip.NewWriter(w)
	for _, part := range archive.File {
		if err := out.Copy(part); err != nil {
			return err
		}
	}
	return out.Close()
}
