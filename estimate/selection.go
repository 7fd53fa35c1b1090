package estimate

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/surfaces/quantity"
)

// selection is the surface that a step works on.
type selection struct {
	patches  []patch
	areaM2   float64
	parcels  []parcel           // whose edges follow from their shape
	whole    map[[2]int]bool    // surface and face of the faces that are whole; face −1 for any
	loose    []looseRegion      // whose edge was given
	openings []heldOpening      // that lie in bays, bands and strips
	seams    []heldSeam         // of joints that lie in them
	bare     []string           // regions without an edge length
	spread   []string           // regions with openings or joints somewhere in their faces
	working  []quantity.Working // of the regions that are bays, bands or strips
}

// patch is a share of one face.
type patch struct {
	surface int
	face    int
	share   float64 // of the face's area, in (0, 1]

	measured string // id of the region whose own measured area this is part of
}

// chooser resolves a list of names, noting what is wrong with it.
type chooser struct {
	c     *checker
	at    string
	taken map[[2]int]float64 // surface and face -> share already chosen
	sel   selection
	whole map[int][]string // surface -> faces chosen whole
}

// choose resolves component, component/face and region ids. The second value
// is false when a fault was noted.
func (c *checker) choose(names []string, at string) (selection, bool) {
	ch := chooser{c: c, at: at, taken: map[[2]int]float64{}, whole: map[int][]string{}}
	good := true
	if c.picked > MostChosen {
		return selection{}, false // noted where it went beyond
	}
	if len(names) == 0 {
		c.faults.Add(at, "required", "nothing is chosen; name components, component/face or regions")
		return selection{}, false
	}
	for i, name := range names {
		below := at + "/" + strconv.Itoa(i)
		if k, found := c.regionAt[name]; found {
			good = ch.addRegion(k, below) && good
			continue
		}
		patches, ok := c.patchesOf(name, below)
		good = good && ok && ch.add(patches, name, below)
		for _, p := range patches {
			ch.whole[p.surface] = append(ch.whole[p.surface], c.surfaces[p.surface].faces[p.face].name)
		}
	}
	ch.wholeParcels()
	return ch.sel, good
}

// patchesOf returns the whole faces that component or component/face names.
func (c *checker) patchesOf(name, at string) ([]patch, bool) {
	id, faceName, oneFace := strings.Cut(name, "/")
	k, found := c.componentAt[id]
	if !found {
		c.faults.Addf(at, "unknown_reference", "there is no component or region %q; there is %s", clip(id), c.known())
		return nil, false
	}
	s := &c.surfaces[k]
	if !s.good {
		return nil, false // the component's own faults say why
	}
	if oneFace {
		f := s.faceIndex(faceName)
		if f < 0 {
			c.faults.Addf(at, "unknown_reference", "component %s, a %s, has no face %q; it has %s", id, s.component.Shape.Kind(), clip(faceName), s.faceNames())
			return nil, false
		}
		return []patch{{surface: k, face: f, share: 1}}, true
	}
	all := make([]patch, len(s.faces))
	for f := range s.faces {
		all[f] = patch{surface: k, face: f, share: 1}
	}
	return all, true
}

// known lists the ids a selection may name.
func (c *checker) known() string {
	ids := c.componentIDs()
	for i := range c.job.Regions {
		ids = append(ids, c.job.Regions[i].ID)
	}
	return listOf(ids)
}

// knownComponents lists the ids a join may name.
func (c *checker) knownComponents() string { return listOf(c.componentIDs()) }

func (c *checker) componentIDs() []string {
	ids := make([]string, len(c.job.Components), len(c.job.Components)+len(c.job.Regions))
	for i := range c.job.Components {
		ids[i] = c.job.Components[i].ID
	}
	return ids
}

func listOf(ids []string) string {
	if len(ids) == 0 {
		return "none in the job"
	}
	if len(ids) > 12 {
		return strings.Join(ids[:12], ", ") + fmt.Sprintf(" and %d more", len(ids)-12)
	}
	return strings.Join(ids, ", ")
}

// add takes patches into the selection unless they were taken before.
func (ch *chooser) add(patches []patch, name, at string) bool {
	if ch.c.picked += len(patches); ch.c.picked > MostChosen {
		ch.c.faults.Addf(at, "too_many", "the regions, markings and steps of this job choose more than %d faces in all; use count for parts that are alike, or split the job", MostChosen)
		return false
	}
	for _, p := range patches {
		f := &ch.c.surfaces[p.surface].faces[p.face]
		key := [2]int{p.surface, p.face}
		if ch.taken[key]+p.share > 1+1e-9 {
			ch.c.faults.Addf(at, "overlap", "%q takes in %s/%s, of which %.4g %% is chosen already; name each part of the surface once", clip(name), ch.c.surfaces[p.surface].component.ID, f.name, 100*ch.taken[key])
			return false
		}
		ch.taken[key] += p.share
		ch.sel.patches = append(ch.sel.patches, p)
		ch.sel.areaM2 += f.areaM2 * p.share
	}
	return true
}

// addRegion takes a region in: whole faces, a share of them, or a measured
// area spread over them in proportion.
func (ch *chooser) addRegion(index int, at string) bool {
	r, where := &ch.c.job.Regions[index], "/regions/"+strconv.Itoa(index)
	if ch.c.faults.HasBelow(where) {
		return false // its own faults say why
	}
	var patches []patch
	var total float64
	for i, name := range r.Of {
		if _, nested := ch.c.regionAt[name]; nested {
			ch.c.faults.Addf(where+"/of/"+strconv.Itoa(i), "unknown_reference", "region %s lies on %q, which is a region too; name components or faces", r.ID, clip(name))
			return false
		}
		some, ok := ch.c.patchesOf(name, where+"/of/"+strconv.Itoa(i))
		if !ok {
			return false
		}
		patches = append(patches, some...)
	}
	if r.divides() {
		return ch.addPart(index, patches, at)
	}
	for _, p := range patches {
		total += ch.c.surfaces[p.surface].faces[p.face].areaM2
	}
	share := 1.0
	switch {
	case r.ShareRatio != nil:
		share = *r.ShareRatio
	case r.AreaM2 != nil:
		if *r.AreaM2 > total*(1+1e-9) {
			ch.c.faults.Addf(where+"/area_m2", "outside", "region %s has %.4g m²; what it lies on has only %.4g m²", r.ID, *r.AreaM2, total)
			return false
		}
		share = *r.AreaM2 / total
		for i := range patches {
			patches[i].measured = r.ID
		}
	}
	whole := r.ShareRatio == nil && r.AreaM2 == nil
	for i := range patches {
		patches[i].share = min(share, 1)
	}
	if !ch.add(patches, r.ID, at) {
		return false
	}
	switch {
	case r.EdgeM != nil:
		ch.sel.loose = append(ch.sel.loose, ch.looseOf(index, patches, *r.EdgeM))
	case whole:
		for _, p := range patches {
			ch.whole[p.surface] = append(ch.whole[p.surface], ch.c.surfaces[p.surface].faces[p.face].name)
		}
	default:
		ch.sel.bare = append(ch.sel.bare, r.ID)
	}
	return true
}
