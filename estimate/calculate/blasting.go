package calculate

import (
	"filmbuild/estimate/blast"
	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// blasting looks a medium up before it calculates.
type blasting struct{ *blast.Blasting }

func (b *blasting) Fields() any { return b.Blasting }

func (b *blasting) Check(catalogue *products.Catalogue, faults *fault.List) {
	if b.Media != "" {
		b.lookUp(catalogue, faults)
	}
	b.Blasting.Check(faults.At(""))
}

// lookUp takes from the medium what the input leaves open. The strip rate of
// the catalogue is an assumption and is never taken here.
func (b *blasting) lookUp(catalogue *products.Catalogue, faults *fault.List) {
	product, _ := catalogue.Product(b.Media)
	media, ok := product.(*products.Media)
	if !ok {
		faults.Addf("/media", "unknown_reference", "there is no medium %q; /v1/media lists them", b.Media)
		return
	}
	if b.BulkDensityKgM3 == nil {
		b.BulkDensityKgM3 = &media.BulkDensityKgM3
	}
	if b.BreakdownPercent == nil {
		b.BreakdownPercent = &media.BreakdownPercent
	}
}

func (b *blasting) Answer() (any, error) { return b.Blasting.Calculate() }
