package products

import (
	"math"
	"math/bits"
	"slices"
)

// The search rests on two facts. The pack with the lowest price for its size,
// the pivot, fills whatever the other packs leave; and of the other packs,
// two choices whose sums differ by whole pivots can be compared at once: the
// smaller sum with pivots added is as good or better, or it is not. So choices
// of other packs (labels) are looked at in order of the least they can still
// cost, and one is dropped as soon as another of the same remainder beats it.

// size is one pack in whole numbers: its size in parts, its price in parts of
// the currency, and which offer it is.
type size struct {
	size, price int64
	offer       int
}

// label is a choice of packs other than the pivot.
type label struct {
	sum, cost, count int64
	parent           int32 // the label it grew from
	pack             int32 // by this pack
	next             int32 // another label of the same remainder, -1 at the end
	dead             bool  // beaten by one that came later
}

// found is the best purchase so far: a label and pivots on top.
type found struct {
	cost, total, count int64
	label              int32
	pivots             int64
	lastPack           int32 // added to the label without pivots, -1 when none
}

// covering is one search.
type covering struct {
	need    int64
	sizes   []size // the pivot first
	largest int64
	labels  []label
	byRest  map[int64]int32 // remainder after whole pivots -> its latest label
	open    queue
	best    found
}

// search returns how many of each offer to buy.
func search(needed float64, offers []PackOffer, priced bool) ([]int64, error) {
	c := &covering{byRest: map[int64]int32{}, labels: make([]label, 0, 8)}
	var common int64
	for i, offer := range offers {
		s := size{parts(offer.Pack), parts(offer.Pack), i}
		if priced {
			s.price = offer.Price.Shift(priceDigits).IntPart()
		}
		common = gcd(common, s.size)
		c.sizes = append(c.sizes, s)
	}
	for i := range c.sizes {
		c.sizes[i].size /= common
		c.largest = max(c.largest, c.sizes[i].size)
	}
	c.need = ceilDiv(leastParts(needed), common)
	c.sizes = useful(c.sizes)
	pivot := c.sizes[0]
	if cost := float64(pivot.price) * (float64(c.need)/float64(pivot.size) + 1); cost > 4e18 {
		return nil, &LimitError{"cost of the purchase", cost / math.Pow10(priceDigits), 0, 4e18 / math.Pow10(priceDigits)}
	}
	if err := c.run(); err != nil {
		return nil, err
	}
	counts := make([]int64, len(offers))
	counts[pivot.offer] = c.best.pivots
	if c.best.lastPack >= 0 {
		counts[c.sizes[c.best.lastPack].offer]++
	}
	for at := c.best.label; at > 0; at = c.labels[at].parent {
		counts[c.sizes[c.labels[at].pack].offer]++
	}
	return counts, nil
}

// leastParts is the smallest number of parts that covers a need, by the very
// comparison that Cover promises.
func leastParts(needed float64) int64 {
	least := needed * (1 - coverTolerance)
	n := int64(math.Ceil(least * perUnit))
	for float64(n)/perUnit < least {
		n++
	}
	return n
}

// useful drops sizes that a larger one undercuts, which no best purchase
// holds, and puts the pivot first: lowest price for its size, of several the
// largest.
func useful(all []size) []size {
	var kept []size
	for i, s := range all {
		if !slices.ContainsFunc(all, func(o size) bool {
			return o.size >= s.size && o.price < s.price || o.size == s.size && o.price == s.price && o.offer < all[i].offer
		}) {
			kept = append(kept, s)
		}
	}
	slices.SortFunc(kept, func(a, b size) int {
		if order := compareProducts(a.price, b.size, b.price, a.size); order != 0 {
			return order
		}
		return int(min(1, max(-1, b.size-a.size)))
	})
	return kept
}

func (c *covering) run() error {
	c.best = found{cost: math.MaxInt64, lastPack: -1}
	c.add(label{parent: -1})
	for len(c.open) > 0 {
		o := c.open.pop()
		if o.least > c.best.cost {
			return nil
		}
		from := c.labels[o.label]
		if from.dead || c.hopeless(from, o.least) {
			continue
		}
		for i, s := range c.sizes[1:] {
			grown := label{sum: from.sum + s.size, cost: from.cost + s.price, count: from.count + 1, parent: o.label, pack: int32(i + 1)}
			if grown.sum >= c.need {
				c.offer(found{grown.cost, grown.sum, grown.count, o.label, 0, grown.pack})
			} else if c.add(grown); len(c.labels) > mostLabels {
				return &LimitError{"number of pack combinations to compare", float64(len(c.labels)), 0, mostLabels}
			}
		}
	}
	return nil
}

// add keeps a label unless it cannot lead to anything better than what is there.
func (c *covering) add(l label) {
	pivot := c.sizes[0]
	least := l.cost + ceilMulDiv(pivot.price, c.need-l.sum, pivot.size)
	if c.hopeless(l, least) {
		return
	}
	rest := l.sum % pivot.size
	l.next = -1
	if head, ok := c.byRest[rest]; ok {
		for at := head; at >= 0; at = c.labels[at].next {
			if other := &c.labels[at]; c.beats(other, &l) {
				return
			} else if c.beats(&l, other) {
				other.dead = true
			}
		}
		l.next = head
	}
	at := int32(len(c.labels))
	c.labels = append(c.labels, l)
	c.byRest[rest] = at
	pivots := ceilDiv(c.need-l.sum, pivot.size)
	c.offer(found{l.cost + pivots*pivot.price, l.sum + pivots*pivot.size, l.count + pivots, at, pivots, -1})
	c.open.push(open{least, float64(l.count) - float64(l.sum)/float64(pivot.size), at})
}

// beats reports whether a, with pivots up to the sum of b, is as good as b.
func (c *covering) beats(a, b *label) bool {
	if a.sum > b.sum {
		return false
	}
	pivots := (b.sum - a.sum) / c.sizes[0].size
	cost, count := a.cost+pivots*c.sizes[0].price, a.count+pivots
	return cost < b.cost || cost == b.cost && count <= b.count
}

// hopeless reports whether nothing that grows from a label, at the least it can
// cost, beats the best purchase.
func (c *covering) hopeless(l label, least int64) bool {
	if least != c.best.cost {
		return least > c.best.cost
	}
	return c.best.total == c.need && l.count+ceilDiv(c.need-l.sum, c.largest) >= c.best.count
}

// offer takes a purchase when it is better than the best.
func (c *covering) offer(f found) {
	b := &c.best
	if f.cost != b.cost {
		if f.cost < b.cost {
			*b = f
		}
		return
	}
	if f.total < b.total || f.total == b.total && f.count < b.count {
		*b = f
	}
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }

// ceilMulDiv is a·b/c rounded up, with the product in 128 bits; the quotient
// is known to fit.
func ceilMulDiv(a, b, c int64) int64 {
	high, low := bits.Mul64(uint64(a), uint64(b))
	quotient, rest := bits.Div64(high, low, uint64(c))
	if rest > 0 {
		quotient++
	}
	return int64(quotient)
}

// compareProducts compares a·b with c·d in 128 bits.
func compareProducts(a, b, c, d int64) int {
	high1, low1 := bits.Mul64(uint64(a), uint64(b))
	high2, low2 := bits.Mul64(uint64(c), uint64(d))
	switch {
	case high1 < high2 || high1 == high2 && low1 < low2:
		return -1
	case high1 == high2 && low1 == low2:
		return 0
	}
	return 1
}
