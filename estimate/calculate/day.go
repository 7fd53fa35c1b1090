package calculate

import (
	"strconv"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/weather"
	"filmbuild/products"
)

// day looks products up before it goes through a record of the weather.
type day struct {
	*weather.Day
	applied []weather.Applied
}

func (d *day) Fields() any { return d.Day }

func (d *day) Check(catalogue *products.Catalogue, faults *fault.List) {
	d.applied = nil
	for i, id := range d.Products {
		if a, ok := appliedProduct(catalogue, id, "/products/"+strconv.Itoa(i), faults); ok {
			d.applied = append(d.applied, a)
		}
	}
	d.Day.Check(faults.At(""))
}

func (d *day) Answer() (any, error) {
	if len(d.applied) == 0 {
		return d.Calculate()
	}
	return d.For(d.applied)
}
