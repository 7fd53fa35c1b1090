package build

import (
	"math"
	"reflect"
	"strconv"
	"strings"

	"filmbuild/surfaces/quantity"
)

// field is one member of a struct on the wire.
type field struct {
	reflect.StructField
	owner     reflect.Type // the struct that declares it, which may be embedded
	name      string
	omitEmpty bool
	unit      string // as printed
	measured  bool   // its numbers may be text with a unit of their own
	limits    *quantity.Limits
}

// fieldsOf lists the members of a struct type as encoding/json and the decoder
// of jobs see them, and the field that holds an inline union, where it has one.
func fieldsOf(t reflect.Type) (fields []field, inline *reflect.StructField, err error) {
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("wire") == "inline" {
			inline = &f
			continue
		}
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "" || name == "-" {
			continue
		}
		one := field{StructField: f, owner: ownerOf(t, f.Index), name: name, omitEmpty: strings.Contains(options, "omit"),
			unit: quantity.UnitOf(name), measured: quantity.SuffixOf(name) != ""}
		if unit, told := f.Tag.Lookup("unit"); told {
			one.unit, one.measured = unit, unit != ""
		}
		if tag, told := f.Tag.Lookup("limit"); told {
			limits, err := quantity.ParseLimits(tag)
			if err != nil {
				return nil, nil, err
			}
			one.limits = &limits
		}
		fields = append(fields, one)
	}
	return fields, inline, nil
}

// ownerOf is the struct type that declares the field at an index path.
func ownerOf(t reflect.Type, index []int) reflect.Type {
	for _, k := range index[:len(index)-1] {
		if t = t.Field(k).Type; t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
	}
	return t
}

// bound writes the limits that the field's tag sets, which are those that the
// program enforces.
func (f field) bound(s *object) {
	if f.unit != "" {
		s.set("x-unit", f.unit)
	}
	if most, err := strconv.Atoi(f.Tag.Get("most")); err == nil {
		s.set("maxLength", most)
	}
	if f.limits == nil {
		return
	}
	limitKeyword(s, f.limits.Low, f.limits.LowOpen, "minimum", "exclusiveMinimum")
	limitKeyword(s, f.limits.High, f.limits.HighOpen, "maximum", "exclusiveMaximum")
	s.set("x-limits", f.limits.Text(f.unit))
}

func limitKeyword(s *object, bound float64, open bool, closedWord, openWord string) {
	if math.IsInf(bound, 0) {
		return
	}
	if open {
		closedWord = openWord
	}
	s.set(closedWord, bound)
}

// described is the field's text: its doc tag, or its comment in the source.
func (f field) described(c *comments) (string, error) {
	if doc := f.Tag.Get("doc"); doc != "" {
		return doc, nil
	}
	return c.ofField(f.owner, f.Name)
}
