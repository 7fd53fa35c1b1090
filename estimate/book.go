package estimate

import "filmbuild/products"

// operation returns the book's rate of an operation. The loader refuses a
// catalogue that lacks one.
func (r *run) operation(id string) products.Operation {
	op, _ := r.catalogue.Operation(id)
	return op
}

// sourceOf returns where one value of a product comes from, as text.
func (r *run) sourceOf(p products.Product, quantity string) string {
	for _, v := range r.catalogue.Values(p.Base().ID) {
		if v.Quantity == quantity && v.Substrate == "" {
			return v.Text()
		}
	}
	if source := p.Base().Source; source != "" {
		return source
	}
	return "the job's product " + p.Base().ID
}

func valueOr(value *float64, otherwise float64) float64 {
	if value == nil {
		return otherwise
	}
	return *value
}

// noted is the source of a value with what has to be known to trust it.
func noted(v products.Value) string {
	if v.Note == "" {
		return v.Text()
	}
	return v.Text() + "; " + v.Note
}
