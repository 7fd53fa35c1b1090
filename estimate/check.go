package estimate

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"filmbuild/estimate/calendar"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/funding"
	"filmbuild/estimate/money"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// Most parts of a document, so that no job can hold the engine up.
const (
	MostComponents   = 2000
	MostOpenings     = 200 // of one component, and as many joins, gaps and laps
	MostSteps        = 500
	MostListed       = 2000 // regions, markings, items, products, test patches
	MostCorrelations = 1000
	MostEffort       = 20_000  // work on regions that are bays, bands or strips, in ms on one core
	MostChosen       = 200_000 // faces that regions, markings and steps choose, each time counted
)

// Substrates are what may lie under the paint.
func Substrates() []string {
	return []string{"aluminium", "clad_aluminium", "magnesium", "steel", "stainless_steel", "titanium",
		"cast_iron", "composite", "fibreglass", "fabric", "wood", "clear_plastic", "zinc"}
}

// checker goes through a job and notes every fault in it.
type checker struct {
	job       *Job
	catalogue *products.Catalogue // with the job's own products
	faults    *fault.List
	ids       map[string]string // id of a component or region -> where it stands
	surfaces  []surface
	picked    int                   // faces chosen so far, for MostChosen
	effort    int                   // spent on parts
	parts     map[[2]int]regionPart // region and surface -> what the region is of it
	markedOn  map[int]selection     // marking -> what it is painted on
	borders   map[[3]int][]border   // two regions and a surface -> the lines they share there
	currency  money.Currency
	days      calendar.Calendar

	awardRules funding.Rules // of the date of the award, where the job asks for a form

	componentAt, regionAt map[string]int // id -> index, the first of that id
	productAt             map[string]int // id of the job's own -> index, the last of that id, which counts
}

// check notes every fault that can be seen before a step is computed.
func (c *checker) check() {
	j := c.job
	c.index()
	c.counts()
	c.name(j.Name, "/name")
	quantity.Check(j, c.limits) // goes into every list of the job
	c.money()
	c.ownProducts()
	c.oldPaint(j.OldPaint, "")
	c.components()
	c.regions()
	c.markings()
	c.items()
	c.supplies()
	c.moneyRules()
	c.correlations()
	if len(j.Components)+len(j.Steps)+len(j.Items)+len(j.Markings) == 0 {
		c.faults.Add("", "required", "the job is empty; give components and steps, or items")
	}
}

// index finds parts by their ids, so that a job of thousands is no slower to
// look up than one of ten.
func (c *checker) index() {
	j := c.job
	c.componentAt, c.regionAt, c.productAt = make(map[string]int, len(j.Components)), make(map[string]int, len(j.Regions)), make(map[string]int, len(j.Products))
	for i := range j.Components {
		if _, twice := c.componentAt[j.Components[i].ID]; !twice {
			c.componentAt[j.Components[i].ID] = i
		}
	}
	for i := range j.Regions {
		if _, twice := c.regionAt[j.Regions[i].ID]; !twice {
			c.regionAt[j.Regions[i].ID] = i
		}
	}
	for i, p := range j.Products {
		if p != nil {
			c.productAt[p.Base().ID] = i
		}
	}
}

func (c *checker) counts() {
	j := c.job
	for _, list := range []struct {
		name       string
		have, most int
	}{
		{"components", len(j.Components), MostComponents}, {"steps", len(j.Steps), MostSteps},
		{"regions", len(j.Regions), MostListed}, {"markings", len(j.Markings), MostListed},
		{"items", len(j.Items), MostListed}, {"products", len(j.Products), MostListed}, {"test_patches", len(j.TestPatches), MostListed},
		{"suppliers", len(j.Suppliers), MostListed}, {"stock", len(j.Stock), MostListed},
		{"correlations", len(j.Correlations), MostCorrelations},
	} {
		if list.have > list.most {
			c.faults.Addf("/"+list.name, "too_many", "%s has %d entries; the most is %d: use count for parts that are alike, or split the job", list.name, list.have, list.most)
		}
	}
}

// limits notes a number outside the limits of its field, unless the part that it
// belongs to is no object at all.
func (c *checker) limits(pointer, code, detail string) {
	parts := strings.SplitN(pointer, "/", 4) // "", list, index, the rest
	if len(parts) == 4 && c.faults.Has("/"+parts[1]+"/"+parts[2]) {
		return
	}
	c.faults.Add(pointer, code, detail)
}

func (c *checker) name(name, at string) {
	if strings.TrimSpace(name) == "" {
		c.faults.Add(at, "required", "name is missing; give the job a name")
	}
}

func (c *checker) money() {
	code := c.job.Currency
	currency, err := money.CurrencyOf(code)
	switch {
	case code == "":
		c.faults.Add("/currency", "required", "currency is missing; give an ISO 4217 code such as USD, EUR or GBP")
	case err != nil:
		c.faults.Addf("/currency", "unknown_reference", "%q is no ISO 4217 currency code; write three capital letters such as USD, EUR or GBP", code)
	}
	c.currency = currency
	c.labour()
}

// idForm is what an id may look like: it must not hold the slash that parts a
// component from its face.
var idForm = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$`)

// id notes a malformed or repeated id; seen is of one list, or of several that
// share their names.
func (c *checker) id(id, at string, seen map[string]string) {
	switch before, twice := seen[id]; {
	case id == "":
		c.faults.Add(at+"/id", "required", "id is missing; give a short name such as wing or step-1")
	case !idForm.MatchString(id):
		c.faults.Addf(at+"/id", "wrong_type", "id %q may hold letters, digits, point, dash and underscore only, at most 80", clip(id))
	case twice:
		c.faults.Addf(at+"/id", "duplicate_id", "id %q is taken by %s; every id must be its own", id, before)
	default:
		seen[id] = at
	}
}

// oneOf notes a word that is not in a fixed list.
func (c *checker) oneOf(word, at, field string, words []string) {
	if !slices.Contains(words, word) {
		c.faults.Addf(at+"/"+field, "unknown_kind", "%s is %q; it must be one of %s", field, clip(word), strings.Join(words, ", "))
	}
}

func (c *checker) ownProducts() {
	seen := map[string]string{}
	for i, p := range c.job.Products {
		if p == nil {
			continue // its kind was not known: noted by the decoder
		}
		at := "/products/" + strconv.Itoa(i)
		c.id(p.Base().ID, at, seen)
		p.Check(c.faults.At(at))
		c.payable(p.Base().Packs, at)
		c.pricing(p.Base().Packs, at)
		if paint, ok := p.(*products.Paint); ok && paint.Thinner != "" {
			c.thinner(paint.Thinner, at+"/thinner")
		}
	}
}

// payable notes prices finer than the currency's smallest coin: nobody can pay
// them, and the order would not add up to what it shows.
func (c *checker) payable(packs []products.Pack, at string) {
	for i, p := range packs {
		if p.Price != nil && c.currency.Code() != "" && !c.currency.Of(p.Price.Decimal).Decimal().Equal(p.Price.Decimal) {
			c.faults.Addf(at+"/packs/"+strconv.Itoa(i)+"/price", "out_of_range", "price %s has more decimal places than %s has (%d); round it", p.Price, c.currency.Code(), c.currency.MinorUnits())
		}
	}
}

func (c *checker) thinner(id, at string) {
	p, ok := c.catalogue.Product(id)
	if !ok {
		c.faults.Addf(at, "unknown_reference", "there is no product %q; add it to products or name a thinner of the catalogue", clip(id))
	} else if _, ok := p.(*products.Thinner); !ok {
		c.faults.Addf(at, "not_applicable", "%q is a %s and not a thinner", id, p.Base().Kind)
	}
}

func (c *checker) components() {
	for i := range c.job.Components {
		comp, at := &c.job.Components[i], "/components/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue // no object at all
		}
		c.id(comp.ID, at, c.ids)
		c.oldPaint(comp.OldPaint, at)
		if comp.Substrate != "" {
			c.oneOf(comp.Substrate, at, "substrate", Substrates())
		}
		for _, list := range []struct {
			name string
			have int
		}{{"openings", len(comp.Openings)}, {"joins", len(comp.Joins)}, {"gaps", len(comp.Gaps)}, {"laps", len(comp.Laps)}} {
			if list.have > MostOpenings {
				c.faults.Addf(at+"/"+list.name, "too_many", "%s has %d entries; the most is %d", list.name, list.have, MostOpenings)
			}
		}
		if comp.Shape == nil {
			if c.faults.HasBelow(at + "/shape") {
				continue // of an unknown kind: noted by the decoder
			}
			c.faults.Add(at+"/shape", "required", "shape is missing; give kind and sizes, or {\"kind\": \"measured\", \"area_m2\": …}")
			continue
		}
		comp.Shape.Check(c.faults.At(at + "/shape"))
	}
	c.measure()
}

func (c *checker) regions() {
	for i := range c.job.Regions {
		r, at := &c.job.Regions[i], "/regions/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue
		}
		c.id(r.ID, at, c.ids)
		if len(r.Of) == 0 {
			c.faults.Add(at+"/of", "required", "of is empty; name the components or faces that the region lies on")
		}
		if r.AreaM2 != nil && r.ShareRatio != nil {
			c.faults.Add(at+"/share_ratio", "inconsistent", "a region is measured (area_m2) or a share (share_ratio), not both")
		}
		c.bounds(r, at)
		if len(r.Of) > 0 && !c.faults.HasBelow(at) {
			c.choose([]string{r.ID}, at+"/of")
		}
	}
}

func (c *checker) markings() {
	c.markedOn = map[int]selection{}
	seen := map[string]string{}
	for i := range c.job.Markings {
		m, at := &c.job.Markings[i], "/markings/"+strconv.Itoa(i)
		if c.faults.Has(at) {
			continue
		}
		c.id(m.ID, at, seen)
		if m.Figure != nil {
			m.Figure.Check(c.faults.At(at))
		}
		if m.On != "" {
			if on, ok := c.choose([]string{m.On}, at+"/on"); ok {
				c.markedOn[i] = on
			}
		}
		c.place(m, at)
	}
}

// product returns the product of type T that a field names, and notes why
// there is none.
func product[T products.Product](c *checker, id, at, field, want string) (T, bool) {
	var none T
	if id == "" {
		c.faults.Addf(at+"/"+field, "required", "%s is missing; give the id of a %s", field, want)
		return none, false
	}
	p, ok := c.catalogue.Product(id)
	if !ok {
		c.faults.Addf(at+"/"+field, "unknown_reference", "there is no product %q in the job or the catalogue%s", clip(id), c.likeProduct(id, func(p products.Product) bool { _, ok := p.(T); return ok }))
		return none, false
	}
	if own, mine := c.productAt[id]; mine && c.faults.HasBelow("/products/"+strconv.Itoa(own)) {
		return none, false // its own faults say why
	}
	typed, ok := p.(T)
	if !ok {
		c.faults.Addf(at+"/"+field, "not_applicable", "%q is a %s; %s wants a %s", id, p.Base().Kind, field, want)
	}
	return typed, ok
}

// likeProduct suggests ids, of products that fit, that share a word with an
// unknown one; or lists those that fit.
func (c *checker) likeProduct(id string, fits func(products.Product) bool) string {
	words := strings.FieldsFunc(strings.ToLower(id), func(r rune) bool { return r == '-' || r == '_' || r == ' ' })
	var like, all []string
	for p := range c.catalogue.All() {
		if !fits(p) {
			continue
		}
		all = append(all, p.Base().ID)
		if slices.ContainsFunc(words, func(w string) bool { return len(w) > 3 && strings.Contains(p.Base().ID, w) }) {
			like = append(like, p.Base().ID)
		}
	}
	if len(like) == 0 {
		like = all
	}
	if len(like) > 8 {
		return "; there is " + strings.Join(like[:8], ", ") + " and more, see /v1/products"
	}
	return "; there is " + strings.Join(like, ", ")
}

func clip(text string) string {
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return text
}

func plural(n int, one string) string {
	if n == 1 {
		return fmt.Sprintf("1 %s", one)
	}
	return fmt.Sprintf("%d %ss", n, one)
}
