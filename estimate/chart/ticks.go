package chart

import (
	"math"
	"strconv"
	"strings"
)

// ticks are round numbers from low to high, about as many as wanted: their step
// is 1, 2 or 5 times a power of ten.
func ticks(low, high float64, wanted int) []float64 {
	if !(low < high) {
		return []float64{low}
	}
	rough := (high - low) / float64(wanted)
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	step := 10 * power
	for _, times := range []float64{1, 2, 5} {
		if times*power >= rough {
			step = times * power
			break
		}
	}
	var list []float64
	for k := math.Ceil(low / step); k*step <= high; k++ {
		list = append(list, k*step)
	}
	return list
}

// short writes a number with thin spaces between thousands and no more decimals
// than a step of the axis needs.
func short(value, step float64) string {
	decimals := 0
	if step > 0 && step < 1 {
		decimals = int(math.Ceil(-math.Log10(step)))
	}
	text := strconv.FormatFloat(math.Abs(value), 'f', decimals, 64)
	whole, rest, _ := strings.Cut(text, ".")
	var grouped strings.Builder
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			grouped.WriteRune('\u202f')
		}
		grouped.WriteRune(digit)
	}
	if rest != "" {
		grouped.WriteString("." + rest)
	}
	if value < 0 {
		return "−" + grouped.String()
	}
	return grouped.String()
}
