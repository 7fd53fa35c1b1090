package estimate

import (
	"math"
	"slices"

	"filmbuild/surfaces"
)

// border is a line that two parcels share, of all parts together: the face of
// the one and of the other, alike where one line cuts a face in two.
type border struct {
	mine, other string
	lengthM     float64
}

// shared returns the lines along which two parcels of one component meet, as far
// as the geometry knows them.
func (c *checker) shared(p, q parcel) []border {
	switch {
	case p.surface != q.surface || (p.region == q.region && p.region != whole):
		return nil
	case p.region == whole && q.region == whole:
		return c.acrossEdges(p, q, c.surfaces[p.surface].one)
	case q.region == whole:
		one, _ := c.partOf(p.region, p.surface)
		return c.acrossEdges(p, q, one)
	case p.region == whole:
		one, _ := c.partOf(q.region, p.surface)
		return c.acrossEdges(p, q, one)
	}
	return c.sharedParts(p, q)
}

// acrossEdges are the edges of the shape between a face of one parcel and another
// face of the other, as far as they lie in what was measured.
func (c *checker) acrossEdges(p, q parcel, one surfaces.Measurement) []border {
	var found []border
	count := float64(c.surfaces[p.surface].component.Count)
	for _, f := range p.faces {
		for _, g := range q.faces {
			if f == g || slices.Contains(p.faces, g) || slices.Contains(q.faces, f) {
				continue
			}
			if length := lengthOf(one, f, g); length > 0 {
				found = append(found, border{f, g, length * count})
			}
		}
	}
	return found
}

// sharedParts are the borders between two bays, bands or strips of one
// component. Two bays that meet at a station share, within the heights that both
// have, half of what their cuts are longer than the cuts of both together:
//
//	shared = (cuts of one + cuts of the other − cuts of their union) / 2
//
// Source: identity.
func (c *checker) sharedParts(p, q parcel) []border {
	key := [3]int{p.region, q.region, p.surface}
	if known, ok := c.borders[key]; ok {
		return known
	}
	var found []border
	shape := c.surfaces[p.surface].component.Shape
	count := float64(c.surfaces[p.surface].component.Count)
	if one, other, union, ok := meeting(c.job.Regions[p.region], c.job.Regions[q.region]); ok && c.afford(shape, one, other, union) {
		a, errA := surfaces.MeasurePart(shape, one)
		b, errB := surfaces.MeasurePart(shape, other)
		u, errU := surfaces.MeasurePart(shape, union)
		for _, f := range p.faces {
			if errA != nil || errB != nil || errU != nil || !slices.Contains(q.faces, f) {
				continue
			}
			length := (lengthOf(a, f, surfaces.Cut) + lengthOf(b, f, surfaces.Cut) - lengthOf(u, f, surfaces.Cut)) / 2
			if length > 1e-9*lengthOf(a, f, surfaces.Cut) {
				found = append(found, border{f, f, length * count})
			}
		}
	} else if both, ok := common(c.job.Regions[p.region], c.job.Regions[q.region]); ok && c.afford(shape, both) {
		if one, err := surfaces.MeasurePart(shape, both); err == nil {
			found = c.acrossEdges(p, q, one)
		}
	}
	if c.borders == nil {
		c.borders = map[[3]int][]border{}
	}
	c.borders[key] = found
	return found
}

// afford counts the work of measuring parts; beyond the most there is, borders
// are not looked for any more and count for both sides.
func (c *checker) afford(shape surfaces.Shape, parts ...surfaces.Part) bool {
	for _, p := range parts {
		c.effort += p.Effort(shape)
	}
	return c.effort <= MostEffort
}

// span is an interval of stations or heights.
type span struct{ from, to float64 }

// spans are the bounds of a region on a shape.
func spans(r Region) (stations, heights span) {
	stations = span{math.Inf(-1), math.Inf(1)}
	heights = stations
	for _, b := range []struct {
		given *float64
		bound *float64
	}{{r.FromM, &stations.from}, {r.ToM, &stations.to}, {r.FromZM, &heights.from}, {r.ToZM, &heights.to}} {
		if b.given != nil {
			*b.bound = *b.given
		}
	}
	return stations, heights
}

func (s span) overlap(o span) span { return span{max(s.from, o.from), min(s.to, o.to)} }

func (s span) hull(o span) span { return span{min(s.from, o.from), max(s.to, o.to)} }

func (s span) real() bool { return s.to > s.from && !near(s.from, s.to) }

// touches says whether one span ends where the other starts.
func (s span) touches(o span) bool {
	return near(s.to, o.from) || near(o.to, s.from)
}

// near says whether two bounds are one but for rounding.
func near(a, b float64) bool {
	return !math.IsInf(a, 0) && math.Abs(a-b) <= 1e-9*max(1, math.Abs(a))
}

// meeting returns the parts of two regions that meet along a station or a
// height, cut down to what both have of the other bound, and their union. Strips
// meet where they follow the same line with the same width.
func meeting(p, q Region) (one, other, union surfaces.Part, ok bool) {
	alongP, widthP := strip(p)
	alongQ, widthQ := strip(q)
	if alongP != alongQ || widthP != widthQ {
		return one, other, union, false
	}
	stationsP, heightsP := spans(p)
	stationsQ, heightsQ := spans(q)
	stations, heights := stationsP.overlap(stationsQ), heightsP.overlap(heightsQ)
	switch {
	case stationsP.touches(stationsQ) && heights.real():
		one, other, union = part(stationsP, heights), part(stationsQ, heights), part(stationsP.hull(stationsQ), heights)
	case heightsP.touches(heightsQ) && stations.real():
		one, other, union = part(stations, heightsP), part(stations, heightsQ), part(stations, heightsP.hull(heightsQ))
	default:
		return one, other, union, false
	}
	for _, p := range []*surfaces.Part{&one, &other, &union} {
		p.Along, p.WidthM = alongP, widthP
	}
	return one, other, union, true
}

// common returns the part that two bays or bands have in common: on different
// faces they meet along the edges of the shape within it.
func common(p, q Region) (surfaces.Part, bool) {
	if p.Strip != nil || q.Strip != nil {
		return surfaces.Part{}, false
	}
	stationsP, heightsP := spans(p)
	stationsQ, heightsQ := spans(q)
	stations, heights := stationsP.overlap(stationsQ), heightsP.overlap(heightsQ)
	return part(stations, heights), stations.real() && heights.real()
}

func strip(r Region) (along string, widthM float64) {
	if r.Strip == nil {
		return "", 0
	}
	return r.Strip.Along, r.Strip.WidthM
}

// part is what lies between bounds; an infinite one is the end of the shape.
func part(stations, heights span) surfaces.Part {
	bound := func(value float64) *float64 {
		if math.IsInf(value, 0) {
			return nil
		}
		return &value
	}
	return surfaces.Part{FromM: bound(stations.from), ToM: bound(stations.to), FromZM: bound(heights.from), ToZM: bound(heights.to)}
}
