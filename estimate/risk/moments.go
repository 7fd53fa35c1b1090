package risk

import "math"

// Moments are the mean of some numbers and the sum of their squared distances
// from it.
type Moments struct {
	count   int
	mean, m float64
}

// momentsOf goes by the distances from the first number, which keeps the digits of
// numbers that are large against their spread, and gives numbers that are all
// alike exactly their own mean. Two sums at a time keep the processor busy.
func momentsOf(numbers []float64) Moments {
	first, count := numbers[0], len(numbers)
	var sum, squares, sum2, squares2 float64
	for ; len(numbers) > 1; numbers = numbers[2:] {
		a, b := numbers[0]-first, numbers[1]-first
		sum, squares = sum+a, squares+a*a
		sum2, squares2 = sum2+b, squares2+b*b
	}
	for _, x := range numbers {
		sum, squares = sum+x-first, squares+(x-first)*(x-first)
	}
	n := float64(count)
	sum, squares = sum+sum2, squares+squares2
	return Moments{count: count, mean: first + sum/n, m: max(0, squares-sum*sum/n)}
}

// join adds more numbers.
//
// Source: Chan, Golub and LeVeque (1979), the pairwise update, from memory; a
// test holds it to a general library's.
func (o *Moments) join(more Moments) {
	if more.count == 0 {
		return
	}
	n := float64(o.count + more.count)
	apart := more.mean - o.mean
	o.m += more.m + apart*apart*float64(o.count)*float64(more.count)/n
	o.mean += apart * float64(more.count) / n
	o.count += more.count
}

// Mean is the average.
func (o Moments) Mean() float64 { return o.mean }

// StandardDeviation is that of the numbers as a sample, with n − 1.
func (o Moments) StandardDeviation() float64 {
	if o.count < 2 {
		return 0
	}
	return math.Sqrt(o.m / float64(o.count-1))
}
