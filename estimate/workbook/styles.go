package workbook

import "github.com/xuri/excelize/v2"

const (
	ink    = "1F2A33"
	muted  = "5B6770"
	rule   = "B9C2C9"
	ground = "EDF1F3"
	change = "FFF8DC" // behind numbers that the reader may change
	blue   = "1A4E8A"
)

// addStyles makes the styles of a file.
func addStyles(f *excelize.File, places int) (map[style]int, error) {
	amount := "#,##0"
	if places > 0 {
		amount += "." + "000"[:places]
	}
	number := "#,##0.0##"
	bottom := []excelize.Border{{Type: "bottom", Color: rule, Style: 1}}
	top := []excelize.Border{{Type: "top", Color: ink, Style: 1}}
	fill := func(colour string) excelize.Fill {
		return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	}
	font := func(size float64, bold bool, colour string) *excelize.Font {
		return &excelize.Font{Family: "Calibri", Size: size, Bold: bold, Color: colour}
	}
	upper := &excelize.Alignment{Vertical: "top"}
	wrap := &excelize.Alignment{Vertical: "top", WrapText: true, Indent: 1}
	styles := map[style]int{}
	looks := map[style]*excelize.Style{
		plain:   {Font: font(11, false, ink), Alignment: &excelize.Alignment{Vertical: "top", Indent: 1}},
		wrapped: {Font: font(11, false, ink), Alignment: wrap},
		title:   {Font: font(18, true, ink)},
		note:    {Font: font(10, false, muted)},
		head:    {Font: font(11, true, ink), Fill: fill(ground), Border: bottom, Alignment: wrap},
		section: {Font: font(13, true, ink)},
		figure:  {Font: font(11, false, ink), CustomNumFmt: &number, Alignment: upper},
		cash:    {Font: font(11, false, ink), CustomNumFmt: &amount, Alignment: upper},
		whole:   {Font: font(11, false, ink), NumFmt: 3, Alignment: upper},
		input:   {Font: font(11, false, blue), Fill: fill(change), Border: bottom, Alignment: upper},
		total:   {Font: font(11, true, ink), CustomNumFmt: &number, Border: top},
		totals:  {Font: font(11, true, ink), CustomNumFmt: &amount, Border: top},
	}
	for s := plain; s <= section; s++ { // in order, so that the file is the same each time
		id, err := f.NewStyle(looks[s])
		if err != nil {
			return nil, err
		}
		styles[s] = id
	}
	return styles, nil
}
