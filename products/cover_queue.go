package products

// open is a label still to be grown, with the least any purchase from it can
// cost and, for equal ones, how many packs more than pivots it takes.
type open struct {
	least int64
	packs float64
	label int32
}

func (a open) before(b open) bool {
	return a.least < b.least || a.least == b.least && a.packs < b.packs
}

// queue is a binary heap, cheapest first.
type queue []open

func (q *queue) push(o open) {
	h := append(*q, o)
	at := len(h) - 1
	for at > 0 {
		up := (at - 1) / 2
		if !h[at].before(h[up]) {
			break
		}
		h[at], h[up] = h[up], h[at]
		at = up
	}
	*q = h
}

func (q *queue) pop() open {
	h := *q
	first, last := h[0], len(h)-1
	h[0] = h[last]
	h = h[:last]
	at := 0
	for {
		down := 2*at + 1
		if down >= last {
			break
		}
		if right := down + 1; right < last && h[right].before(h[down]) {
			down = right
		}
		if !h[down].before(h[at]) {
			break
		}
		h[at], h[down] = h[down], h[at]
		at = down
	}
	*q = h
	return first
}
