package estimate

import (
	"fmt"
	"math"
	"strings"
)

// leftOver names what of a purchase stays over: packs that stay shut, and the
// rest in an opened one. The largest packs are opened last, because they keep
// and go back best.
func leftOver(line *OrderLine) string {
	if line.LeftOver <= 0 || line.Bought == 0 {
		return ""
	}
	var parts []string
	rest := line.LeftOver
	for _, p := range line.Packs { // largest first
		shut := min(math.Floor(rest/p.Pack+1e-9), float64(p.Count))
		if shut > 0 && p.Part == "" {
			parts = append(parts, fmt.Sprintf("%.0f unopened of %s", shut, measure(p.Pack, line.Unit)))
			rest -= shut * p.Pack
		}
	}
	if rest > 1e-9*line.Bought {
		parts = append(parts, measure(rest, line.Unit)+" in an opened one")
	}
	return strings.Join(parts, " and ")
}

// measure prints a quantity with its unit to three digits, more before the point.
func measure(value float64, unit string) string {
	digits := 3
	if whole := math.Abs(value); whole >= 1 {
		digits = max(3, int(math.Log10(whole))+1)
	}
	return strings.TrimSpace(fmt.Sprintf("%.*g %s", digits, value, unit))
}
