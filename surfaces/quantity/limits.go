package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Limits is an interval of the real numbers. The zero value is [0, 0].
type Limits struct {
	Low, High         float64
	LowOpen, HighOpen bool // the bound itself is outside
}

// Contain reports whether value lies inside. NaN and infinities never do.
func (l Limits) Contain(value float64) bool {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return false
	}
	if value < l.Low || (l.LowOpen && value == l.Low) {
		return false
	}
	return value < l.High || (!l.HighOpen && value == l.High)
}

// Text says the limits in words: "above 0 m and at most 200 m".
func (l Limits) Text(unit string) string {
	low, high := "at least ", "at most "
	if l.LowOpen {
		low = "above "
	}
	if l.HighOpen {
		high = "below "
	}
	switch {
	case math.IsInf(l.Low, -1) && math.IsInf(l.High, 1):
		return "a finite number"
	case math.IsInf(l.High, 1):
		return low + withUnit(l.Low, unit)
	case math.IsInf(l.Low, -1):
		return high + withUnit(l.High, unit)
	}
	return low + withUnit(l.Low, unit) + " and " + high + withUnit(l.High, unit)
}

// ParseLimits reads interval notation: "(0,200]", "[0,100)", "(0,inf)".
func ParseLimits(text string) (Limits, error) {
	bad := fmt.Errorf("limits %q are not an interval such as (0,200]", text)
	if len(text) < 5 || !strings.ContainsRune("([", rune(text[0])) || !strings.ContainsRune(")]", rune(text[len(text)-1])) {
		return Limits{}, bad
	}
	low, high, found := strings.Cut(text[1:len(text)-1], ",")
	if !found {
		return Limits{}, bad
	}
	l := Limits{LowOpen: text[0] == '(', HighOpen: text[len(text)-1] == ')'}
	var errLow, errHigh error
	l.Low, errLow = strconv.ParseFloat(low, 64)
	l.High, errHigh = strconv.ParseFloat(high, 64)
	if errLow != nil || errHigh != nil || l.Low > l.High {
		return Limits{}, bad
	}
	return l, nil
}
