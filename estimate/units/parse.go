package units

import (
	"math"
	"strings"
	"unicode/utf8"
)

// Parse returns the value of text in the unit that suffix stands for, such as
// 20.32 for "0.8 mil" and um. The text must name its unit unless suffix is "",
// which stands for counts and other plain numbers.
//
// Errors: *NoUnitError, *WrongUnitError, *NumberError, and *SuffixError for a
// suffix that is in no table.
func Parse(text, suffix string) (float64, error) { return parse(text, suffix, false) }

// ParseBare is Parse for CSV cells and query strings, where every number is
// text: one without a unit is taken to be in the unit of the suffix.
func ParseBare(text, suffix string) (float64, error) { return parse(text, suffix, true) }

func parse(text, suffix string, bareAllowed bool) (float64, error) {
	if errTables != nil {
		return 0, errTables
	}
	t := tables.targets[suffix]
	if t == nil {
		return 0, &SuffixError{Suffix: suffix}
	}
	if len(text) > longest {
		return 0, &NumberError{Text: text[:longest/2] + "…", Reason: "has more than 64 bytes"}
	}
	m := reading{scanner: scanner{text: text}, target: t}
	value, err := m.value(bareAllowed || suffix == "")
	if err != nil {
		return 0, err
	}
	result := value.float64()
	switch {
	case math.IsInf(result, 0):
		return 0, m.fault(tooLarge)
	case result == 0 && !value.isZero():
		return 0, m.fault(tooSmall)
	}
	return result, nil
}

// reading is one text on its way to one target.
type reading struct {
	scanner
	target *target
}

func (m *reading) fault(reason string) error {
	return &NumberError{Text: strings.TrimSpace(m.text), Reason: reason}
}

// value returns the number in the target's unit.
func (m *reading) value(bareAllowed bool) (fraction, error) {
	m.spaces()
	if m.done() {
		return fraction{}, m.fault("is empty")
	}
	negative := m.sign()
	number, integer, fault := m.number()
	if fault != "" {
		return fraction{}, m.fault(fault)
	}
	spelled := m.unit()
	if spelled == "" {
		return m.bare(number, negative, bareAllowed)
	}
	u, err := m.find(spelled)
	if err != nil {
		return fraction{}, err
	}
	total := number.times(u.factor)
	if !m.done() {
		second, err := m.second(u, spelled, integer)
		if err != nil {
			return fraction{}, err
		}
		total = total.plus(second)
	}
	if negative {
		total = total.negated()
	}
	if !m.target.difference && !u.offset.isZero() {
		total = total.plus(u.offset)
	}
	return total.times(m.target.unit.factor.inverse()), nil
}

func (m *reading) bare(number fraction, negative, allowed bool) (fraction, error) {
	switch {
	case !m.done():
		return fraction{}, m.fault(moreThanOne)
	case !allowed:
		return fraction{}, &NoUnitError{
			Text: strings.TrimSpace(m.text), Expected: m.target.unit.dimension.String(), Want: m.target.want,
		}
	case negative:
		number = number.negated()
	}
	return number, nil
}

// find looks up a unit and refuses one of another dimension.
func (m *reading) find(spelled string) (unit, error) {
	u, found := tables.lookup(spelled)
	if found && u.dimension == m.target.unit.dimension {
		return u, nil
	}
	wrong := &WrongUnitError{
		Text: strings.TrimSpace(m.text), Unit: spelled,
		Expected: m.target.unit.dimension.String(), Want: m.target.want,
	}
	if found {
		wrong.Found = u.dimension.String()
	}
	return unit{}, wrong
}

// second reads the inches after feet, in the base unit.
func (m *reading) second(first unit, firstSpelled string, firstIsWhole bool) (fraction, error) {
	if fault := m.separator(); fault != "" {
		return fraction{}, m.fault(fault)
	}
	number, _, fault := m.number()
	if fault != "" {
		return fraction{}, m.fault(fault)
	}
	spelled := m.unit()
	if spelled == "" {
		return fraction{}, m.fault("has a second number without a unit")
	}
	u, found := tables.lookup(spelled)
	if !found {
		_, err := m.find(spelled)
		return fraction{}, err
	}
	if !m.done() || !together(first.name, u.name) {
		return fraction{}, &WrongUnitError{
			Text: strings.TrimSpace(m.text), Unit: spelled, Before: firstSpelled, Found: u.dimension.String(),
			Expected: m.target.unit.dimension.String(), Want: m.target.want,
		}
	}
	if !firstIsWhole {
		return fraction{}, m.fault("has a fraction in both of its numbers; the first must be whole")
	}
	return number.times(u.factor), nil
}

func together(first, second string) bool {
	switch first {
	case "ft":
		return second == "in"
	case "lb":
		return second == "oz"
	case "h":
		return second == "min"
	}
	return false
}

// separator takes what may stand between two quantities: spaces, a comma, or a
// dash as on drawings, 5'-7". A dash with a space on one side only is a sign and
// refused.
func (s *scanner) separator() (fault string) {
	start := s.at
	switch s.text[s.at] {
	case ',':
		s.at++
	case '-':
		s.at++
		spaced := start > 0 && s.text[start-1] == ' '
		if spaced != strings.HasPrefix(s.text[s.at:], " ") {
			return "has a sign inside"
		}
	}
	s.spaces()
	return ""
}

// unit takes the text up to the next number, without the spaces around it. A 2
// or 3 right after a letter, as in m2 or ft3/min, belongs to the unit.
func (s *scanner) unit() string {
	s.spaces()
	start := s.at
	for s.at < len(s.text) {
		c := s.text[s.at]
		if c == '-' || c == '+' || c == ',' || (isDigit(c) && !s.power(start)) {
			break
		}
		if c == '.' && s.at+1 < len(s.text) && isDigit(s.text[s.at+1]) {
			break
		}
		width := 1
		if c >= utf8.RuneSelf {
			if _, fraction := vulgarFraction(s.text[s.at:]); fraction > 0 || strings.HasPrefix(s.text[s.at:], "−") {
				break
			}
			_, width = utf8.DecodeRuneInString(s.text[s.at:])
		}
		s.at += width
	}
	return strings.TrimSpace(s.text[start:s.at])
}

// power reports whether the digit at hand is the power of a unit begun at start.
func (s *scanner) power(start int) bool {
	c := s.text[s.at]
	if s.at == start || (c != '2' && c != '3') {
		return false
	}
	before := s.text[s.at-1]
	if before != '^' && !isLetter(before) {
		return false
	}
	if s.at+1 == len(s.text) {
		return true
	}
	after := s.text[s.at+1]
	return after == ' ' || after == '/' || after >= utf8.RuneSelf
}

func isLetter(c byte) bool { return (c|0x20) >= 'a' && (c|0x20) <= 'z' }
