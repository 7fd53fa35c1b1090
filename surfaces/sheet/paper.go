package sheet

import (
	"bytes"
	"strings"
	"unicode"
)

// ink is the colour of lines and letters, faint that of what lies behind.
const (
	ink   = "#20262c"
	faint = "#e7ebee"
)

// paper collects what is drawn.
type paper struct {
	bytes.Buffer
	h float64 // height of capitals, mm
}

// u is a length that is 1 mm with letters of 3.5 mm and grows with them.
func (p *paper) u(mm float64) float64 { return mm * p.h / 3.5 }

func (p *paper) put(parts ...string) {
	for _, s := range parts {
		p.WriteString(s)
	}
}

func (p *paper) open(attributes string) { p.put("<g ", attributes, ">\n") }
func (p *paper) shut()                  { p.put("</g>\n") }

// line draws a thin line, or with dashes an axis.
func (p *paper) line(x1, y1, x2, y2 float64) { p.stroke(x1, y1, x2, y2, "") }

func (p *paper) stroke(x1, y1, x2, y2 float64, more string) {
	p.put(`<path d="M`, rough(x1), " ", rough(y1), "L", rough(x2), " ", rough(y2), `"`, more, "/>\n")
}

// dashes are those of an axis: long, gap, dot, gap.
func (p *paper) dashes() string {
	return ` stroke-dasharray="` + rough(p.u(6)) + " " + rough(p.u(1.2)) + " " + rough(p.u(0.6)) + " " + rough(p.u(1.2)) + `"`
}

// arrow draws a filled arrowhead with its tip at a point, pointing along
// (dx, dy), three times as long as wide.
func (p *paper) arrow(x, y, dx, dy float64) {
	const length, half = 3, 0.5
	bx, by := x-p.u(length)*dx, y-p.u(length)*dy
	p.put(`<path fill="`, ink, `" stroke="none" d="M`, rough(x), " ", rough(y), "L", rough(bx-p.u(half)*dy), " ", rough(by+p.u(half)*dx),
		"L", rough(bx+p.u(half)*dy), " ", rough(by-p.u(half)*dx), "Z\"/>\n")
}

// place is how a text stands at its point.
type place struct {
	anchor string // start, middle or end
	bold   bool
	turned bool // read from the right
	halo   bool // kept clear of what lies behind
	scale  float64
}

// fontSize is that of letters whose capitals are h high: capitals of common sans
// letters are some 0.72 of it.
func (p *paper) fontSize(scale float64) float64 {
	if scale == 0 {
		scale = 1
	}
	return scale * p.h / 0.72
}

// text writes a text with the foot of its letters at a point.
func (p *paper) text(x, y float64, text string, at place) {
	p.put(`<text x="`, rough(x), `" y="`, rough(y), `" font-size="`, rough(p.fontSize(at.scale)), `"`)
	if at.anchor != "" && at.anchor != "start" {
		p.put(` text-anchor="`, at.anchor, `"`)
	}
	if at.bold {
		p.put(` font-weight="bold"`)
	}
	if at.turned {
		p.put(` transform="rotate(-90 `, rough(x), " ", rough(y), `)"`)
	}
	p.put(` fill="`, ink, `"`)
	if at.halo {
		p.put(` stroke="#ffffff" stroke-opacity="0.85" stroke-linejoin="round" stroke-width="`, rough(p.u(1.4)), `" paint-order="stroke"`)
	} else {
		p.put(` stroke="none"`)
	}
	p.put(">", escaped(text), "</text>\n")
}

// width is about how wide a text is, in mm: sans letters by classes.
func (p *paper) width(text string) float64 {
	sum := 0.0
	for _, r := range text {
		switch {
		case strings.ContainsRune(" .,:;'|!ijlI/·()", r):
			sum += 0.31
		case strings.ContainsRune("mwMW@%", r):
			sum += 0.86
		case unicode.IsUpper(r):
			sum += 0.7
		default:
			sum += 0.57
		}
	}
	return sum * p.fontSize(1)
}

// wrapped breaks a text at plain spaces into lines of at most a width in mm.
func (p *paper) wrapped(text string, width float64) []string {
	var lines []string
	line := ""
	for word := range strings.SplitSeq(text, " ") {
		switch {
		case line == "":
			line = word
		case p.width(line+" "+word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// escaped makes a text safe inside XML, in elements and in attributes.
func escaped(text string) string {
	plain := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == unicode.ReplacementChar || r >= 0xfffe && r <= 0xffff {
			return ' '
		}
		return r
	}, text)
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(plain)
}

// frame is a line round the sheet.
func (p *paper) frame(width, height float64) {
	in := p.u(2)
	p.put(`<rect id="sheet-frame" x="`, rough(in), `" y="`, rough(in), `" width="`, rough(width-2*in), `" height="`, rough(height-2*in), `" fill="none" stroke="`, ink, `" stroke-width="`, rough(p.u(0.5)), "\"/>\n")
}

// document is the whole picture, width and height in mm.
func (p *paper) document(width, height float64, title, said string) []byte {
	var out bytes.Buffer
	w, h := rough(width), rough(height)
	out.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="` + w + `mm" height="` + h + `mm" viewBox="0 0 ` + w + " " + h + `" role="img" aria-labelledby="sheet-title sheet-desc">` + "\n")
	out.WriteString(`<title id="sheet-title">` + escaped(title) + "</title>\n")
	out.WriteString(`<desc id="sheet-desc">` + escaped(said) + "</desc>\n")
	out.Write(p.Bytes())
	out.WriteString("</svg>\n")
	return out.Bytes()
}
