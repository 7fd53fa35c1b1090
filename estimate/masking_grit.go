package estimate

import "slices"

// uncovered names the openings in what a step works on that neither it nor a
// mask step before it covers.
func (r *run) uncovered(sel selection) []string {
	if r.job.masks(r.job.Steps[r.masks.now]) {
		return nil
	}
	var open []string
	for _, e := range r.openings(&sel) {
		if t := r.masks.laid[e.key]; (t == nil || t.class != workRemoval) && !slices.Contains(open, e.Name) {
			open = append(open, e.Name)
		}
	}
	return open
}
