package sheet

import (
	"fmt"
	"strings"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// Cut draws what a stencil cutter follows: for each pass a group of plain closed
// paths, with bridges across the islands, and the edge of the film with its
// margin. All passes lie over each other in register. It says in words, and in
// the attribute data-islands of a group, if an island is left that nothing
// holds.
//
// The error is a surfaces.Faults for a figure that its Check refuses.
func Cut(f marking.Figure, look Look) ([]byte, error) {
	passes, m, err := Passes(f)
	if err != nil {
		return nil, err
	}
	box, margin := boxOf(passes), metre*f.StencilMargin()
	width, height := metre*box.Width()+2*margin, metre*box.Height()+2*margin
	v := view{margin - metre*box.Min.X, margin + metre*box.Max.Y}
	p := paper{h: 3.5}
	loose, held := 0, m.Islands > 0
	p.open(`id="film" fill="none" stroke="#8b9298" stroke-width="0.1"`)
	p.put(`<path d="M0 0H`, rough(width), "V", rough(height), "H0Z\"/>\n")
	p.shut()
	for i, id := range identifiers(passes) {
		lines, left, err := bridged(passes[i].Lines)
		if err != nil {
			return nil, err
		}
		loose += left
		p.open(`id="` + id + `" data-colour="` + escaped(passes[i].Colour) + fmt.Sprintf(`" data-pass="%d" data-islands="%d"`, i+1, left) + ` fill="none" stroke="#000000" stroke-width="0.1"`)
		for _, o := range lines {
			p.closed(o, v)
		}
		p.shut()
	}
	title := look.Title
	if title == "" {
		title = sentence(f.Kind())
	}
	words := []string{"Lines to cut, one group for each colour in the order of painting; one user unit is 1 mm."}
	if held {
		words = append(words, "Islands are held by bridges of 3 mm to 10 mm, narrower for small ones: touch up the gaps they leave.")
	}
	if loose > 0 {
		words = append(words, fmt.Sprintf("Islands that no bridge holds: %d; keep them in place by transfer film.", loose))
	}
	if look.Date != "" {
		words = append(words, look.Date)
	}
	return p.document(width, height, title+", lines to cut", strings.Join(words, " ")), nil
}

// closed draws one outline as a path of its own.
func (p *paper) closed(o planar.Outline, v view) {
	p.put(`<path d="`)
	p.Write(v.path(nil, o))
	p.put("\"/>\n")
}
