package surfaces

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/surfaces/quantity"
)

// reporter receives one fault: a JSON pointer, a stable code and a sentence.
type reporter = func(pointer, code, detail string)

// inRange reports every number outside the limits of its tag and says whether
// there was none, so that rules between fields can be skipped.
func inRange(v any, report reporter) bool {
	clean := true
	quantity.Check(v, func(pointer, code, detail string) {
		clean = false
		report(pointer, code, detail)
	})
	return clean
}

// given reports a number that has to be there and says whether it is.
func given(pointer string, value *float64, report reporter) bool {
	if value != nil {
		return true
	}
	report(pointer, "required", name(pointer)+" is missing; give it")
	return false
}

// oneOf reports a word that is none of those allowed and says whether it is one.
func oneOf(pointer, value string, report reporter, allowed ...string) bool {
	for _, a := range allowed {
		if value == a {
			return true
		}
	}
	report(pointer, "unknown_kind", fmt.Sprintf("%s is %q; it must be one of %s", name(pointer), value, strings.Join(allowed, ", ")))
	return false
}

// notApplicable reports a number that has no meaning beside the others.
func notApplicable(pointer string, value *float64, why string, report reporter) bool {
	if value == nil {
		return true
	}
	report(pointer, "not_applicable", fmt.Sprintf("%s is given, but %s; leave it out", name(pointer), why))
	return false
}

// name is the last part of a JSON pointer.
func name(pointer string) string {
	return pointer[strings.LastIndexByte(pointer, '/')+1:]
}

// or returns an optional number or what stands for it when it is absent.
func or(value *float64, absent float64) float64 {
	if value == nil {
		return absent
	}
	return *value
}

// metres prints a length for a sentence.
func metres(value float64) string {
	return strconv.FormatFloat(value, 'g', 6, 64) + " m"
}

func pointer[T any](value T) *T { return &value }
