package products

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"
)

// PackOffer is one size on offer.
type PackOffer struct {
	Pack  float64          `json:"pack" limit:"[0.001,1000000]" doc:"what one pack holds"`
	Price *decimal.Decimal `json:"price,omitempty" doc:"of one pack; left out where unknown"`
}

// PackCount is how many packs of one size are bought, and the price of each.
type PackCount struct {
	Pack  float64          `json:"pack"`
	Count int              `json:"count"`
	Price *decimal.Decimal `json:"price,omitempty"`
}

// Purchase is what Cover says to buy, largest pack first.
type Purchase struct {
	Packs    []PackCount     `json:"packs"`
	Bought   float64         `json:"bought"`
	Cost     decimal.Decimal `json:"cost"`
	Priced   bool            `json:"-"` // false: no pack had a price, and cost is 0
	LeftOver float64         `json:"left_over"`
}

// ErrNoPacks says that something is needed and nothing is on offer.
var ErrNoPacks = errors.New("there is no pack to buy; give at least one size")

// LimitError says that a question is larger than Cover answers.
type LimitError struct {
	Quantity  string
	Value     float64
	Low, High float64
}

func (e *LimitError) Error() string {
	return fmt.Sprintf("%s is %g; it must be at least %g and at most %g", e.Quantity, e.Value, e.Low, e.High)
}

// Limits of Cover; this program's own.
const (
	mostNeeded     = 1_000_000 // units, and the largest pack
	smallestPack   = 0.001     // units
	mostLabels     = 200_000   // combinations looked at before giving up
	coverTolerance = 1e-9      // of the need, that may be missing
	perUnit        = 1e9       // sizes are exact to this part of a unit
)

// Cover returns the cheapest purchase of whole packs that covers a need; of
// several at one cost the one with least left over, then the one with fewest
// packs. It is exact: no other purchase is better in that order.
//
// needed is in the unit of the packs, in [0, 1000000]; 0 buys nothing. A
// purchase covers when it holds at least needed·(1 − 1e-9). Sizes are taken to
// the billionth of a unit. When only some packs have a price the others are
// left aside; when none has, least left over decides, then fewest packs.
//
// It returns ErrNoPacks for a need without an offer, and a *LimitError for a
// number out of range or when more combinations than its limit must be looked
// at, which takes several incommensurate sizes at almost one price per unit.
func Cover(needed float64, offers []PackOffer) (Purchase, error) {
	if err := within("needed", needed, 0, mostNeeded); err != nil {
		return Purchase{}, err
	}
	if err := within("number of packs", float64(len(offers)), 0, mostPacks); err != nil {
		return Purchase{}, err
	}
	for _, offer := range offers {
		if err := within("pack", offer.Pack, smallestPack, mostNeeded); err != nil {
			return Purchase{}, err
		}
		if detail := priceFault(offer.Price); detail != "" {
			return Purchase{}, errors.New(detail)
		}
	}
	if needed == 0 {
		return Purchase{Packs: []PackCount{}, Priced: true}, nil
	}
	if len(offers) == 0 {
		return Purchase{}, ErrNoPacks
	}
	priced := slices.ContainsFunc(offers, func(o PackOffer) bool { return o.Price != nil })
	if priced {
		offers = slices.DeleteFunc(slices.Clone(offers), func(o PackOffer) bool { return o.Price == nil })
	}
	counts, err := search(needed, offers, priced)
	if err != nil {
		return Purchase{}, err
	}
	return purchase(needed, offers, counts, priced), nil
}

// CoverAlike is Cover with packs of one size only: a colour that must match comes
// from one batch, and batches are filled into one size (common practice). Of the
// sizes the cheapest is taken, of several at one cost the one with least left
// over, then the one with fewest packs. Errors are those of Cover.
func CoverAlike(needed float64, offers []PackOffer) (Purchase, error) {
	var best Purchase
	priced := slices.ContainsFunc(offers, func(o PackOffer) bool { return o.Price != nil })
	for i, offer := range offers {
		if priced && offer.Price == nil {
			continue
		}
		p, err := Cover(needed, offers[i:i+1])
		if err != nil {
			return Purchase{}, err
		}
		if best.Packs == nil || p.before(best) {
			best = p
		}
	}
	if best.Packs == nil {
		return Cover(needed, offers)
	}
	return best, nil
}

// before is the order in which purchases of one size are better.
func (p Purchase) before(q Purchase) bool {
	if order := p.Cost.Cmp(q.Cost); order != 0 {
		return order < 0
	}
	if p.LeftOver != q.LeftOver {
		return p.LeftOver < q.LeftOver
	}
	return len(p.Packs) > 0 && p.Packs[0].Count < q.Packs[0].Count
}

func within(quantity string, value, low, high float64) error {
	if value >= low && value <= high {
		return nil
	}
	return &LimitError{quantity, value, low, high}
}

// purchase writes out what the counts of the offers come to.
func purchase(needed float64, offers []PackOffer, counts []int64, priced bool) Purchase {
	p := Purchase{Packs: []PackCount{}, Priced: priced}
	var bought int64
	for i, count := range counts {
		if count == 0 {
			continue
		}
		offer := offers[i]
		p.Packs = append(p.Packs, PackCount{offer.Pack, int(count), offer.Price})
		bought += count * parts(offer.Pack)
		if priced {
			p.Cost = p.Cost.Add(offer.Price.Mul(decimal.NewFromInt(count)))
		}
	}
	slices.SortFunc(p.Packs, func(a, b PackCount) int { return cmp.Compare(b.Pack, a.Pack) })
	p.Bought = float64(bought) / perUnit
	p.LeftOver = math.Max(0, math.Round((p.Bought-needed)*perUnit)/perUnit)
	return p
}

// parts is a size in billionths of its unit.
func parts(size float64) int64 { return int64(math.Round(size * perUnit)) }

// Offers lists the packs of a product as Cover wants them.
func (c *Common) Offers() []PackOffer {
	offers := make([]PackOffer, len(c.Packs))
	for i, pack := range c.Packs {
		offers[i] = PackOffer{Pack: pack.Size(), Price: pack.Price.value()}
	}
	return offers
}
