package marking

import (
	"sync"

	"filmbuild/surfaces/quantity"
)

// Kind describes one kind of figure for the catalogue.
type Kind struct {
	Name    string
	Doc     string // what it is and by which ratios it is drawn
	Source  string // of the ratios
	Fields  []quantity.Field
	Example Figure // invented sizes
}

// kind is one row of the list of kinds.
type kind struct {
	name, doc, source string
	make              func() Figure // with the defaults set
	example           func() Figure
}

// New returns a pointer to the struct of a kind with its defaults set, and
// false for a kind that does not exist.
func New(name string) (Figure, bool) {
	for _, k := range kindList() {
		if k.name == name {
			return k.make(), true
		}
	}
	return nil, false
}

// Kinds lists every kind, in a fixed order.
func Kinds() []Kind {
	var list []Kind
	for _, k := range kindList() {
		list = append(list, Kind{k.name, k.doc, k.source, quantity.Describe(k.make()), k.example()})
	}
	return list
}

// kindList is kinds, made once: it never changes.
var kindList = sync.OnceValue(kinds)

// sourceOf returns the source of a kind's ratios.
func sourceOf(name string) string {
	for _, k := range kindList() {
		if k.name == name {
			return k.source
		}
	}
	return "identity"
}

const identity = "identity: plane geometry"
