package estimate

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// EdgeStrip is a strip along a line of a shape: the leading edge of a wing, the
// outline of a panel.
type EdgeStrip struct {
	Along  string  `json:"along" doc:"the line: leading_edge, trailing_edge, root or tip of a wing; top, bottom, nose or tail of a body; outline or holes of a panel; an end of a round shape; a face of a box; outline of a corrugated sheet"`
	WidthM float64 `json:"width_m" limit:"(0,500]" doc:"its width, on the skin"`
}

// regionPart is what a region that is a bay, a band or a strip is of one
// component.
type regionPart struct {
	one  surfaces.Measurement
	good bool
}

// liesOn says whether a region lies on a component or a face of it.
func (r *Region) liesOn(component string) bool {
	return slices.ContainsFunc(r.Of, func(name string) bool {
		id, _, _ := strings.Cut(name, "/")
		return id == component
	})
}

// divides says whether a region is a bay, a band or a strip.
func (r *Region) divides() bool {
	return r.FromM != nil || r.ToM != nil || r.FromZM != nil || r.ToZM != nil || r.Strip != nil
}

// bounds notes a region that is given in two ways.
func (c *checker) bounds(r *Region, at string) {
	if !r.divides() {
		return
	}
	if r.AreaM2 != nil {
		c.faults.Add(at+"/area_m2", "inconsistent", "the region is a bay, a band or a strip, whose area follows from the shape; leave area_m2 out")
	}
	if r.ShareRatio != nil {
		c.faults.Add(at+"/share_ratio", "inconsistent", "the region is a bay, a band or a strip, whose area follows from the shape; leave share_ratio out")
	}
	if r.Strip != nil && r.Strip.Along == "" {
		c.faults.Add(at+"/strip/along", "required", "along is missing; name the line that the strip follows")
	}
}

// partOf measures a region on one component, once.
func (c *checker) partOf(index, surface int) (surfaces.Measurement, bool) {
	key := [2]int{index, surface}
	if known, ok := c.parts[key]; ok {
		return known.one, known.good
	}
	r := &c.job.Regions[index]
	part := surfaces.Part{FromM: r.FromM, ToM: r.ToM, FromZM: r.FromZM, ToZM: r.ToZM}
	if r.Strip != nil {
		part.Along, part.WidthM = r.Strip.Along, r.Strip.WidthM
	}
	shape := c.surfaces[surface].component.Shape
	if c.effort += part.Effort(shape); c.effort > MostEffort {
		c.faults.Addf("/regions/"+strconv.Itoa(index), "too_many", "the bays, bands and strips of this job are too much work in all; use fewer stations or corners, or split the job")
		return surfaces.Measurement{}, false
	}
	one, err := surfaces.MeasurePart(shape, part)
	var faults surfaces.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			c.faults.Addf("/regions/"+strconv.Itoa(index)+f.Pointer, f.Code, "on %s: %s", c.surfaces[surface].component.ID, f.Detail)
		}
	}
	if c.parts == nil {
		c.parts = map[[2]int]regionPart{}
	}
	c.parts[key] = regionPart{one, err == nil}
	return one, err == nil
}

// addPart takes in a region that is a bay, a band or a strip: of each face the
// share that lies in it, with the lines around it.
func (ch *chooser) addPart(index int, patches []patch, at string) bool {
	r, where := &ch.c.job.Regions[index], "/regions/"+strconv.Itoa(index)
	var taken []patch
	var parcels []parcel
	var working []quantity.Working
	spread := false
	for first := 0; first < len(patches); {
		k, last := patches[first].surface, first
		var names []string
		for last < len(patches) && patches[last].surface == k {
			names = append(names, ch.c.surfaces[k].faces[patches[last].face].name)
			last++
		}
		one, ok := ch.c.partOf(index, k)
		if !ok {
			return false
		}
		s := &ch.c.surfaces[k]
		for _, p := range patches[first:last] {
			f := &s.faces[p.face]
			for _, have := range one.Faces {
				if have.Name != f.name {
					continue
				}
				in := f.losses(r, s.component.Shape, min(1, have.AreaM2/s.one.Faces[p.face].AreaM2))
				if p.share = in.share; p.share < -1e-9 {
					ch.c.faults.Addf(where, "outside", "the openings and joints that lie in region %s take %.4g m² more than it has of %s/%s; look at their areas and places", r.ID, -p.share*f.areaM2, s.component.ID, f.name)
					return false
				}
				if p.share <= 1e-12 {
					continue
				}
				taken = append(taken, p)
				spread = spread || in.spread
				for _, o := range in.openings {
					ch.sel.openings = append(ch.sel.openings, heldOpening{surface: k, face: p.face, of: o})
				}
				for _, s := range in.seams {
					ch.sel.seams = append(ch.sel.seams, heldSeam{surface: k, face: p.face, region: index, seam: s})
				}
			}
		}
		parcels = append(parcels, parcel{surface: k, region: index, faces: names})
		for _, w := range one.Working {
			w.Of = r.ID
			working = append(working, w)
		}
		first = last
	}
	if len(taken) == 0 {
		ch.c.faults.Addf(where+"/of", "outside", "region %s takes in nothing of the faces it lies on; look at its bounds", r.ID)
		return false
	}
	if !ch.add(taken, r.ID, at) {
		return false
	}
	if r.EdgeM != nil {
		ch.sel.loose = append(ch.sel.loose, ch.looseOf(index, taken, *r.EdgeM))
	} else {
		ch.sel.parcels = append(ch.sel.parcels, parcels...)
	}
	ch.sel.working = append(ch.sel.working, working...)
	if spread {
		ch.sel.spread = append(ch.sel.spread, r.ID)
	}
	return true
}

// losses is what a bay, a band or a strip has left of a face, and the edges of
// the openings and joints in it.
type losses struct {
	share    float64   // of what is left of the whole face
	openings []spotted // as much of them as lies in the region
	seams    []seam
	spread   bool // something is off the face, nobody knows where
}

// losses finds what is left of a plain share of a face:
//
//	(share·(A + P) − p) / A
//
// A is what is left of the face, P what is off it at known places, p as much of
// that as lies in the region.
func (f *face) losses(r *Region, shape surfaces.Shape, share float64) losses {
	l := losses{share: share}
	if share == 1 {
		l.seams = f.seams
		return l
	}
	placed, inside := 0.0, 0.0
	for _, o := range f.spotted {
		portion, known := o.spot.within(r, shape)
		if !o.spot.known() || !known {
			l.spread = true
			continue
		}
		placed, inside = placed+o.areaM2, inside+portion*o.areaM2
		switch {
		case portion == 0:
		case o.seam < 0:
			l.openings = append(l.openings, spotted{opening: o.opening, areaM2: portion * o.areaM2, edgeM: portion * o.edgeM})
		default:
			s := f.seams[o.seam]
			l.seams = append(l.seams, seam{part: s.part, edgeM: portion * s.edgeM, rimM: portion * s.rimM})
		}
	}
	if f.areaM2 > 0 {
		l.share = min(1, (share*(f.areaM2+placed)-inside)/f.areaM2)
	}
	return l
}
