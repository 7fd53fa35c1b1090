package target

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/money"
	"filmbuild/estimate/units"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

// Tolerance is how near the answer is to the size that is refused, as a ratio.
const Tolerance = 1e-9

// The sizes that are tried, as ratios to the plan.
const (
	leastSize = 1e-9
	mostSize  = 1e9
)

// answer puts what the search finds into the form of the wire.
func (q *Question) answer(ctx context.Context, s *search) (*Answer, error) {
	size, err := s.largest(ctx)
	if err != nil {
		return nil, err
	}
	turn(s.knobs, 1)
	plan := s.try()
	turn(s.knobs, size)
	e := s.try()
	a := &Answer{Find: q.Find, Ratio: size, Held: s.held(e), Tolerance: Tolerance, Estimate: e}
	s.limitedBy(a)
	if q.Find == Area {
		s.areas(a, plan, e)
	} else {
		for i, f := range s.films {
			a.Films = append(a.Films, FilmChange{Step: f.step, PlanUM: s.knobs[i].was, DryFilmUM: *f.film})
		}
	}
	s.say(a)
	return a, nil
}

// Solve reads a question and works it out. The error is a *wire.SyntaxError, a
// *fault.Error with every fault of the question and its job, or the context's.
func Solve(ctx context.Context, reader *estimate.Reader, catalogue *products.Catalogue, data []byte) (*Answer, error) {
	faults := &fault.List{}
	q, node, err := read(reader, data, faults)
	if err != nil {
		return nil, err
	}
	if node == nil {
		return nil, faults.Err()
	}
	var inner fault.List
	job := reader.JobOf(node, &inner)
	plan := estimate.RunJob(job, &inner, catalogue, faults, "/job")
	if plan == nil {
		return nil, faults.Err()
	}
	s := &search{question: q, job: job, catalogue: catalogue}
	switch q.Find {
	case Area:
		s.knobs = areaKnobs(q, job, faults)
	case Film:
		s.knobs, s.films = filmKnobs(q, job, catalogue, faults)
	}
	s.targets(plan, faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return q.answer(ctx, s)
}

// Ask is Solve for a job and a question that are not one document yet: the
// members of the question by their wire names.
func Ask(ctx context.Context, reader *estimate.Reader, catalogue *products.Catalogue, job []byte, question map[string]any) (*Answer, error) {
	if _, err := wire.Parse(job, &fault.List{}); err != nil {
		return nil, err
	}
	question["job"] = json.RawMessage(job)
	document, err := json.Marshal(question)
	if err != nil {
		return nil, err
	}
	return Solve(ctx, reader, catalogue, document)
}

// search is a job whose size is being changed.
type search struct {
	question  *Question
	job       *estimate.Job
	catalogue *products.Catalogue
	knobs     []knob
	films     []planned
	currency  money.Currency
	refusal   error // of the last size that the engine refused
}

// targets checks that the targets are about this job.
func (s *search) targets(plan *estimate.Estimate, faults *fault.List) {
	s.currency, _ = money.CurrencyOf(plan.Currency) // known: the plan was worked out
	for i, stock := range s.question.Stock {
		if need(plan, stock.Product) == nil && stock.Product != "" {
			faults.Addf(fmt.Sprintf("/stock/%d/product", i), "unknown_reference", "the job needs no %q; name a product of its order", stock.Product)
		}
	}
}

func need(e *estimate.Estimate, product string) *estimate.OrderLine {
	for i := range e.Order {
		if e.Order[i].Product == product {
			return &e.Order[i]
		}
	}
	return nil
}

// try works the job out at the size that is set; nil where the engine refuses
// it, because a number left its limits.
func (s *search) try() *estimate.Estimate {
	e, err := estimate.Run(s.job, s.catalogue)
	if err != nil {
		s.refusal = err
		return nil
	}
	return e
}

// held is what an estimate takes of each target.
func (s *search) held(e *estimate.Estimate) []Held {
	var list []Held
	if s.question.Budget != nil {
		most, takes := s.currency.Of(*s.question.Budget), e.Budget.CashNeeded
		if s.question.Money == "total" {
			takes = e.Budget.Total
		}
		list = append(list, Held{Target: "budget", Unit: e.Currency, Most: most.Float64(), Takes: takes.Float64(), Budget: &most, Needed: &takes})
	}
	for _, stock := range s.question.Stock {
		if line := need(e, stock.Product); line != nil {
			list = append(list, Held{Target: stock.Product, Unit: line.Unit, Most: stock.Quantity, Takes: line.Needed})
		}
	}
	return list
}

// fits reports whether an estimate stays inside every target; amounts of money
// are compared exactly.
func (s *search) fits(e *estimate.Estimate) bool {
	for _, h := range s.held(e) {
		if h.Budget != nil && h.Needed.Cmp(*h.Budget) > 0 || h.Budget == nil && h.Takes > h.Most {
			return false
		}
	}
	return true
}

// limitedBy finds the target that a size one tolerance larger would pass.
func (s *search) limitedBy(a *Answer) {
	turn(s.knobs, a.Ratio*(1+2*Tolerance))
	defer turn(s.knobs, a.Ratio)
	if beyond := s.try(); beyond != nil {
		for _, h := range s.held(beyond) {
			if h.Takes > h.Most {
				a.LimitedBy = h.Target
				return
			}
		}
	}
}

func (s *search) areas(a *Answer, plan, found *estimate.Estimate) {
	for i, area := range plan.Areas {
		if now := found.Areas[i].AreaM2; len(s.question.Components) == 0 || slices.Contains(s.question.Components, area.Component) {
			a.Areas = append(a.Areas, AreaChange{Component: area.Component, PlanAreaM2: area.AreaM2, AreaM2: now})
			a.PlanAreaM2 += area.AreaM2
			a.AreaM2 += now
		}
	}
}

// say puts the answer in words.
func (s *search) say(a *Answer) {
	by := "the budget"
	if a.LimitedBy != "budget" {
		by = "the stock of " + a.LimitedBy
	}
	if a.Find == Area {
		a.Words = append(a.Words, fmt.Sprintf("The largest area that fits is %s m², %s of the plan's %s m²; beyond that, %s does not reach.", units.Format(a.AreaM2, 4), percent(a.Ratio), units.Format(a.PlanAreaM2, 4), by),
			"The parts keep their form: areas change by the ratio, lengths and edges by its root, openings, joints and regions with them. Markings, counts, set-up times and items stay as they are.")
	} else {
		a.Words = append(a.Words, fmt.Sprintf("The thickest film plan that fits has %s of the planned films; beyond that, %s does not reach.", percent(a.Ratio), by),
			"All films change by one ratio. Rates of work stay as they are. A plan thinner than the data sheet asks for does not protect: paint a smaller area instead, and look at the warnings of the estimate.")
	}
	a.Words = append(a.Words, "What is bought comes in whole packs, so the money grows in steps: a little below the answer may cost as much, a little above costs a pack more.")
}

func percent(ratio float64) string { return units.Format(100*ratio, 4) + " %" }
