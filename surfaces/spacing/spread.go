// Package spacing sets texts of drawings beside each other.
package spacing

// Spread moves places apart that are closer than pitch, as little as possible.
// The places increase. (Least squares: places joined in blocks that stand at
// their mean.)
func Spread(want []float64, pitch float64) []float64 {
	type block struct {
		sum   float64
		count int
	}
	var blocks []block
	for i, w := range want {
		blocks = append(blocks, block{w - float64(i)*pitch, 1})
		for n := len(blocks); n > 1; n-- {
			a, b := blocks[n-2], blocks[n-1]
			if a.sum*float64(b.count) <= b.sum*float64(a.count) {
				break
			}
			blocks = append(blocks[:n-2], block{a.sum + b.sum, a.count + b.count})
		}
	}
	placed := make([]float64, 0, len(want))
	for _, b := range blocks {
		for range b.count {
			placed = append(placed, b.sum/float64(b.count)+float64(len(placed))*pitch)
		}
	}
	return placed
}
