package products

import (
	"fmt"
	"reflect"
	"strings"
)

// fill sets the field of a struct that a column names by its wire name, or by
// the path to it (mix/base). An empty cell leaves it as it is.
func fill(v reflect.Value, column, text string) error {
	if text == "" {
		return nil
	}
	name, rest, nested := strings.Cut(column, "/")
	field, ok := fieldNamed(v, name)
	if !ok {
		return fmt.Errorf("no field %q", name)
	}
	if field.Kind() == reflect.Pointer {
		if field.IsNil() {
			field.Set(reflect.New(field.Type().Elem()))
		}
		field = field.Elem()
	}
	if nested {
		return fill(field, rest, text)
	}
	switch field.Interface().(type) {
	case float64:
		number, err := plainNumber(text)
		field.SetFloat(number)
		return err
	case string:
		field.SetString(text)
	case []string:
		field.Set(reflect.ValueOf(strings.Fields(text)))
	default:
		return fmt.Errorf("a cell cannot fill %q", name)
	}
	return nil
}

func fieldNamed(v reflect.Value, name string) (reflect.Value, bool) {
	t := v.Type()
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			if inner, ok := fieldNamed(v.Field(i), name); ok {
				return inner, true
			}
			continue
		}
		if wire, _, _ := strings.Cut(f.Tag.Get("json"), ","); wire == name {
			return v.Field(i), true
		}
	}
	return reflect.Value{}, false
}
