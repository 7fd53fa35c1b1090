package target

import (
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/surfaces/quantity"
)

// What can be looked for.
const (
	Area = "area" // the same parts, larger or smaller
	Film = "film" // the same steps, with thicker or thinner coats
)

// Finds lists what can be looked for.
func Finds() []string { return []string{Area, Film} }

// Moneys lists what a budget can pay for.
func Moneys() []string { return []string{"cash_needed", "total"} }

// Question is what is asked.
type Question struct {
	Job        *estimate.Job    `json:"job" wire:"raw" doc:"the job as it is planned"`
	Find       string           `json:"find" doc:"area: the largest area that fits, the parts keeping their form; film: the thickest film plan that fits"`
	Components []string         `json:"components,omitempty" doc:"for area: the components that grow or shrink; all of them where left out"`
	Steps      []string         `json:"steps,omitempty" doc:"for film: the coat and mark steps whose film changes; all of them where left out"`
	Budget     *decimal.Decimal `json:"budget,omitempty" doc:"the most that may be spent, in the job's currency"`
	Money      string           `json:"money,omitempty" doc:"what the budget pays for: cash_needed (default; cash, contingency and tax) or total (in kind too)"`
	Stock      []Stock          `json:"stock,omitempty" doc:"what there is of products: their need must not pass it"`
}

// Stock is what there is of one product.
type Stock struct {
	Product  string  `json:"product" doc:"id of the product"`
	Quantity float64 `json:"quantity" limit:"(0,1000000]" unit:"" doc:"in the product's unit: L, kg, m or pcs"`
}

// Defaults makes a budget pay for what needs cash.
func (q *Question) Defaults() { q.Money = "cash_needed" }

// read reads a question and its job. Faults of the job are not told here: every
// try tells its own.
func read(reader *estimate.Reader, data []byte, faults *fault.List) (*Question, *wire.Node, error) {
	node, err := wire.Parse(data, faults)
	if err != nil {
		return nil, nil, err
	}
	q := &Question{}
	reader.Decode(node, q, faults)
	if faults.Has("") {
		return q, nil, nil
	}
	job, found := node.Member("job")
	if !found {
		faults.Add("/job", "required", "job is missing; give the job as it is planned")
	}
	q.check(faults)
	return q, job, nil
}

func (q *Question) check(faults *fault.List) {
	quantity.Check(q, faults.At(""))
	oneOf(q.Find, "find", Finds(), faults)
	oneOf(q.Money, "money", Moneys(), faults)
	if q.Find == Area && len(q.Steps) > 0 {
		faults.Add("/steps", "not_applicable", "steps are for find film; for an area name components, or leave both out")
	}
	if q.Find == Film && len(q.Components) > 0 {
		faults.Add("/components", "not_applicable", "components are for find area; for a film name steps, or leave both out")
	}
	switch {
	case q.Budget != nil && q.Budget.IsNegative():
		faults.Add("/budget", "out_of_range", "budget is negative; give what may be spent")
	case q.Budget == nil && len(q.Stock) == 0 && !faults.HasBelow("/budget") && !faults.HasBelow("/stock"):
		faults.Add("/budget", "required", "there is no target; give budget, stock, or both")
	}
	for i, s := range q.Stock {
		at := "/stock/" + strconv.Itoa(i)
		if s.Product == "" {
			faults.Add(at+"/product", "required", "product is missing; give the id of a product that the job needs")
		}
		if slices.ContainsFunc(q.Stock[:i], func(before Stock) bool { return before.Product == s.Product }) {
			faults.Addf(at+"/product", "duplicate_id", "%q stands twice in stock; add the two up", s.Product)
		}
	}
}

func oneOf(word, field string, words []string, faults *fault.List) {
	if !slices.Contains(words, word) {
		code := "unknown_kind"
		if word == "" {
			code = "required"
		}
		faults.Addf("/"+field, code, "%s is %q; it must be one of %s", field, word, strings.Join(words, ", "))
	}
}
