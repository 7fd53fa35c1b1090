package units

import (
	"math/big"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	wordDigits       = 18  // decimal digits that surely fit in an int64
	fractionDigits   = 9   // "1/128" needs three
	largestExponent  = 400 // float64 ends at 308; digits before the exponent add to it
	notANumber       = "is not a number"
	moreThanOne      = "holds more than one number"
	tooLarge         = "is too large a number"
	tooSmall         = "is too small a number"
	improperFraction = "has a fraction of one or more after a whole number"
)

// scanner walks over one text. Its methods return a fault in words, "" if none.
type scanner struct {
	text string
	at   int
}

func (s *scanner) spaces() {
	for s.at < len(s.text) {
		r, width := utf8.DecodeRuneInString(s.text[s.at:])
		if !unicode.IsSpace(r) {
			return
		}
		s.at += width
	}
}

func (s *scanner) done() bool { return s.at == len(s.text) }

// sign takes a leading + or - (also the minus sign U+2212).
func (s *scanner) sign() (negative bool) {
	rest := s.text[s.at:]
	switch {
	case strings.HasPrefix(rest, "+"):
		s.at++
	case strings.HasPrefix(rest, "-"):
		s.at++
		return true
	case strings.HasPrefix(rest, "−"):
		s.at += len("−")
		return true
	}
	return false
}

// number takes a decimal, a fraction or a whole number with a fraction. integer
// is true for a whole number that stands alone.
func (s *scanner) number() (value fraction, integer bool, fault string) {
	if value, width := vulgarFraction(s.text[s.at:]); width > 0 {
		s.at += width
		return value, false, ""
	}
	run := s.run("0123456789.,")
	if !strings.ContainsAny(run, "0123456789") {
		return fraction{}, false, notANumber
	}
	if s.at < len(s.text) && strings.IndexByte("xX_", s.text[s.at]) >= 0 {
		return fraction{}, false, "is not a plain decimal number"
	}
	digits, point, fault := ungrouped(run)
	if fault != "" {
		return fraction{}, false, fault
	}
	exponent, given, fault := s.exponent()
	if fault != "" {
		return fraction{}, false, fault
	}
	value = decimal(digits, exponent-point)
	if point > 0 || given || strings.HasSuffix(run, ".") {
		return value, false, ""
	}
	if under, found, fault := s.denominator(); found || fault != "" {
		if len(digits) > fractionDigits {
			fault = "has too long a fraction"
		}
		return value.times(under), false, fault
	}
	part, found, fault := s.fractionAfter()
	if !found || fault != "" {
		return value, fault == "", fault
	}
	return value.plus(part), false, ""
}

// run takes the longest piece made of the given bytes.
func (s *scanner) run(of string) string {
	start := s.at
	for s.at < len(s.text) && strings.IndexByte(of, s.text[s.at]) >= 0 {
		s.at++
	}
	return s.text[start:s.at]
}

// ungrouped strips thousands commas and the point from a run and returns how
// many digits followed the point.
func ungrouped(run string) (digits string, point int, fault string) {
	integer, decimals, _ := strings.Cut(run, ".")
	if strings.ContainsAny(decimals, ".") {
		return "", 0, notANumber
	}
	if !strings.Contains(run, ",") {
		if decimals == "" {
			return integer, 0, ""
		}
		return integer + decimals, len(decimals), ""
	}
	groups := strings.Split(integer, ",")
	grouped := !strings.Contains(decimals, ",") && len(groups) > 1 &&
		groups[0] != "" && len(groups[0]) <= 3 && groups[0][0] != '0'
	for _, group := range groups[1:] {
		grouped = grouped && len(group) == 3
	}
	sure := len(groups) > 2 || decimals != "" // one group alone: 1,250 is 1250 to some and 1.25 to others
	switch {
	case grouped && !sure:
		return "", 0, "has an ambiguous comma; write " + strings.Join(groups, "") + " or " + strings.Replace(run, ",", ".", 1)
	case grouped:
		return strings.Join(groups, "") + decimals, len(decimals), ""
	case strings.Count(run, ",") == 1 && !strings.Contains(run, ".") && run[0] != ',' && run[len(run)-1] != ',':
		return "", 0, "has an ambiguous comma; write " + strings.Replace(run, ",", ".", 1)
	}
	return "", 0, "has misplaced commas; write the number with a decimal point and no commas"
}

// exponent takes e and an integer, if both are there.
func (s *scanner) exponent() (exponent int, given bool, fault string) {
	rest := s.text[s.at:]
	if rest == "" || (rest[0] != 'e' && rest[0] != 'E') {
		return 0, false, ""
	}
	end := 1
	if end < len(rest) && (rest[end] == '+' || rest[end] == '-') {
		end++
	}
	first := end
	for end < len(rest) && isDigit(rest[end]) {
		end++
	}
	if end == first {
		return 0, false, ""
	}
	s.at += end
	exponent, err := strconv.Atoi(rest[1:end])
	switch {
	case rest[1] == '-' && (err != nil || exponent < -largestExponent):
		return 0, true, tooSmall
	case err != nil || exponent > largestExponent:
		return 0, true, tooLarge
	}
	return exponent, true, ""
}

// denominator takes a slash and the digits that follow it at once, and returns
// 1 over them.
func (s *scanner) denominator() (part fraction, found bool, fault string) {
	rest := s.text[s.at:]
	width := slash(rest)
	if width == 0 || width == len(rest) || !isDigit(rest[width]) {
		return whole(1), false, ""
	}
	s.at += width
	digits := s.run("0123456789")
	if len(digits) > fractionDigits {
		return whole(1), true, "has too long a fraction"
	}
	under := decimal(digits, 0)
	if under.isZero() {
		return whole(1), true, "divides by zero"
	}
	if s.at < len(s.text) && strings.IndexByte(".,", s.text[s.at]) >= 0 {
		return whole(1), true, notANumber
	}
	return under.inverse(), true, ""
}

// fractionAfter takes the proper fraction of a mixed number, after spaces, a
// hyphen or, for a character such as ½, nothing.
func (s *scanner) fractionAfter() (part fraction, found bool, fault string) {
	ahead := scanner{text: s.text, at: s.at}
	if ahead.at < len(ahead.text) && ahead.text[ahead.at] == '-' {
		ahead.at++
	} else {
		ahead.spaces()
	}
	if part, width := vulgarFraction(ahead.text[ahead.at:]); width > 0 {
		s.at = ahead.at + width
		return part, true, ""
	}
	over := ahead.run("0123456789")
	if over == "" || ahead.at == s.at {
		return fraction{}, false, ""
	}
	under, found, fault := ahead.denominator()
	if !found || fault != "" {
		return fraction{}, false, fault
	}
	s.at = ahead.at
	if len(over) > fractionDigits {
		return fraction{}, false, "has too long a fraction"
	}
	part = decimal(over, 0).times(under)
	if part.num >= part.den {
		return fraction{}, false, improperFraction
	}
	return part, true, ""
}

// decimal returns digits · 10^exponent.
func decimal(digits string, exponent int) fraction {
	digits = strings.TrimLeft(digits, "0")
	if digits == "" {
		return whole(0)
	}
	if len(digits) <= wordDigits && exponent <= 0 && exponent >= -wordDigits {
		n, _ := strconv.ParseInt(digits, 10, 64) // eighteen digits cannot fail
		return fraction{num: n, den: power10(-exponent)}
	}
	n, _ := new(big.Int).SetString(digits, 10) // digits only cannot fail
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(exponent, -exponent))), nil)
	if exponent < 0 {
		return fraction{wide: new(big.Rat).SetFrac(n, scale)}
	}
	return fraction{wide: new(big.Rat).SetInt(n.Mul(n, scale))}
}

func power10(exponent int) int64 {
	power := int64(1)
	for range exponent {
		power *= 10
	}
	return power
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// slash returns the width of a leading slash or fraction slash, 0 if none.
func slash(text string) int {
	switch {
	case strings.HasPrefix(text, "/"):
		return 1
	case strings.HasPrefix(text, "⁄"):
		return len("⁄")
	}
	return 0
}

// vulgarFraction reads one of the Unicode fraction characters; width is 0 for
// any other text.
func vulgarFraction(text string) (value fraction, width int) {
	r, width := utf8.DecodeRuneInString(text)
	if r < '¼' {
		return fraction{}, 0
	}
	for _, f := range [...]struct {
		r        rune
		num, den int64
	}{
		{'¼', 1, 4}, {'½', 1, 2}, {'¾', 3, 4}, {'⅐', 1, 7}, {'⅑', 1, 9}, {'⅒', 1, 10}, {'⅓', 1, 3}, {'⅔', 2, 3},
		{'⅕', 1, 5}, {'⅖', 2, 5}, {'⅗', 3, 5}, {'⅘', 4, 5}, {'⅙', 1, 6}, {'⅚', 5, 6},
		{'⅛', 1, 8}, {'⅜', 3, 8}, {'⅝', 5, 8}, {'⅞', 7, 8},
	} {
		if f.r == r {
			return fraction{num: f.num, den: f.den}, width
		}
	}
	return fraction{}, 0
}
