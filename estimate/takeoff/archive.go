package takeoff

import (
	"archive/zip"
	"bytes"

	"filmbuild/estimate"
	"filmbuild/products"
)

// ExportArchive is ExportCSV in one ZIP archive.
func ExportArchive(job []byte, reader *estimate.Reader, catalogue *products.Catalogue) ([]byte, error) {
	files, err := ExportCSV(job, reader, catalogue)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	archive := zip.NewWriter(&b)
	for _, file := range files {
		w, err := archive.Create(file.Name)
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(file.Data); err != nil {
			return nil, err
		}
	}
	err = archive.Close()
	return b.Bytes(), err
}
