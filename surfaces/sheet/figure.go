package sheet

import (
	"strings"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// mostMarks is how many running dimensions stand along one side at most; a
// figure with more, such as a text, has its overall sizes only.
const mostMarks = 18

// Figure draws one marking at true scale: a group for each pass in the order of
// painting, overall sizes, running dimensions of its lines from one origin,
// diameters and radii, and a title block with areas and edges.
//
// The error is a surfaces.Faults for a figure that its Check refuses. Equal
// arguments give equal bytes.
func Figure(f marking.Figure, look Look) ([]byte, error) {
	passes, m, err := Passes(f)
	if err != nil {
		return nil, err
	}
	d := layout(f, passes, look)
	title := look.Title
	if title == "" {
		title = sentence(f.Kind())
	}
	d.ground()
	drawPasses(&d.paper, passes, d.view)
	d.dimensions()
	b := block{paper: &d.paper, left: d.u(6), right: d.width0 - d.u(6), y: d.bottom}
	b.open(lines(&d.paper, "title"))
	b.head(title, look)
	kind := sentence(f.Kind())
	if kind == title {
		kind = "Marking"
	}
	b.row(list([]string{kind, look.length(d.box.Width()) + " × " + look.length(d.box.Height()), look.unit(), "scale 1:1"}))
	if named := named(m, look); named != "" {
		b.row(named)
	}
	area := look.areas(m.AreaM2)
	for i, p := range passes {
		b.swatch(p.Colour, list([]string{"pass " + rough(float64(i+1)) + ": " + p.Colour, area(p.AreaM2)}))
	}
	b.row("to mask: " + toMask(m, look) + " · film " + area(m.StencilFilmM2))
	b.check()
	b.shut()
	height := b.y + d.u(7)
	d.frame(d.width0, height)
	return d.document(d.width0, height, title+", scale 1:1", said(f, passes, m, look)), nil
}

// toMask is the length of edges, in the two ways of masking where they differ.
func toMask(m marking.Measurement, look Look) string {
	once := look.run(m.EdgeOnceM)
	if len(m.Colours) < 2 {
		return once
	}
	return once + " with every edge taped once, " + look.run(m.EdgeTwoSidedM) + " with each colour by itself"
}

// named lists the lesser dimensions that a figure derives from its governing
// one, and those given, in words.
func named(m marking.Measurement, look Look) string {
	var parts []string
	for _, w := range m.Working {
		if w.Unit == "m" && !strings.HasPrefix(w.Quantity, "edge_") && !strings.HasPrefix(w.Quantity, "skin_") {
			parts = append(parts, strings.ReplaceAll(strings.TrimSuffix(w.Quantity, "_m"), "_", " ")+" "+look.length(w.Value))
		}
	}
	return list(parts)
}

// said tells the sheet in words, for those who cannot see it.
func said(f marking.Figure, passes []Pass, m marking.Measurement, look Look) string {
	var parts []string
	for _, p := range passes {
		parts = append(parts, p.Colour+" "+look.areas(m.AreaM2)(p.AreaM2))
	}
	return sentence(f.Kind()) + ", " + look.length(m.WidthM) + " wide and " + look.length(m.HeightM) + " high. Passes in the order of painting: " + strings.Join(parts, ", ") +
		". One user unit is 1 mm. Colours on the screen match no paint."
}

// drawPasses draws a group for each pass, its id the colour.
func drawPasses(p *paper, passes []Pass, v view) {
	for i, id := range identifiers(passes) {
		p.put(`<g id="`, id, `" data-colour="`, escaped(passes[i].Colour), `" data-pass="`, rough(float64(i+1)), `" fill="`, fill(passes[i].Colour), `" fill-rule="evenodd" stroke="`, ink, `" stroke-width="`, rough(p.u(0.18)), `" stroke-linejoin="round">`, "\n")
		p.outlines(passes[i].Lines, v)
		p.shut()
	}
}

// outlines draws the lines of one pass as one path.
func (p *paper) outlines(all []planar.Outline, v view) {
	p.put(`<path d="`)
	var text []byte
	for _, o := range all {
		text = v.path(text, o)
	}
	p.Write(text)
	p.put("\"/>\n")
}

// lines are the attributes of a group of thin lines with letters.
func lines(p *paper, id string) string {
	return `id="sheet-` + id + `" fill="none" stroke="` + ink + `" stroke-width="` + rough(p.u(0.25)) + `" font-family="sans-serif"`
}
