// Package fault collects what is wrong with an input: all of it, each with
// where it is and what to do.
package fault

import (
	"fmt"
	"strings"
)

// Fault is one thing wrong with an input.
type Fault struct {
	Pointer string `json:"pointer"`        // RFC 6901 JSON pointer into the input; empty for the whole
	Code    string `json:"code"`           // stable, for programs
	Detail  string `json:"detail"`         // one sentence for people: what is wrong and what to do
	Cell    *Cell  `json:"cell,omitempty"` // of a take-off: where it stands in the tables
}

// Cell is a place in the tables of a take-off.
type Cell struct {
	Sheet  string `json:"sheet"`            // name of the sheet or the file
	Row    int    `json:"row,omitempty"`    // from 1; left out for the whole sheet
	Column string `json:"column,omitempty"` // letters, as spreadsheets count; left out for the whole row
	Head   string `json:"head,omitempty"`   // what the column is headed
}

// String says the place in words: components, row 3, column D (span [m]).
func (c Cell) String() string {
	said := c.Sheet
	if c.Row > 0 {
		said += fmt.Sprintf(", row %d", c.Row)
	}
	if c.Column != "" {
		said += ", column " + c.Column
	}
	if c.Head != "" {
		said += " (" + c.Head + ")"
	}
	return said
}

// Most is the number of faults that a List keeps; a List that has met more
// says so in its last entry.
const Most = 500

// List gathers faults. Only the first fault at a pointer is kept: later ones
// there follow from it. The zero value is ready for use.
type List struct {
	faults []Fault
	seen   map[string]bool
	below  map[string]bool // every pointer above a fault, listed or not
	beyond int
}

// Add notes a fault at a JSON pointer.
func (l *List) Add(pointer, code, detail string) {
	if l.seen[pointer] {
		return
	}
	if l.seen == nil {
		l.seen, l.below = map[string]bool{}, map[string]bool{}
	}
	l.seen[pointer] = true
	for up := pointer; up != ""; {
		up = up[:max(0, strings.LastIndexByte(up, '/'))]
		l.below[up] = true
	}
	if len(l.faults) == Most {
		l.beyond++
		return
	}
	l.faults = append(l.faults, Fault{Pointer: pointer, Code: code, Detail: detail})
}

// Addf is Add with a formatted detail.
func (l *List) Addf(pointer, code, format string, args ...any) {
	l.Add(pointer, code, fmt.Sprintf(format, args...))
}

// At returns a reporter for what lies below prefix.
func (l *List) At(prefix string) func(pointer, code, detail string) {
	return func(pointer, code, detail string) { l.Add(prefix+pointer, code, detail) }
}

// Has reports whether a fault was noted at exactly this pointer.
func (l *List) Has(pointer string) bool { return l.seen[pointer] }

// HasBelow reports whether a fault was noted at this pointer or below it, be it
// one of those kept or one beyond Most.
func (l *List) HasBelow(pointer string) bool { return l.seen[pointer] || l.below[pointer] }

// Empty reports whether nothing was noted.
func (l *List) Empty() bool { return len(l.faults) == 0 }

// Err returns nil for an empty list, and an *Error with every fault otherwise.
func (l *List) Err() error {
	if l.Empty() {
		return nil
	}
	faults := l.faults
	if l.beyond > 0 {
		faults = append(faults[:len(faults):len(faults)], Fault{Code: "too_many",
			Detail: fmt.Sprintf("%d further faults are not listed; mend these first", l.beyond)})
	}
	return &Error{Faults: faults}
}

// Error is an input with at least one fault.
type Error struct{ Faults []Fault }

func (e *Error) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = fmt.Sprintf("%s: %s (%s)", f.Pointer, f.Detail, f.Code)
	}
	return strings.Join(lines, "\n")
}
