package quantity

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"sync"
)

// Field describes one number, text or list that a document may carry: what the
// catalogue routes print and what Check enforces are this one description.
type Field struct {
	Name   string  `json:"name"`             // as on the wire
	Unit   string  `json:"unit,omitempty"`   // of the suffix, as printed; empty for counts and texts
	Limits string  `json:"limits,omitempty"` // in words
	Doc    string  `json:"doc"`
	limits *Limits // nil where the field has none
	index  []int
}

// Holds reports whether a value lies inside the field's limits; every number
// does where it has none.
func (f Field) Holds(value float64) bool { return f.limits == nil || f.limits.Contain(value) }

// Describe lists the wire fields of a struct (or a pointer to one), outer and
// embedded, from their tags:
//
//	SpanM float64 `json:"span_m" limit:"(0,200]" doc:"root to tip, along the true span"`
func Describe(v any) []Field {
	t := reflect.TypeOf(v)
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return describeType(t)
}

// described caches the tags of a struct type; types never change, so neither
// does what is stored.
var described sync.Map // reflect.Type -> []Field

func describeType(t reflect.Type) []Field {
	if known, ok := described.Load(t); ok {
		return known.([]Field)
	}
	var fields []Field
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "" || name == "-" {
			continue
		}
		field := Field{Name: name, Unit: UnitOf(name), Doc: f.Tag.Get("doc"), index: f.Index}
		if unit, ok := f.Tag.Lookup("unit"); ok {
			field.Unit = unit // a name that ends like a unit but has none carries unit:""
		}
		if tag, ok := f.Tag.Lookup("limit"); ok {
			limits, err := ParseLimits(tag)
			if err != nil {
				panic(fmt.Sprintf("%s.%s: %v", t, f.Name, err)) // a tag is source code: a test reads every one
			}
			field.limits, field.Limits = &limits, limits.Text(field.Unit)
		}
		fields = append(fields, field)
	}
	described.Store(t, fields)
	return fields
}

// Check reports every number of a struct that lies outside the limits of its
// tag, in lists of structs and of numbers too. A nil pointer is an absent
// value and is not checked. Pointers in reports are JSON pointers below v.
func Check(v any, report func(pointer, code, detail string)) {
	checkValue(reflect.ValueOf(v), "", report)
}

func checkValue(v reflect.Value, at string, report func(pointer, code, detail string)) {
	for v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	for _, f := range describeType(v.Type()) {
		value := v.FieldByIndex(f.index)
		if value.Kind() == reflect.Pointer {
			if value.IsNil() {
				continue
			}
			value = value.Elem()
		}
		switch {
		case value.Kind() == reflect.Slice && value.Type().Elem().Kind() == reflect.Struct:
			for i := range value.Len() {
				checkValue(value.Index(i), at+"/"+f.Name+"/"+strconv.Itoa(i), report)
			}
		case value.Kind() == reflect.Struct:
			if value.Type().PkgPath() == v.Type().PkgPath() {
				checkValue(value, at+"/"+f.Name, report)
			}
		case f.limits != nil:
			checkNumber(f, value, at, report)
		}
	}
}

func checkNumber(f Field, value reflect.Value, at string, report func(pointer, code, detail string)) {
	var number float64
	switch {
	case value.CanFloat():
		number = value.Float()
	case value.CanInt():
		number = float64(value.Int())
	default:
		return
	}
	if f.limits.Contain(number) {
		return
	}
	said := "is " + withUnit(number, f.Unit)
	if number == 0 {
		said = "is missing or 0"
	}
	report(at+"/"+f.Name, "out_of_range", fmt.Sprintf("%s %s; it must be %s", f.Name, said, f.limits.Text(f.Unit)))
}
