package wire

import (
	"encoding"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"filmbuild/estimate/fault"
)

// Decoder fills structs from nodes. Faults gathers what is wrong; Ranges what
// was given as a range, by pointer.
type Decoder struct {
	Unions Unions
	Faults *fault.List
	Ranges map[string]Range
}

// Decode fills the struct that into points to from an object. Members that are
// absent or null leave the struct's value, its default, as it is.
func (d *Decoder) Decode(n *Node, into any) {
	if n.Type != Object {
		d.wrongType("", "the document", "an object", n)
		return
	}
	d.object(n, reflect.ValueOf(into).Elem(), "", "")
}

// Defaulter is a struct whose defaults are not all zero; Defaults sets them
// before its members are read.
type Defaulter interface{ Defaults() }

// object fills a struct. key is the member that told its kind, where it has one:
// the struct need not have a field for it.
func (d *Decoder) object(n *Node, v reflect.Value, at, key string) {
	l := layoutOf(v.Type())
	if defaulter, ok := v.Addr().Interface().(Defaulter); ok {
		defaulter.Defaults()
	}
	var union reflect.Value // the struct inside the inline union, once its kind is known
	if l.inline != nil {
		field := v.FieldByIndex(l.inline)
		union, key = d.union(n, field, at), d.Unions[field.Type()].Key
	}
	for i := range n.members {
		m := &n.members[i]
		if k, ok := l.byName[m.name]; ok {
			f := l.fields[k]
			d.value(&m.value, v.FieldByIndex(f.index), at+"/"+m.name, f)
			continue
		}
		if union.IsValid() {
			u := layoutOf(union.Type())
			if k, ok := u.byName[m.name]; ok {
				f := u.fields[k]
				d.value(&m.value, union.FieldByIndex(f.index), at+"/"+m.name, f)
				continue
			}
		}
		if m.name == key || (l.inline != nil && !union.IsValid()) {
			continue // the kind, or of an unknown kind: nobody can tell which members belong
		}
		d.unknown(m.name, at, l, union)
	}
}

func (d *Decoder) unknown(name, at string, l *layout, union reflect.Value) {
	known := l.names
	if union.IsValid() {
		known = append(known[:len(known):len(known)], layoutOf(union.Type()).names...)
	}
	hint := "; known here: " + strings.Join(known, ", ")
	if near := closest(name, known); near != "" {
		hint = "; did you mean " + near + "?"
	}
	d.Faults.Add(at+"/"+escape(name), "unknown_field", fmt.Sprintf("there is no field %q here%s", shorten(name), hint))
}

// textual is implemented by amounts of money, decimal.Decimal and types made of
// it: they are read from their literal, digit by digit.
var textual = reflect.TypeFor[encoding.TextUnmarshaler]()

func (d *Decoder) value(n *Node, v reflect.Value, at string, f field) {
	if n.Type == Null || f.raw {
		return
	}
	t := v.Type()
	switch {
	case t.Kind() == reflect.Struct && reflect.PointerTo(t).Implements(textual):
		d.money(n, v, at, f)
	case t.Kind() == reflect.Pointer:
		fresh := reflect.New(t.Elem())
		before := d.Faults.HasBelow(at)
		d.value(n, fresh.Elem(), at, f)
		if before || !d.Faults.HasBelow(at) {
			v.Set(fresh)
		}
	case t.Kind() == reflect.String:
		d.text(n, v, at, f)
	case t.Kind() == reflect.Bool:
		d.bool(n, v, at, f)
	case t.Kind() == reflect.Float64:
		if x, ok := d.number(n, at, f); ok {
			v.SetFloat(x)
		}
	case v.CanInt() || v.CanUint():
		d.whole(n, v, at, f)
	case t.Kind() == reflect.Slice:
		d.list(n, v, at, f)
	case t.Kind() == reflect.Array:
		d.array(n, v, at, f)
	case t.Kind() == reflect.Map:
		d.mapping(n, v, at, f)
	case t.Kind() == reflect.Interface:
		if n.Type != Object {
			d.wrongType(at, f.name, "an object", n)
			return
		}
		if inner := d.union(n, v, at); inner.IsValid() {
			d.object(n, inner, at, d.Unions[t].Key)
		}
	case n.Type != Object:
		d.wrongType(at, f.name, "an object", n)
	default:
		d.object(n, v, at, "")
	}
}

// union makes the value of an interface field by the kind its object names.
func (d *Decoder) union(n *Node, v reflect.Value, at string) reflect.Value {
	u := d.Unions[v.Type()]
	kind := n.TextOf(u.Key)
	made, ok := u.New(kind)
	if !ok {
		code, said := "unknown_kind", fmt.Sprintf("%q is no %s; choose one of %s", shorten(kind), u.Key, strings.Join(u.Kinds, ", "))
		if kind == "" {
			code, said = "required", fmt.Sprintf("%s is missing; choose one of %s", u.Key, strings.Join(u.Kinds, ", "))
		} else if near := closest(kind, u.Kinds); near != "" {
			said = fmt.Sprintf("%q is no %s; did you mean %s?", shorten(kind), u.Key, near)
		}
		d.Faults.Add(at+"/"+u.Key, code, said)
		return reflect.Value{}
	}
	v.Set(reflect.ValueOf(made))
	return v.Elem().Elem()
}

func (d *Decoder) text(n *Node, v reflect.Value, at string, f field) {
	text := strings.ReplaceAll(n.text, "\r\n", "\n") // as spreadsheets end their lines
	switch {
	case n.Type != Text:
		d.wrongType(at, f.name, "text", n)
	case len(n.text) > f.most:
		d.Faults.Addf(at, "too_long", "%s has %d characters; the most is %d", f.name, len(n.text), f.most)
	case hasControl(text):
		d.Faults.Addf(at, "wrong_type", "%s holds a control character; write plain text", f.name)
	default:
		v.SetString(text)
	}
}

// MostText is the longest text that a field may hold, in bytes, unless its tag
// most says otherwise.
const MostText = 4000

func hasControl(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return (r < 0x20 && r != '\n' && r != '\t') || r == 0x7f })
}

func (d *Decoder) bool(n *Node, v reflect.Value, at string, f field) {
	if n.Type == Bool || (n.bare && (n.text == "true" || n.text == "false")) {
		v.SetBool(n.text == "true")
		return
	}
	d.wrongType(at, f.name, "true or false", n)
}

func (d *Decoder) list(n *Node, v reflect.Value, at string, f field) {
	if n.Type != List {
		d.wrongType(at, f.name, "a list", n)
		return
	}
	filled := reflect.MakeSlice(v.Type(), len(n.items), len(n.items))
	for i := range n.items {
		below := at + "/" + strconv.Itoa(i)
		if n.items[i].Type == Null {
			d.wrongType(below, f.name, "a value", &n.items[i])
			continue
		}
		d.value(&n.items[i], filled.Index(i), below, f)
	}
	v.Set(filled)
}

func (d *Decoder) array(n *Node, v reflect.Value, at string, f field) {
	if n.Type != List || len(n.items) != v.Len() {
		d.wrongType(at, f.name, fmt.Sprintf("a list of %d values", v.Len()), n)
		return
	}
	for i := range n.items {
		d.value(&n.items[i], v.Index(i), at+"/"+strconv.Itoa(i), f)
	}
}

func (d *Decoder) mapping(n *Node, v reflect.Value, at string, f field) {
	if n.Type != Object {
		d.wrongType(at, f.name, "an object", n)
		return
	}
	filled := reflect.MakeMap(v.Type())
	for i := range n.members {
		m := &n.members[i]
		one := reflect.New(v.Type().Elem()).Elem()
		d.value(&m.value, one, at+"/"+escape(m.name), f)
		filled.SetMapIndex(reflect.ValueOf(m.name), one)
	}
	v.Set(filled)
}

func (d *Decoder) wrongType(at, name, want string, n *Node) {
	said := n.Type.String()
	switch n.Type {
	case Text, Number:
		said = fmt.Sprintf("%s, %q", said, shorten(n.text))
	case List:
		said = fmt.Sprintf("a list of %d", len(n.items))
	}
	d.Faults.Addf(at, "wrong_type", "%s must be %s; it is %s", name, want, said)
}

func shorten(text string) string {
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return text
}
