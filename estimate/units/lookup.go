package units

import (
	"bytes"
	"unicode"
	"unicode/utf8"
)

// longest is the most bytes a text may have. The longest sensible one, a
// spelled-out compound with a mixed fraction, has about fifty.
const longest = 64

// lookup finds the unit that text spells, simple or compound.
func (b *book) lookup(text string) (unit, bool) {
	var space [2 * longest]byte
	spelled := plain(space[:0], text)
	if u, found := b.simple(spelled); found {
		return u, true
	}
	upper, lower, compound := bytes.Cut(spelled, []byte("/"))
	if !compound {
		return unit{}, false
	}
	over, foundOver := b.simple(upper)
	under, foundUnder := b.simple(lower)
	if !foundOver || !foundUnder {
		return unit{}, false
	}
	return over.over(under)
}

// simple looks a spelling up as it is, then without regard to case; the table
// says which spellings allow that.
func (b *book) simple(spelled []byte) (unit, bool) {
	if u, found := b.exact[string(spelled)]; found {
		return *u, true
	}
	var space [2 * longest]byte
	folded := append(space[:0], spelled...)
	for i, c := range folded {
		if c >= 'A' && c <= 'Z' {
			folded[i] = c + 'a' - 'A'
		}
	}
	u, found := b.folded[string(folded)]
	if !found {
		return unit{}, false
	}
	return *u, true
}

// plain appends text to out in the one form the table is written in: single
// spaces and none around a slash, "per" as a slash, no dots, ² as 2, both micro signs as u, and
// typewriter quotes for the primes of feet and inches.
func plain(out []byte, text string) []byte {
	for _, r := range text {
		switch r {
		case '.', '^':
		case '²':
			out = append(out, '2')
		case '³':
			out = append(out, '3')
		case 'µ', 'μ':
			out = append(out, 'u')
		case '′', '’', '‘':
			out = append(out, '\'')
		case '″', '”', '“':
			out = append(out, '"')
		case 'º':
			out = append(out, "°"...)
		case '/', '⁄':
			out = append(bytes.TrimRight(out, " "), '/')
		default:
			if !unicode.IsSpace(r) {
				out = utf8.AppendRune(out, r)
			} else if len(out) > 0 && out[len(out)-1] != ' ' && out[len(out)-1] != '/' {
				out = append(out, ' ')
			}
		}
	}
	out = bytes.TrimRight(out, " ")
	const per = " per "
	if i := bytes.Index(out, []byte(per)); i >= 0 {
		out[i] = '/'
		out = append(out[:i+1], out[i+len(per):]...)
	}
	return out
}
