package estimate

import (
	"fmt"
	"slices"
	"sort"

	"filmbuild/estimate/caution"
)

// conclude lists the assumptions, the cautions of every step and of the whole
// job, and the warnings that concern more than one step.
func (r *run) conclude() {
	e := r.estimate
	r.replaced()
	pointers := make([]string, 0, len(r.job.Ranges))
	for pointer := range r.job.Ranges {
		pointers = append(pointers, pointer)
	}
	sort.Strings(pointers)
	for _, pointer := range pointers {
		v := r.job.Ranges[pointer]
		r.assumed.add("", fmt.Sprintf("likely value of the range %g to %g given at %s", v.Low, v.High, pointer), v.Likely, "", "the job; the single figures take the likely value, the range all of it")
	}
	r.assumed.add("", "what the steps do not use up and the order does not hold: strainers, cups, tack cloths, gloves, filters, sheets for the floor", 0, "", "common practice: add them under items")
	r.cautions()
	e.Assumptions = r.assumed.list
	if e.Assumptions == nil {
		e.Assumptions = []Assumption{}
	}
	if e.Warnings == nil {
		e.Warnings = []string{}
	}
}

// cautions finds what can hurt someone in each step, by its operation, products,
// method and substrates. The list of the whole job is in the table's order, the
// worst first.
func (r *run) cautions() {
	together := map[string]bool{}
	for i, step := range r.job.Steps {
		s := &r.estimate.Steps[i]
		signs := r.signs(step, s)
		found := caution.For(signs)
		s.Cautions, s.Wear = listed(found), caution.Wear(found)
		for _, c := range s.Cautions {
			together[c.Code] = true
		}
	}
	r.estimate.Cautions = []Caution{}
	for _, c := range caution.All() {
		if together[c.Code] {
			r.estimate.Cautions = append(r.estimate.Cautions, Caution{Code: c.Code, Text: c.Text, Source: c.Source})
		}
	}
}

func listed(found []*caution.Caution) []Caution {
	list := make([]Caution, len(found))
	for i, c := range found {
		list[i] = Caution{Code: c.Code, Text: c.Text, Source: c.Source}
	}
	return list
}

// signs are what a step shows of its dangers.
func (r *run) signs(step Step, s *StepEstimate) caution.Signs {
	signs := append(make(caution.Signs, 0, 16), "operation:"+s.Operation)
	for _, m := range s.Materials {
		p, _ := r.catalogue.Product(m.Product)
		for _, h := range r.hazards(s, p) {
			signs = append(signs, "hazard:"+h)
		}
	}
	if painted, ok := step.(interface{ film() *FilmPlan }); ok {
		signs = append(signs, "method:"+painted.film().Method)
		if sprays(painted.film().Method) {
			signs = append(signs, "spray")
		}
	}
	before := -1
	for _, p := range r.chosen[s.ID].patches {
		comp := r.surfaces[p.surface].component
		if p.surface != before {
			signs = append(signs, "substrate:"+comp.Substrate)
			before = p.surface
		}
		if r.surfaces[p.surface].faces[p.face].areaM2 > largeFaceM2*float64(comp.Count) && !slices.Contains(signs, "large") {
			signs = append(signs, "large")
		}
		if r.surfaces[p.surface].faces[p.face].openingsM2 > 0 {
			signs = signs.With("openings")
		}
	}
	if s.RemovedKg > 0 || removes(s.Operation) {
		signs = r.oldSigns(s, append(signs, "removal"))
	}
	if blast, ok := step.(*Blast); ok && blast.Recovered {
		signs = append(signs, "recovered")
	}
	return signs
}

// largeFaceM2 is the area of one face from which a part is turned or reached
// with lifting gear and staging rather than by hand (assumption).
const largeFaceM2 = 2

func removes(operation string) bool {
	return operation == "blast" || operation == "sand" || operation == "strip"
}
