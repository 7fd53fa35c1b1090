package document

import (
	"fmt"
	"io"
	"strings"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"

	"filmbuild/estimate/units"
)

// Sizes of type in points and of the page in mm.
const (
	margin    = 18.0
	bodySize  = 9.5
	smallSize = 8.0
	bodyLine  = 4.6
	smallLine = 3.9
	bottom    = 18.0 // kept free for the foot
)

type colour struct{ r, g, b int }

func ink() colour    { return colour{31, 42, 51} }
func muted() colour  { return colour{91, 103, 112} }
func rule() colour   { return colour{185, 194, 201} }
func ground() colour { return colour{237, 241, 243} }
func accent() colour { return colour{26, 78, 138} }
func alarm() colour  { return colour{156, 60, 20} }

// paper is a document in the making.
type paper struct {
	*fpdf.Fpdf
	system units.System
	width  float64 // between the margins
}

// newPaper starts a document. foot is printed at the bottom of every page,
// beside its number.
func newPaper(o Options, title, foot string) *paper {
	size := "A4"
	if o.Paper == "letter" {
		size = "Letter"
	}
	p := &paper{Fpdf: fpdf.New("P", "mm", size, ""), system: o.System}
	p.SetCreationDate(o.created())
	p.SetModificationDate(o.created())
	p.SetCatalogSort(true)
	p.SetTitle(title, true)
	p.SetCreator("filmbuild", true)
	p.SetLang("en")
	p.AddUTF8FontFromBytes("go", "", goregular.TTF)
	p.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	p.AddUTF8FontFromBytes("go", "I", goitalic.TTF)
	p.SetMargins(margin, margin, margin)
	p.SetAutoPageBreak(true, bottom)
	p.AliasNbPages("{pages}")
	wide, _ := p.GetPageSize()
	p.width = wide - 2*margin
	p.SetFooterFunc(func() {
		p.SetY(-12)
		p.face("", smallSize, muted())
		p.CellFormat(p.width*0.8, 4, p.clip(foot, p.width*0.8), "", 0, "L", false, 0, "")
		p.CellFormat(p.width*0.2, 4, fmt.Sprintf("%d / {pages}", p.PageNo()), "", 0, "R", false, 0, "")
	})
	return p
}

func (p *paper) finish(w io.Writer) error { return p.Output(w) }

func (p *paper) face(style string, size float64, c colour) {
	p.SetFont("go", style, size)
	p.SetTextColor(c.r, c.g, c.b)
}

// room starts a new page where less than height is left on this one.
func (p *paper) room(height float64) {
	_, high := p.GetPageSize()
	if p.GetY()+height > high-bottom {
		p.AddPage()
	}
}

func (p *paper) title(text string) {
	p.face("B", 18, ink())
	p.MultiCell(p.width, 8, shown(text), "", "L", false)
	p.Ln(1)
}

func (p *paper) heading(text string) {
	p.room(22)
	p.Ln(4)
	p.face("B", 12.5, ink())
	p.MultiCell(p.width, 6, shown(text), "", "L", false)
	p.stroke(rule(), 0.3)
	p.Line(margin, p.GetY()+0.5, margin+p.width, p.GetY()+0.5)
	p.Ln(2.5)
}

func (p *paper) text(text string) {
	p.face("", bodySize, ink())
	p.MultiCell(p.width, bodyLine, shown(text), "", "L", false)
}

func (p *paper) small(text string) {
	p.face("", smallSize, muted())
	p.MultiCell(p.width, smallLine, shown(text), "", "L", false)
}

// point is one entry of a list: a bold lead, what it says and where it is from.
func (p *paper) point(lead, text, source string) {
	p.room(9)
	p.face("B", bodySize, ink())
	if lead != "" {
		p.Write(bodyLine, shown(lead)+"  ")
	}
	p.face("", bodySize, ink())
	p.Write(bodyLine, shown(text))
	if source != "" {
		p.face("", smallSize, muted())
		p.Write(bodyLine, "  "+shown(source))
	}
	p.Ln(bodyLine + 1.2)
}

func (p *paper) stroke(c colour, width float64) {
	p.SetDrawColor(c.r, c.g, c.b)
	p.SetLineWidth(width)
}

// shown leaves out what no font here can print, such as control characters.
func shown(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case r < ' ' || r > 0xFFFF:
			return -1
		}
		return r
	}, text)
}

// clip shortens a text to a width.
func (p *paper) clip(text string, width float64) string {
	text = shown(text)
	if p.GetStringWidth(text) <= width-2 {
		return text
	}
	letters := []rune(text)
	for len(letters) > 0 && p.GetStringWidth(string(letters)+"…") > width-2 {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}
