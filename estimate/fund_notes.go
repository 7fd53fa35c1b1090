package estimate

import "slices"

// fundingNotes tells what the rules behind the form ask, and what the estimate
// does not hold.
func (r *run) fundingNotes(v *FundingView) {
	for _, product := range r.estimate.Budget.Unpriced {
		v.Excluded = append(v.Excluded, FundingExclusion{What: product, Why: "no price is known for it", From: "form"})
	}
	v.Excluded = append(v.Excluded, FundingExclusion{What: "what the steps do not use up and the order does not hold: strainers, cups, tack cloths, gloves, filters",
		Why: "the estimate does not count it; add it under items", From: "form"})
	volunteers := slices.ContainsFunc(r.estimate.Totals.HoursByRole, func(h RoleHours) bool { return h.Labour == "volunteer" && !h.Cost.IsZero() })
	if basis := r.job.Labour.VolunteerBasis; volunteers && basis == "" {
		r.warn("volunteer hours count in kind and nothing says how their value was found: give labour.volunteer_basis and volunteer_source, funders ask for both")
	} else if volunteers && basis == "national_average" && v.Form == "sf-424a" {
		r.warn("volunteer hours are valued by a national average: 2 CFR 200.306 asks for the rate that is paid for similar work, in the organisation or else in its labour market")
	}
	if v.Form != "sf-424a" {
		return
	}
	add := func(note string) { v.Notes = append(v.Notes, note) }
	for _, row := range v.Rows {
		if row.ID == "equipment" && !row.Total.IsZero() {
			add("Special-purpose equipment of " + r.awardRules.EquipmentThreshold.StringFixed(0) + " or more needs prior approval, general-purpose equipment always (2 CFR 200.439).")
		}
	}
	if !v.Match.IsZero() {
		add("A match must be verifiable, necessary and reasonable, allowable, in the approved budget, not used for another award and not paid by the federal government (2 CFR 200.306).")
		add("What is in kind goes on supplemental sheets with quantity, kind and the basis of its value; own unrecovered indirect cost counts only with prior approval (2 CFR 200.306).")
	}
	if v.Indirect.Sign() > 0 {
		add("The same rate of indirect cost is used on all federal awards (2 CFR 200.414).")
	}
	add("The notice of the programme comes before all of this.")
}
