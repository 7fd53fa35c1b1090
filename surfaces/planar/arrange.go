package planar

import (
	"errors"
	"fmt"
)

// Base is the colour of the ground on which all layers lie. A layer of this
// colour uncovers the ground again.
const Base = "base"

// Layer is one colour put down inside a region, over all layers before it.
type Layer struct {
	Colour  string
	Outline Region
}

// ErrNoColour is returned for a layer without a colour.
var ErrNoColour = errors.New("a layer has no colour")

// Arrangement is what one sees of layers laid on each other: the borders
// between unlike colours. It is the same for the same layers, always.
type Arrangement struct {
	colours []string // of the layers, in the order put down; the ground is first
	parts   []part
}

// Arrange works out what is seen of the layers, the first at the bottom. It
// fails for coordinates that are no numbers, for edges that turn full circle or
// are too flat to be arcs, and for a layer without colour; the message names
// layer, outline and corner. Figures that hide others, cross themselves or
// have no extent are all right.
func Arrange(layers []Layer) (*Arrangement, error) {
	return arrange(layers, func(winding int) bool { return winding != 0 })
}

// arrange is Arrange with the rule that says which points a layer holds.
func arrange(layers []Layer, holds func(winding int) bool) (*Arrangement, error) {
	return arrangeBy(layers, holds, func(p *part, cluster []edge, colourOf []int) {
		if !p.direct(cluster, colourOf, holds) {
			p.add(cluster, colourOf, holds)
		}
	})
}

// arrangeBy is arrange with the way to find the borders of a cluster.
func arrangeBy(layers []Layer, holds func(winding int) bool, find func(p *part, cluster []edge, colourOf []int)) (*Arrangement, error) {
	a := &Arrangement{colours: make([]string, 1, len(layers)+1)}
	a.colours[0] = Base
	colourOf := make([]int, len(layers)) // by layer
	for i, l := range layers {
		if l.Colour == "" {
			return nil, fmt.Errorf("layer %d: %w", i, ErrNoColour)
		}
		for k, o := range l.Outline {
			if err := o.valid(); err != nil {
				return nil, fmt.Errorf("layer %d, outline %d: %w", i, k, err)
			}
		}
		colourOf[i] = a.number(l.Colour)
	}
	seen := part{frame: frameOf(layers), at: []Point{{}}, colours: make([]int, len(a.colours))}
	for i := range a.colours {
		seen.colours[i] = i
	}
	corners := 0
	for _, l := range layers {
		for _, o := range l.Outline {
			corners += len(o)
		}
	}
	edges := make([]edge, 0, 2*corners) // half a circle is two
	outlines := 0
	for i, l := range layers {
		for k, o := range l.Outline {
			var err error
			if edges, err = edgesOf(o, seen.frame, i, outlines, edges); err != nil {
				return nil, fmt.Errorf("layer %d, outline %d: %w", i, k, err)
			}
			outlines++
		}
	}
	for _, group := range clusters(edges, outlines) {
		find(&seen, group, colourOf)
	}
	a.parts = []part{seen}
	return a, nil
}

// What has moved by less than clean cannot have changed sides with anything a
// tolerance away. mostRounds is a bound that no figure tried has come near.
const (
	clean      = tolerance / 100
	mostRounds = 20
)

// add cuts the edges of one cluster and keeps the pieces between unlike
// colours. Where edges pass each other at about the tolerance, joining their
// vertices bends them; the bent pieces are then cut in their turn, until none
// moves, so that the sides of a piece are asked of what the piece has become.
func (a *part) add(edges []edge, colourOf []int, holds func(int) bool) {
	a.cut = true
	c := cutUp(edges, true)
	for round := 1; c.moved > clean && round < mostRounds; round++ {
		edges = c.snapped(edges)
		c = cutUp(edges, false)
	}
	w := newWinder(edges, len(colourOf))
	for bundle := range c.bundles {
		w.sides(bundle)
		left, right := top(w.left, colourOf, holds), top(w.right, colourOf, holds)
		if left == right {
			continue
		}
		p := bundle[0]
		e := &edges[p.edge]
		b := border{from: c.vertices[p.low].at, to: c.vertices[p.high].at, radius: e.radius, turn: e.turn, left: left, right: right}
		if !p.forward {
			b.turn = -b.turn
		}
		if e.course != nil {
			b.course = e.along(p.forward, b.from, b.to)
		}
		a.borders = append(a.borders, b)
	}
}

// top returns the colour seen where the layers have these winding numbers.
func top(winding, colourOf []int, holds func(int) bool) int {
	for i := len(winding) - 1; i >= 0; i-- {
		if holds(winding[i]) {
			return colourOf[i]
		}
	}
	return 0
}
