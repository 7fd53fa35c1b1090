package risk

import "math"

// Percentile returns the value below which a share of sorted numbers lies, on
// the straight line between the two next to it, as the PERCENTILE.INC of
// spreadsheets does. share is in [0, 1]; of no numbers it is NaN.
//
//	h = (n − 1)·share    x = sorted[⌊h⌋] + (h − ⌊h⌋)·(sorted[⌊h⌋+1] − sorted[⌊h⌋])
//
// Source: Hyndman and Fan, "Sample quantiles in statistical packages" (1996),
// definition 7, from memory; a test holds it to a general library's.
func Percentile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	h := float64(len(sorted)-1) * share
	below := min(int(h), len(sorted)-1)
	above := min(below+1, len(sorted)-1)
	return sorted[below] + (h-float64(below))*(sorted[above]-sorted[below])
}

// ShareWithin returns the share of sorted numbers that are at most limit.
func ShareWithin(sorted []float64, limit float64) float64 {
	low, high := 0, len(sorted)
	for low < high {
		if middle := (low + high) / 2; sorted[middle] <= limit {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return float64(low) / float64(len(sorted))
}
