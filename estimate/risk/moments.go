package risk

import "math"

// Moments are the mean of some numbers and the sum of their squared distances
// from it.
type Moments struct {
	count   int
	mean, m float64
}

func momentsOf(numbers []float64) Moments {
	sum := 0.0
	for _, x := range numbers {
		sum += x - numbers[0] // so that numbers that are all alike have exactly their own mean
	}
	o := Moments{count: len(numbers), mean: numbers[0] + sum/float64(len(numbers))}
	for _, x := range numbers {
		o.m += (x - o.mean) * (x - o.mean)
	}
	return o
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
