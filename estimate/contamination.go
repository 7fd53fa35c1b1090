package estimate

import (
	"fmt"
	"strings"
)

// demandMasking warns of openings and soft neighbours that a blasting leaves
// bare.
//
// Source: TM 1-1500-344-23-2 B-27.1.2, USAF TO 1-1-8 2.12 (reference blasting S-18,
// read).
func (r *run) demandMasking(p *Blast, s *StepEstimate, sel selection) {
	const source = "(TM 1-1500-344-23-2 B-27.1.2; USAF TO 1-1-8 2.12)"
	if open := r.uncovered(sel); len(open) > 0 {
		s.Warnings = append(s.Warnings, "mask is false and there are openings ("+listOf(open)+"): plug drains and bearings and cover every opening, or media get in and come out later "+source)
	}
	chosen := map[*Component]bool{}
	for _, comp := range r.componentsOf(sel) {
		chosen[comp] = true
	}
	var soft []string
	for i := range r.job.Components {
		comp := &r.job.Components[i]
		if !chosen[comp] && (comp.Substrate == "composite" || comp.Substrate == "fibreglass" || comp.Substrate == "clear_plastic") {
			soft = append(soft, comp.ID)
		}
	}
	if len(soft) > 0 {
		s.Warnings = append(s.Warnings, fmt.Sprintf("mask %s (radomes, windows, fibreglass, composite) or take them off before blasting near them %s", listOf(soft), source))
	}
}

// contamination warns of media that carry steel onto light alloys, and of the
// order of metals. Media are told apart by their product: a fresh lot of the
// same one is a product of the job's own.
//
// Source: TM 1-1500-344-23-2 4-5.4.2 (S-21) and USAF TO 1-1-8 2.11.6(d), FAA AC
// 43.13-1B p. 6-18 (S-15), read.
func (r *run) contamination() {
	const separate = "media that have been on steel are not for aluminium or magnesium: steel dust starts corrosion (TM 1-1500-344-23-2 4-5.4.2)"
	ferrous := map[string]string{} // media -> the step that had it on steel
	light := ""                    // the first step on a light alloy
	for i, step := range r.job.Steps {
		p, blasts := step.(*Blast)
		if !blasts {
			continue
		}
		s := &r.estimate.Steps[i]
		onSteel, onLight, sparks := r.metals(r.chosen[p.ID])
		switch before := ferrous[p.Media]; {
		case onSteel && onLight && p.Recovered:
			s.Warnings = append(s.Warnings, "this step goes from steel to a light alloy with the same media: make two steps of it with media of their own, steel first; "+separate)
		case onLight && before != "":
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s was on steel in step %s: take a fresh lot here, as a product of the job's own; %s", p.Media, before, separate))
		}
		if sparks && light != "" {
			s.Warnings = append(s.Warnings, fmt.Sprintf("steel and titanium spark: blast them before the light alloys of step %s, when no dust of those lies about (USAF TO 1-1-8 2.11.6; FAA AC 43.13-1B p. 6-18)", light))
		}
		if onSteel && p.Recovered {
			ferrous[p.Media] = p.ID
		}
		if onLight && light == "" {
			light = p.ID
		}
	}
}

// metals says what a selection is made of: steel that rusts or does not, light
// alloys, and metals that spark.
func (r *run) metals(sel selection) (steel, light, sparks bool) {
	for _, comp := range r.componentsOf(sel) {
		ferrous := strings.HasSuffix(comp.Substrate, "steel") || comp.Substrate == "cast_iron"
		steel = steel || ferrous
		light = light || lightAlloy(comp.Substrate)
		sparks = sparks || ferrous || comp.Substrate == "titanium"
	}
	return steel, light, sparks
}
