package estimate

import (
	"math"
	"slices"
	"strconv"

	"filmbuild/surfaces/quantity"
)

// labourHours turns the hours that the rates give into the hours that people
// are there, and parts them among the roles of the crew.
//
//	hours = at work / (availability · efficiency) + sessions · (set-up + clean-up) · crew + batches · batch
//
// A burdened rate holds set-up, clean-up and idle time already: its hours stand.
//
// Source: availability and norm over actual efficiency as in NAVFAC P-405 (reference
// planning L10, L12); sessions and batches by counting.
func (r *run) labourHours() {
	for i, step := range r.job.Steps {
		b, s := step.base(), &r.estimate.Steps[i]
		at := "/steps/" + strconv.Itoa(i)
		if b.Role != "" {
			r.oneOf(b.Role, at, "role", Roles())
		}
		if b.Helpers > 0 && b.Helpers >= b.Crew {
			r.faults.Addf(at+"/helpers", "inconsistent", "helpers is %d of a crew of %d; at least one of the crew does the work", b.Helpers, b.Crew)
			continue
		}
		if s.Hours > 0 {
			r.burden(b, s)
			r.partHours(b, s)
		}
	}
	r.sessionsFit()
}

// burden adds to the hours of a step what the rates leave out.
func (r *run) burden(b *StepBase, s *StepEstimate) {
	l := &r.job.Labour
	availability, efficiency := valueOr(l.AvailabilityPercent, 100)/100, valueOr(l.EfficiencyPercent, 100)/100
	if l.SessionH == 0 && l.BatchH == 0 && availability == 1 && efficiency == 1 {
		return
	}
	k := slices.IndexFunc(s.Working, func(w quantity.Working) bool { return w.Quantity == "hours" })
	if k < 0 {
		return
	}
	atWork := s.Hours
	crew := float64(b.Crew)
	terms := map[string]float64{"hours_at_work": atWork, "availability": availability, "efficiency": efficiency}
	if b.RateBasis == "burdened" {
		terms["availability"], terms["efficiency"], availability, efficiency = 1, 1, 1, 1
	}
	s.Working[k].Quantity = "hours_at_work"
	labour := func(term, field string, times float64) quantity.Link {
		return quantity.Scaled(term, quantity.Node{Kind: "job", ID: "labour", Quantity: field}, times)
	}
	links := []quantity.Link{quantity.From("hours_at_work", quantity.StepWorking(s.ID, "hours_at_work", ""))}
	if b.RateBasis != "burdened" {
		links = append(links, labour("availability", "availability_percent", 0.01), labour("efficiency", "efficiency_percent", 0.01))
	}
	formula := "hours_at_work/(availability·efficiency)"
	s.Hours = atWork / (availability * efficiency)
	if l.SessionH > 0 {
		lost := l.SessionSetupH + l.SessionCleanupH
		if b.RateBasis == "burdened" {
			lost = 0
		}
		s.Sessions = int(math.Ceil(s.Hours/crew/(l.SessionH-lost) - 1e-9))
		sessionTerms := map[string]float64{"session": l.SessionH, "lost": lost, "crew": crew}
		for name, value := range terms {
			sessionTerms[name] = value
		}
		s.note("sessions", "", float64(s.Sessions), "", "⌈"+formula+"/crew/(session − lost) − 0.000000001⌉", sessionTerms, "identity: the time of a session that is left for work", append(links[:len(links):len(links)], labour("session", "session_h", 1), quantity.From("crew", quantity.Setting(s.ID, "crew")))...)
		s.Hours += float64(s.Sessions) * lost * crew
		formula += " + sessions·lost·crew"
		terms["sessions"], terms["lost"], terms["crew"] = float64(s.Sessions), lost, crew
		links = append(links, quantity.From("sessions", quantity.StepWorking(s.ID, "sessions", "")), quantity.From("crew", quantity.Setting(s.ID, "crew")))
	}
	if batches := s.batches(); l.BatchH > 0 && batches > 0 {
		s.Hours += batches * l.BatchH
		formula += " + batches·batch"
		terms["batches"], terms["batch"] = batches, l.BatchH
		links = append(links, labour("batch", "batch_h", 1), s.batchesFrom())
	}
	s.note("hours", "", s.Hours, "h", formula, terms, "NAVFAC P-405, availability and efficiency (planning L10 [B], L12 [A]); the rest is counting", links...)
}

// note adds a working of the step.
func (s *StepEstimate) note(name, of string, value float64, unit, formula string, terms map[string]float64, source string, links ...quantity.Link) {
	s.Working = append(s.Working, quantity.Working{Quantity: name, Of: of, Value: value, Unit: unit, Formula: formula, Terms: terms, Links: links, Source: source})
}

func (s *StepEstimate) batches() float64 {
	batches := 0
	for _, m := range s.Mixing {
		batches += m.Batches
	}
	return float64(batches)
}

// batchesFrom links the batches of a step to those of its paints, through their
// sum.
func (s *StepEstimate) batchesFrom() quantity.Link {
	s.sum("all_batches", "", "the batches", func(w *quantity.Working) bool { return w.Quantity == "batches" })
	return quantity.From("batches", quantity.StepWorking(s.ID, "all_batches", ""))
}

// partHours parts the hours of a step among the roles of its crew: masking, where
// the step does any beside its own work, then the helpers' share of the rest.
func (r *run) partHours(b *StepBase, s *StepEstimate) {
	role, mask, helpers := roleOf(b), 0.0, 0.0
	if at := s.workingOr("hours_at_work", s.Hours); role != "mask" && at > 0 {
		mask = s.Hours * s.workingOr("masking_hours", 0) / at
	}
	if role != "helper" {
		helpers = (s.Hours - mask) * float64(b.Helpers) / float64(b.Crew)
	}
	s.HoursByRole = []RoleHours{{Role: role, Labour: b.Labour, Hours: s.Hours - mask - helpers}}
	if mask == 0 && helpers == 0 {
		return
	}
	const source = "identity: the parts of the hours"
	hours := quantity.From("hours", quantity.StepWorking(s.ID, "hours", ""))
	terms, links, left := map[string]float64{"hours": s.Hours}, []quantity.Link{hours}, "hours"
	part := func(name string, value float64) {
		s.HoursByRole = append(s.HoursByRole, RoleHours{Role: name, Labour: b.Labour, Hours: value})
		terms[name] = value
		links = append(links, quantity.From(name, quantity.StepWorking(s.ID, "role_hours", name)))
		left += " − " + name
	}
	if mask > 0 {
		part("mask", mask)
		atWork := "hours"
		if s.has("hours_at_work") {
			atWork = "hours_at_work"
		}
		s.note("role_hours", "mask", mask, "h", "hours·masking_hours/at_work", map[string]float64{"hours": s.Hours, "masking_hours": s.workingOr("masking_hours", 0), "at_work": s.workingOr(atWork, 0)}, source,
			hours, quantity.From("masking_hours", quantity.StepWorking(s.ID, "masking_hours", "")), quantity.From("at_work", quantity.StepWorking(s.ID, atWork, "")))
	}
	if helpers > 0 {
		others := map[string]float64{"hours": s.Hours, "mask": mask, "helpers": float64(b.Helpers), "crew": float64(b.Crew)}
		from := []quantity.Link{hours, quantity.From("helpers", quantity.Setting(s.ID, "helpers")), quantity.From("crew", quantity.Setting(s.ID, "crew"))}
		if mask > 0 {
			from = append(from, quantity.From("mask", quantity.StepWorking(s.ID, "role_hours", "mask")))
		}
		part("helper", helpers)
		s.note("role_hours", "helper", helpers, "h", "(hours − mask)·helpers/crew", others, source, from...)
	}
	s.note("role_hours", role, s.HoursByRole[0].Hours, "h", left, terms, source, links...)
}

// workingOr is the value of a working for the whole step, or otherwise where it has
// none.
func (s *StepEstimate) workingOr(name string, otherwise float64) float64 {
	for i := range s.Working {
		if w := &s.Working[i]; w.Quantity == name && w.Of == "" {
			return w.Value
		}
	}
	return otherwise
}

// addHours adds the hours of a step to the totals by role and kind of labour.
func (t *Totals) addHours(roles []RoleHours) {
	for _, h := range roles {
		k := slices.IndexFunc(t.HoursByRole, func(known RoleHours) bool { return known.Role == h.Role && known.Labour == h.Labour })
		if k < 0 {
			t.HoursByRole = append(t.HoursByRole, h)
			continue
		}
		t.HoursByRole[k].Hours += h.Hours
		t.HoursByRole[k].Cost = t.HoursByRole[k].Cost.Add(h.Cost)
	}
}

// roleOf is what the crew of a step does.
func roleOf(b *StepBase) string {
	switch {
	case b.Role != "":
		return b.Role
	case b.Operation == "blast" || b.Operation == "mask":
		return b.Operation
	case b.Operation == "coat" || b.Operation == "mark":
		return "spray"
	}
	return "prepare"
}

// sessionsFit warns of a step that takes more sessions than there are working
// days before the next one starts.
func (r *run) sessionsFit() {
	for i, step := range r.job.Steps {
		from, dated := startDay(step.base())
		if !dated || r.estimate.Steps[i].Sessions == 0 {
			continue
		}
		for _, next := range r.job.Steps[i+1:] {
			to, also := startDay(next.base())
			if !also || to <= from {
				continue
			}
			if days := r.days.Between(from, to-1); days < r.estimate.Steps[i].Sessions {
				r.warn("%s takes %s and there are %s before %s starts", step.base().ID, plural(r.estimate.Steps[i].Sessions, "session"), plural(days, "working day"), next.base().ID)
			}
			break
		}
	}
}
