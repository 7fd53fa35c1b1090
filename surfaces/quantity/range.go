package quantity

import (
	"fmt"
	"strconv"
)

// RangeError says that a value lies outside the range in which a formula holds.
type RangeError struct {
	Quantity string
	Value    float64
	Unit     string
	Limits   Limits
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s is %s; it must be %s", e.Quantity, withUnit(e.Value, e.Unit), e.Limits.Text(e.Unit))
}

// Within returns a *RangeError unless value lies inside limits, and nil if it
// does. NaN lies inside no limits.
func Within(quantity string, value float64, unit string, limits Limits) error {
	if limits.Contain(value) {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Unit: unit, Limits: limits}
}

// withUnit prints a value as short as it can be read back, with its unit.
func withUnit(value float64, unit string) string {
	text := strconv.FormatFloat(value, 'g', -1, 64)
	if unit == "" {
		return text
	}
	return text + " " + unit
}
