package calculate

import (
	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// packs covers a need with whole packs.
type packs struct{ products.PacksInput }

func (p *packs) Fields() any { return &p.PacksInput }

func (p *packs) Check(_ *products.Catalogue, faults *fault.List) { p.PacksInput.Check(faults.At("")) }

func (p *packs) Answer() (any, error) { return p.Calculate() }
