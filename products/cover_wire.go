package products

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// PacksInput is what the packs calculator is asked.
type PacksInput struct {
	Needed    *float64    `json:"needed" limit:"[0,1000000]" doc:"how much is needed, in the unit of the packs"`
	Packs     []PackOffer `json:"packs" doc:"sizes on offer, with prices"`
	SameBatch bool        `json:"same_batch,omitempty" doc:"all packs of one size, so that they can come from one batch"`
}

// PacksResult is what the packs calculator answers.
type PacksResult struct {
	Packs    []PackLine `json:"packs" doc:"what to buy, largest pack first"`
	Bought   float64    `json:"bought" doc:"what those packs hold together"`
	Cost     string     `json:"cost" doc:"of all packs; empty when none has a price"`
	LeftOver float64    `json:"left_over" doc:"bought beyond the need"`
}

// PackLine is PackCount with its price as text.
type PackLine struct {
	Pack  float64 `json:"pack" doc:"what one pack holds"`
	Count int     `json:"count" doc:"how many to buy"`
	Price string  `json:"price,omitempty" doc:"of one pack"`
}

// Check reports every fault in the question.
func (in *PacksInput) Check(report func(pointer, code, detail string)) {
	checkLimits(in, report)
	if in.Needed == nil {
		report("/needed", "required", "needed is missing; give how much is needed, in the unit of the packs")
	}
	if (in.Needed == nil || *in.Needed > 0) && len(in.Packs) == 0 {
		report("/packs", "required", "packs is empty; give at least one size")
	}
	if n := len(in.Packs); n > mostPacks {
		report("/packs", "too_many", fmt.Sprintf("packs has %d entries; the most is %d", n, mostPacks))
	}
	for i, offer := range in.Packs {
		if detail := priceFault(offer.Price); detail != "" {
			report(fmt.Sprintf("/packs/%d/price", i), "out_of_range", detail)
		}
	}
}

// Calculate answers a question that Check found no fault in. SameBatch buys one
// size of pack alone.
func (in *PacksInput) Calculate() (PacksResult, error) {
	cover := Cover
	if in.SameBatch {
		cover = CoverAlike
	}
	p, err := cover(*in.Needed, in.Packs)
	if err != nil {
		return PacksResult{}, err
	}
	result := PacksResult{Packs: make([]PackLine, len(p.Packs)), Bought: p.Bought, LeftOver: p.LeftOver}
	for i, pack := range p.Packs {
		result.Packs[i] = PackLine{Pack: pack.Pack, Count: pack.Count}
		if pack.Price != nil {
			result.Packs[i].Price = amount(*pack.Price)
		}
	}
	if p.Priced {
		result.Cost = amount(p.Cost)
	}
	return result, nil
}

// amount prints money with at least two decimal places and all that it has.
func amount(d decimal.Decimal) string { return d.StringFixed(max(2, -d.Exponent())) }
