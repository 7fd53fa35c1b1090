package command

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"filmbuild/estimate/fault"
	"filmbuild/products"
)

func indented(value any) ([]byte, error) {
	text, err := json.MarshalIndent(value, "", "  ")
	return append(text, '\n'), err
}

// withCatalogue prints what a function makes of the catalogue; its error is the
// job's.
func withCatalogue(s streams, do func(*products.Catalogue) ([]byte, error)) int {
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	text, err := do(catalogue)
	if err != nil {
		return faulty(err, s.err)
	}
	if _, err := s.out.Write(text); err != nil {
		return broken(err, s)
	}
	return done
}

// refused tells why there is no job: the faults of its tables on out, or what is
// wrong with the command line.
func refused(err error, out io.Writer, s streams) int {
	var tables *tablesError
	if errors.As(err, &tables) {
		return faulty(tables.cause, out)
	}
	fmt.Fprintln(s.err, err)
	return lineFault
}

// faulty prints the faults of a job, one to a line.
func faulty(err error, out io.Writer) int {
	var list *fault.Error
	if !errors.As(err, &list) {
		fmt.Fprintln(out, err)
		return jobFault
	}
	for _, f := range list.Faults {
		at := f.Pointer
		switch {
		case f.Cell != nil:
			at = f.Cell.String()
		case at == "":
			at = "the job"
		}
		fmt.Fprintf(out, "%s: %s [%s]\n", at, f.Detail, f.Code)
	}
	return jobFault
}

func broken(err error, s streams) int {
	fmt.Fprintln(s.err, "filmbuild is broken:", err)
	return lineFault
}
