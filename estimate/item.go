package estimate

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"
)

// Item is any other money: a sum, or a quantity at a price: hire by the day,
// disposal by the kilogram or the drum, freight.
type Item struct {
	ID     string           `json:"id" doc:"short name"`
	Name   string           `json:"name,omitempty" doc:"what it is"`
	Note   string           `json:"note,omitempty" doc:"free text; not used in any figure"`
	Amount *decimal.Decimal `json:"amount,omitempty" doc:"a lump sum, in the job's currency; or give unit_price"`

	UnitPrice *decimal.Decimal `json:"unit_price,omitempty" doc:"price of one unit"`
	Quantity  *float64         `json:"quantity,omitempty" limit:"[0,1000000000]" doc:"how many units"`
	Unit      string           `json:"unit,omitempty" doc:"what is counted: day, drum, kg"`
	Of        string           `json:"of,omitempty" doc:"the total that gives the quantity: waste_kg, litres, kilograms, hours, area_m2, sessions"`
	Holds     *float64         `json:"holds,omitempty" limit:"(0,1000000000]" doc:"how much of that total one unit takes, as a drum does; units are whole then"`

	Category         string  `json:"category,omitempty" doc:"heading in the budget"`
	Class            string  `json:"class,omitempty" doc:"heading on the funder's form, where the category does not tell"`
	Funding          string  `json:"funding,omitempty" doc:"cash or in_kind"`
	Basis            string  `json:"basis,omitempty" doc:"how the value of what is in kind was found"`
	Supplier         string  `json:"supplier,omitempty" doc:"whose invoice it is on"`
	Currency         string  `json:"currency,omitempty" doc:"of the price; that of the job"`
	PriceDate        string  `json:"price_date,omitempty" doc:"when the price was quoted"`
	Tax              string  `json:"tax,omitempty" doc:"added to the price, included in it, or none"`
	UsefulLifeYears  float64 `json:"useful_life_years,omitempty" limit:"[0,1000]" doc:"of a thing that is bought; above 1 it may be equipment to a funder"`
	Subaward         bool    `json:"subaward,omitempty" doc:"part of the award is handed on to another body"`
	CorrelationGroup string  `json:"correlation_group,omitempty" doc:"items that vary together; used by ranges"`
}

// Defaults makes an item cost cash.
func (i *Item) Defaults() { i.Funding = "cash" }

// ItemTotals are the totals of an estimate that an item may be counted by.
func ItemTotals() []string {
	return []string{"waste_kg", "litres", "kilograms", "hours", "area_m2", "sessions"}
}

func (c *checker) items() {
	seen := map[string]string{}
	for i := range c.job.Items {
		item, at := &c.job.Items[i], "/items/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue
		}
		c.id(item.ID, at, seen)
		c.itemPrice(item, at)
		c.oneOf(item.Funding, at, "funding", []string{"cash", "in_kind"})
		c.sameCurrency(item.Currency, at)
		c.date(item.PriceDate, at, "price_date")
		c.taxTwice(item, at)
		if item.Tax != "" {
			c.oneOf(item.Tax, at, "tax", []string{"added", "included", "none"})
		}
		if item.Tax != "" && item.Tax != "none" && item.Funding == "in_kind" {
			c.faults.Add(at+"/tax", "not_applicable", "nobody pays tax on what is in kind; leave tax out")
		}
	}
}

func (c *checker) itemPrice(item *Item, at string) {
	switch {
	case item.Amount == nil && item.UnitPrice == nil:
		if !c.faults.HasBelow(at+"/amount") && !c.faults.HasBelow(at+"/unit_price") {
			c.faults.Add(at+"/amount", "required", "amount is missing; give the item's money, 0 where it costs nothing, or unit_price with quantity")
		}
	case item.Amount != nil && item.UnitPrice != nil:
		c.faults.Add(at+"/unit_price", "inconsistent", "an item is a lump sum (amount) or a quantity at a price (unit_price), not both")
	case item.Amount != nil:
		c.notNegative(*item.Amount, at, "amount")
		for _, extra := range []struct {
			name  string
			given bool
		}{{"quantity", item.Quantity != nil}, {"of", item.Of != ""}, {"holds", item.Holds != nil}} {
			if extra.given {
				c.faults.Addf(at+"/"+extra.name, "not_applicable", "%s goes with unit_price; amount is a lump sum", extra.name)
			}
		}
	default:
		c.notNegative(*item.UnitPrice, at, "unit_price")
		c.itemQuantity(item, at)
	}
}

func (c *checker) itemQuantity(item *Item, at string) {
	switch {
	case item.Quantity == nil && item.Of == "":
		c.faults.Add(at+"/quantity", "required", "quantity is missing; say how many units, or name with of the total that tells")
	case item.Quantity != nil && item.Of != "":
		c.faults.Add(at+"/of", "inconsistent", "quantity is given and of asks for a total; keep one of them")
	}
	if item.Of != "" {
		c.oneOf(item.Of, at, "of", ItemTotals())
	}
	if item.Holds != nil && item.Of == "" {
		c.faults.Add(at+"/holds", "not_applicable", "holds is how much of a total one unit takes; name the total with of")
	}
}

// items prices the items, once the totals are known.
func (r *run) priceItems() {
	r.estimate.Items = make([]ItemEstimate, 0, len(r.job.Items))
	for i := range r.job.Items {
		r.estimate.Items = append(r.estimate.Items, r.item(&r.job.Items[i]))
	}
}

func (r *run) item(item *Item) ItemEstimate {
	e := ItemEstimate{ID: item.ID, Name: item.Name, Category: cmp.Or(item.Category, "other"), Funding: item.Funding, Supplier: item.Supplier,
		Unit: item.Unit, Basis: item.Basis, Tax: r.taxOf(item.Tax, true)}
	if item.Funding == "in_kind" {
		e.Tax = "none"
	}
	price := item.Amount
	e.Quantity = 1
	if item.UnitPrice != nil {
		price = item.UnitPrice
		e.Quantity = r.itemCount(item)
		e.UnitPrice = item.UnitPrice.StringFixed(max(int32(r.currency.MinorUnits()), -item.UnitPrice.Exponent()))
	}
	ratio := [2]float64{1, 1}
	if item.Funding != "in_kind" && r.escalates("items", item.PriceDate) {
		ratio = [2]float64{r.job.Escalation.ToIndex, r.job.Escalation.FromIndex}
	}
	e.Amount = r.currency.CostFromPack(e.Quantity*ratio[0], ratio[1], *price)
	r.priceDate(item.PriceDate)
	r.itemWorking(item, &e, ratio)
	return e
}

// itemCount is how many units an item comes to.
//
//	total, or ⌈total / holds⌉ where a unit holds some of it
func (r *run) itemCount(item *Item) float64 {
	if item.Of == "" {
		return *item.Quantity
	}
	total := r.totalOf(item.Of)
	if item.Holds == nil {
		return total
	}
	return math.Ceil(total/(*item.Holds) - 1e-9)
}

func (r *run) totalOf(name string) float64 {
	t := &r.estimate.Totals
	return map[string]float64{"waste_kg": t.WasteKg, "litres": t.Litres, "kilograms": t.Kilograms, "hours": t.Hours, "area_m2": t.AreaM2, "sessions": float64(t.Sessions)}[name]
}

// priceDate keeps the earliest and the latest date of a price, for the reader to
// judge them by.
func (r *run) priceDate(date string) {
	if date != "" && !slices.Contains(r.priceDates, date) {
		r.priceDates = append(r.priceDates, date)
	}
}
