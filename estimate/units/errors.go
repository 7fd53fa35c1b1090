package units

import (
	"errors"
	"fmt"
	"strings"
)

// ErrNoUnit is wrapped by every *NoUnitError, for errors.Is.
var ErrNoUnit = errors.New("text without a unit")

// NoUnitError refuses text that is a bare number where a unit must be said.
type NoUnitError struct {
	Text     string
	Expected string   // the dimension: "a length"
	Want     []string // the units that will do
}

func (e *NoUnitError) Error() string {
	return fmt.Sprintf("%q has no unit; %s", e.Text, expectation(e.Expected, e.Want))
}

func (e *NoUnitError) Unwrap() error { return ErrNoUnit }

// WrongUnitError refuses a unit that is not known, that measures something
// else, or that does not go with the unit before it.
type WrongUnitError struct {
	Text     string
	Unit     string
	Found    string // the dimension of Unit, "" when Unit is not known
	Before   string // the unit Unit was added to, as kg in "3 m 2 kg"
	Expected string
	Want     []string
}

func (e *WrongUnitError) Error() string {
	switch {
	case e.Before != "":
		return fmt.Sprintf("%q adds %s to %s; only ft and in, lb and oz, h and min go together, each once and the larger first", e.Text, e.Unit, e.Before)
	case e.Found == "":
		return fmt.Sprintf("%q: the unit %q is not known; %s", e.Text, e.Unit, expectation(e.Expected, e.Want))
	}
	return fmt.Sprintf("%s is %s; %s", e.Text, e.Found, expectation(e.Expected, e.Want))
}

// NumberError refuses text whose number cannot be read as one plain value.
type NumberError struct {
	Text   string
	Reason string
}

func (e *NumberError) Error() string { return fmt.Sprintf("%q %s", e.Text, e.Reason) }

// SuffixError says that the program asked for a suffix the tables do not hold.
type SuffixError struct{ Suffix string }

func (e *SuffixError) Error() string {
	return fmt.Sprintf("no unit is known for names ending in _%.32s", e.Suffix)
}

func expectation(dimension string, want []string) string {
	if len(want) == 0 {
		return dimension + " is expected"
	}
	return dimension + " is expected: " + strings.Join(want, ", ")
}
