package estimate

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// mostLoose bounds the ranges whose effect is found by working the job out
// again.
const mostLoose = 200

// leaf is a number that the graph does not work out: a term without a link, or
// one linked to an input.
type leaf struct {
	part int
	term string
}

// responses makes the graph follow ranges of numbers that are no node of it,
// such as the span of a wing. The job is worked out with the number at both
// ends of its range; every leaf of the graph that changes becomes the parabola
// through the three values, which is exact for areas, as they are at most of
// the second degree in a length; several ranges add up.
//
//	leaf = base + Σ ((x − m)·a + (x − m)²·b)
func (r *run) responses(parts []graphPart, loose []string, catalogue *products.Catalogue) (made []graphPart, notes []string) {
	if len(loose) > mostLoose {
		notes = append(notes, fmt.Sprintf("only the first %d of %d ranges of sizes are followed; the others count with their likely value", mostLoose, len(loose)))
		loose = loose[:mostLoose]
	}
	found := map[leaf]*graphPart{}
	var order []leaf
	for k, pointer := range loose {
		v := r.job.Ranges[pointer]
		low, atLow := r.leavesAt(pointer, v.Low, parts, catalogue)
		high, atHigh := r.leavesAt(pointer, v.High, parts, catalogue)
		if !atLow || !atHigh {
			notes = append(notes, "the range at "+pointer+" changes more than numbers, or cannot be worked out at its ends: its likely value counts")
			continue
		}
		for i := range parts {
			for _, term := range leafTerms(&parts[i]) {
				base := parts[i].working.Terms[term]
				l := leaf{i, term}
				if low[l] == base && high[l] == base {
					continue
				}
				p, known := found[l]
				if !known {
					p = response(&parts[i], term, base)
					found[l] = p
					order = append(order, l)
				}
				bend(p, strconv.Itoa(k+1), pointer, v.Low, v.Likely, v.High, low[l], high[l])
			}
		}
	}
	for _, l := range order {
		relink(&parts[l.part], l.term, found[l].node)
		made = append(made, *found[l])
	}
	return made, notes
}

func response(p *graphPart, term string, base float64) *graphPart {
	node := quantity.Node{Kind: "response", ID: p.node.Kind + "/" + p.node.ID + "/" + p.node.Quantity + "/" + p.node.Of, Quantity: term}
	return &graphPart{node: node, working: quantity.Working{Quantity: term, Value: base, Formula: "base", Terms: map[string]float64{"base": base},
		Source: "parabola through three estimates"}}
}

// bend adds the effect of one range to a response: y is yLow at low, the base at
// likely and yHigh at high.
func bend(p *graphPart, suffix, pointer string, low, likely, high, yLow, yHigh float64) {
	base := p.working.Terms["base"]
	left, right := low-likely, high-likely
	var a, b float64
	switch {
	case left == 0 && right == 0:
		return
	case left == 0:
		a = (yHigh - base) / right
	case right == 0:
		a = (yLow - base) / left
	default:
		slopeLeft, slopeRight := (yLow-base)/left, (yHigh-base)/right
		b = (slopeRight - slopeLeft) / (right - left)
		a = slopeLeft - b*left
	}
	x, m, an, bn := "x"+suffix, "m"+suffix, "a"+suffix, "b"+suffix
	p.working.Formula += fmt.Sprintf(" + (%s − %s)·%s + (%s − %s)²·%s", x, m, an, x, m, bn)
	p.working.Terms[x], p.working.Terms[m], p.working.Terms[an], p.working.Terms[bn] = likely, likely, a, b
	p.working.Links = append(p.working.Links, quantity.From(x, quantity.Node{Kind: "given", Quantity: pointer}))
}

// leafTerms lists the terms of a part that a range may change in a way the
// graph does not know: those without a link, and those of inputs.
func leafTerms(p *graphPart) []string {
	var list []string
	for _, term := range slices.Sorted(maps.Keys(p.working.Terms)) {
		if kind := linkedTo(&p.working, term).Kind; kind != "step" && kind != "face" && kind != "order" && kind != "budget" {
			list = append(list, term)
		}
	}
	return list
}

func linkedTo(w *quantity.Working, term string) quantity.Node {
	for _, l := range w.Links {
		if l.Term == term {
			return l.Node
		}
	}
	return quantity.Node{}
}

// relink makes a term come from a response.
func relink(p *graphPart, term string, node quantity.Node) {
	links := make([]quantity.Link, 0, len(p.working.Links)+1)
	for _, l := range p.working.Links {
		if l.Term != term {
			links = append(links, l)
		}
	}
	p.working.Links = append(links, quantity.From(term, node))
}

// leavesAt works the job out with one number replaced and returns the leaves of
// its graph. The second value is false where the job is at fault then, or its
// graph has other nodes.
func (r *run) leavesAt(pointer string, x float64, parts []graphPart, catalogue *products.Catalogue) (map[leaf]float64, bool) {
	job, err := r.withNumber(pointer, x)
	if err != nil {
		return nil, false
	}
	other, err := runThrough(job, catalogue, &fault.List{})
	if err != nil {
		return nil, false
	}
	theirs := map[quantity.Node]*graphPart{}
	list := other.parts()
	for i := range list {
		theirs[list[i].node] = &list[i]
	}
	leaves := map[leaf]float64{}
	for i := range parts {
		p, has := theirs[parts[i].node]
		if !has || p.working.Formula != parts[i].working.Formula {
			return nil, false
		}
		for _, term := range leafTerms(&parts[i]) {
			value, has := p.working.Terms[term]
			if !has {
				return nil, false
			}
			leaves[leaf{i, term}] = value
		}
	}
	return leaves, true
}
