package marking

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// reporter receives one fault: a JSON pointer, a stable code and a sentence.
type reporter = func(pointer, code, detail string)

// inRange reports every number outside the limits of its tag and says whether
// there was none, so that rules between fields can be skipped. It checks the
// fields that all figures share as well.
func inRange(f Figure, report reporter) bool {
	f.shared().check(report)
	clean := true
	quantity.Check(f, func(pointer, code, detail string) {
		clean = false
		report(pointer, code, detail)
	})
	return clean
}

// mostColour is the longest name of a colour, in bytes.
const mostColour = 60

// checkColour reports a colour that is missing, is the base, or is not written
// in lower-case words.
func checkColour(pointer, colour string, report reporter) {
	switch {
	case colour == "":
		report(pointer, "required", last(pointer)+" is missing; name the colour in lower-case words, such as white")
	case colour == planar.Base:
		report(pointer, "not_applicable", last(pointer)+` is "base", which stands for the ground; leave that part of the figure out, or name a paint's colour`)
	case len(colour) > mostColour:
		report(pointer, "out_of_range", fmt.Sprintf("%s has %d bytes; a colour's name has at most %d", last(pointer), len(colour), mostColour))
	case !lowerWords(colour):
		report(pointer, "wrong_type", fmt.Sprintf("%s is %q; write a colour in lower-case letters and digits, words joined by a space, hyphen or underscore", last(pointer), colour))
	}
}

func lowerWords(text string) bool {
	for _, r := range text {
		if !isJoint(r) && !unicode.IsLower(r) && !unicode.IsDigit(r) {
			return false
		}
	}
	return text != "" && !isJoint(rune(text[0])) && !isJoint(rune(text[len(text)-1]))
}

func isJoint(r rune) bool { return r == ' ' || r == '-' || r == '_' }

// oneOf reports a word that is none of those allowed.
func oneOf(pointer, value string, report reporter, allowed ...string) {
	for _, a := range allowed {
		if value == a {
			return
		}
	}
	report(pointer, "unknown_kind", fmt.Sprintf("%s is %q; it must be one of %s", last(pointer), value, strings.Join(allowed, ", ")))
}

// last is the last part of a JSON pointer.
func last(pointer string) string { return pointer[strings.LastIndexByte(pointer, '/')+1:] }

// metres prints a length for a sentence.
func metres(value float64) string { return strconv.FormatFloat(value, 'g', 6, 64) + " m" }

// layer is one colour on outlines.
func layer(colour string, outlines ...planar.Outline) planar.Layer {
	return planar.Layer{Colour: colour, Outline: outlines}
}
