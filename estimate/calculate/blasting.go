package calculate

import (
	"slices"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/blast"
	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// blasting looks a medium up before it calculates.
type blasting struct{ *blast.Blasting }

func (b *blasting) Fields() any { return b.Blasting }

func (b *blasting) Check(catalogue *products.Catalogue, faults *fault.List) {
	if b.Substrate != "" && !slices.Contains(estimate.Substrates(), b.Substrate) {
		faults.Addf("/substrate", "unknown_kind", "substrate is %q; it must be one of %s", b.Substrate, strings.Join(estimate.Substrates(), ", "))
	}
	if b.Media != "" {
		b.lookUp(catalogue, faults)
	}
	b.Blasting.Check(faults.At(""))
}

// lookUp takes from the medium what the input leaves open. The strip rate of the
// catalogue comes with its band and says that it is an estimate.
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
		broken, measured := estimate.BreakdownPercent(media, b.Substrate, b.PressureKPa)
		b.BreakdownPercent = &broken
		if measured && b.CarryOutPercent == nil {
			b.CarryOutPercent = new(estimate.CarryOutPercent)
		}
	}
	if b.DustAs == "" {
		b.DustAs = blast.DustClass(media.DustAs)
	}
	flowKnown := b.MediaFlowKgH != nil || b.Feed != blast.Suction
	if b.StripRateM2H == nil && b.AreaM2 != nil && flowKnown && b.CollectedDebrisKg == nil {
		if rate, ok := estimate.BookStripRate(media, b.NozzleBoreMm, b.PressureKPa, b.RemovedFilmUm, b.Feed); ok {
			for _, v := range catalogue.Values(media.ID) {
				if v.Quantity == "strip_rate_m2_h" {
					rate.Source = v.Text()
				}
			}
			b.TakeBookRate(rate)
		}
	}
}

func (b *blasting) Answer() (any, error) { return b.Blasting.Calculate() }
