package command

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/takeoff"
	"filmbuild/products"
)

// importTables prints the job that tables make.
func importTables(args []string, s streams) int {
	flags := flag.NewFlagSet("import", flag.ContinueOnError)
	if code, ok := parse(flags, args, takeoff.MostFiles, s); !ok {
		return code
	}
	if flags.NArg() == 0 {
		fmt.Fprintf(s.err, "import wants files\n\n%s", usage)
		return lineFault
	}
	job, err := tabled(flags.Args())
	if err != nil {
		return refused(err, s.err, s)
	}
	if _, err := s.out.Write(job); err != nil {
		return broken(err, s)
	}
	return done
}

// exportTables writes a job as tables.
func exportTables(args []string, s streams) int {
	flags := flag.NewFlagSet("export", flag.ContinueOnError)
	format := flags.String("format", "xlsx", "xlsx, or zip for CSV files in an archive")
	name := flags.String("example", example.Default, "a built-in example, where no file is given")
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	write, known := map[string]func([]byte, *estimate.Reader, *products.Catalogue) ([]byte, error){"xlsx": takeoff.Export, "zip": takeoff.ExportArchive}[*format]
	if !known {
		fmt.Fprintf(s.err, "format %q is not known; give xlsx or zip\n", *format)
		return lineFault
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	job, err := input(flags.Arg(0), *name, s)
	if err != nil {
		return refused(err, s.err, s)
	}
	data, err := write(job, estimate.NewReader(beside(flags.Arg(0))), catalogue)
	if err != nil {
		return faulty(err, s.err)
	}
	if _, err := s.out.Write(data); err != nil {
		return broken(err, s)
	}
	return done
}

// tabled makes a job of tables. The error is one of a file, or a *tablesError.
func tabled(names []string) ([]byte, error) {
	var files []takeoff.File
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		files = append(files, takeoff.File{Name: filepath.Base(name), Data: data})
	}
	catalogue, err := products.Load()
	if err != nil {
		return nil, err
	}
	job, err := takeoff.Import(files, estimate.NewReader(beside(names[0])), catalogue)
	if err != nil {
		return nil, &tablesError{err}
	}
	return job, nil
}

// tablesError says that tables are at fault and not the command line.
type tablesError struct{ cause error }

func (e *tablesError) Error() string { return e.cause.Error() }
