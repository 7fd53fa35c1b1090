package sheet

import (
	"strings"
)

// block is the title block: rows below the drawing, over its whole width.
type block struct {
	*paper
	left, right, y float64
}

// leading is from one row to the next, as a multiple of the letters' height.
const leading = 1.75

// head writes the title, at its right the date, and below what it belongs to.
func (b *block) head(title string, look Look) {
	date := look.Date
	b.y += b.h * 2.4
	b.put(`<path stroke-width="`, rough(b.u(0.7)), `" d="M`, rough(b.left), " ", rough(b.y-b.h*2.4), "H", rough(b.right), "\"/>\n")
	room := b.right - b.left
	if date != "" {
		b.text(b.right, b.y, date, place{anchor: "end"})
		room -= b.width(date) + 2*b.h
	}
	const large = 1.5
	for i, line := range b.wrapped(title, room/large/1.08) {
		if i > 0 {
			b.y += b.h * leading * large
		}
		b.text(b.left, b.y, line, place{bold: true, scale: large})
	}
	b.row(look.Of)
}

// row writes a text over as many rows as it needs.
func (b *block) row(text string) {
	for _, line := range b.wrapped(text, b.right-b.left) {
		b.y += b.h * leading
		b.text(b.left, b.y, line, place{})
	}
}

// swatch writes a text beside a patch of colour.
func (b *block) swatch(colour, text string) {
	in := b.h * 2.2
	for i, line := range b.wrapped(text, b.right-b.left-in) {
		b.y += b.h * leading
		if i == 0 {
			b.put(`<rect x="`, rough(b.left), `" y="`, rough(b.y-b.h*1.05), `" width="`, rough(b.h*1.6), `" height="`, rough(b.h*1.1), `" fill="`, fill(colour), `" stroke="`, ink, `" stroke-width="`, rough(b.u(0.2)), "\"/>\n")
		}
		b.text(b.left+in, b.y, line, place{})
	}
}

// check draws a bar of exactly 100 mm, never scaled, by which a print is
// checked; on large sheets another of 1000 mm.
func (b *block) check() {
	bars := []float64{100}
	if b.right-b.left > 2000 {
		bars = append(bars, 1000)
	}
	for _, long := range bars {
		b.y += b.h * leading * 1.1
		high := b.u(1.4)
		y := b.y - b.h/2
		name := "check-" + rough(long) + "-mm"
		b.put(`<g id="`, name, `" stroke-width="`, rough(b.u(0.25)), `">`, "\n")
		b.put(`<path d="M`, rough(b.left), " ", rough(y-high), "h", rough(long), "v", rough(2*high), "h", rough(-long), "Z\"/>\n")
		b.put(`<path fill="`, ink, `" d="M`, rough(b.left), " ", rough(y-high), "h", rough(long/2), "v", rough(2*high), "h", rough(-long/2), "Z\"/>\n")
		b.shut()
		text := "check " + rough(long) + " mm on the print"
		if b.left+long+b.h+b.width(text) > b.right {
			text = "check " + rough(long) + " mm"
		}
		if b.left+long+b.h+b.width(text) > b.right {
			b.y += b.h * leading
			b.text(b.left, b.y, text, place{})
		} else {
			b.text(b.left+long+b.h, b.y, text, place{})
		}
	}
}

// list joins texts for a row.
func list(parts []string) string { return strings.Join(parts, " · ") }
