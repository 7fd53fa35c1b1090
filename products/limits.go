package products

import (
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// interval is what a limit tag says, such as (0,100]: a round bracket leaves
// the bound out. Tags are written once and serve the listing of fields too.
type interval struct {
	low, high         float64
	lowOpen, highOpen bool
}

// parseInterval reads a limit tag; a test reads every tag of every kind.
func parseInterval(tag string) (interval, error) {
	low, high, found := strings.Cut(tag, ",")
	if !found || len(low) < 2 || len(high) < 2 {
		return interval{}, fmt.Errorf("limit %q is no interval such as (0,100]", tag)
	}
	l := interval{lowOpen: low[0] == '(', highOpen: high[len(high)-1] == ')'}
	var lowFault, highFault error
	l.low, lowFault = strconv.ParseFloat(low[1:], 64)
	l.high, highFault = strconv.ParseFloat(high[:len(high)-1], 64)
	return l, errors.Join(lowFault, highFault)
}

// holds reports whether value lies inside; NaN never does.
func (l interval) holds(value float64) bool {
	above := value > l.low || (!l.lowOpen && value == l.low)
	below := value < l.high || (!l.highOpen && value == l.high)
	return above && below
}

func (l interval) text(unit string) string {
	low, high := "at least", "at most"
	if l.lowOpen {
		low = "above"
	}
	if l.highOpen {
		high = "below"
	}
	return fmt.Sprintf("%s %g%s and %s %g%s", low, l.low, unit, high, l.high, unit)
}

// checkLimits reports every number of a struct, of its parts and its lists that
// lies outside its limit tag. A nil pointer is an absent value.
func checkLimits(v any, report func(pointer, code, detail string)) {
	checkStruct(reflect.Indirect(reflect.ValueOf(v)), "", report)
}

func checkStruct(v reflect.Value, at string, report func(pointer, code, detail string)) {
	for i := range v.NumField() {
		field, value := v.Type().Field(i), v.Field(i)
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		pointer := at + "/" + name
		if field.Anonymous {
			pointer = at
		}
		if value.Kind() == reflect.Pointer {
			value = value.Elem() // the zero Value, of invalid kind, where nil
		}
		tag, limited := field.Tag.Lookup("limit")
		switch {
		case value.Kind() == reflect.Float64 && limited:
			checkNumber(name, tag, value.Float(), pointer, report)
		case value.Kind() == reflect.Struct && value.Type().PkgPath() == v.Type().PkgPath():
			checkStruct(value, pointer, report)
		case value.Kind() == reflect.Slice && value.Type().Elem().Kind() == reflect.Struct:
			for i := range value.Len() {
				checkStruct(value.Index(i), fmt.Sprintf("%s/%d", pointer, i), report)
			}
		}
	}
}

func checkNumber(name, tag string, number float64, pointer string, report func(pointer, code, detail string)) {
	limits, err := parseInterval(tag)
	if err == nil && limits.holds(number) {
		return
	}
	unit := unitOf(name)
	said := fmt.Sprintf("is %g%s", number, unit)
	if number == 0 {
		said = "is missing or 0"
	}
	report(pointer, "out_of_range", fmt.Sprintf("%s %s; it must be %s", name, said, limits.text(unit)))
}

// unitOf returns the unit that ends a wire name, with a space before it.
func unitOf(name string) string {
	for _, u := range []struct{ suffix, printed string }{
		{"_kg_m3", " kg/m³"}, {"_kg_l", " kg/L"}, {"_g_l", " g/L"}, {"_l_m2", " L/m²"}, {"_m2_h", " m²/h"}, {"_m_h", " m/h"}, {"_percent", " %"},
		{"_kpa", " kPa"}, {"_um", " µm"}, {"_mm", " mm"}, {"_m2", " m²"}, {"_kg", " kg"}, {"_m", " m"}, {"_l", " L"}, {"_h", " h"}, {"_c", " °C"}, {"_s", " s"}, {"_deg", "°"},
	} {
		if strings.HasSuffix(name, u.suffix) {
			return u.printed
		}
	}
	return ""
}
