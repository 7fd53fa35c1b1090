package estimate

import (
	"slices"
	"strings"

	"filmbuild/estimate/caution"
)

// OldPaint says what is known of the paint that is now on the parts. What is
// not known is treated as present.
type OldPaint struct {
	Lead     string   `json:"lead,omitempty" doc:"unknown, yes or no; unknown is treated as present"`
	Chromate string   `json:"chromate,omitempty" doc:"unknown, yes or no"`
	Cadmium  string   `json:"cadmium,omitempty" doc:"unknown, yes or no"`
	Asbestos string   `json:"asbestos,omitempty" doc:"unknown, yes or no; in fillers and thick coats"`
	Year     *float64 `json:"year,omitempty" limit:"[1850,2100]" doc:"year in which the oldest of it was put on"`
}

// leadYear is the last year in which house paint with lead was sold in the
// USA; later paint of machines may hold it too.
//
// Source: 16 CFR 1303, from memory.
const leadYear = 1978

// metals are the fields of what old paint may hold, with their words.
func (o *OldPaint) metals() []struct{ name, said string } {
	return []struct{ name, said string }{{"lead", o.Lead}, {"chromate", o.Chromate}, {"cadmium", o.Cadmium}, {"asbestos", o.Asbestos}}
}

func (c *checker) oldPaint(o *OldPaint, at string) {
	if o == nil {
		return
	}
	for _, m := range o.metals() {
		if m.said != "" {
			c.oneOf(m.said, at+"/old_paint", m.name, []string{"unknown", "yes", "no"})
		}
	}
}

// oldPaintOf is what is known of the paint of a component: its own word, or the
// job's where it has none.
func (r *run) oldPaintOf(comp *Component) OldPaint {
	var known OldPaint
	for _, o := range []*OldPaint{r.job.OldPaint, comp.OldPaint} {
		if o == nil {
			continue
		}
		for _, m := range []struct {
			into *string
			said string
		}{{&known.Lead, o.Lead}, {&known.Chromate, o.Chromate}, {&known.Cadmium, o.Cadmium}, {&known.Asbestos, o.Asbestos}} {
			if m.said != "" {
				*m.into = m.said
			}
		}
		if o.Year != nil {
			known.Year = o.Year
		}
	}
	return known
}

// stillPainted lists the surfaces of a selection that have old paint left, or
// may have: nobody has said that they are bare, and no step has stripped them.
func (r *run) stillPainted(sel selection) []int {
	var list []int
	for _, p := range sel.patches {
		if r.surfaces[p.surface].faces[p.face].paint > 1e-9 && !slices.Contains(list, p.surface) {
			list = append(list, p.surface)
		}
	}
	return list
}

// oldSigns adds what a step that takes paint off, or roughens it, shows of the
// old paint: what is known to be in it, and what nobody has ruled out.
func (r *run) oldSigns(s *StepEstimate, signs caution.Signs) caution.Signs {
	for _, k := range r.over[s.ID] {
		old := r.oldPaintOf(r.surfaces[k].component)
		var unsaid []string
		for _, m := range old.metals() {
			if m.said == "no" {
				continue
			}
			signs = signs.With("old:" + m.name)
			if m.said != "yes" {
				unsaid = append(unsaid, m.name)
			}
		}
		if old.Year != nil && *old.Year <= leadYear && old.Lead != "no" {
			signs = signs.With("old:before_1978")
		}
		if len(unsaid) > 0 {
			r.assumed.add(s.ID, "in the old paint, because no test has ruled it out: "+strings.Join(unsaid, ", "), 1, "", "rule: unknown is treated as present; a laboratory's word in old_paint changes it")
		}
	}
	return signs
}
