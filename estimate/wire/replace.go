package wire

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// Replace returns a copy of a document in which one number, given by its JSON
// pointer, has another value. What lies on the way to it is copied; the rest is
// shared with the original, which stays as it was. The error tells where the
// pointer leads nowhere, or not to a number.
func Replace[T any](document *T, pointer string, x float64) (*T, error) {
	path := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	copied, err := replaced(reflect.ValueOf(document), path, x)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", pointer, err)
	}
	return copied.Interface().(*T), nil
}

var decimalType = reflect.TypeFor[decimal.Decimal]()

// replaced copies a value with the number at the end of the path replaced.
func replaced(v reflect.Value, path []string, x float64) (reflect.Value, error) {
	copied := reflect.New(v.Type()).Elem()
	copied.Set(v)
	if len(path) == 0 {
		return copied, setNumber(copied, x)
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return v, fmt.Errorf("there is nothing at %s", path[0])
		}
		inner, err := replaced(v.Elem(), path, x)
		if err != nil {
			return v, err
		}
		if v.Kind() == reflect.Interface {
			copied.Set(inner)
			return copied, nil
		}
		copied = reflect.New(v.Type().Elem())
		copied.Elem().Set(inner)
		return copied, nil
	case reflect.Slice:
		i, err := strconv.Atoi(path[0])
		if err != nil || i < 0 || i >= v.Len() {
			return v, fmt.Errorf("%s is no index of the list", path[0])
		}
		one, err := replaced(v.Index(i), path[1:], x)
		if err != nil {
			return v, err
		}
		copied = reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(copied, v)
		copied.Index(i).Set(one)
		return copied, nil
	case reflect.Array:
		i, err := strconv.Atoi(path[0])
		if err != nil || i < 0 || i >= v.Len() {
			return v, fmt.Errorf("%s is no index of the list", path[0])
		}
		one, err := replaced(v.Index(i), path[1:], x)
		if err == nil {
			copied.Index(i).Set(one)
		}
		return copied, err
	case reflect.Map:
		key := reflect.ValueOf(path[0])
		if v.Type().Key().Kind() != reflect.String || !v.MapIndex(key).IsValid() {
			return v, fmt.Errorf("there is no %s", path[0])
		}
		one, err := replaced(v.MapIndex(key), path[1:], x)
		if err != nil {
			return v, err
		}
		copied = reflect.MakeMap(v.Type())
		for _, k := range v.MapKeys() {
			copied.SetMapIndex(k, v.MapIndex(k))
		}
		copied.SetMapIndex(key, one)
		return copied, nil
	case reflect.Struct:
		l := layoutOf(v.Type())
		k, known := l.byName[path[0]]
		switch {
		case known:
			field := copied.FieldByIndex(l.fields[k].index)
			one, err := replaced(field, path[1:], x)
			if err == nil {
				field.Set(one)
			}
			return copied, err
		case l.inline != nil:
			field := copied.FieldByIndex(l.inline)
			one, err := replaced(field, path, x)
			if err == nil {
				field.Set(one)
			}
			return copied, err
		}
	}
	return v, fmt.Errorf("there is no %s", path[0])
}

func setNumber(v reflect.Value, x float64) error {
	switch v.Kind() {
	case reflect.Pointer:
		inner := reflect.New(v.Type().Elem())
		if err := setNumber(inner.Elem(), x); err != nil {
			return err
		}
		v.Set(inner)
		return nil
	case reflect.Float64:
		v.SetFloat(x)
		return nil
	case reflect.Int:
		v.SetInt(int64(math.Round(x)))
		return nil
	case reflect.Struct:
		if v.Type().ConvertibleTo(decimalType) && decimalType.ConvertibleTo(v.Type()) {
			v.Set(reflect.ValueOf(decimal.NewFromFloat(x)).Convert(v.Type()))
			return nil
		}
	}
	return fmt.Errorf("there is no number there")
}
