package estimate

import (
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"filmbuild/estimate/calendar"
	"filmbuild/products"
)

// supplies checks suppliers, stock, working days and the dates of steps.
func (c *checker) supplies() {
	c.suppliers()
	for i := range c.job.Stock {
		s, at := &c.job.Stock[i], "/stock/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue // no object at all
		}
		c.catalogued(s.Product, at+"/product")
		c.notNegative(s.Value, at, "value")
		c.date(s.UseBy, at, "use_by")
		if !s.Donated && !s.Value.IsZero() {
			c.faults.Add(at+"/value", "not_applicable", "value is for gifts; stock on hand is paid for already: leave value out, or set donated")
		}
	}
	for i, id := range c.job.SameBatch {
		c.catalogued(id, "/same_batch/"+strconv.Itoa(i))
	}
	c.workdays()
}

func (c *checker) suppliers() {
	seen, sells := map[string]string{}, map[string]string{}
	for i := range c.job.Suppliers {
		s, at := &c.job.Suppliers[i], "/suppliers/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue
		}
		c.id(s.ID, at, seen)
		for _, money := range []struct {
			name  string
			value decimal.Decimal
		}{{"freight", s.Freight}, {"freight_free_from", s.FreightFreeFrom}, {"hazardous_freight", s.HazardousFreight},
			{"minimum_order", s.MinimumOrder}, {"small_order_charge", s.SmallOrderCharge}} {
			c.notNegative(money.value, at, money.name)
		}
		if !s.SmallOrderCharge.IsZero() && s.MinimumOrder.IsZero() {
			c.faults.Add(at+"/minimum_order", "required", "minimum_order is missing; small_order_charge is for orders below it")
		}
		for k, id := range s.Products {
			below := at + "/products/" + strconv.Itoa(k)
			c.catalogued(id, below)
			if other, twice := sells[id]; twice {
				c.faults.Addf(below, "duplicate_id", "%s is bought from %s already; name each product with one supplier", clip(id), other)
			}
			sells[id] = s.ID
		}
	}
}

func (c *checker) workdays() {
	var week calendar.Week
	free := c.job.Workdays.Free
	if free == nil {
		free = []string{"saturday", "sunday"}
	}
	for i, name := range free {
		at := "/workdays/free/" + strconv.Itoa(i)
		if k := slices.Index(calendar.Weekdays(), name); k >= 0 {
			week[k] = true
		} else {
			c.faults.Addf(at, "unknown_kind", "%q is no day of the week; it must be one of %s", clip(name), strings.Join(calendar.Weekdays(), ", "))
		}
	}
	if n := len(c.job.Workdays.Holidays); n > MostListed {
		c.faults.Addf("/workdays/holidays", "too_many", "holidays has %d entries; the most is %d", n, MostListed)
		return
	}
	var holidays []calendar.Date
	for i, text := range c.job.Workdays.Holidays {
		at := "/workdays/holidays"
		if d, ok := c.date(text, at, strconv.Itoa(i)); ok {
			holidays = append(holidays, d)
		} else if text == "" {
			c.faults.Add(at+"/"+strconv.Itoa(i), "wrong_type", "the date is empty; write it as 2026-05-31")
		}
	}
	days, some := calendar.New(week, holidays)
	if !some {
		c.faults.Add("/workdays/free", "inconsistent", "every day of the week is free; leave at least one to work")
		return
	}
	c.days = days
}

// date reads a date that may be left out, and notes one that is none.
func (c *checker) date(text, at, field string) (calendar.Date, bool) {
	if text == "" {
		return 0, false
	}
	d, ok := calendar.Parse(text)
	if !ok {
		c.faults.Addf(at+"/"+field, "wrong_type", "%s is %q; write a date as 2026-05-31", field, clip(text))
	}
	return d, ok
}

func (c *checker) notNegative(value decimal.Decimal, at, field string) {
	if value.IsNegative() {
		c.faults.Addf(at+"/"+field, "out_of_range", "%s is negative; it must be at least 0", field)
	}
}

// catalogued notes the id of a product that is neither the job's nor the
// catalogue's.
func (c *checker) catalogued(id, at string) {
	switch _, known := c.catalogue.Product(id); {
	case id == "":
		c.faults.Add(at, "required", "the product is missing; give the id of a product")
	case !known:
		c.faults.Addf(at, "unknown_reference", "there is no product %q in the job or the catalogue%s", clip(id), c.likeProduct(id, func(products.Product) bool { return true }))
	}
}

// supplierOf is who sells a product: the supplier that it names itself, by id or
// by name, or the one that lists it. What it names need not be in the list.
func (c *checker) supplierOf(base *products.Common) (id string, terms *Supplier) {
	for i := range c.job.Suppliers {
		s := &c.job.Suppliers[i]
		named := base.Supplier != "" && (base.Supplier == s.ID || base.Supplier == s.Name)
		if named || (base.Supplier == "" && slices.Contains(s.Products, base.ID)) {
			return s.ID, s
		}
	}
	return base.Supplier, nil
}
