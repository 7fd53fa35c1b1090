package estimate

import (
	"slices"
	"strconv"

	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
)

// EngineVersion names the rules by which an estimate is worked out. It changes
// whenever the same job and catalogue give another answer.
const EngineVersion = "2.0.0"

// run is one pass through a job.
type run struct {
	book *products.Catalogue // without the job's own products
	*checker
	estimate *Estimate
	needs    needs
	assumed  assumptions
	weights  weights
	topCoats map[[2]int]topCoat      // surface and face -> the last coat on it
	tack     float64                 // weight of the tack coats of the step at hand
	masks    maskState               // what is taped, and by which step
	patches  map[string][]*TestPatch // step id -> its test patches
	stepOf   map[string]Step         // step id -> the step, of those that have test patches
	chosen   map[string]selection    // step id -> what it works on

	taken      []float64 // out of each entry of the stock
	priceDates []string  // of the prices that have one

	over  map[string][]int               // step id -> the surfaces that it works on and that may have old paint
	drawn map[string]marking.Measurement // marking id -> what it measures, of those that steps paint
}

// Run works a job out. The error, a *fault.Error, lists every fault of the job;
// with one there is no estimate.
func Run(job *Job, catalogue *products.Catalogue) (*Estimate, error) {
	r, err := runThrough(job, catalogue, &fault.List{})
	if err != nil {
		return nil, err
	}
	return r.estimate, nil
}

// runThrough goes the whole way of a job and keeps what it found on it. It adds
// the faults of the job to those of its document.
func runThrough(job *Job, catalogue *products.Catalogue, faults *fault.List) (*run, error) {
	r := &run{
		checker:  &checker{job: job, catalogue: catalogue.With(job.Products), faults: faults, ids: map[string]string{}},
		chosen:   map[string]selection{},
		book:     catalogue,
		over:     map[string][]int{},
		estimate: &Estimate{Job: job.Name, Currency: job.Currency, CatalogueVersion: catalogue.Version(), EngineVersion: EngineVersion},
	}
	r.check()
	r.testPatches()
	r.steps()
	if err := faults.Err(); err != nil {
		return nil, err
	}
	r.patchAssumptions()
	r.labourHours()
	if err := faults.Err(); err != nil {
		return nil, err
	}
	r.placings()
	r.areas()
	r.order(catalogue.Currency())
	if err := faults.Err(); err != nil {
		return nil, err // a need beyond what any order can hold
	}
	r.costs()
	r.totals()
	r.priceItems()
	r.budget()
	r.fund()
	if !r.estimate.Budget.Total.IsValid() || !r.estimate.Totals.StepsCost.IsValid() {
		faults.Add("", "out_of_range", "the amounts of this job reach 10^15; look at its prices, rates and items, or split the job")
		return nil, faults.Err()
	}
	r.weigh()
	r.contamination()
	r.compare()
	r.follow()
	r.conditions()
	if err := r.classify(); err != nil {
		return nil, err
	}
	if err := r.improve(); err != nil {
		return nil, err
	}
	r.conclude()
	return r, nil
}

func (r *run) areas() {
	r.estimate.Areas = make([]Area, len(r.surfaces))
	for i := range r.surfaces {
		s := &r.surfaces[i]
		r.estimate.Areas[i] = s.area()
		for _, w := range s.one.Warnings {
			r.warn("%s: %s", s.component.ID, w)
		}
		if s.component.ExtraAreaPercent > 0 {
			r.assumed.add("", "area added to "+s.component.ID+" for laps, rivets and gaps", s.component.ExtraAreaPercent, "%", "the job")
		}
	}
}

func (r *run) steps() {
	seen := map[string]string{}
	r.estimate.Steps = make([]StepEstimate, len(r.job.Steps))
	r.masks.ahead(r)
	for i, step := range r.job.Steps {
		if step == nil {
			continue // of an unknown operation: noted by the decoder
		}
		at, b, s := "/steps/"+strconv.Itoa(i), step.base(), &r.estimate.Steps[i]
		*s = StepEstimate{ID: b.ID, Name: b.Name, Operation: b.Operation, Labour: b.Labour,
			Materials: []Material{}, Working: make([]quantity.Working, 0, usualWorkings), HoursByRole: []RoleHours{}, Cautions: []Caution{}, Checks: []Check{}, Warnings: []string{}}
		r.id(b.ID, at, seen)
		quantity.Check(step, r.faults.At(at))
		r.oneOf(b.Labour, at, "labour", []string{"volunteer", "paid", "contract"})
		r.starts(b.Starts, at)
		r.conditioned(b.Conditions, at)
		r.masks.now = i
		step.work(r, s, at)
		s.sums()
		if b.SetupH == 0 {
			r.assumed.add(b.ID, "time to set up and clear away, where setup_h is not given", 0, "h", "assumption; no published value was found: give setup_h")
		}
	}
}

// usualWorkings is how many workings most steps come to; more are no fault.
const usualWorkings = 48

// surface resolves what a step works on; the second value is false when the
// step cannot be computed.
func (r *run) surface(b *StepBase, s *StepEstimate, at string) (selection, bool) {
	sel, ok := r.masks.selection()
	if !ok || r.faults.HasBelow(at) {
		return sel, false
	}
	r.chosen[b.ID], r.over[b.ID] = sel, r.stillPainted(sel)
	s.AreaM2 = sel.areaM2
	s.Working = append(s.Working, sel.working...)
	terms, links := r.faceTerms(sel)
	s.Working = append(s.Working, quantity.Working{Quantity: "area_m2", Value: sel.areaM2, Unit: "m²",
		Formula: "sum of the faces and regions chosen, openings off", Terms: terms, Links: links, Source: "identity"})
	if sel.areaM2 == 0 {
		r.faults.Add(at+"/on", "out_of_range", "what is chosen has no area left; look at the openings")
		return sel, false
	}
	return sel, true
}

// faceTerms gives the area of each face and measured region of a selection.
func (r *run) faceTerms(sel selection) (map[string]float64, []quantity.Link) {
	terms, links := make(map[string]float64, len(sel.patches)), make([]quantity.Link, 0, len(sel.patches))
	for _, p := range sel.patches {
		s := &r.surfaces[p.surface]
		name := s.component.ID + "/" + s.faces[p.face].name
		link := quantity.Scaled(name, quantity.Node{Kind: "face", ID: s.component.ID, Quantity: s.faces[p.face].name}, p.share)
		if p.measured != "" {
			name = p.measured
			link = quantity.From(name, quantity.Node{Kind: "region", ID: name, Quantity: "area_m2"})
		}
		if _, again := terms[name]; !again {
			links = append(links, link)
		} else if p.measured == "" {
			k := slices.IndexFunc(links, func(l quantity.Link) bool { return l.Term == name })
			links[k].Times += p.share
		}
		terms[name] += s.faces[p.face].areaM2 * p.share
	}
	return terms, links
}

// crewHours notes the person-hours of a step: time at work and to set up, times
// the people in the crew, and to mask, which is noted before.
func (s *StepEstimate) crewHours(b *StepBase, atWork float64, formula string, terms map[string]float64, source string, links ...quantity.Link) {
	s.Hours = (atWork+b.SetupH)*float64(b.Crew) + s.MaskingHours
	terms["setup"], terms["crew"] = b.SetupH, float64(b.Crew)
	formula, links = s.withMasking("("+formula+" + setup)·crew", terms, links)
	s.Working = append(s.Working, quantity.Working{Quantity: "hours", Value: s.Hours, Unit: "h", Formula: formula, Terms: terms, Source: source,
		Links: append(links, quantity.From("setup", quantity.Setting(b.ID, "setup_h")), quantity.From("crew", quantity.Setting(b.ID, "crew")))})
}

// totals adds up what the steps take.
func (r *run) totals() {
	t := &r.estimate.Totals
	t.HoursByRole = []RoleHours{}
	t.StepsMaterialCost, t.StepsLabourCost, t.StepsCost = r.currency.Zero(), r.currency.Zero(), r.currency.Zero()
	for i := range r.estimate.Areas {
		t.AreaM2 += r.estimate.Areas[i].AreaM2
	}
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		t.Litres += s.Litres
		t.Kilograms += s.Kilograms
		t.MaskingTapeM += s.MaskingTapeM
		t.Hours += s.Hours
		t.WasteKg += s.WasteKg
		t.DryFilmKg += s.DryFilmKg
		t.RemovedKg += s.RemovedKg
		t.VOCKg += s.VOCKg
		t.Sessions += s.Sessions
		t.addHours(s.HoursByRole)
		t.StepsMaterialCost = t.StepsMaterialCost.Add(s.MaterialCost)
		t.StepsLabourCost = t.StepsLabourCost.Add(s.LabourCost)
		t.StepsCost = t.StepsCost.Add(s.Cost)
	}
}
