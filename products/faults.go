package products

import (
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong in the data files.
type Fault struct {
	File   string
	Line   int    // of the file, from 1; 0 for the file as a whole
	Column string // empty for the line as a whole
	Detail string
}

func (f Fault) String() string {
	text := f.File
	if f.Line > 0 {
		text += fmt.Sprintf(":%d", f.Line)
	}
	if f.Column != "" {
		text += ": " + f.Column
	}
	return text + ": " + f.Detail
}

// Faults is everything wrong in the data files, in order of file and line.
type Faults []Fault

func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.String()
	}
	return strings.Join(lines, "\n")
}

// orNil returns the faults as an error, nil when there are none.
func (f Faults) orNil() error {
	if len(f) == 0 {
		return nil
	}
	slices.SortStableFunc(f, func(a, b Fault) int {
		if order := strings.Compare(a.File, b.File); order != 0 {
			return order
		}
		return a.Line - b.Line
	})
	return f
}
