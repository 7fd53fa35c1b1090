package estimate

import (
	"fmt"
	"strings"

	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// thinSkinMM is the thickness below which blasting an aircraft's skin needs
// engineering approval.
//
// Source: FAA AC 43.13-1B ch. 6 p. 6-28, 0.0625 in (read).
const thinSkinMM = 1.5875

// suctionAllowance is what a suction gun may have more than the pressure
// published for a direct one on magnesium.
//
// Source: FAA AC 43.13-1B ch. 6 p. 6-32 (reference blasting B-44, read).
const suctionAllowance = 1.5

// slipOfUnit is how many times above a published pressure a pressure is refused:
// more often a slip of the unit than a plan (common practice).
const slipOfUnit = 2

// lightAlloy says whether a substrate is one whose thin skins warp.
func lightAlloy(substrate string) bool {
	return substrate == "aluminium" || substrate == "clad_aluminium" || substrate == "magnesium"
}

// skinCheck holds work against the published limits of the substrates it is on.
type skinCheck struct {
	r          *run
	s          *StepEstimate
	at         string
	approvedBy string
	work       string             // what is done, in words
	given      map[string]float64 // quantity -> value of the work
	pointers   map[string]string  // quantity -> field that gives it
}

// skinLimits holds a blasting against what is published for each substrate.
func (r *run) skinLimits(p *Blast, s *StepEstimate, media *products.Media, sel selection, at string) {
	check := skinCheck{r: r, s: s, at: at, approvedBy: p.ApprovedBy, work: media.ID,
		given:    map[string]float64{"pressure_kpa": p.PressureKPa},
		pointers: map[string]string{"pressure_kpa": "/pressure_kpa", "dwell_s": "/dwell_s", "total_dwell_s": "/total_dwell_s", "standoff_mm": "/standoff_mm"}}
	for name, value := range map[string]*float64{"dwell_s": p.DwellS, "total_dwell_s": p.TotalDwellS, "standoff_mm": p.StandoffMM, "size_um": media.SizeHighUM} {
		if value != nil {
			check.given[name] = *value
		}
	}
	limits := append(r.catalogue.Limits(media.ID), r.catalogue.LimitsOfAll()...)
	for _, comp := range r.componentsOf(sel) {
		own := false
		for _, l := range limits {
			if l.Quantity == "grit" || (l.Substrate != "" && l.Substrate != comp.Substrate) {
				continue
			}
			own = own || l.Quantity == "skin_mm"
			if p.Feed == string(blast.Suction) && l.Quantity == "pressure_kpa" && comp.Substrate == "magnesium" && l.High != nil {
				l.High = new(*l.High * suctionAllowance)
			}
			check.hold(comp, l)
		}
		if lightAlloy(comp.Substrate) && comp.SkinMM == nil {
			check.say(comp, "skin_mm is not given: below 1.588 mm (0.0625 in) engineering approval is required before blasting (FAA AC 43.13-1B p. 6-28); measure the skin")
		}
		if !own && lightAlloy(comp.Substrate) && comp.SkinMM != nil && *comp.SkinMM < thinSkinMM {
			check.say(comp, fmt.Sprintf("skin of %.4g mm is below 1.588 mm (0.0625 in): engineering approval is required before blasting (FAA AC 43.13-1B p. 6-28)", *comp.SkinMM))
		}
	}
}

// componentsOf lists the components of a selection, each once.
func (r *run) componentsOf(sel selection) []*Component {
	var list []*Component
	seen := map[int]bool{}
	for _, patch := range sel.patches {
		if !seen[patch.surface] {
			seen[patch.surface] = true
			list = append(list, r.surfaces[patch.surface].component)
		}
	}
	return list
}

// oneSubstrate is the substrate of a selection that has one, and "mixed" or ""
// otherwise.
func (r *run) oneSubstrate(sel selection) string {
	list := r.componentsOf(sel)
	for _, comp := range list[1:] {
		if comp.Substrate != list[0].Substrate {
			return "mixed"
		}
	}
	return list[0].Substrate
}

// hold warns of work outside a limit, or refuses it.
func (k *skinCheck) hold(comp *Component, l products.Limit) {
	value, known := k.given[l.Quantity]
	switch l.Quantity {
	case "forbidden":
		k.decide(comp, l, "/on", fmt.Sprintf("%s is not for %s; %s: %s", k.work, named(comp.Substrate), l.Text(), l.Note), l.Action == "refuse")
		return
	case "skin_mm":
		if comp.SkinMM != nil {
			value, known = *comp.SkinMM, true
		}
	}
	if !known || !outside(value, l) {
		return
	}
	pointer := k.pointers[l.Quantity]
	refused := l.Action == "refuse" || (l.Quantity == "pressure_kpa" && l.High != nil && value > slipOfUnit**l.High)
	k.decide(comp, l, pointer, limitSentence(comp, l, value, k.work), refused)
}

func limitSentence(comp *Component, l products.Limit, value float64, work string) string {
	if l.Quantity == "skin_mm" {
		return fmt.Sprintf("skin of %.4g mm is below %.4g mm for %s: engineering approval is required before blasting; %s", value, *l.Low, work, l.Text())
	}
	words := map[string]string{"pressure_kpa": "", "dwell_s": "on one spot: ", "total_dwell_s": "on one spot in all: ", "standoff_mm": "stand-off: ", "size_um": "grain of up to: ", "grit": "grit: "}
	return fmt.Sprintf("%s%s is outside %s for %s on %s; %s%s", words[l.Quantity], strings.TrimSpace(fmt.Sprintf("%.4g %s", value, l.Unit)), limitText(l), work, named(comp.Substrate), l.Text(), noteOf(l))
}

func noteOf(l products.Limit) string {
	if l.Note == "" {
		return ""
	}
	return ": " + l.Note
}

// decide refuses work that is refused and not approved, and warns of the rest.
func (k *skinCheck) decide(comp *Component, l products.Limit, pointer, text string, refused bool) {
	if refused && k.approvedBy == "" {
		code := "out_of_range"
		if l.Quantity == "forbidden" {
			code = "not_applicable"
		}
		k.r.faults.Addf(k.at+pointer, code, "%s: %s; change it, or say in approved_by who in charge of the part approves it", comp.ID, text)
		return
	}
	k.say(comp, text)
}

func (k *skinCheck) say(comp *Component, text string) {
	if k.approvedBy != "" {
		text += " (approved by " + clip(k.approvedBy) + ")"
	}
	k.s.Warnings = append(k.s.Warnings, comp.ID+": "+text)
}

func outside(value float64, l products.Limit) bool {
	return (l.Low != nil && value < *l.Low*(1-1e-9)) || (l.High != nil && value > *l.High*(1+1e-9))
}

func limitText(l products.Limit) string {
	switch {
	case l.Low == nil:
		return strings.TrimSpace(fmt.Sprintf("at most %g %s", *l.High, l.Unit))
	case l.High == nil:
		return strings.TrimSpace(fmt.Sprintf("at least %g %s", *l.Low, l.Unit))
	}
	return quantity.Limits{Low: *l.Low, High: *l.High}.Text(l.Unit)
}

func named(substrate string) string {
	if substrate == "" {
		return "this substrate"
	}
	return substrate
}
