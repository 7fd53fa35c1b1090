package calculate

import (
	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
	"filmbuild/surfaces/sketch"
)

// area measures a shape, whose fields are the input's own.
type area struct {
	Shape surfaces.Shape `json:"-" wire:"inline"`
}

func (a *area) Fields() any { return a }

// Form gives the reader the shape, which may be a mesh to be found.
func (a *area) Form() surfaces.Shape { return a.Shape }

func (a *area) Check(_ *products.Catalogue, faults *fault.List) {
	if a.Shape != nil {
		a.Shape.Check(faults.At(""))
	}
}

func (a *area) Draw(system string) ([]byte, error) {
	return sketch.SVG(a.Shape, sketch.System(system), "")
}

func (a *area) Answer() (any, error) { return estimate.MeasureShape(a.Shape), nil }

// figure measures one figure of a marking, whose fields are the input's own. A
// marking of a job may be sent as it is: its id, count, place and note are
// checked and bear on nothing.
type figure struct {
	estimate.Marking
}

func (f *figure) Fields() any { return &f.Marking }

func (f *figure) Check(_ *products.Catalogue, faults *fault.List) {
	quantity.Check(f.Marking, faults.At(""))
	if f.Figure != nil {
		f.Figure.Check(faults.At(""))
	}
	if f.Place != nil {
		f.Place.Check(faults.At("/place"))
	}
}

func (f *figure) Answer() (any, error) { return marking.Measure(f.Figure) }
