package planar

import "math"

// winder counts how often the outlines of each layer wind round a point. It
// keeps the edges in strips by height, so that a ray meets only those near it.
type winder struct {
	edges  []edge
	bottom float64
	height float64 // of one strip
	strips [][]int
	left   []int // winding numbers by layer, of the last piece asked for
	right  []int
}

func newWinder(edges []edge, layers int) *winder {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range edges {
		low, high = min(low, edges[i].box.Min.Y), max(high, edges[i].box.Max.Y)
	}
	count := min(1+len(edges)/8, 4096)
	w := &winder{
		edges: edges, bottom: low, height: (high - low) / float64(count),
		strips: make([][]int, count), left: make([]int, layers), right: make([]int, layers),
	}
	for i := range edges {
		for s := w.strip(edges[i].box.Min.Y); s <= w.strip(edges[i].box.Max.Y); s++ {
			w.strips[s] = append(w.strips[s], i)
		}
	}
	return w
}

func (w *winder) strip(y float64) int {
	if !(w.height > 0) {
		return 0
	}
	return max(0, min(int((y-w.bottom)/w.height), len(w.strips)-1))
}

// sides sets left and right to the winding numbers on both sides of a bundle
// of pieces, as seen going from its low to its high vertex.
//
// A ray from the middle of the piece to the right counts the edges that it
// crosses; an edge holds its lower end and not its upper one, so the ray passes
// just above every vertex. The edges on which the piece lies are not asked
// where the middle is, which rounding would answer, but by what passing from
// one side to the other changes.
func (w *winder) sides(bundle []piece) {
	clear(w.left)
	at := bundle[0].middle
next:
	for _, i := range w.strips[w.strip(at.Y)] {
		e := &w.edges[i]
		if e.from.Y <= at.Y == (e.to.Y <= at.Y) {
			continue
		}
		for _, p := range bundle {
			if p.edge == i {
				continue next
			}
		}
		if e.rightOf(at) {
			w.left[e.layer] += e.rise()
		}
	}
	copy(w.right, w.left)
	for _, p := range bundle {
		e := &w.edges[p.edge]
		left, right := e.ownSides(at.Y)
		if !p.forward {
			left, right = right, left
		}
		w.left[e.layer] += left
		w.right[e.layer] += right
	}
}

// rise is +1 for an edge that goes up and -1 for one that goes down.
func (e *edge) rise() int {
	if e.from.Y < e.to.Y {
		return 1
	}
	return -1
}

// rightOf reports whether the edge passes to the right of a point whose height
// it spans. The box answers first, also for edges so short that a product of
// their extents vanishes.
func (e *edge) rightOf(p Point) bool {
	if p.X < e.box.Min.X {
		return true
	}
	if p.X > e.box.Max.X {
		return false
	}
	if e.course != nil {
		return e.course.at(e.course.level(Point{0, 1}, p.Y, e.begin, e.end)).X > p.X
	}
	if e.radius == 0 {
		side := e.to.minus(e.from).cross(p.minus(e.from))
		return side > 0 == (e.rise() > 0)
	}
	out := p.minus(e.centre)
	inside := out.X*out.X+out.Y*out.Y < e.radius*e.radius
	if e.from.X+e.to.X > 2*e.centre.X { // the right half of its circle
		return out.X <= 0 || inside
	}
	return out.X < 0 && !inside
}

// ownSides returns what an edge adds to the winding numbers on its own left
// and right side, beside what a ray at height y counts on the other edges.
// Left is always one more than right.
func (e *edge) ownSides(y float64) (left, right int) {
	switch {
	case e.from.Y <= y && e.to.Y > y: // going up, seen from its left side only
		return 1, 0
	case e.to.Y <= y && e.from.Y > y: // going down, seen from its right side only
		return 0, -1
	case e.from.Y <= y == (e.from.X <= e.to.X): // the ray passes on the left side
		return 0, -1
	}
	return 1, 0
}
