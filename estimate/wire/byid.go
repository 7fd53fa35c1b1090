package wire

import (
	"reflect"
	"strconv"
	"strings"
)

// ByID writes a JSON pointer into a document with the ids of elements in place of
// their places in lists, where they have one. The rest of a pointer that leads
// nowhere stays as it is.
func ByID(document any, pointer string) string {
	tokens := strings.Split(pointer, "/")
	v := reflect.ValueOf(document)
	for k := 1; k < len(tokens); k++ {
		v = inside(v)
		switch v.Kind() {
		case reflect.Slice:
			i, err := strconv.Atoi(tokens[k])
			if err != nil || i < 0 || i >= v.Len() {
				return strings.Join(tokens, "/")
			}
			v = inside(v.Index(i))
			if id, has := idOf(v); has {
				tokens[k] = id
			}
		case reflect.Struct:
			at, has := layoutOf(v.Type()).byName[tokens[k]]
			if !has {
				return strings.Join(tokens, "/")
			}
			v = v.FieldByIndex(layoutOf(v.Type()).fields[at].index)
		default:
			return strings.Join(tokens, "/")
		}
	}
	return strings.Join(tokens, "/")
}

// inside goes through pointers and interfaces to what they hold.
func inside(v reflect.Value) reflect.Value {
	for v.IsValid() && (v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface) {
		v = v.Elem()
	}
	return v
}

func idOf(v reflect.Value) (string, bool) {
	if v.Kind() != reflect.Struct {
		return "", false
	}
	at, has := layoutOf(v.Type()).byName["id"]
	if !has {
		return "", false
	}
	id := v.FieldByIndex(layoutOf(v.Type()).fields[at].index)
	return id.String(), id.Kind() == reflect.String && id.String() != ""
}
