package workbook

import (
	"fmt"
	"math"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/model"
)

// mostPurchases bounds the purchases that are listed for one product.
const mostPurchases = 600

// writeOrderChoices lists, for every line of the order, the purchases of whole
// packs among which the cheapest is taken: all numbers of all packs but one, up
// to a few times the need, and as many of that one as cover the rest. The least
// cost is the cheapest cover, and of several at that cost the one that holds
// least, as the engine takes.
func (b *book) writeOrderChoices() {
	b.choice = map[string]string{}
	s := &b.packs
	s.add(cell{value: "Packs", style: title})
	s.add(cell{value: "The purchases among which the order takes the cheapest. They reach to a few times the need of the estimate; beyond that, ask the engine.", style: note})
	e := b.graph.Estimate
	for i := range e.Order {
		if choices := b.graph.Choices(&e.Order[i]); choices != nil {
			b.purchases(&e.Order[i], choices)
		}
	}
}

// purchases writes the blocks of one line: one to each part that is bought apart.
func (b *book) purchases(line *estimate.OrderLine, choices []estimate.Choice) {
	s := &b.packs
	need := b.needCell(line)
	if least := b.graph.MinimumOrder(line); least > 0 {
		need = fmt.Sprintf("IF(%s>0,MAX(%s,%s),0)", need, need, number(least))
	}
	var costs, bought []string
	for _, c := range choices {
		cost, holds := b.block(line, c, need)
		costs = append(costs, cost)
		bought = append(bought, holds+"/"+number(c.Share))
	}
	row := s.add(cell{value: line.Name, style: section},
		worked("IF("+need+"=0,0,"+strings.Join(costs, "+")+")", line.Cost.Float64(), totals),
		worked("IF("+need+"=0,0,MIN("+strings.Join(bought, ",")+"))", line.Bought, total), text(line.Unit))
	s.add(empty())
	for name, column := range map[string]string{"cost": "B", "bought": "C"} {
		node := line.Node(name)
		b.choice[nodeKey(&model.Vertex{Node: node})] = s.at(column, row)
	}
}

// needCell is the cell of what has to be bought. Its row on the sheet Working is
// known before that sheet is written, as rows follow from the graph alone.
func (b *book) needCell(line *estimate.OrderLine) string {
	row := 4
	m := b.graph.Model
	wanted, _ := m.Find(line.Node("to_buy"))
	for i := range m.Vertices {
		if i == wanted {
			break
		}
		if m.Vertices[i].Kind != model.Input {
			row += 1 + len(m.Vertices[i].Terms)
		}
	}
	return b.working.at("D", row)
}

// block lists the purchases of one part and returns the cells of the least cost
// and of what that purchase holds.
func (b *book) block(line *estimate.OrderLine, c estimate.Choice, need string) (cost, holds string) {
	s := &b.packs
	name := line.Name
	if c.Part != "" {
		name += ", " + c.Part
	}
	s.add(cell{value: name, style: section})
	sizes, prices := []cell{heading("content of a pack, " + line.Unit)}, []cell{heading("price of a pack")}
	for _, p := range c.Packs {
		sizes, prices = append(sizes, cell{value: p.Size, style: figure}), append(prices, worked(b.price[priceName(line, c, p)], p.Price, cash))
	}
	sizeRow, priceRow := s.add(sizes...), s.add(prices...)
	columns := make([]string, len(c.Packs))
	for k := range columns {
		columns[k] = string(rune('B' + k))
	}
	costColumn, holdsColumn, bestColumn := string(rune('B'+len(columns))), string(rune('C'+len(columns))), string(rune('D'+len(columns)))
	counts := combinations(line, c)
	first := len(s.rows) + 2
	last := len(s.rows) + 1 + len(counts)
	heads := headings("packs of each size")
	for range c.Packs {
		heads = append(heads, heading("number"))
	}
	s.add(append(heads, heading("cost"), heading("holds, "+line.Unit), heading("holds, if cheapest"))...)
	least := math.Inf(1)
	values := make([][2]float64, len(counts))
	wanted := neededValue(b.graph, line) * c.Share
	for i, n := range counts {
		values[i] = purchase(c, n, wanted)
		least = math.Min(least, values[i][0])
	}
	for i, n := range counts {
		row := first + i
		cells := []cell{empty()}
		var sum, total []string
		for k := range c.Packs {
			size, price := fmt.Sprintf("$%s$%d", columns[k], sizeRow), fmt.Sprintf("$%s$%d", columns[k], priceRow)
			count := fmt.Sprintf("%s%d", columns[k], row)
			if k == n.open {
				rest := "0"
				if len(sum) > 0 {
					rest = strings.Join(sum, "+")
				}
				for after := k + 1; after < len(c.Packs); after++ {
					rest += fmt.Sprintf("+%s%d*$%s$%d", columns[after], row, columns[after], sizeRow)
				}
				formula := fmt.Sprintf("MAX(0,ROUNDUP((%s*%s*(1-1E-9)-(%s))/%s,0))", need, number(c.Share), rest, size)
				cells = append(cells, worked(formula, filled(c, n, wanted), whole))
			} else {
				cells = append(cells, cell{value: n.counts[k], style: whole})
			}
			sum, total = append(sum, count+"*"+size), append(total, count+"*"+price)
		}
		best := 1e99
		if values[i][0] <= least+1e-9 {
			best = values[i][1]
		}
		cells = append(cells, worked(strings.Join(total, "+"), values[i][0], cash), worked(strings.Join(sum, "+"), values[i][1], figure),
			worked(fmt.Sprintf("IF(%s%d<=MIN($%s$%d:$%s$%d)+1E-9,%s%d,1E+99)", costColumn, row, costColumn, first, costColumn, last, holdsColumn, row), best, figure))
		s.add(cells...)
	}
	return fmt.Sprintf("MIN(%s)", s.span(costColumn, first, last)), fmt.Sprintf("MIN(%s)", s.span(bestColumn, first, last))
}

// numbers is one purchase: numbers of packs, and which of them fills the rest.
type numbers struct {
	counts []int
	open   int
}

// combinations lists the purchases of a block: with packs of one size only where
// the line asks for one batch, else every number of all but the smallest pack.
func combinations(line *estimate.OrderLine, c estimate.Choice) []numbers {
	if line.SameBatch || len(c.Packs) == 1 {
		var list []numbers
		for k := range c.Packs {
			list = append(list, numbers{counts: make([]int, len(c.Packs)), open: k})
		}
		return list
	}
	smallest := 0
	for k, p := range c.Packs {
		if p.Size < c.Packs[smallest].Size {
			smallest = k
		}
	}
	for _, reach := range []float64{4, 3, 2, 1.5, 1.2, 1} {
		if list := upTo(c, line.ToBuy*c.Share*reach, smallest); len(list) <= mostPurchases {
			return list
		}
	}
	return near(c, line, smallest)
}

// upTo lists every number of the packs other than one that is needed for an
// amount.
func upTo(c estimate.Choice, amount float64, open int) []numbers {
	list := []numbers{{counts: make([]int, len(c.Packs)), open: open}}
	for k, p := range c.Packs {
		if k == open {
			continue
		}
		most := int(math.Ceil(amount / p.Size))
		if len(list)*(most+1) > 100*mostPurchases {
			return make([]numbers, mostPurchases+1)
		}
		var more []numbers
		for _, n := range list {
			for count := range most + 1 {
				counts := append([]int(nil), n.counts...)
				counts[k] = count
				more = append(more, numbers{counts: counts, open: open})
			}
		}
		list = more
	}
	return list
}

// near lists the purchases about the one of the estimate, where all are too many.
func near(c estimate.Choice, line *estimate.OrderLine, open int) []numbers {
	list := []numbers{{counts: make([]int, len(c.Packs)), open: open}}
	width := int(math.Pow(mostPurchases, 1/float64(len(c.Packs)-1))) - 1
	for k, p := range c.Packs {
		if k == open {
			continue
		}
		chosen := 0
		for _, pack := range line.Packs {
			if pack.Part == c.Part && pack.Pack == p.Size {
				chosen = pack.Count
			}
		}
		var more []numbers
		for _, n := range list {
			for count := max(0, chosen-width/2); count <= chosen+width/2; count++ {
				counts := append([]int(nil), n.counts...)
				counts[k] = count
				more = append(more, numbers{counts: counts, open: open})
			}
		}
		list = more
	}
	return list
}

// filled is how many packs of the open size cover what the others leave.
func filled(c estimate.Choice, n numbers, wanted float64) float64 {
	rest := wanted * (1 - 1e-9)
	for k, count := range n.counts {
		rest -= float64(count) * c.Packs[k].Size
	}
	return math.Max(0, math.Ceil(rest/c.Packs[n.open].Size))
}

// purchase is what a purchase costs and holds.
func purchase(c estimate.Choice, n numbers, wanted float64) [2]float64 {
	open := filled(c, n, wanted)
	cost, holds := open*c.Packs[n.open].Price, open*c.Packs[n.open].Size
	for k, count := range n.counts {
		cost += float64(count) * c.Packs[k].Price
		holds += float64(count) * c.Packs[k].Size
	}
	return [2]float64{cost, holds}
}

func neededValue(g *estimate.Graph, line *estimate.OrderLine) float64 {
	if line.ToBuy == 0 {
		return 0
	}
	return math.Max(line.ToBuy, g.MinimumOrder(line))
}
