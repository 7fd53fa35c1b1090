package risk

// Bin is one bar of a histogram.
type Bin struct {
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Share float64 `json:"share_ratio"` // of the trials
}

// Histogram counts sorted numbers in bars of equal width between the half
// percentiles at both ends; the few beyond go into the outermost bars, so that
// the shares add up to 1. Numbers that are all alike make one bar.
func Histogram(sorted []float64, bars int) []Bin {
	if len(sorted) == 0 {
		return nil
	}
	low, high := Percentile(sorted, 0.005), Percentile(sorted, 0.995)
	if !(low < high) {
		return []Bin{{From: sorted[0], To: sorted[len(sorted)-1], Share: 1}}
	}
	bins := make([]Bin, bars)
	passed := 0.0
	for i := range bins {
		bins[i].From = low + (high-low)*float64(i)/float64(bars)
		bins[i].To = low + (high-low)*float64(i+1)/float64(bars)
		upTo := 1.0
		if i < bars-1 {
			upTo = ShareWithin(sorted, bins[i].To)
		}
		bins[i].Share, passed = upTo-passed, upTo
	}
	return bins
}

// Point is one point of an S-curve.
type Point struct {
	Value float64 `json:"value"`
	Share float64 `json:"share_ratio"` // of the trials that are at most Value
}

// SCurve returns the least number, every percentile from 1 to 99, and the most.
func SCurve(sorted []float64) []Point {
	if len(sorted) == 0 {
		return nil
	}
	points := make([]Point, 101)
	for i := range points {
		share := float64(i) / 100
		points[i] = Point{Value: Percentile(sorted, share), Share: share}
	}
	return points
}
