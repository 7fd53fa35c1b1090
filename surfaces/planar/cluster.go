package planar

import (
	"cmp"
	"slices"
)

// clusters splits edges into groups whose outlines cannot touch because their
// boxes lie apart, such as the letters of a text. outlines is the number of
// outlines the edges belong to.
func clusters(edges []edge, outlines int) [][]edge {
	boxes := make([]Box, outlines)
	seen := make([]bool, outlines)
	for i := range edges {
		e := &edges[i]
		if !seen[e.outline] {
			boxes[e.outline], seen[e.outline] = e.box, true
			continue
		}
		boxes[e.outline] = boxes[e.outline].with(e.box)
	}
	group := joined(boxes, seen)
	if allIn(group, edges) {
		return [][]edge{edges}
	}
	var out [][]edge
	number := make([]int, outlines) // of the group, 1 for the first; 0 for not yet met
	for i := range edges {
		g := group[edges[i].outline]
		if number[g] == 0 {
			out = append(out, nil)
			number[g] = len(out)
		}
		out[number[g]-1] = append(out[number[g]-1], edges[i])
	}
	return out
}

// allIn says whether the outlines of all edges are in one group.
func allIn(group []int, edges []edge) bool {
	for i := range edges {
		if group[edges[i].outline] != group[edges[0].outline] {
			return false
		}
	}
	return len(edges) > 0
}

// joined returns for every box the number of a box that stands for its group:
// boxes that meet, directly or through others.
func joined(boxes []Box, seen []bool) []int {
	group := make([]int, len(boxes))
	var order []int
	for i := range boxes {
		group[i] = i
		if seen[i] {
			order = append(order, i)
		}
	}
	find := func(i int) int {
		for group[i] != i {
			group[i] = group[group[i]]
			i = group[i]
		}
		return i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(boxes[i].Min.X, boxes[j].Min.X), cmp.Compare(i, j))
	})
	const apart = 10 * tolerance
	var open []int // boxes that a box farther right may still meet
	for _, i := range order {
		kept := open[:0]
		for _, j := range open {
			if boxes[j].Max.X+apart < boxes[i].Min.X {
				continue
			}
			kept = append(kept, j)
			if boxes[i].meets(boxes[j], apart) {
				group[find(i)] = find(j)
			}
		}
		open = append(kept, i)
	}
	for i := range group {
		group[i] = find(i)
	}
	return group
}
