package document

import (
	"fmt"
	"io"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/climate"
	"filmbuild/estimate/units"
)

// JobSheets writes one page to each step for the wall of the hangar: what to
// mix, what film to aim for, by when to use it up, what to mask and wear, and
// room to write what was really used. The errors are those of writing.
func JobSheets(w io.Writer, g *estimate.Graph, o Options) error {
	e := g.Estimate
	p := newPaper(o, e.Job+", job sheets", e.Job+" · job sheets · filmbuild "+e.EngineVersion)
	for i := range e.Steps {
		p.AddPage()
		p.jobSheet(e, i, o)
	}
	if len(e.Steps) == 0 {
		p.AddPage()
		p.title(e.Job)
		p.text("This job has no steps, and so no job sheets.")
	}
	return p.finish(w)
}

func (p *paper) jobSheet(e *estimate.Estimate, i int, o Options) {
	s := &e.Steps[i]
	p.small(strings.Join(notEmpty(e.Job, fmt.Sprintf("step %d of %d", i+1, len(e.Steps)), o.Date), " · "))
	p.title(named(s.Name, s.ID))
	p.text(strings.Join(notEmpty(s.Operation, p.amount(s.AreaM2, "m2", 3), fmt.Sprintf("about %s person-hours", units.Format(s.Hours, 2))), " · "))
	p.part("Wear", s.Wear...)
	p.dangers(s)
	p.part("Before and during the work", s.Instructions...)
	p.have(s)
	for k := range s.Mixing {
		p.mix(&s.Mixing[k], s)
		if k == len(s.Mixing)-1 {
			p.warmth(&s.Mixing[k])
		}
	}
	p.windows(s)
	p.masks(s)
	p.filmCheck(s)
	for _, c := range s.Checks {
		p.part("Check", c.Text)
	}
	p.record(s)
}

// part is a short block of a job sheet; nothing where it has no texts.
func (p *paper) part(lead string, texts ...string) {
	if len(texts) == 0 {
		return
	}
	p.Ln(1.2)
	p.point(lead, strings.Join(texts, ". "), "")
}

// dangers names each danger: the report has the cautions whole.
func (p *paper) dangers(s *estimate.StepEstimate) {
	if len(s.Cautions) == 0 {
		return
	}
	texts := make([]string, len(s.Cautions))
	for i, c := range s.Cautions {
		texts[i] = strings.ReplaceAll(c.Code, "_", " ")
	}
	c := alarm()
	p.Ln(1.2)
	p.room(9)
	p.face("B", bodySize, c)
	p.Write(bodyLine, "Danger  ")
	p.face("", bodySize, ink())
	p.Write(bodyLine, shown(strings.Join(texts, ", ")+". "))
	p.face("", smallSize, muted())
	p.Write(bodyLine, "Read the cautions of the report before you begin; local codes and safety data sheets come first.")
	p.Ln(bodyLine + 1.2)
}

func (p *paper) have(s *estimate.StepEstimate) {
	var list []string
	for _, m := range s.Materials {
		list = append(list, p.inUnit(m.Quantity, m.Unit, 3)+" "+m.Name)
	}
	p.part("Have ready", strings.Join(list, "; "))
}

// mix is the batch table of one paint.
func (p *paper) mix(m *estimate.Mixing, s *estimate.StepEstimate) {
	name := m.Product
	for _, used := range s.Materials {
		if used.Product == m.Product {
			name = used.Name
		}
	}
	p.Ln(1)
	p.face("B", bodySize, ink())
	p.MultiCell(p.width, bodyLine+1, shown("Mix: "+name), "", "L", false)
	var rows [][]string
	for _, part := range m.Parts {
		rows = append(rows, []string{part.Part, units.Format(part.Ratio, 4), p.litres(part.BatchL), p.litres(part.Litres), ""})
	}
	if m.ThinnerL > 0 {
		rows = append(rows, []string{"thinner", "", p.litres(m.BatchThinnerL), p.litres(m.ThinnerL), ""})
	}
	rows = append(rows, []string{"\tmixed", "", p.litres(m.EvenBatchL), p.litres(m.PaintL + m.ThinnerL), ""})
	p.table([]column{{"Part", 22, "L"}, {"Ratio by volume", 18, "R"}, {"One batch, " + p.unit("l"), 20, "R"}, {"In all, " + p.unit("l"), 18, "R"}, {"Really mixed", 22, "L"}}, rows)
	var aims []string
	if m.Batches > 0 {
		aims = append(aims, plural(m.Batches, "batch", "batches"))
	}
	aims = append(aims, fmt.Sprintf("aim for %s wet on the comb gauge (%s mil)", units.Format(m.WetFilmUM, 3)+" µm", units.Format(m.WetFilmUM/25.4, 2)), fmt.Sprintf("in %s", plural(m.Passes, "pass", "passes")))
	if m.InductionH > 0 {
		aims = append(aims, "let it stand "+hours(m.InductionH)+" after mixing")
	}
	if m.UseWithinH > 0 {
		aims = append(aims, "use it up within "+hours(m.UseWithinH))
	}
	if m.CleaningL > 0 {
		aims = append(aims, fmt.Sprintf("clean with %s of %s in all", p.amount(m.CleaningL, "l", 2), m.CleaningProduct))
	}
	p.text(strings.ToUpper(aims[0][:1]) + aims[0][1:] + "; " + strings.Join(aims[1:], "; ") + ".")
}

// warmth tells the time for a batch at other temperatures than the plan's.
func (p *paper) warmth(m *estimate.Mixing) {
	if m.PotLifeH == 0 {
		return
	}
	var texts []string
	for _, c := range []float64{10, 15, 20, 25, 30, 35} {
		life, err := climate.HalvedPotLife(m.PotLifeH, m.PotLifeAtC, c)
		if err != nil {
			continue
		}
		texts = append(texts, p.amount(c, "c", 3)+": "+hours(min(life, climate.LongestBatchH)))
	}
	p.Ln(0.5)
	p.small("Use within, by the temperature of the mixed paint (pot life halves with every 10 °C, and 4 h at most; the data sheet comes first): " + strings.Join(texts, ", ") + ".")
}

func (p *paper) litres(l float64) string {
	if l == 0 {
		return ""
	}
	return p.bare(l, "l", 3)
}

// hours prints a time of hours as people say it: minutes below two hours.
func hours(h float64) string {
	if h < 2 {
		return units.Format(h*60, 2) + " min"
	}
	return units.Format(h, 2) + " h"
}

func (p *paper) windows(s *estimate.StepEstimate) {
	for _, r := range s.Recoat {
		text := fmt.Sprintf("over %s not later than %s", r.Product, hours(r.MaxH))
		if r.MinH != nil {
			text = fmt.Sprintf("over %s not before %s and not later than %s", r.Product, hours(*r.MinH), hours(r.MaxH))
		}
		text += fmt.Sprintf(" after it, at %s of the surface", p.amount(r.SurfaceC, "c", 3))
		var remedies []string
		for _, remedy := range r.IfMissed {
			remedies = append(remedies, remedy.Text)
		}
		if len(remedies) > 0 {
			text += ". Later: " + strings.Join(remedies, "; ")
		}
		p.part("Window", text)
	}
}

// masks lists what is masked, from the workings of the step.
func (p *paper) masks(s *estimate.StepEstimate) {
	if s.MaskingTapeM > 0 {
		p.part("Mask", p.amount(s.MaskingTapeM, "m", 3)+" of tape along the edges of what is worked on; cover openings and what is not worked on")
	}
}

func (p *paper) filmCheck(s *estimate.StepEstimate) {
	f := s.FilmCheck
	if f == nil {
		return
	}
	p.part("Measure", fmt.Sprintf("%d readings at %d spots in %s; no spot below %s, no mean of an area below %s", f.Readings, f.Spots, plural(f.Areas, "area", "areas"),
		p.amount(f.LeastSpotUM, "um", 3), p.amount(f.LeastAreaMeanUM, "um", 3)))
}

// record is the table to fill in by hand. What is written there can go into the
// job as a test patch.
func (p *paper) record(s *estimate.StepEstimate) {
	const lineHeight = 7.5
	lines := []string{"Date and crew", "Began and ended", "Air, humidity, surface", "Area done, " + p.unit("m2"), "Minutes at work"}
	switch {
	case s.Kilograms > 0:
		lines = append(lines, "Media used, "+p.unit("kg"), "Pressure and nozzle")
	case s.Litres > 0:
		lines = append(lines, "Taken from the tins, "+p.unit("l"), "Batch numbers")
	}
	if s.FilmCheck != nil || len(s.Mixing) > 0 {
		lines = append(lines, "Wet film and dry film, "+p.unit("um"))
	}
	lines = append(lines, "Remarks")
	p.room(float64(len(lines))*lineHeight + 16)
	p.Ln(2)
	p.face("B", bodySize, ink())
	p.CellFormat(p.width, bodyLine+1, "What was really done", "", 1, "L", false, 0, "")
	p.stroke(rule(), 0.2)
	for _, line := range lines {
		p.face("", smallSize, muted())
		y := p.GetY()
		p.CellFormat(44, lineHeight, line, "", 0, "L", false, 0, "")
		p.Line(margin+44, y+lineHeight-1.5, margin+p.width, y+lineHeight-1.5)
		p.SetXY(margin, y+lineHeight)
	}
	p.small(fmt.Sprintf("Area, minutes and amount of the first stretch, entered as a test patch for step %q, replace the figures of the book.", s.ID))
}
