package estimate

import (
	"cmp"
	"strconv"
	"strings"

	"filmbuild/surfaces/quantity"
)

// orderWorking gives the figures of a line of the order.
func (r *run) orderWorking(line *OrderLine, d *delivery) []quantity.Working {
	one := func(name string, value float64, unit, formula string, terms map[string]float64, links ...quantity.Link) quantity.Working {
		return quantity.Working{Quantity: name, Of: line.split, Value: value, Unit: unit, Formula: formula, Terms: terms, Links: links, Source: "identity"}
	}
	from := func(name string) quantity.Link { return quantity.From(name, line.node(name)) }
	used, links := r.usedTerms(line.Product, d)
	list := append(make([]quantity.Working, 0, 8),
		one("used", d.quantity(), line.Unit, "sum of what the steps use", used, links...),
		one("needed", line.Needed, line.Unit, "used·(1 + allowance)", map[string]float64{"used": d.quantity(), "allowance": r.job.AllowancePercent / 100},
			from("used"), quantity.Scaled("allowance", quantity.Node{Kind: "job", Quantity: "allowance_percent"}, 0.01)),
	)
	stock := 0.0
	for k, out := range line.drawn {
		stock += out.there
		list = append(list, r.stockWorking(line, k, out)...)
	}
	list = append(list, one("to_buy", line.ToBuy, line.Unit, "max(needed − stock, 0)", map[string]float64{"needed": line.Needed, "stock": stock}, from("needed")))
	bought := one("bought", line.Bought, line.Unit, "by cheapest cover of to_buy in whole packs", map[string]float64{"to_buy": line.ToBuy}, from("to_buy"))
	cost := one("cost", line.Cost.Float64(), r.job.Currency, "by cheapest cover of to_buy in whole packs", map[string]float64{"to_buy": line.ToBuy}, from("to_buy"))
	cost.Source = "an exact search for the least cost, then the least left over, then the fewest packs"
	bought.Source = cost.Source
	list = append(list, bought, cost)
	if line.gift {
		sum := one("donated_value", line.DonatedValue.Float64(), r.job.Currency, "sum of the gifts", map[string]float64{})
		for k, out := range line.drawn {
			if out.stock.Donated {
				node := line.stockNode("gift_value", k)
				sum.Terms[node.Of] = out.value.Float64()
				sum.Links = append(sum.Links, quantity.From(node.Of, node))
			}
		}
		list = append(list, sum)
	}
	return list
}

// stockNode names a working of what an entry of the stock gives to a line.
func (line *OrderLine) stockNode(name string, k int) quantity.Node {
	node := line.node(name)
	node.Of = strings.TrimSpace(line.split + " entry " + strconv.Itoa(k+1))
	return node
}

// stockWorking tells what comes out of one entry of the stock, after those before
// it, and what a gift is worth as far as it is used.
func (r *run) stockWorking(line *OrderLine, k int, out drawn) []quantity.Working {
	used := line.stockNode("from_stock", k)
	list := []quantity.Working{{Quantity: used.Quantity, Of: used.Of, Value: out.used, Unit: line.Unit, Formula: "min(max(needed − before, 0), there)",
		Terms: map[string]float64{"needed": line.Needed, "before": out.before, "there": out.there}, Links: []quantity.Link{quantity.From("needed", line.node("needed"))}, Source: "the job: stock"}}
	if !out.stock.Donated {
		return list
	}
	gift := line.stockNode("gift_value", k)
	return append(list, quantity.Working{Quantity: gift.Quantity, Of: gift.Of, Value: out.value.Float64(), Unit: r.job.Currency, Formula: r.rounded("used·value/quantity"),
		Terms: map[string]float64{"used": out.used, "value": out.stock.Value.InexactFloat64(), "quantity": out.stock.Quantity}, Links: []quantity.Link{quantity.From("used", used)}, Source: "the job: stock"})
}

// usedTerms are what each step of a delivery uses, with where it is worked out.
func (r *run) usedTerms(product string, d *delivery) (map[string]float64, []quantity.Link) {
	terms := make(map[string]float64, len(d.uses))
	var links []quantity.Link
	for _, u := range d.uses {
		found := 0.0
		for i := range r.estimate.Steps {
			s := &r.estimate.Steps[i]
			if s.ID != u.step {
				continue
			}
			for _, w := range s.Working {
				if w.Uses == product {
					term := cmp.Or(s.ID+" "+w.Quantity+" "+w.Of, s.ID)
					terms[term] = w.Value
					links = append(links, quantity.From(term, quantity.StepWorking(s.ID, w.Quantity, w.Of)))
					found += w.Value
				}
			}
		}
		if rest := u.quantity - found; rest > 1e-12*u.quantity || rest < -1e-12*u.quantity {
			terms[u.step] = rest
		}
	}
	return terms, links
}

// supplyWorking gives what there is of each product and what it cost, over all
// its lines: the average price of what the steps use.
func (r *run) supplyWorking() {
	last := map[string]int{}
	for i := range r.estimate.Order {
		last[r.estimate.Order[i].Product] = i
	}
	all := r.supplied()
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		if last[line.Product] != i {
			continue
		}
		paid := quantity.Working{Quantity: "paid", Value: all[line.Product].paid.Float64(), Unit: r.job.Currency, Formula: "sum of what is paid, and the value of what is given", Terms: map[string]float64{}, Source: "identity"}
		supply := quantity.Working{Quantity: "supplied", Value: all[line.Product].quantity, Unit: line.Unit, Formula: "sum of what is bought and what is in stock", Terms: map[string]float64{}, Source: "identity"}
		for k := range r.estimate.Order {
			other := &r.estimate.Order[k]
			if other.Product != line.Product {
				continue
			}
			paid.Terms["cost "+other.split], supply.Terms["bought "+other.split] = other.Cost.Float64(), other.Bought
			paid.Links = append(paid.Links, quantity.From("cost "+other.split, other.node("cost")))
			supply.Links = append(supply.Links, quantity.From("bought "+other.split, other.node("bought")))
			if other.gift {
				paid.Terms["given "+other.split] = other.DonatedValue.Float64()
				paid.Links = append(paid.Links, quantity.From("given "+other.split, other.node("donated_value")))
			}
			for n, out := range other.drawn {
				node := other.stockNode("from_stock", n)
				supply.Terms["stock "+node.Of] = out.used
				supply.Links = append(supply.Links, quantity.From("stock "+node.Of, node))
			}
		}
		line.Working = append(line.Working, paid, supply)
	}
}
