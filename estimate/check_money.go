package estimate

import (
	"strconv"
	"strings"

	"filmbuild/products"
)

// TaxRoundings are how often tax is rounded: once on all purchases together, once
// on each supplier's invoice, or on each line.
func TaxRoundings() []string { return []string{"total", "invoice", "line"} }

// moneyRules checks what holds for all prices of the job.
func (c *checker) moneyRules() {
	if c.job.TaxRounding != "" {
		c.oneOf(c.job.TaxRounding, "", "tax_rounding", TaxRoundings())
	}
	c.escalation()
	c.funding()
}

// pricing checks currency, date and tax of the prices of a product.
func (c *checker) pricing(packs []products.Pack, at string) {
	for i, p := range packs {
		below := at + "/packs/" + strconv.Itoa(i)
		c.sameCurrency(p.Currency, below)
		c.date(p.PriceDate, below, "price_date")
		if p.Tax != packs[0].Tax {
			c.faults.Addf(below+"/tax", "inconsistent", "tax is %q here and %q in the first pack; packs of one product stand alike to tax", p.Tax, packs[0].Tax)
		}
	}
}

// sameCurrency notes an amount of another currency than the job's: nothing here
// knows a rate of exchange.
func (c *checker) sameCurrency(code, at string) {
	if code != "" && code != c.job.Currency {
		c.faults.Addf(at+"/currency", "inconsistent", "currency is %s and the job is in %s; turn the price into %s and say when", clip(code), clip(c.job.Currency), clip(c.job.Currency))
	}
}

// taxTwice notes an item that is tax itself where the job adds tax too.
func (c *checker) taxTwice(item *Item, at string) {
	word := strings.ToLower(strings.TrimSpace(item.Category))
	if c.job.TaxPercent > 0 && (word == "tax" || word == "vat" || word == "sales tax" || word == "taxes") {
		c.faults.Addf(at+"/category", "inconsistent", "this item is tax and the job adds tax_percent too: tax would be paid twice; keep one of them")
	}
}
