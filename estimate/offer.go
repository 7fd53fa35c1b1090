package estimate

import (
	"cmp"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"filmbuild/products"
)

// offer is one pack on sale, at the price that the job will pay.
type offer struct {
	pack  float64
	part  string
	price *decimal.Decimal
	tax   string
}

// offers lists the packs of a product. Prices of the catalogue are in its own
// currency; in a job of another they are left out, and a warning says so.
func (r *run) offers(base *products.Common, catalogueCurrency string) []offer {
	own := r.ownProduct(base.ID)
	foreign := catalogueCurrency != r.job.Currency && !own
	var list []offer
	for _, pack := range base.Packs {
		o := offer{pack: pack.Size(), part: pack.Part, tax: r.taxOf(pack.Tax, own)}
		if pack.Price != nil && !foreign {
			price := r.escalate(r.currency.Of(pack.Price.Decimal), "materials", pack.PriceDate).Decimal()
			o.price = &price
			r.priceDate(pack.PriceDate)
		}
		list = append(list, o)
	}
	switch {
	case foreign:
		r.warn("%s has a price in %s only and the job is in %s: its cost is not in any figure; give it a price under products", base.ID, catalogueCurrency, r.job.Currency)
	case !hasPrice(list) && len(list) > 0:
		r.warn("%s has no price: its cost is not in any figure", base.ID)
	case !own:
		r.assumed.add("", "prices of the catalogue are invented, typical figures: put your own quotes under products", 0, "", "invented, for the demonstration")
	}
	return list
}

// hasPrice reports whether something of every part on sale has a price.
func hasPrice(offers []offer) bool {
	priced := map[string]bool{}
	for _, o := range offers {
		priced[o.part] = priced[o.part] || o.price != nil
	}
	for _, known := range priced {
		if !known {
			return false
		}
	}
	return len(priced) > 0
}

func (r *run) ownProduct(id string) bool {
	_, own := r.productAt[id]
	return own
}

// buy covers what a line has to buy, part by part where the parts of a mix are
// sold apart: each in its ratio, so that all that is needed can be mixed.
func (r *run) buy(line *OrderLine, p products.Product, offers []offer) error {
	wanted := max(line.ToBuy, p.Base().MinimumOrder)
	line.Bought = math.Inf(1)
	for _, part := range sharesOf(p) {
		share := part.Ratio
		bought, err := cover(line.SameBatch, wanted*share, part.Part, offers)
		if err != nil {
			return err
		}
		r.fill(line, bought, part.Part)
		line.Bought = min(line.Bought, bought.Bought/share)
	}
	line.LeftOver = math.Max(0, math.Round((line.Bought-line.ToBuy)*perUnit)/perUnit)
	return nil
}

// perUnit is to which part of a unit what is left over is told: a billionth, as
// the cover by packs.
const perUnit = 1e9

func cover(sameBatch bool, needed float64, part string, offers []offer) (products.Purchase, error) {
	var packs []products.PackOffer
	for _, o := range offers {
		if o.part == part {
			packs = append(packs, products.PackOffer{Pack: o.pack, Price: o.price})
		}
	}
	if sameBatch {
		return products.CoverAlike(needed, packs)
	}
	return products.Cover(needed, packs)
}

func (r *run) fill(line *OrderLine, p products.Purchase, part string) {
	for _, pack := range p.Packs {
		price := r.currency.Zero()
		if pack.Price != nil {
			price = r.currency.Of(*pack.Price)
		}
		line.Packs = append(line.Packs, OrderPack{Part: part, Pack: pack.Pack, Count: pack.Count, Price: price})
		line.Cost = line.Cost.Add(r.currency.Cost(float64(pack.Count), price.Decimal()))
	}
}

// dangerous reports whether a carrier takes a product as dangerous goods.
//
// Source: common practice; section 14 of the safety data sheet decides, and
// hazardous_freight of a product says what it says.
func dangerous(base *products.Common) bool {
	if base.HazardousFreight != nil {
		return *base.HazardousFreight
	}
	return slices.ContainsFunc(base.Hazards, func(hazard string) bool {
		return slices.Contains([]string{"solvent", "isocyanate", "acid", "alkali", "chromate"}, hazard)
	})
}

// taxOf is how a price of the job's own, or of the catalogue, stands to tax.
func (r *run) taxOf(word string, own bool) string {
	if own && r.job.PricesIncludeTax {
		return cmp.Or(word, "included")
	}
	return cmp.Or(word, "added")
}
