package estimate

import (
	"math"

	"filmbuild/surfaces"
)

// Spot is where on a component an opening or a joint lies, as far as that is
// known: in a region, or between stations and heights. A bay, band or strip
// then loses just what lies in it; without a spot it loses its share.
type Spot struct {
	Region string   `json:"region,omitempty" doc:"region (a bay, a band or a strip of the component) in which all of it lies; it lies in no other one then, unless from_m and the like say so"`
	FromM  *float64 `json:"from_m,omitempty" limit:"[-500,500]" doc:"station at which it begins, as for regions"`
	ToM    *float64 `json:"to_m,omitempty" limit:"[-500,500]" doc:"station at which it ends"`
	FromZM *float64 `json:"from_z_m,omitempty" limit:"[-500,500]" doc:"height at which it begins, as for regions"`
	ToZM   *float64 `json:"to_z_m,omitempty" limit:"[-500,500]" doc:"height at which it ends"`
}

func (s *Spot) known() bool { return s.Region != "" || s.stations() || s.heights() }

func (s *Spot) stations() bool { return s.FromM != nil || s.ToM != nil }

func (s *Spot) heights() bool { return s.FromZM != nil || s.ToZM != nil }

func (s *Spot) part() surfaces.Part {
	return surfaces.Part{FromM: s.FromM, ToM: s.ToM, FromZM: s.FromZM, ToZM: s.ToZM}
}

// spotted is something taken off a face whose place may be known, of all parts.
type spotted struct {
	spot   *Spot
	areaM2 float64
	edgeM  float64
	seam   int // of a joint, in the face's seams; -1 for an opening

	opening int // of the component's openings
}

// checkSpot notes a place that the component does not have.
func (c *checker) checkSpot(spot *Spot, on *surface, at string) {
	if spot.stations() || spot.heights() {
		surfaces.PartWindow(on.component.Shape, spot.part(), c.faults.At(at))
	}
	if spot.Region == "" {
		return
	}
	k, found := c.regionAt[spot.Region]
	switch {
	case !found:
		c.faults.Addf(at+"/region", "unknown_reference", "there is no region %q; leave it out, or name a region of %s", clip(spot.Region), on.component.ID)
	case !c.job.Regions[k].divides():
		c.faults.Addf(at+"/region", "not_applicable", "region %s is no bay, band or strip: it has a share of what it lies on, wherever that is; leave region out", spot.Region)
	case !c.job.Regions[k].liesOn(on.component.ID):
		c.faults.Addf(at+"/region", "inconsistent", "region %s does not lie on %s; name one that does", spot.Region, on.component.ID)
	}
}

// within is the portion of something that lies in a region of the same shape;
// the second value is false where that is not known.
func (s *Spot) within(r *Region, shape surfaces.Shape) (portion float64, known bool) {
	quiet := func(string, string, string) {} // both were checked
	part := surfaces.Part{FromM: r.FromM, ToM: r.ToM, FromZM: r.FromZM, ToZM: r.ToZM}
	switch {
	case s.Region == r.ID:
		return 1, true
	case s.Region != "" && (r.Strip != nil || !s.stations() && !s.heights()):
		return 0, true
	case r.Strip != nil:
		return 0, false
	}
	portion = 1
	mine, its := surfaces.PartWindow(shape, s.part(), quiet), surfaces.PartWindow(shape, part, quiet)
	if r.FromM != nil || r.ToM != nil {
		portion, known = portion*overlap(mine.From, mine.To, its.From, its.To), s.stations()
		if !known {
			return 0, false
		}
	}
	if r.FromZM != nil || r.ToZM != nil {
		if !s.heights() {
			return 0, false
		}
		low, high := heightsOf(shape)
		portion *= overlap(max(mine.Low, low), min(mine.High, high), its.Low, its.High)
	}
	return portion, true
}

// heightsOf are the bounds that stand for absent ones.
func heightsOf(shape surfaces.Shape) (low, high float64) {
	if d, ok := shape.(surfaces.Divisible); ok {
		return d.Extent().Low, d.Extent().High
	}
	return math.Inf(-1), math.Inf(1)
}

// overlap is the share of the stretch from a to b that lies from c to d.
func overlap(a, b, c, d float64) float64 { return max(0, min(b, d)-max(a, c)) / (b - a) }
