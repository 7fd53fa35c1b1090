package marking

import (
	"fmt"
	"unicode/utf8"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceLettering = "14 CFR 45.29: two-thirds as wide as high, 1 and I one-sixth, M and W up to full height, strokes one-sixth, gaps one-fourth of the width; the construction of each letter is ours"

// Lettering is one line of text in block letters: strokes one-sixth of the
// height, letters two-thirds as wide as high, 1 and I one stroke wide.
//
// Source: 14 CFR 45.29. The gap of half a width is that of the 1938 air
// regulations; between words stands the width of a letter (33 CFR 173.27).
type Lettering struct {
	Text        string  `json:"text" doc:"A to Z, 0 to 9, hyphen and space; one line of at most 2000 letters"`
	HeightM     float64 `json:"height_m" limit:"[0.001,100]" doc:"of the letters"`
	Font        string  `json:"font" doc:"block, the only one so far and taken unless given"`
	GapRule     string  `json:"gap_rule" doc:"space between letters, as a part of a letter's width: quarter (the default) or half"`
	WideLetters bool    `json:"wide_letters" doc:"M and W as wide as high; true unless given, false keeps them at two-thirds"`
	Colour      string  `json:"colour" doc:"lower-case words"`
	Stencil
}

func newLettering() *Lettering {
	return &Lettering{Font: "block", GapRule: "quarter", WideLetters: true, Stencil: usualStencil()}
}

// Kind implements Figure.
func (*Lettering) Kind() string { return "lettering" }

// Of the grid: see block_letters.csv.
const (
	gridHeight = 6.0
	gridWidth  = 4.0 // of all letters but 1, I, M and W
)

const mostLetters = 2000

// Check implements Figure. Each letter that the alphabet lacks is named once.
func (f *Lettering) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
	oneOf("/font", f.Font, report, "block")
	oneOf("/gap_rule", f.GapRule, report, "quarter", "half")
	letters, err := blockAlphabet()
	if err != nil {
		report("/font", "inconsistent", err.Error())
		return
	}
	if n := utf8.RuneCountInString(f.Text); n > mostLetters {
		report("/text", "too_many", fmt.Sprintf("text has %d letters; at most %d in one line", n, mostLetters))
		return
	}
	drawn := false
	missing := map[rune]bool{}
	for _, r := range f.Text {
		switch {
		case r == ' ':
		case letters[r] != nil:
			drawn = true
		case !missing[r]:
			missing[r] = true
			report("/text", "unknown_reference", fmt.Sprintf("the block alphabet has no letter %q; it has A to Z, 0 to 9 and the hyphen", r))
		}
	}
	if !drawn && len(missing) == 0 {
		report("/text", "required", "text is empty; give the letters to be painted")
	}
}

func (f *Lettering) gap() float64 {
	if f.GapRule == "half" {
		return gridWidth / 2
	}
	return gridWidth / 4
}

// Layers implements Figure.
func (f *Lettering) Layers() []planar.Layer {
	letters, err := blockAlphabet()
	if err != nil {
		return nil
	}
	unit := f.HeightM / gridHeight
	text := planar.Layer{Colour: f.Colour}
	x, gap := 0.0, 0.0 // the gap is due before the next letter
	for _, r := range f.Text {
		forms := letters[r]
		if forms == nil {
			if x > 0 {
				gap = gridWidth
			}
			continue
		}
		x += gap
		g := forms[0]
		if f.WideLetters {
			g = forms[len(forms)-1]
		}
		place := planar.Placement{Scale: unit, Shift: planar.Point{X: x * unit}}
		text.Outline = append(text.Outline, place.Region(g.parts)...)
		x, gap = x+g.width, f.gap()
	}
	return []planar.Layer{text}
}

func (f *Lettering) dimensions() []quantity.Working {
	terms := map[string]float64{"H": f.HeightM}
	gap := quantity.Working{Quantity: "gap_m", Value: f.gap() * f.HeightM / gridHeight, Unit: "m", Formula: "2/3·H/4", Terms: terms, Source: sourceLettering}
	if f.GapRule == "half" {
		gap.Formula, gap.Source = "2/3·H/2", "Air Regulations of 1938, as transcribed by a museum"
	}
	return []quantity.Working{
		length("letter_width_m", f.HeightM*gridWidth/gridHeight, "2/3·H", terms, sourceLettering),
		length("stroke_width_m", f.HeightM/gridHeight, "H/6", terms, sourceLettering),
		gap,
	}
}
