// Package calculate lists the calculators: one question each, with the fields
// of its input and its answer on the wire. The command line, the page and the
// API reach them through this list.
package calculate

import (
	"filmbuild/estimate/blast"
	"filmbuild/estimate/climate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/film"
	"filmbuild/estimate/inspect"
	"filmbuild/estimate/masking"
	"filmbuild/estimate/voc"
	"filmbuild/estimate/weather"
	"filmbuild/products"
)

// Calculator answers one question.
type Calculator struct {
	Name string
	Doc  string
	New  func() Input // an input with its defaults set
}

// Input is the input of one calculator.
type Input interface {
	// Fields is the struct that a decoder fills.
	Fields() any
	// Check notes every fault in the fields.
	Check(catalogue *products.Catalogue, faults *fault.List)
	// Answer is called on fields without faults; it may still find that the
	// values do not go together.
	Answer() (any, error)
}

// Drawer is an input that can be drawn, true to scale, as SVG.
type Drawer interface {
	// Draw draws it with lengths in the units of a system, si or us.
	Draw(system string) ([]byte, error)
}

// Layered is a Drawer whose drawing has several layers, the first taken unless
// one is chosen.
type Layered interface {
	Drawer
	Layers() []string
	DrawLayer(layer, system string) ([]byte, error)
}

// All lists the calculators by name.
func All() []Calculator {
	return []Calculator{
		{"area", "Area of a shape, by face, with its edges.", func() Input { return &area{} }},
		{"blasting", "Air, abrasive, time and waste of blasting an area.", func() Input { return &blasting{Blasting: blast.NewBlasting()} }},
		{"coating", "Paint, thinner and dry film for an area.", func() Input { return pure[*film.Coating, film.Result]{film.NewCoating()} }},
		{"day", "Hours of a day in which each product may be applied, from readings of the weather.", func() Input { return &day{Day: weather.NewDay()} }},
		{"dew-point", "Whether the weather lets one coat.", func() Input { return &dewPoint{climate.NewDewPoint()} }},
		{"inspection", "How many film readings an area needs.", func() Input { return pure[*inspect.Inspection, inspect.Result]{inspect.NewInspection()} }},
		{"marking", "Areas by colour and edges of a marking.", func() Input { return &figure{} }},
		{"masking", "Tape and film for a length of edge.", func() Input { return pure[*masking.Masking, masking.Result]{masking.NewMasking()} }},
		{"packs", "The cheapest whole packs that cover a need.", func() Input { return &packs{} }},
		{"placing", "Where a marking was, from distances to edges, station lines or taped distances, and how sure that is.", newFix},
		{"pot-life", "How long a mixed paint can be used, and how much to mix.", func() Input { return pure[*climate.PotLife, climate.PotLifeResult]{climate.NewPotLife()} }},
		{"voc", "Solvent content of a mixed paint, less water and exempt solvents.", func() Input { return pure[*voc.Mixture, voc.Result]{voc.NewMixture()} }},
	}
}

// Find returns the calculator of a name.
func Find(name string) (Calculator, bool) {
	for _, c := range All() {
		if c.Name == name {
			return c, true
		}
	}
	return Calculator{}, false
}

// pure is a calculator that needs no catalogue.
type pure[T interface {
	Check(report func(pointer, code, detail string))
	Calculate() (R, error)
}, R any] struct{ in T }

func (p pure[T, R]) Fields() any { return p.in }

func (p pure[T, R]) Check(_ *products.Catalogue, faults *fault.List) { p.in.Check(faults.At("")) }

// Answer works the input out. What Check cannot see by single fields, such as a
// paint that is used up before it may be used, is a fault of the whole input.
func (p pure[T, R]) Answer() (any, error) {
	result, err := p.in.Calculate()
	if err != nil {
		faults := &fault.List{}
		faults.Add("", "inconsistent", err.Error())
		return nil, faults.Err()
	}
	return result, nil
}
