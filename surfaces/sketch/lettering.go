package sketch

import (
	"encoding/xml"
	"strings"
)

// Letters are 3.5 mm high capitals, which is 10 px where the sheet is 360 px
// wide. Sizes of letters, in mm.
const (
	letterSize = 5.0 // the font's size
	capital    = 3.7 // above the base line
	descent    = 1.1 // below it
	lineSpace  = 6.5 // from line to line
)

// class of text.
const (
	dimensionText = "sketch-dimension"
	faceText      = "sketch-face"
	noteText      = "sketch-note"
)

// lettering is one text: where the middle of its base line is, and how it is
// written.
type lettering struct {
	text, class string
	face        string // the face it names, as on the wire
	upright     bool   // reads from below
	hang        hang
	underlined  bool
}

// hang is the point of a text that stays in place where letters turn out
// narrower than they are taken for here.
type hang int

const (
	atMiddle hang = iota
	atStart
	atEnd
)

// box is where the letters are when the middle of the base line is at q.
func (l lettering) box(q point) bounds {
	half := textWidth(l.text) / 2
	if l.upright {
		return bounds{point{q.x - capital, q.y - half}, point{q.x + descent, q.y + half}}
	}
	return bounds{point{q.x - half, q.y - capital}, point{q.x + half, q.y + descent}}
}

// free says whether letters at q would touch no others.
func (d *drawing) free(l lettering, q point) bool {
	b := l.box(q)
	for _, t := range d.texts {
		if b.meets(t) {
			return false
		}
	}
	return true
}

// raised returns the place for a text at q, or above it where there are letters
// already.
func (d *drawing) raised(l lettering, q point) point {
	for tries := 0; !d.free(l, q) && tries < 12; tries++ {
		q.y -= lineSpace
	}
	return q
}

// write puts a text on the drawing, the middle of its base line at q.
func (d *drawing) write(l lettering, q point) {
	b := l.box(q)
	d.taken.join(b)
	d.texts = append(d.texts, b)
	if d.trial {
		return
	}
	q = l.anchor(q).plus(d.at.x, d.at.y)
	t := append(d.words, `<text class="`+l.class+`" x="`...)
	t = appendNumber(t, q.x)
	t = append(t, `" y="`...)
	t = appendNumber(t, q.y)
	t = append(t, '"')
	if l.upright {
		t = append(t, ` transform="rotate(-90 `...)
		t = appendNumber(t, q.x)
		t = append(t, ' ')
		t = appendNumber(t, q.y)
		t = append(t, `)"`...)
	}
	switch l.hang {
	case atStart:
		t = append(t, ` text-anchor="start"`...)
	case atEnd:
		t = append(t, ` text-anchor="end"`...)
	}
	if l.class == faceText {
		t = append(t, ` font-style="italic"`...)
	}
	if l.face != "" {
		t = append(t, ` data-face="`+escaped(l.face)+`"`...)
	}
	if l.underlined {
		t = append(t, ` text-decoration="underline"`...)
	}
	d.words = append(t, ">"+escaped(l.text)+"</text>\n"...)
}

// anchor moves from the middle of a text to the point that it hangs by.
func (l lettering) anchor(q point) point {
	half := textWidth(l.text) / 2
	switch {
	case l.hang == atMiddle:
		return q
	case l.hang == atStart:
		half = -half
	}
	if l.upright {
		return q.plus(0, -half)
	}
	return q.plus(half, 0)
}

// right and left write a text that starts or ends at a point.
func (d *drawing) right(l lettering, q point) {
	l.hang = atStart
	d.write(l, q.plus(textWidth(l.text)/2, 0))
}

func (d *drawing) left(l lettering, q point) {
	l.hang = atEnd
	d.write(l, q.plus(-textWidth(l.text)/2, 0))
}

// sideways writes a text at the side that a sign says.
func (d *drawing) sideways(l lettering, q point, side float64) {
	if side < 0 {
		d.left(l, q.plus(-1, 0))
		return
	}
	d.right(l, q.plus(1, 0))
}

// textWidth estimates how wide a text is, in mm, from the widths of a common
// and wide sans-serif face, so that other faces fit too.
func textWidth(text string) float64 {
	em := 0.0
	for _, r := range text {
		switch r {
		case 'i', 'l', 'j', 'I', '.', ',', ':', ';', '\'', ' ':
			em += 0.32
		case '(', ')', 'f', 'r', 't', '/', '"', '-', '°', '²':
			em += 0.42
		case 'm', 'w', 'M', 'W', 'Ø', '×', '%':
			em += 0.9
		default:
			if em += 0.635; r >= 'A' && r <= 'Z' {
				em += 0.085
			}
		}
	}
	return em * letterSize
}

func escaped(text string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(text)); err != nil {
		return "" // a strings.Builder takes everything
	}
	return b.String()
}

// wrapped breaks a text into lines of at most width mm, at spaces.
func wrapped(text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch longer := line + " " + word; {
		case line == "":
			line = word
		case textWidth(longer) <= width:
			line = longer
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
