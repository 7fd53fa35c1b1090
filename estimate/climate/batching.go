package climate

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// Batching is one coat of a mixed paint and what bounds a batch of it.
type Batching struct {
	CoatL   float64 // mixed, thinned paint that one coat uses, without what batches leave
	HoursH  float64 // it takes to put the coat on
	UseH    float64 // a batch can be used
	LossL   float64 // left in gun, hose and cup at the end of each batch
	LargerL float64 // most to mix at a time
}

// Batches is how a coat is mixed.
type Batches struct {
	BatchL float64 // most to mix at a time, what is left behind in it
	Count  int     // batches of the coat
	EvenL  float64 // the coat in batches of one size, what is left behind in it
}

// mostBatches of one coat is beyond any job, and keeps the count a whole number.
const mostBatches = 100_000

// Split divides a coat into batches that are used up in time.
//
//	usable = min(coat, coat · use/hours, largest − loss)
//	count  = ⌈coat / usable⌉,  batch = usable + loss
//
// coat is in L in (0, 10⁷], hours in h in [0, 10⁶], use in h in (0, 1000], loss
// in L in [0, 1000], largest in L in (0, 10⁶]. It returns a
// *quantity.RangeError outside, and a plain error where what stays in the gun
// takes a whole batch, or where a coat needs more than 100,000 batches.
//
// Source: identity; the bounds of use and size are LongestBatchH and
// LargestBatchL.
func (b Batching) Split() (Batches, error) {
	for _, q := range []struct {
		name, unit string
		value      float64
		limits     quantity.Limits
	}{
		{"paint of one coat", "L", b.CoatL, quantity.Limits{High: 1e7, LowOpen: true}},
		{"hours of one coat", "h", b.HoursH, quantity.Limits{High: 1e9}},
		{"time to use a batch", "h", b.UseH, quantity.Limits{High: 1000, LowOpen: true}},
		{"loss of a batch", "L", b.LossL, quantity.Limits{High: 1000}},
		{"largest batch", "L", b.LargerL, quantity.Limits{High: 1e6, LowOpen: true}},
	} {
		if err := quantity.Within(q.name, q.value, q.unit, q.limits); err != nil {
			return Batches{}, err
		}
	}
	usable := b.CoatL
	if b.HoursH > b.UseH {
		usable = b.CoatL * b.UseH / b.HoursH
	}
	usable = min(usable, b.LargerL-b.LossL)
	if usable <= 0 {
		return Batches{}, fmt.Errorf("%.4g L stay in gun, hose and cup, and at most %.4g L are mixed at a time: nothing is left to paint with", b.LossL, b.LargerL)
	}
	count := math.Max(1, math.Ceil(b.CoatL/usable-countSlack))
	if !(count <= mostBatches) {
		return Batches{}, fmt.Errorf("one coat takes %.4g h and a batch can be used for %.4g h: that is more than %d batches", b.HoursH, b.UseH, mostBatches)
	}
	return Batches{BatchL: usable + b.LossL, Count: int(count), EvenL: b.CoatL/count + b.LossL}, nil
}
