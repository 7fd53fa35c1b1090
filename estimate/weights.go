package estimate

import (
	"slices"
	"strings"
)

// weights follows what every step puts on and takes off each component.
type weights struct {
	added, removed map[int]float64 // by surface; -1 for markings that are nowhere
}

const nowhere = -1

func (w *weights) add(surface int, kilograms float64) {
	if w.added == nil {
		w.added = map[int]float64{}
	}
	w.added[surface] += kilograms
}

func (w *weights) remove(surface int, kilograms float64) {
	if w.removed == nil {
		w.removed = map[int]float64{}
	}
	w.removed[surface] += kilograms
}

// spreadOver adds a film to the components of a selection, by area.
func (r *run) spreadOver(sel selection, kilograms float64) {
	for _, p := range sel.patches {
		r.weights.add(p.surface, kilograms*p.share*r.surfaces[p.surface].faces[p.face].areaM2/sel.areaM2)
	}
}

// hang shares the film of a paint out among the markings that have it, by area.
func (r *run) hang(fs figures, p *pot, kilograms float64) {
	if kilograms == 0 {
		return
	}
	for _, f := range fs {
		for _, c := range f.one.Painted {
			if slices.Contains(p.colours, c.Colour) {
				r.hangOn(f.id, kilograms*c.AreaM2*f.count/p.areaM2)
			}
		}
	}
}

// hangOn adds the film of a marking to the components it is painted on.
func (r *run) hangOn(marking string, kilograms float64) {
	k := r.markingIndex(marking)
	on := r.job.Markings[k].On
	if on == "" {
		r.weights.add(nowhere, kilograms)
		return
	}
	if _, region := r.regionAt[on]; region {
		before := r.picked
		sel, ok := r.choose([]string{on}, "/markings")
		r.picked = before // counted when the marking was checked
		if ok && sel.areaM2 > 0 {
			r.spreadOver(sel, kilograms)
			return
		}
	}
	id, _, _ := strings.Cut(on, "/")
	if surface, found := r.componentAt[id]; found {
		r.weights.add(surface, kilograms)
		return
	}
	r.weights.add(nowhere, kilograms)
}

// weigh lists the components whose weight changes, in the job's order.
func (r *run) weigh() {
	r.estimate.Weights = []Weight{}
	for k := nowhere; k < len(r.surfaces); k++ {
		w := Weight{Count: 1, AddedKg: r.weights.added[k], RemovedKg: r.weights.removed[k]}
		if w.AddedKg == 0 && w.RemovedKg == 0 {
			continue
		}
		if k != nowhere {
			w.Component, w.Count = r.surfaces[k].component.ID, r.surfaces[k].component.Count
		} else {
			r.warn("the film of markings without on, %.3g kg, is in the weight of no component: say where they are painted", w.AddedKg)
		}
		w.NetKg = w.AddedKg - w.RemovedKg
		w.NetEachKg = w.NetKg / float64(w.Count)
		r.estimate.Weights = append(r.estimate.Weights, w)
	}
}
