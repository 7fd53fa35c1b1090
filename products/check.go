package products

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// Bounds that keep a document from holding the engine up; this program's own.
const (
	mostPacks    = 50         // sizes of one product
	mostText     = 500        // letters of a name or note
	highestPrice = 10_000_000 // of one pack, in any currency
	priceDigits  = 4          // decimal places of a price
)

// check reports the faults that any kind can have: numbers outside the limits
// of their tags, packs, hazards and texts.
func check(p Product, report func(pointer, code, detail string)) {
	checkLimits(p, report)
	c := p.Base()
	checkPacks(c, report)
	for i, hazard := range c.Hazards {
		if !slices.ContainsFunc(Hazards(), func(h Hazard) bool { return h.Code == hazard }) {
			report(fmt.Sprintf("/hazards/%d", i), "unknown_kind", fmt.Sprintf("hazard %q is not in the list; use one of %s", clip(hazard), hazardCodes()))
		}
	}
	for _, text := range []struct{ name, value string }{{"name", c.Name}, {"supplier", c.Supplier}, {"source", c.Source}, {"note", c.Note}} {
		if n := utf8.RuneCountInString(text.value); n > mostText {
			report("/"+text.name, "too_many", fmt.Sprintf("%s has %d letters; the most is %d", text.name, n, mostText))
		}
	}
}

func checkPacks(c *Common, report func(pointer, code, detail string)) {
	if n := len(c.Packs); n > mostPacks {
		report("/packs", "too_many", fmt.Sprintf("packs has %d entries; the most is %d", n, mostPacks))
		return
	}
	want := packOf(c.Kind).field
	for i, pack := range c.Packs {
		at, given := fmt.Sprintf("/packs/%d", i), 0
		oneOf(at+"/tax", pack.Tax, Taxes(), report)
		for _, size := range []rung{{"pack_l", pack.PackL}, {"pack_kg", pack.PackKg}, {"pack_m", pack.PackM}, {"pack_count", pack.PackCount}} {
			if size.value == nil {
				continue
			}
			given++
			if size.name != want {
				report(at+"/"+size.name, "not_applicable", fmt.Sprintf("%s is no size of a %s; give %s", size.name, c.Kind, want))
			}
		}
		if pack.Part != "" && c.Kind != "paint" {
			report(at+"/part", "not_applicable", "part is of paints mixed of several; leave it out")
		}
		if given == 0 {
			report(at+"/"+want, "required", fmt.Sprintf("%s is missing; give the size of the pack", want))
		}
		if count := pack.PackCount; count != nil && *count >= 1 && *count != float64(int64(*count)) {
			report(at+"/pack_count", "out_of_range", fmt.Sprintf("pack_count is %g; it must be a whole number", *count))
		}
		if detail := priceFault(pack.Price.value()); detail != "" {
			report(at+"/price", "out_of_range", detail)
		}
	}
}

// priceFault says what is wrong with a price, "" when nothing is. It looks at
// the length first: a price of a million digits must cost nothing to refuse.
func priceFault(price *decimal.Decimal) string {
	switch {
	case price == nil:
		return ""
	case price.Coefficient().BitLen() > 100 || price.Exponent() > 9:
		return fmt.Sprintf("price is too long a number; it must be at most %d with at most %d decimal places", highestPrice, priceDigits)
	case price.Exponent() < -30 || !price.Equal(price.Truncate(priceDigits)):
		return fmt.Sprintf("price has more than %d decimal places", priceDigits)
	case price.IsNegative():
		return "price is negative; it must be at least 0"
	case price.GreaterThan(decimal.NewFromInt(highestPrice)):
		return fmt.Sprintf("price is above %d; check the currency", highestPrice)
	}
	return ""
}

// oneOf reports a word that is not in a fixed list; an empty one is absent.
func oneOf(pointer, word string, words []string, report func(pointer, code, detail string)) {
	if word != "" && !slices.Contains(words, word) {
		report(pointer, "unknown_kind", fmt.Sprintf("%s is %q; it must be one of %s", pointer[1:], clip(word), strings.Join(words, ", ")))
	}
}

// rung is one of several named numbers, such as those that must not fall.
type rung struct {
	name  string
	value *float64
}

// ordered reports numbers that fall where they must not; absent ones are left
// out.
func ordered(report func(pointer, code, detail string), rungs []rung) {
	var before *rung
	for i, r := range rungs {
		if r.value == nil {
			continue
		}
		if before != nil && *r.value < *before.value {
			report("/"+r.name, "not_increasing", fmt.Sprintf("%s is %g, less than %s at %g", r.name, *r.value, before.name, *before.value))
		}
		before = &rungs[i]
	}
}

func hazardCodes() string {
	var codes []string
	for _, h := range Hazards() {
		codes = append(codes, h.Code)
	}
	return strings.Join(codes, ", ")
}

func clip(text string) string {
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return text
}
