package chart

import (
	"fmt"
	"math"
	"strings"
)

// canvas writes SVG elements. Coordinates are rounded to a hundredth, so that a
// drawing is the same bytes on every machine.
type canvas struct{ out strings.Builder }

// point writes a coordinate as short as it can be.
func point(x float64) string {
	text := fmt.Sprintf("%.2f", math.Round(x*100)/100)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func (c *canvas) text(x, y float64, class, words string) {
	fmt.Fprintf(&c.out, `<text x="%s" y="%s" class="%s">%s</text>`+"\n", point(x), point(y), class, escape(words))
}

func (c *canvas) line(x1, y1, x2, y2 float64, class string) {
	fmt.Fprintf(&c.out, `<line x1="%s" y1="%s" x2="%s" y2="%s" class="%s"/>`+"\n", point(x1), point(y1), point(x2), point(y2), class)
}

func (c *canvas) bar(x, y, width, height float64, class, title string) {
	fmt.Fprintf(&c.out, `<rect x="%s" y="%s" width="%s" height="%s" class="%s"><title>%s</title></rect>`+"\n", point(x), point(y), point(width), point(height), class, escape(title))
}

func (c *canvas) path(points [][2]float64, class string) {
	c.out.WriteString(`<path class="` + class + `" d="`)
	for i, p := range points {
		command := "L"
		if i == 0 {
			command = "M"
		}
		c.out.WriteString(command + point(p[0]) + " " + point(p[1]))
	}
	c.out.WriteString("\"/>\n")
}

// escape makes text safe inside an element, and leaves out what XML 1.0 forbids.
func escape(text string) string {
	text = strings.Map(func(r rune) rune {
		if (r < 0x20 && r != '\t' && r != '\n') || r == 0xfffe || r == 0xffff {
			return -1
		}
		return r
	}, text)
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(text)
}
