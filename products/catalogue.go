package products

import (
	"iter"
	"slices"
)

// Catalogue holds the products, methods, rates and their sources. It does not
// change once loaded and may be read by many at once.
type Catalogue struct {
	version    string
	products   []Product
	byID       map[string]Product
	own        map[string]Product // of a job: looked up before byID
	values     map[string][]Value
	limits     map[string][]Limit
	methods    []Method
	partSizes  []PartSize
	operations []Operation
	sources    []Source
	marks      []Mark
}

// Version is a short hash of every data file: two catalogues with one version
// hold the same data. Products added by With do not change it.
func (c *Catalogue) Version() string { return c.version }

// Currency is the ISO 4217 code of the prices.
func (c *Catalogue) Currency() string { return "USD" }

// Product returns the product with an id.
func (c *Catalogue) Product(id string) (Product, bool) {
	if p, ok := c.own[id]; ok {
		return p, true
	}
	p, ok := c.byID[id]
	return p, ok
}

// Products returns all products: by kind, then in the order of the data files,
// then those of the job that override none.
func (c *Catalogue) Products() []Product {
	return slices.Clone(c.products)
}

// All goes through Products without a list of its own.
func (c *Catalogue) All() iter.Seq[Product] { return slices.Values(c.products) }

// With returns the catalogue with a job's own products, which replace those of
// the same id and extend the list otherwise. The receiver stays as it is. A nil
// product or one without id is left out; of two with one id the last stands.
func (c *Catalogue) With(own []Product) *Catalogue {
	if len(own) == 0 {
		return c
	}
	with := *c
	with.own = make(map[string]Product, len(c.own)+len(own))
	for id, p := range c.own {
		with.own[id] = p
	}
	var added []string
	for _, p := range own {
		if p == nil || p.Base().ID == "" {
			continue
		}
		id := p.Base().ID
		if _, known := with.Product(id); !known {
			added = append(added, id)
		}
		with.own[id] = p
	}
	with.products = make([]Product, 0, len(c.products)+len(added))
	for _, p := range c.products {
		if over, ok := with.own[p.Base().ID]; ok {
			p = over
		}
		with.products = append(with.products, p)
	}
	for _, id := range added {
		with.products = append(with.products, with.own[id])
	}
	return &with
}

// Values returns the sourced numbers behind an abrasive of the catalogue. A
// job's own product has none.
func (c *Catalogue) Values(id string) []Value {
	if _, over := c.own[id]; over {
		return nil
	}
	return append([]Value(nil), c.values[id]...)
}

// Limits returns the published bounds for work with an abrasive of the
// catalogue. A job's own product has none.
func (c *Catalogue) Limits(id string) []Limit {
	if _, over := c.own[id]; over || id == "" {
		return nil
	}
	return append([]Limit(nil), c.limits[id]...)
}

// LimitsOfAll returns the published bounds for work with any abrasive, a job's
// own too.
func (c *Catalogue) LimitsOfAll() []Limit { return append([]Limit(nil), c.limits[""]...) }

// Methods returns the ways to apply paint, slowest first as listed.
func (c *Catalogue) Methods() []Method { return append([]Method(nil), c.methods...) }

// Method returns the way to apply paint with an id.
func (c *Catalogue) Method(id string) (Method, bool) {
	for _, m := range c.methods {
		if m.ID == id {
			return m, true
		}
	}
	return Method{}, false
}

// PartSizes returns the classes of part that transfer efficiency depends on.
func (c *Catalogue) PartSizes() []PartSize { return append([]PartSize(nil), c.partSizes...) }

// Operations returns the rates of other work.
func (c *Catalogue) Operations() []Operation { return append([]Operation(nil), c.operations...) }

// Operation returns the rate of the work with an id.
func (c *Catalogue) Operation(id string) (Operation, bool) {
	for _, o := range c.operations {
		if o.ID == id {
			return o, true
		}
	}
	return Operation{}, false
}

// Sources returns every source that a value names, with its title.
func (c *Catalogue) Sources() []Source { return append([]Source(nil), c.sources...) }

// Marks returns the degrees of confidence and what each means.
func (c *Catalogue) Marks() []Mark { return append([]Mark(nil), c.marks...) }
