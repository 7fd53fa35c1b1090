package estimate

import (
	"slices"

	"filmbuild/surfaces"
)

// parcel is what a selection takes of one component with a boundary that follows
// from the shape: faces that are whole, or a region that is a bay, a band or a
// strip of them.
type parcel struct {
	surface int
	region  int // index of the region; whole for faces
	faces   []string
}

// whole stands for the region of faces that are taken whole.
const whole = -1

// anyFace stands for some face of a surface.
const anyFace = -1

// looseRegion is a region whose edge was given: where it lies on its faces is
// not known.
type looseRegion struct {
	region int
	edgeM  float64
	restM2 float64 // what is left of the faces it lies on
	on     [][2]int
}

// heldOpening is as much of an opening as lies in a bay, a band or a strip.
type heldOpening struct {
	surface, face int
	of            spotted
}

// heldSeam is as much of a joint's line as lies in a bay, a band or a strip.
type heldSeam struct {
	surface, face, region int
	seam                  seam
}

// wholeParcels gathers the faces that are chosen whole, one parcel for each
// component, in the order of the components so that sums are the same each time.
func (ch *chooser) wholeParcels() {
	ch.sel.whole = make(map[[2]int]bool, len(ch.sel.patches))
	for _, p := range ch.sel.patches {
		if p.share == 1 {
			ch.sel.whole[[2]int{p.surface, p.face}] = true
		}
	}
	for k := range ch.c.surfaces {
		if faces := ch.whole[k]; len(faces) > 0 {
			ch.sel.whole[[2]int{k, anyFace}] = true
			ch.sel.parcels = append(ch.sel.parcels, parcel{surface: k, region: whole, faces: faces})
		}
	}
}

func (ch *chooser) looseOf(index int, patches []patch, edgeM float64) looseRegion {
	l := looseRegion{region: index, edgeM: edgeM}
	for _, p := range patches {
		l.restM2 += ch.c.surfaces[p.surface].faces[p.face].areaM2 * (1 - p.share)
		l.on = append(l.on, [2]int{p.surface, p.face})
	}
	return l
}

// line is a stretch of the boundary of a parcel, of all parts together: face is
// the parcel's own, beyond what it meets there, a face, surfaces.Cut or
// surfaces.Open.
type line struct {
	face, beyond string
	lengthM      float64
}

// lines are the boundary of a parcel.
func (c *checker) lines(p parcel) []line {
	one, count := c.surfaces[p.surface].one, float64(c.surfaces[p.surface].component.Count)
	if p.region != whole {
		one, _ = c.partOf(p.region, p.surface)
	}
	var list []line
	for _, e := range one.Edges {
		a, b := slices.Contains(p.faces, e.Between[0]), slices.Contains(p.faces, e.Between[1])
		switch {
		case a && !b:
			list = append(list, line{e.Between[0], e.Between[1], e.LengthM * count})
		case b && !a:
			list = append(list, line{e.Between[1], e.Between[0], e.LengthM * count})
		}
	}
	return list
}

// take shortens the line between a face and what is beyond it.
func take(lines []line, face, beyond string, lengthM float64) {
	for i := range lines {
		if lines[i].face == face && lines[i].beyond == beyond {
			lines[i].lengthM = max(0, lines[i].lengthM-lengthM)
			return
		}
	}
}

// lengthOf is the length of the line between a face and what is beyond it.
func lengthOf(one surfaces.Measurement, face, beyond string) float64 {
	for _, e := range one.Edges {
		if e.Between == [2]string{face, beyond} || e.Between == [2]string{beyond, face} {
			return e.LengthM
		}
	}
	return 0
}
