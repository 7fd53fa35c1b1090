package build

import (
	"encoding/json"
	"fmt"
	"reflect"

	"github.com/shopspring/decimal"

	"filmbuild/estimate/money"
)

var (
	rawType     = reflect.TypeFor[json.RawMessage]()
	amountType  = reflect.TypeFor[money.Amount]()
	decimalType = reflect.TypeFor[decimal.Decimal]()
)

// isDecimal reports whether a type is a decimal, or a named one around it.
func isDecimal(t reflect.Type) bool {
	named := t.Kind() == reflect.Struct && t.NumField() == 1 && t.Field(0).Anonymous && t.Field(0).Type == decimalType
	return t == decimalType || named
}

// property describes one field; value holds its default.
func (s *schemas) property(f field, value reflect.Value, on side) (*object, error) {
	t := f.Type
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	schema, err := s.typed(t, f, on)
	if err != nil {
		return nil, err
	}
	doc, err := f.described(s.comments)
	if err != nil {
		return nil, err
	}
	schema.setUnlessEmpty("description", doc)
	f.bound(schema)
	if on == asked {
		if words := s.words[f.owner.Name()+"."+f.name]; words != nil {
			schema.set("enum", words)
		}
		if usual, told := defaultOf(f, value); told {
			schema.set("default", usual)
		}
	} else if f.Type.Kind() == reflect.Pointer && !f.omitEmpty {
		return obj("anyOf", []any{schema, obj("type", "null")}), nil
	}
	return schema, nil
}

// typed describes the values of a type, as far as the type tells.
func (s *schemas) typed(t reflect.Type, f field, on side) (*object, error) {
	switch {
	case t == rawType:
		return ref("Job"), nil // the only JSON that is handed through as it is
	case t == amountType:
		return ref("Amount"), nil
	case isDecimal(t) && on == asked:
		return ref("Money"), nil
	case isDecimal(t):
		return ref("Amount"), nil
	}
	switch t.Kind() {
	case reflect.String:
		return obj("type", "string"), nil
	case reflect.Bool:
		return obj("type", "boolean"), nil
	case reflect.Int, reflect.Int64, reflect.Uint64:
		return numeric(on, "Count", "integer"), nil
	case reflect.Float64:
		if f.measured {
			return numeric(on, "Quantity", "number"), nil
		}
		return numeric(on, "Number", "number"), nil
	case reflect.Slice:
		return s.list(t, f, on, obj("type", "array"))
	case reflect.Array:
		return s.list(t, f, on, obj("type", "array", "minItems", t.Len(), "maxItems", t.Len()))
	case reflect.Map:
		values, err := s.typed(t.Elem(), f, on)
		return obj("type", "object", "additionalProperties", values), err
	case reflect.Struct:
		return s.component(t, on)
	case reflect.Interface:
		if t.NumMethod() == 0 {
			return obj(), nil
		}
		return s.union(t, on)
	}
	return nil, fmt.Errorf("a %s has no form in the document", t)
}

func (s *schemas) list(t reflect.Type, f field, on side, schema *object) (*object, error) {
	items, err := s.typed(t.Elem(), f, on)
	return schema.set("items", items), err
}

func numeric(on side, component, plain string) *object {
	if on == asked {
		return ref(component)
	}
	return obj("type", plain)
}

// mustBeGiven reports whether an input is refused without the field: its json
// tag does not leave it out when empty, and what it holds unless given is no
// value. A pointer tells nothing here, since the rule stands in the checks.
func mustBeGiven(f field, value reflect.Value) bool {
	if f.omitEmpty {
		return false
	}
	switch value.Kind() {
	case reflect.String, reflect.Slice, reflect.Interface:
		return value.IsZero()
	case reflect.Int:
		return f.limits != nil && !f.limits.Contain(float64(value.Int()))
	case reflect.Float64:
		return f.limits != nil && !f.limits.Contain(value.Float())
	case reflect.Struct:
		return isDecimal(value.Type())
	}
	return false
}

// defaultOf returns what a field holds unless given, where that is a value.
func defaultOf(f field, value reflect.Value) (any, bool) {
	switch value.Kind() {
	case reflect.String:
		return value.String(), value.String() != ""
	case reflect.Bool:
		return value.Bool(), true
	case reflect.Int:
		return value.Int(), f.limits == nil || f.limits.Contain(float64(value.Int()))
	case reflect.Float64:
		return value.Float(), f.limits != nil && f.limits.Contain(value.Float())
	}
	return nil, false
}
