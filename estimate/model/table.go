package model

import (
	"fmt"
	"math"
)

// mostSteps bounds a table.
const mostSteps = 200_000

// table holds the steps of a function that goes up in steps: values[i] for x in
// (upTo[i−1], upTo[i]].
type table struct {
	upTo, values []float64
}

func newTable(steps Steps, span interval) (*table, error) {
	if math.IsInf(span.low, 0) || math.IsInf(span.high, 0) {
		return nil, fmt.Errorf("what it is looked up by has no bounds")
	}
	t := &table{}
	for x := math.Max(0, span.low*(1-1e-9)); ; {
		value, upTo := steps(x)
		if math.IsNaN(value) || upTo < x {
			return nil, fmt.Errorf("it has no value at %v", x)
		}
		t.upTo, t.values = append(t.upTo, upTo), append(t.values, value)
		if upTo >= span.high {
			return t, nil
		}
		if len(t.upTo) == mostSteps {
			return nil, fmt.Errorf("it has more than %d steps between %v and %v", mostSteps, span.low, span.high)
		}
		x = math.Max(math.Nextafter(upTo, math.Inf(1)), 1e-12) // smaller numbers underflow
	}
}

func (t *table) at(x float64) float64 {
	low, high := 0, len(t.upTo)-1 // the last value goes on for ever
	for low < high {
		if middle := (low + high) / 2; t.upTo[middle] < x {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return t.values[low]
}

func (t *table) span() interval {
	span := point(t.values[0])
	for _, v := range t.values {
		span = span.with(v)
	}
	return span
}
