package calculate

import (
	"filmbuild/estimate/climate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/weather"
	"filmbuild/products"
)

// dewPoint looks a product up before it judges the weather.
type dewPoint struct{ *climate.DewPoint }

func (d *dewPoint) Fields() any { return d.DewPoint }

func (d *dewPoint) Check(catalogue *products.Catalogue, faults *fault.List) {
	if d.Product != "" {
		if a, ok := appliedProduct(catalogue, d.Product, "/product", faults); ok {
			d.Demands, d.Recoat = &a.Demands, a.Recoat
		}
	}
	d.DewPoint.Check(faults.At(""))
}

func (d *dewPoint) Answer() (any, error) { return d.Calculate() }

// appliedProduct finds a product that is applied in the weather.
func appliedProduct(catalogue *products.Catalogue, id, at string, faults *fault.List) (weather.Applied, bool) {
	p, found := catalogue.Product(id)
	if !found {
		faults.Addf(at, "unknown_reference", "there is no product %q; /v1/products lists them", clip(id))
		return weather.Applied{}, false
	}
	a, ok := weather.For(p, catalogue)
	if !ok {
		faults.Addf(at, "not_applicable", "%q is a %s; name a paint or a liquid that is put on the surface", id, p.Base().Kind)
	}
	return a, ok
}

func clip(text string) string {
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return text
}
