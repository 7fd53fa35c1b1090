package target

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// knob is a number of the job that changes with the size that is tried.
type knob struct {
	at    *float64
	was   float64
	power float64 // 1 for areas and films, ½ for lengths: figures that keep their form
}

// turn sets all knobs for a size, as a ratio to the plan.
func turn(knobs []knob, ratio float64) {
	for _, k := range knobs {
		*k.at = k.was * math.Pow(ratio, k.power)
	}
}

// areaKnobs are the lengths and areas of the components asked for, with their
// openings, joints, gaps, laps and rivets, and of the regions that lie on them
// alone. Markings keep their size.
func areaKnobs(q *Question, job *estimate.Job, faults *fault.List) []knob {
	var knobs []knob
	chosen := map[string]bool{}
	for i := range job.Components {
		c := &job.Components[i]
		if len(q.Components) > 0 && !slices.Contains(q.Components, c.ID) {
			continue
		}
		chosen[c.ID] = true
		if _, mesh := c.Shape.(*surfaces.Mesh); mesh {
			faults.Addf("/job/components/"+strconv.Itoa(i)+"/shape", "not_applicable", "%s is a mesh, whose size is in its file: leave it out of components, or give it as a measured area", c.ID)
			continue
		}
		for _, part := range []any{c.Shape, &c.Openings, &c.Joins, &c.Gaps, &c.Laps, c.Rivets} {
			knobs = gather(reflect.ValueOf(part), "", knobs)
		}
	}
	for i, id := range q.Components {
		if !chosen[id] {
			faults.Addf("/components/"+strconv.Itoa(i), "unknown_reference", "there is no component %q in the job", id)
		}
	}
	if len(chosen) == 0 && len(q.Components) == 0 {
		faults.Add("/job/components", "required", "the job has no components: there is no area to look for")
	}
	for i := range job.Regions {
		r := &job.Regions[i]
		if onlyOn(r.Of, chosen) {
			knobs = gather(reflect.ValueOf(r), "", knobs)
		}
	}
	return knobs
}

func onlyOn(of []string, chosen map[string]bool) bool {
	return !slices.ContainsFunc(of, func(name string) bool {
		id, _, _ := strings.Cut(name, "/")
		return !chosen[id]
	})
}

// gather finds the numbers below a value whose unit is m, mm or m².
func gather(v reflect.Value, unit string, knobs []knob) []knob {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			knobs = gather(v.Elem(), unit, knobs)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			knobs = gather(v.Index(i), unit, knobs)
		}
	case reflect.Struct:
		for _, f := range reflect.VisibleFields(v.Type()) {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if f.Anonymous || !f.IsExported() || name == "" || name == "-" {
				continue
			}
			of := quantity.UnitOf(name)
			if own, ok := f.Tag.Lookup("unit"); ok {
				of = own
			}
			knobs = gather(v.FieldByIndex(f.Index), of, knobs)
		}
	case reflect.Float64:
		if power := map[string]float64{"m": 0.5, "mm": 0.5, "m²": 1}[unit]; power > 0 && v.Float() != 0 && v.CanAddr() {
			at := v.Addr().Interface().(*float64)
			knobs = append(knobs, knob{at: at, was: *at, power: power})
		}
	}
	return knobs
}

// planned is the film of one step.
type planned struct {
	step string
	film *float64
	bare bool // the step gave none: the product's usual film
}

// filmKnobs are the films of the steps asked for. A step that gives none gets
// its product's usual film, from which it changes.
func filmKnobs(q *Question, job *estimate.Job, catalogue *products.Catalogue, faults *fault.List) ([]knob, []planned) {
	var knobs []knob
	var films []planned
	known := map[string]bool{}
	with := catalogue.With(job.Products)
	for i, step := range job.Steps {
		var id, product string
		var plan *estimate.FilmPlan
		switch s := step.(type) {
		case *estimate.Coat:
			id, product, plan = s.ID, s.Product, &s.FilmPlan
		case *estimate.Mark:
			id, plan = s.ID, &s.FilmPlan
		}
		if plan == nil || (len(q.Steps) > 0 && !slices.Contains(q.Steps, id)) {
			continue
		}
		known[id] = true
		one := planned{step: id, film: plan.DryFilmUM}
		if one.film == nil {
			p, _ := with.Product(product)
			paint, ok := p.(*products.Paint)
			if !ok || paint.DryFilmUM == nil {
				faults.Addf("/job/steps/"+strconv.Itoa(i)+"/dry_film_um", "required", "dry_film_um is missing from step %s: give the film that the plan is measured by", id)
				continue
			}
			usual := *paint.DryFilmUM
			one.film, one.bare = &usual, true
			plan.DryFilmUM = &usual
		}
		films = append(films, one)
		knobs = append(knobs, knob{at: one.film, was: *one.film, power: 1})
	}
	for i, id := range q.Steps {
		if !known[id] {
			faults.Addf("/steps/"+strconv.Itoa(i), "unknown_reference", "there is no coat or mark step %q in the job", id)
		}
	}
	if len(known) == 0 && len(q.Steps) == 0 {
		faults.Add("/job/steps", "required", "the job has no coat and no mark step: there is no film to look for")
	}
	return knobs, films
}
