package command

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/surfaces/mesh"
)

// input reads a job from a file, a table or a workbook of tables among them,
// from standard input or from the examples.
func input(file, name string, s streams) ([]byte, error) {
	switch file {
	case "":
		e, err := example.Find(name)
		return e.Job, err
	case "-":
		return io.ReadAll(io.LimitReader(s.in, api.MostBody))
	}
	if ending := strings.ToLower(filepath.Ext(file)); ending == ".csv" || ending == ".xlsx" {
		return tabled([]string{file})
	}
	return os.ReadFile(file)
}

// beside finds the meshes that a job names among the files beside it.
func beside(job string) estimate.Meshes {
	return func(name string, o mesh.Options) (mesh.Result, error) {
		if !filepath.IsLocal(name) {
			return mesh.Result{}, errors.New("a mesh must lie beside the job, or in a folder there")
		}
		return mesh.MeasureFile(context.Background(), filepath.Join(filepath.Dir(job), name), o)
	}
}
