package calculate

import (
	"errors"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/sheets"
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
	"filmbuild/surfaces/sheet"
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

func (f *figure) Layers() []string { return sheets.Layers() }

func (f *figure) Draw(system string) ([]byte, error) { return f.DrawLayer("", system) }

func (f *figure) DrawLayer(layer, system string) ([]byte, error) {
	look := sheet.Look{Title: f.ID, US: system == "us"}
	picture := sheet.Figure
	if layer == "cut" {
		picture = sheet.Cut
	}
	data, err := picture(f.Figure, look)
	return data, told(err)
}

func (f *figure) Answer() (any, error) {
	m, err := marking.Measure(f.Figure)
	return m, told(err)
}

// told makes faults of the input of those that are found in measuring only, such
// as a figure that reaches round the body it lies on.
func told(err error) error {
	var found surfaces.Faults
	if !errors.As(err, &found) {
		return err
	}
	var list fault.List
	for _, f := range found {
		list.Add(f.Pointer, f.Code, f.Detail)
	}
	return list.Err()
}
