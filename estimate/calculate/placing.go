package calculate

import (
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces/placing"
)

// fix finds one place, whose fields are the input's own.
type fix struct{ place *placing.Place }

func newFix() Input { return &fix{placing.NewPlace()} }

func (f *fix) Fields() any { return f.place }

func (f *fix) Check(_ *products.Catalogue, faults *fault.List) { f.place.Check(faults.At("")) }

func (f *fix) Answer() (any, error) { return f.place.Locate() }
