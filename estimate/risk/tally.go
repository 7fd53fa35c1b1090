package risk

import (
	"math"
	"slices"
)

// Tally counts numbers in classes that are one part in 4096 of a doubling wide,
// so that percentiles of any number of trials come from the same room. A
// percentile is off by less than a class, 0.025 % of its value. Numbers of 0
// and below count together as 0: quantities and costs are not negative.
//
// Counts do not depend on the order of counting, so a tally is the same for any
// number of workers.
type Tally struct {
	count, nothing int
	least, most    float64
	pages          map[uint64]*page // by the number's exponent
	last           *page
	lastAt         uint64
}

const pageBits = 12

type page [1 << pageBits]uint32

func newTally() *Tally {
	return &Tally{least: math.Inf(1), most: math.Inf(-1), pages: map[uint64]*page{}, lastAt: math.MaxUint64}
}

// add counts numbers.
func (t *Tally) add(numbers []float64) {
	t.count += len(numbers)
	numbers = t.again(numbers)
	least, most, counts, at := t.least, t.most, t.last, t.lastAt
	for _, x := range numbers {
		if x < least {
			least = x
		}
		if x > most {
			most = x
		}
		class := math.Float64bits(x) >> (52 - pageBits)
		if class>>pageBits != at || !(x > 0) {
			if !(x > 0) {
				t.nothing++
				continue
			}
			at = class >> pageBits
			t.turn(at)
			counts = t.last
		}
		counts[class&(1<<pageBits-1)]++
	}
	t.least, t.most = least, most
}

// again counts the numbers at the beginning that are the only one counted so far,
// as those of a figure that does not vary, and returns the others.
func (t *Tally) again(numbers []float64) []float64 {
	if t.least != t.most {
		return numbers
	}
	n := 0
	for n < len(numbers) && numbers[n] == t.least {
		n++
	}
	if t.least > 0 {
		t.last[math.Float64bits(t.least)>>(52-pageBits)&(1<<pageBits-1)] += uint32(n)
	} else {
		t.nothing += n
	}
	return numbers[n:]
}

// turn opens the page of an exponent.
func (t *Tally) turn(at uint64) {
	if t.pages[at] == nil {
		t.pages[at] = &page{}
	}
	t.last, t.lastAt = t.pages[at], at
}

// join adds the counts of another tally.
func (t *Tally) join(other *Tally) {
	t.count += other.count
	t.nothing += other.nothing
	t.least, t.most = min(t.least, other.least), max(t.most, other.most)
	for at, from := range other.pages {
		t.turn(at)
		for i, n := range from {
			t.last[i] += n
		}
	}
}

// Percentiles returns the numbers below which some shares of those counted lie,
// taken as evenly spread within their class. The shares are in [0, 1] and go up.
func (t *Tally) Percentiles(shares ...float64) []float64 {
	found := make([]float64, 0, len(shares))
	if t.count == 0 {
		for range shares {
			found = append(found, math.NaN())
		}
		return found
	}
	passed := float64(t.nothing)
	wanted := func() float64 { return shares[len(found)] * float64(t.count) }
	for len(found) < len(shares) && t.nothing > 0 && wanted() <= passed {
		found = append(found, max(0, t.least))
	}
	exponents := make([]uint64, 0, len(t.pages))
	for at := range t.pages {
		exponents = append(exponents, at)
	}
	slices.Sort(exponents)
	for _, at := range exponents {
		for i, n := range t.pages[at] {
			if n == 0 {
				continue
			}
			for len(found) < len(shares) && wanted() <= passed+float64(n) {
				class := at<<pageBits | uint64(i)
				from, to := math.Float64frombits(class<<(52-pageBits)), math.Float64frombits((class+1)<<(52-pageBits))
				x := from + (to-from)*(wanted()-passed)/float64(n)
				found = append(found, min(max(x, t.least), t.most))
			}
			if passed += float64(n); len(found) == len(shares) {
				return found
			}
		}
	}
	for len(found) < len(shares) {
		found = append(found, t.most)
	}
	return found
}

// Percentile is Percentiles for one share.
func (t *Tally) Percentile(share float64) float64 { return t.Percentiles(share)[0] }

// Least and Most are the smallest and the largest number counted.
func (t *Tally) Least() float64 { return t.least }

// Most is the largest number counted.
func (t *Tally) Most() float64 { return t.most }
