package takeoff

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// object is a JSON object that keeps the order of its members. Its values are
// *object, []any, string, json.Number, bool and nil.
type object struct {
	names []string
	of    map[string]any
}

func newObject() *object { return &object{of: map[string]any{}} }

func (o *object) set(name string, v any) {
	if _, known := o.of[name]; !known {
		o.names = append(o.names, name)
	}
	o.of[name] = v
}

// MarshalJSON writes the members in their order.
func (o *object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, name := range o.names {
		if i > 0 {
			b.WriteByte(',')
		}
		for k, part := range []any{name, o.of[name]} {
			data, err := marshal(part)
			if err != nil {
				return nil, err
			}
			if k == 1 {
				b.WriteByte(':')
			}
			b.Write(data)
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimRight(b.Bytes(), "\n"), err
}

var errDeep = errors.New("lists and objects stand too deep in each other")

// parse reads one JSON value.
func parse(data []byte) (any, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	v, err := parseValue(d, 0)
	if err != nil {
		return nil, err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("more text follows the value")
	}
	return v, nil
}

func parseValue(d *json.Decoder, depth int) (any, error) {
	if depth > 24 { // as package wire
		return nil, errDeep
	}
	token, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch token {
	case json.Delim('['):
		list := []any{}
		for d.More() {
			v, err := parseValue(d, depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err = d.Token()
		return list, err
	case json.Delim('{'):
		o := newObject()
		for d.More() {
			name, err := d.Token()
			if err != nil {
				return nil, err
			}
			v, err := parseValue(d, depth+1)
			if err != nil {
				return nil, err
			}
			if _, twice := o.of[fmt.Sprint(name)]; twice {
				return nil, fmt.Errorf("%v stands twice in one object", name)
			}
			o.set(fmt.Sprint(name), v)
		}
		_, err = d.Token()
		return o, err
	}
	return token, nil
}

// put sets the value at a dotted path below an object, in which 0 is the first
// element of a list. It answers false where something stands in the way.
func (o *object) put(path string, v any) bool {
	name, below, deeper := strings.Cut(path, ".")
	if !deeper {
		if _, taken := o.of[name]; taken {
			return false
		}
		o.set(name, v)
		return true
	}
	if first, ok := strings.CutPrefix(below, "0."); ok {
		list, fine := o.of[name].([]any)
		if _, taken := o.of[name]; taken && !fine {
			return false
		}
		if len(list) == 0 {
			list = []any{newObject()}
			o.set(name, list)
		}
		inner, fine := list[0].(*object)
		return fine && inner.put(first, v)
	}
	if _, there := o.of[name]; !there {
		o.set(name, newObject())
	}
	inner, ok := o.of[name].(*object)
	return ok && inner.put(below, v)
}

// get is the value at a dotted path of objects.
func (o *object) get(path string) (any, bool) {
	name, below, deeper := strings.Cut(path, ".")
	v, there := o.of[name]
	if !deeper || !there {
		return v, there
	}
	inner, ok := v.(*object)
	if !ok {
		return nil, false
	}
	return inner.get(below)
}

// appendTo adds an element to the list at a path and returns its index, or -1
// where something stands in the way.
func (o *object) appendTo(path string, v any) int {
	old, there := o.get(path)
	list, ok := old.([]any)
	if there && !ok {
		return -1
	}
	if !there {
		if !o.put(path, []any{v}) {
			return -1
		}
		return 0
	}
	name, holder := path, o
	if cut := strings.LastIndexByte(path, '.'); cut >= 0 {
		above, _ := o.get(path[:cut])
		holder, name = above.(*object), path[cut+1:]
	}
	holder.set(name, append(list, v))
	return len(list)
}

// merge works the members of another object in; it returns the dotted path of
// one that is there already, or "".
func (o *object) merge(other *object) string {
	for _, name := range other.names {
		old, there := o.of[name]
		inner, a := old.(*object)
		added, b := other.of[name].(*object)
		switch {
		case !there:
			o.set(name, other.of[name])
		case a && b:
			if at := inner.merge(added); at != "" {
				return name + "." + at
			}
		default:
			return name
		}
	}
	return ""
}

// pointerOf writes a dotted path as a JSON pointer.
func pointerOf(path string) string { return "/" + strings.ReplaceAll(path, ".", "/") }

func index(i int) string { return "/" + strconv.Itoa(i) }
