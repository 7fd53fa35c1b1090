package estimate

import (
	"fmt"
	"strings"

	"filmbuild/estimate/chain"
)

// told is one finding with every piece that it holds for.
type told struct {
	chain.Finding
	pieces []int
}

// tell notes what was found, each finding once with the parts that it is about.
func (t *tracker) tell() {
	var found []told
	index := map[chain.Finding]int{}
	add := func(f chain.Finding, k int) {
		i, known := index[f]
		if !known {
			i = len(found)
			index[f] = i
			found = append(found, told{Finding: f})
		}
		found[i].pieces = append(found[i].pieces, k)
	}
	for k := range t.list {
		t.list[k].trace = t.trace(&t.list[k])
		for _, f := range t.list[k].trace.Findings {
			add(f, k)
		}
	}
	for surface := range t.surfaces {
		for face := range t.surfaces[surface].faces {
			pieces := t.onFace[[2]int{surface, face}]
			if f, stepped := chain.StepEdges(t.standing(pieces)); stepped {
				add(f, pieces[0])
			}
		}
	}
	steps := map[string]*StepEstimate{}
	for i := range t.estimate.Steps {
		steps[t.estimate.Steps[i].ID] = &t.estimate.Steps[i]
	}
	for _, f := range found {
		s, where := steps[f.Step], t.places(f.pieces)
		if f.Check {
			s.Checks = append(s.Checks, Check{Code: f.Code, On: where, Text: f.Text, Source: f.Source})
			continue
		}
		s.Warnings = append(s.Warnings, fmt.Sprintf("%s: %s (%s; %s)", strings.Join(where, ", "), f.Text, f.Code, f.Source))
	}
}

// standing are the traces of the pieces of one face, the rest of the face left
// out where the stripped regions fill it.
func (t *tracker) standing(pieces []int) []chain.Trace {
	traces, filled := make([]chain.Trace, 0, len(pieces)), 0.0
	for _, k := range pieces[1:] {
		traces = append(traces, t.list[k].trace)
		for _, c := range t.list[k].trace.Covers {
			if c.Stripped >= 0 {
				filled += t.list[k].share
				break
			}
		}
	}
	if filled < 1-1e-9 {
		traces = append(traces, t.list[pieces[0]].trace)
	}
	return traces
}

// places names pieces: the component where all its faces are among them, the
// face otherwise, and a region only where its face is not among them.
func (t *tracker) places(pieces []int) []string {
	has := map[[2]int]bool{}
	faces := map[int]int{}
	for _, k := range pieces {
		if p := &t.list[k]; p.region == 0 {
			has[[2]int{p.surface, p.face}] = true
			faces[p.surface]++
		}
	}
	var names []string
	named := map[string]bool{}
	for _, k := range pieces {
		p := &t.list[k]
		comp := &t.surfaces[p.surface]
		name := comp.component.ID + "/" + comp.faces[p.face].name
		switch {
		case p.region > 0 && has[[2]int{p.surface, p.face}]:
			continue
		case p.region > 0:
			name = t.job.Regions[p.region-1].ID
		case faces[p.surface] == len(comp.faces):
			name = comp.component.ID
		}
		if !named[name] {
			named[name] = true
			names = append(names, name)
		}
	}
	const most = 8
	if len(names) > most {
		names = append(names[:most], fmt.Sprintf("and %d more", len(names)-most))
	}
	return names
}
