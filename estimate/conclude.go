package estimate

import (
	"fmt"
	"sort"

	"filmbuild/estimate/caution"
)

// conclude lists the assumptions, the cautions of every step and of the whole
// job, and the warnings that concern more than one step.
func (r *run) conclude() {
	e := r.estimate
	pointers := make([]string, 0, len(r.job.Ranges))
	for pointer := range r.job.Ranges {
		pointers = append(pointers, pointer)
	}
	sort.Strings(pointers)
	for _, pointer := range pointers {
		v := r.job.Ranges[pointer]
		r.assumed.add("", fmt.Sprintf("likely value of the range %g to %g given at %s", v.Low, v.High, pointer), v.Likely, "", "the job; this figure does not spread ranges yet")
	}
	r.untimed()
	r.assumed.add("", "what the steps do not use up and the order does not hold: gun wash, strainers, cups, tack cloths, gloves, filters, sheets for the floor", 0, "", "common practice: add them under items")
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
	together := caution.Signs{}
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
	for _, c := range listed(caution.All()) {
		if together[c.Code] {
			r.estimate.Cautions = append(r.estimate.Cautions, c)
		}
	}
}

func listed(found []caution.Caution) []Caution {
	list := make([]Caution, len(found))
	for i, c := range found {
		list[i] = Caution{Code: c.Code, Text: c.Text, Source: c.Source}
	}
	return list
}

// signs are what a step shows of its dangers.
func (r *run) signs(step Step, s *StepEstimate) caution.Signs {
	signs := make(caution.Signs, 16)
	signs["operation:"+s.Operation] = true
	for _, m := range s.Materials {
		p, _ := r.catalogue.Product(m.Product)
		signs["kind:"+p.Base().Kind] = true
		for _, h := range p.Base().Hazards {
			signs["hazard:"+h] = true
		}
	}
	if painted, ok := step.(interface{ film() *FilmPlan }); ok {
		signs["method:"+painted.film().Method] = true
	}
	for _, p := range r.chosen[s.ID].patches {
		comp := r.surfaces[p.surface].component
		signs["substrate:"+comp.Substrate] = true
		if r.surfaces[p.surface].faces[p.face].areaM2 > largeFaceM2*float64(comp.Count) {
			signs["large"] = true
		}
	}
	if s.RemovedKg > 0 || removes(s.Operation) {
		signs["removal"] = true
	}
	return signs
}

// largeFaceM2 is the area of one face from which a part is turned or reached
// with lifting gear and staging rather than by hand (assumption).
const largeFaceM2 = 2

func removes(operation string) bool {
	return operation == "blast" || operation == "sand" || operation == "strip"
}
