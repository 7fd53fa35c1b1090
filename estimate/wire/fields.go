package wire

import (
	"reflect"
	"strconv"
	"strings"
	"sync"

	"filmbuild/surfaces/quantity"
)

// layout is what Decode knows of a struct type: its members by wire name, and
// at most one inline union whose members stand among the struct's own.
type layout struct {
	fields []field
	byName map[string]int
	names  []string
	inline []int // index of the inline union field; nil without one
}

type field struct {
	name   string
	index  []int
	suffix string // the unit its numbers become
	raw    bool   // known, and read by whoever wants it: not by Decode
	limits *quantity.Limits
	most   int // longest text, in bytes
}

// layouts caches the layout of a struct type; types never change.
var layouts sync.Map // reflect.Type -> *layout

func layoutOf(t reflect.Type) *layout {
	if known, ok := layouts.Load(t); ok {
		return known.(*layout)
	}
	l := &layout{byName: map[string]int{}}
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("wire") == "inline" {
			l.inline = f.Index
			continue
		}
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "" || name == "-" {
			continue
		}
		suffix := quantity.SuffixOf(name)
		if unit, ok := f.Tag.Lookup("unit"); ok {
			suffix = unit
		}
		most := MostText
		if own, err := strconv.Atoi(f.Tag.Get("most")); err == nil {
			most = own
		}
		one := field{name: name, index: f.Index, suffix: suffix, most: most, raw: f.Tag.Get("wire") == "raw"}
		if limits, err := quantity.ParseLimits(f.Tag.Get("limit")); err == nil {
			one.limits = &limits // a tag that cannot be read is found by a test of all tags
		}
		l.byName[name] = len(l.fields)
		l.fields = append(l.fields, one)
		l.names = append(l.names, name)
	}
	layouts.Store(t, l)
	return l
}
