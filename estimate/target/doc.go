// Package target answers what a budget or a stock covers: the largest area, or
// the thickest film plan, with which a job stays inside what there is.
//
// Every try is a whole estimate, so packs, contingency, tax and fixed costs are
// all in the answer. What is needed never falls when the area or the film grows;
// so the last size that fits is found by halving an interval.
package target
