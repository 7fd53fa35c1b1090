package products

import (
	"math"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func offer(pack float64, price string) PackOffer {
	if price == "" {
		return PackOffer{Pack: pack}
	}
	amount := decimal.RequireFromString(price)
	return PackOffer{pack, &amount}
}

// Answers worked by hand: identity, no published source.
func TestCoverByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		needed float64
		offers []PackOffer
		counts map[float64]int
		cost   string
		left   float64
	}{
		{"greedy by size would buy 5+5 for 180", 6, []PackOffer{offer(5, "90"), offer(3, "50")}, map[float64]int{3: 2}, "100", 0},
		{"a dear small pack beats a second large one", 5.5, []PackOffer{offer(5, "140.00"), offer(1, "34.00")}, map[float64]int{5: 1, 1: 1}, "174", 0.5},
		{"a large pack is cheaper than what is needed in small ones", 4.5, []PackOffer{offer(5, "140.00"), offer(1, "34.00")}, map[float64]int{5: 1}, "140", 0.5},
		{"equal cost: least left over", 4, []PackOffer{offer(6, "12"), offer(5, "12"), offer(4, "13")}, map[float64]int{5: 1}, "12", 1},
		{"equal cost and left over: fewest packs", 10, []PackOffer{offer(2, "4"), offer(5, "10"), offer(1, "2")}, map[float64]int{5: 2}, "20", 0},
		{"kits of 3.785 and 0.946 L", 7.57, []PackOffer{offer(3.785, "185.00"), offer(0.946, "64.00")}, map[float64]int{3.785: 2}, "370", 0},
		{"the tolerance: 0.3 is three of 0.1", 0.1 + 0.2, []PackOffer{offer(0.1, "1")}, map[float64]int{0.1: 3}, "3", 0},
		{"no price: least left over", 7, []PackOffer{offer(5, ""), offer(2, ""), offer(4, "")}, map[float64]int{5: 1, 2: 1}, "0", 0},
		{"some prices: only those", 7, []PackOffer{offer(5, "10"), offer(7, "")}, map[float64]int{5: 2}, "20", 3},
		{"given away: least left over", 7, []PackOffer{offer(5, "0"), offer(3, "0")}, map[float64]int{5: 1, 3: 1}, "0", 1},
		{"one given away, one not", 7, []PackOffer{offer(5, "0"), offer(7, "1")}, map[float64]int{5: 2}, "0", 3},
		{"equal cost and left over in other sizes: fewest packs", 21, []PackOffer{offer(7, "0.15"), offer(6, "0.12"), offer(4, "0.09")}, map[float64]int{7: 3}, "0.45", 0},
		{"nothing needed", 0, []PackOffer{offer(5, "10")}, map[float64]int{}, "0", 0},
		{"a trace needed", 1e-12, []PackOffer{offer(5, "10")}, map[float64]int{5: 1}, "10", 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := Cover(c.needed, c.offers)
			require.NoError(t, err)
			got := map[float64]int{}
			for _, pack := range p.Packs {
				got[pack.Pack] = pack.Count
			}
			assert.Equal(t, c.counts, got)
			assert.True(t, p.Cost.Equal(decimal.RequireFromString(c.cost)), "cost %s", p.Cost)
			assert.InDelta(t, c.left, p.LeftOver, 1e-9)
		})
	}
}

func TestCoverRefuses(t *testing.T) {
	tiny, long := decimal.New(1, -1_000_000_000), decimal.New(1, 1_000_000_000)
	for name, c := range map[string]struct {
		needed float64
		offers []PackOffer
	}{
		"negative need":        {-1, []PackOffer{offer(5, "1")}},
		"need not a number":    {math.NaN(), []PackOffer{offer(5, "1")}},
		"endless need":         {math.Inf(1), []PackOffer{offer(5, "1")}},
		"need above the limit": {1_000_001, []PackOffer{offer(5, "1")}},
		"no pack":              {1, nil},
		"pack of nothing":      {1, []PackOffer{offer(0, "1")}},
		"pack not a number":    {1, []PackOffer{offer(math.NaN(), "1")}},
		"negative price":       {1, []PackOffer{offer(5, "-0.01")}},
		"price too fine":       {1, []PackOffer{offer(5, "0.00001")}},
		"price endlessly fine": {1, []PackOffer{{5, &tiny}}},
		"price endlessly long": {1, []PackOffer{{5, &long}}},
		"too many sizes":       {1, make([]PackOffer, mostPacks+1)},
		"cost beyond counting": {1_000_000, []PackOffer{offer(0.001, "10000000")}},
	} {
		_, err := Cover(c.needed, c.offers)
		assert.Error(t, err, name)
	}
	_, err := Cover(1, nil)
	assert.ErrorIs(t, err, ErrNoPacks)
}

// brute tries every purchase of whole units; sizes and need are whole.
func brute(need int, sizes, prices []int) (cost, total, count int) {
	cost = math.MaxInt
	var try func(i, c, s, n int)
	try = func(i, c, s, n int) {
		if s >= need {
			if c < cost || c == cost && (s < total || s == total && n < count) {
				cost, total, count = c, s, n
			}
			return
		}
		for ; i < len(sizes); i++ {
			try(i, c+prices[i], s+sizes[i], n+1)
		}
	}
	try(0, 0, 0, 0)
	return cost, total, count
}

// Cover finds what trying every purchase finds, also when prices tie or are
// proportional to size. Two thousand cases are tried whatever the flags say.
func TestCoverIsExact(t *testing.T) {
	check := func(t *rapid.T) {
		kinds := rapid.IntRange(1, 4).Draw(t, "kinds")
		scale := rapid.SampledFrom([]float64{1, 0.1, 0.473, 3.785411784}).Draw(t, "scale")
		form := rapid.SampledFrom([]string{"free", "proportional", "nearly", "flat", "none"}).Draw(t, "prices")
		sizes, prices := make([]int, kinds), make([]int, kinds)
		offers := make([]PackOffer, kinds)
		for i := range sizes {
			sizes[i] = rapid.IntRange(2, 13).Draw(t, "size")
			switch form {
			case "free":
				prices[i] = rapid.IntRange(0, 40).Draw(t, "price")
			case "proportional", "none":
				prices[i] = 3 * sizes[i]
			case "nearly":
				prices[i] = 7*sizes[i] + rapid.IntRange(-1, 1).Draw(t, "off")
			case "flat":
				prices[i] = 5
			}
			offers[i].Pack = float64(sizes[i]) * scale
			if form != "none" {
				price := decimal.New(int64(prices[i]), -2)
				offers[i].Price = &price
			}
		}
		need := rapid.IntRange(0, 45).Draw(t, "need")
		p, err := Cover(float64(need)*scale, offers)
		require.NoError(t, err)
		cost, total, count := brute(need, sizes, prices)
		packs, sum := 0, decimal.Zero
		for _, pack := range p.Packs {
			packs += pack.Count
			if pack.Price != nil {
				sum = sum.Add(pack.Price.Mul(decimal.NewFromInt(int64(pack.Count))))
			}
		}
		if form != "none" {
			require.True(t, p.Cost.Equal(decimal.New(int64(cost), -2)), "cost %s, tried %d", p.Cost, cost)
		}
		require.True(t, p.Cost.Equal(sum))
		require.InDelta(t, float64(total)*scale, p.Bought, 1e-7)
		require.Equal(t, count, packs)
		require.GreaterOrEqual(t, p.Bought, float64(need)*scale*(1-coverTolerance))
		require.InDelta(t, p.Bought-float64(need)*scale, p.LeftOver, 1e-7)
	}
	for range 20 { // rapid tries a hundred each time
		rapid.Check(t, check)
	}
}

// tabled finds the best purchase by a table of the cheapest way, then the one
// with fewest packs, to each total.
func tabled(need int, sizes, prices []int) (cost, total, count int) {
	type way struct{ cost, count int }
	most := need + slices.Max(sizes)
	best := make([]way, most+1)
	for s := 1; s <= most; s++ {
		best[s] = way{math.MaxInt / 2, 0}
		for i, size := range sizes {
			if size > s {
				continue
			}
			w := way{best[s-size].cost + prices[i], best[s-size].count + 1}
			if w.cost < best[s].cost || w.cost == best[s].cost && w.count < best[s].count {
				best[s] = w
			}
		}
	}
	total = need
	for s := need; s <= most; s++ {
		if best[s].cost < best[total].cost {
			total = s
		}
	}
	return best[total].cost, total, best[total].count
}

// Larger questions agree with a table over every total.
func TestCoverAgreesWithTable(t *testing.T) {
	check := func(t *rapid.T) {
		kinds := rapid.IntRange(2, 7).Draw(t, "kinds")
		spread := rapid.SampledFrom([]int{0, 1, 60}).Draw(t, "spread")
		sizes, prices := make([]int, kinds), make([]int, kinds)
		offers := make([]PackOffer, kinds)
		for i := range sizes {
			sizes[i] = rapid.IntRange(5, 120).Draw(t, "size")
			prices[i] = 9*sizes[i] + rapid.IntRange(0, spread).Draw(t, "off")
			price := decimal.New(int64(prices[i]), -2)
			offers[i] = PackOffer{float64(sizes[i]) / 100, &price}
		}
		need := rapid.IntRange(1, 3000).Draw(t, "need")
		p, err := Cover(float64(need)/100, offers)
		require.NoError(t, err)
		cost, total, count := tabled(need, sizes, prices)
		packs := 0
		for _, pack := range p.Packs {
			packs += pack.Count
		}
		require.True(t, p.Cost.Equal(decimal.New(int64(cost), -2)), "cost %s, table %d", p.Cost, cost)
		require.InDelta(t, float64(total)/100, p.Bought, 1e-9)
		require.Equal(t, count, packs)
	}
	for range 10 {
		rapid.Check(t, check)
	}
}

// Questions that a search which drops a choice too soon answers wrongly; the
// table has the answers.
func TestCoverKeepsWhatMayWin(t *testing.T) {
	for _, c := range []struct {
		need          int
		sizes, prices []int
	}{
		{67, []int{10, 5, 1, 21, 20}, []int{12, 7, 2, 26, 24}},
		{121, []int{10, 14, 8}, []int{12, 18, 12}},
		{130, []int{24, 2, 28}, []int{26, 3, 32}},
		{139, []int{30, 18, 14, 29, 13}, []int{60, 37, 28, 58, 27}},
		{109, []int{17, 13, 22}, []int{34, 26, 45}},
		{109, []int{15, 23, 7}, []int{30, 47, 15}},
	} {
		var offers []PackOffer
		for i, size := range c.sizes {
			price := decimal.New(int64(c.prices[i]), -2)
			offers = append(offers, PackOffer{float64(size), &price})
		}
		p, err := Cover(float64(c.need), offers)
		require.NoError(t, err)
		cost, total, count := tabled(c.need, c.sizes, c.prices)
		packs := 0
		for _, pack := range p.Packs {
			packs += pack.Count
		}
		assert.True(t, p.Cost.Equal(decimal.New(int64(cost), -2)), "need %d", c.need)
		assert.Equal(t, []float64{float64(total), float64(count)}, []float64{p.Bought, float64(packs)}, "need %d", c.need)
	}
}

// gallonSizes are sizes with no common measure above a millilitre.
var gallonSizes = []float64{18.925, 5, 3.785, 1, 0.946, 0.473}

// hard are questions that a careless search never finishes.
func hard() map[string][]PackOffer {
	proportional, nearly, unpriced, friendly := []PackOffer{}, []PackOffer{}, []PackOffer{}, []PackOffer{}
	for _, s := range gallonSizes {
		exact := decimal.NewFromFloat(s).Mul(decimal.NewFromInt(40))
		rounded := decimal.NewFromFloat(s).Mul(decimal.RequireFromString("43.6")).Round(2)
		proportional = append(proportional, PackOffer{s, &exact})
		nearly = append(nearly, PackOffer{s, &rounded})
		unpriced = append(unpriced, PackOffer{Pack: s})
	}
	for _, s := range []float64{20, 10, 5, 2.5, 1, 0.5} {
		exact := decimal.NewFromFloat(s).Mul(decimal.NewFromInt(12))
		friendly = append(friendly, PackOffer{s, &exact})
	}
	return map[string][]PackOffer{"proportional": proportional, "nearly": nearly, "unpriced": unpriced, "friendly": friendly}
}

func TestCoverHard(t *testing.T) {
	for name, offers := range hard() {
		for _, needed := range []float64{0.3, 12.345, 999.999, 100_000.001, 1_000_000} {
			p, err := Cover(needed, offers)
			require.NoError(t, err, "%s %g", name, needed)
			assert.GreaterOrEqual(t, p.Bought, needed*(1-coverTolerance), "%s %g", name, needed)
			if needed >= 999 && (name == "proportional" || name == "unpriced") { // the sizes reach every millilitre, and each costs the same
				assert.Zero(t, p.LeftOver, "%s %g", name, needed)
			}
		}
	}
}

// A question beyond the limit is refused with the limit named, and soon.
func TestCoverGivesUp(t *testing.T) {
	var offers []PackOffer
	for _, s := range []float64{99.999999937, 89.999999929, 79.999999907, 69.999999881, 59.999999837, 49.999999783} {
		offers = append(offers, PackOffer{Pack: s})
	}
	_, err := Cover(1_000_000, offers)
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Contains(t, err.Error(), "200000")
}

func BenchmarkCoverFiftyProducts(b *testing.B) {
	c, err := Load()
	require.NoError(b, err)
	products := c.Products()[:50]
	for b.Loop() {
		for i, p := range products {
			if _, err := Cover(3.7*float64(i+1), p.Base().Offers()); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkCoverHard(b *testing.B) {
	for name, offers := range hard() {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Cover(100_000.001, offers); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// One size alone, against trying each size (identity).
func TestCoverAlikeIsTheBestSingleSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.IntRange(1, 4).Draw(t, "kinds")
		need := rapid.IntRange(1, 60).Draw(t, "need")
		var offers []PackOffer
		cost, left, count := math.MaxInt, 0, 0
		for range kinds {
			size, price := rapid.IntRange(1, 13).Draw(t, "size"), rapid.IntRange(0, 40).Draw(t, "price")
			amount := decimal.New(int64(price), -2)
			offers = append(offers, PackOffer{float64(size), &amount})
			n := (need + size - 1) / size
			if c, l := n*price, n*size-need; c < cost || c == cost && (l < left || l == left && n < count) {
				cost, left, count = c, l, n
			}
		}
		p, err := CoverAlike(float64(need), offers)
		require.NoError(t, err)
		require.Len(t, p.Packs, 1)
		require.True(t, p.Cost.Equal(decimal.New(int64(cost), -2)))
		require.InDelta(t, float64(left), p.LeftOver, 1e-9)
		require.Equal(t, count, p.Packs[0].Count)
	})
	p, err := CoverAlike(6, []PackOffer{offer(5, "90"), offer(3, "")})
	require.NoError(t, err)
	assert.Equal(t, 2, p.Packs[0].Count, "what has no price is left aside where something has one")
	_, err = CoverAlike(1, nil)
	assert.ErrorIs(t, err, ErrNoPacks)
	p, err = CoverAlike(0, []PackOffer{offer(5, "90")})
	require.NoError(t, err)
	assert.Empty(t, p.Packs)
}

// A question without its need is no question for nothing.
func TestPacksWantsItsNeed(t *testing.T) {
	found := map[string]string{}
	(&PacksInput{}).Check(func(pointer, code, _ string) { found[pointer] = code })
	assert.Equal(t, map[string]string{"/needed": "required", "/packs": "required"}, found)
}
