package estimate

import (
	"slices"
	"strings"

	"filmbuild/products"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// PaintedColour is what one colour of the markings of a step takes.
type PaintedColour struct {
	Colour     string  `json:"colour"`
	Product    string  `json:"product"`
	Layer      int     `json:"layer"` // in the order in which the colours are put down, from 1
	AreaM2     float64 `json:"area_m2"`
	SmallM2    float64 `json:"small_m2"` // of that in parts so small that spray mostly misses them
	Coats      int     `json:"coats"`
	Efficiency float64 `json:"transfer_efficiency_percent"`
	Litres     float64 `json:"litres"` // of paint, unthinned
	ThinnerL   float64 `json:"thinner_l"`
	Hours      float64 `json:"hours"` // person-hours at work, without setting up and masking
}

// over leaves out what already shows: the parts of a figure that have the colour
// of what they lie on, and an under colour like it.
func (fs figures) over(base string) figures {
	if base == "" {
		return fs
	}
	bare := func(c marking.ColourArea) bool { return c.Colour == base }
	for i := range fs {
		one := &fs[i].one
		one.Painted = slices.DeleteFunc(slices.Clone(one.Painted), bare)
		var edges []marking.Edge
		for _, e := range one.Edges {
			for k := range e.Between {
				if e.Between[k] == base {
					e.Between[k] = planar.Base
				}
			}
			if e.Between[0] != e.Between[1] {
				edges = append(edges, e)
			}
		}
		one.Edges = edges
	}
	return fs
}

// colours are those painted, in the order in which they first appear.
func (fs figures) colours() []string {
	var names []string
	for _, f := range fs {
		for _, c := range f.one.Painted {
			if !slices.Contains(names, c.Colour) {
				names = append(names, c.Colour)
			}
		}
	}
	return names
}

// pot is a paint with the colours of the figures that it is used for.
type pot struct {
	paint           *products.Paint
	colours         []string
	layers          []int
	areas, smalls   []float64 // of each colour; smalls of those in small parts
	efficiencies    []float64 // percent, of each colour
	areaM2, smallM2 float64
}

// name is the colour, or the colours that one paint does.
func (p *pot) name() string { return strings.Join(p.colours, " and ") }

// pots finds the paint of every colour and adds up its areas.
func (r *run) pots(p *Mark, fs figures, at string) []pot {
	var pots []pot
	for layer, colour := range fs.colours() {
		paint, found := r.paintOf(p, colour, at)
		if !found {
			continue
		}
		k := slices.IndexFunc(pots, func(known pot) bool { return known.paint.ID == paint.ID })
		if k < 0 {
			k = len(pots)
			pots = append(pots, pot{paint: paint})
		}
		area, small := fs.areaOf(colour)
		pots[k].colours, pots[k].layers = append(pots[k].colours, colour), append(pots[k].layers, layer+1)
		pots[k].areas, pots[k].smalls = append(pots[k].areas, area), append(pots[k].smalls, small)
		pots[k].areaM2, pots[k].smallM2 = pots[k].areaM2+area, pots[k].smallM2+small
	}
	return pots
}

// areaOf is the area of a colour of all figures, and how much of it is in small
// parts.
func (fs figures) areaOf(colour string) (area, small float64) {
	for _, f := range fs {
		for _, c := range f.one.Painted {
			if c.Colour != colour {
				continue
			}
			area += c.AreaM2 * f.count
			if c.AreaM2/float64(max(1, c.Parts)) < smallPartM2 {
				small += c.AreaM2 * f.count
			}
		}
	}
	return area, small
}

// areas are the terms of an area that is the sum of some colours.
func (fs figures) areas(colours []string) (map[string]float64, []quantity.Link) {
	terms := map[string]float64{}
	var links []quantity.Link
	for _, f := range fs {
		for _, c := range f.one.Painted {
			if !slices.Contains(colours, c.Colour) {
				continue
			}
			term := f.id
			if len(colours) > 1 {
				term += " " + c.Colour
			}
			terms[term] = c.AreaM2 * f.count
			links = append(links, quantity.From(term, quantity.Node{Kind: "marking", ID: f.id, Quantity: "area_m2", Of: c.Colour}))
		}
	}
	return terms, links
}

// tellColours lists what each colour takes. Colours of one paint share its
// litres by area over efficiency, and the time at work goes by area.
func (s *StepEstimate) tellColours(p *Mark, pots []pot) {
	atWork := s.Hours - s.MaskingHours - p.SetupH*float64(p.Crew)
	for _, pot := range pots {
		needs := 0.0
		for k := range pot.colours {
			needs += pot.areas[k] / pot.efficiencies[k]
		}
		for k, colour := range pot.colours {
			share := pot.areas[k] / pot.efficiencies[k] / needs
			s.Colours = append(s.Colours, PaintedColour{Colour: colour, Product: pot.paint.ID, Layer: pot.layers[k], AreaM2: pot.areas[k], SmallM2: pot.smalls[k], Coats: p.Coats,
				Efficiency: pot.efficiencies[k], Litres: share * s.valueOf("paint_l", pot.paint.ID), ThinnerL: share * s.valueOf("thinner_l", pot.paint.ID), Hours: atWork * pot.areas[k] / s.AreaM2})
		}
	}
	slices.SortStableFunc(s.Colours, func(a, b PaintedColour) int { return a.Layer - b.Layer })
}

// valueOf returns the value of a working of the step, 0 where there is none.
func (s *StepEstimate) valueOf(name, of string) float64 {
	for i := range s.Working {
		if s.Working[i].Quantity == name && s.Working[i].Of == of {
			return s.Working[i].Value
		}
	}
	return 0
}

// leaveBase says which colours of the figures what they lie on already has.
func (r *run) leaveBase(p *Mark, fs figures) {
	if p.BaseColour != "" {
		r.assumed.add(p.ID, "parts of the figures that are "+p.BaseColour+" as what they lie on: not painted, nor taped against it", 1, "", "the job (base_colour)")
		return
	}
	for _, f := range fs {
		id, name, _ := strings.Cut(r.job.Markings[r.markingIndex(f.id)].On, "/")
		k, found := r.componentAt[id]
		if !found {
			continue
		}
		for i := range r.surfaces[k].faces {
			on, ok := r.catalogue.Product(r.masks.paintOn(side{k, i, whole}))
			paint, isPaint := on.(*products.Paint)
			if (name == "" || r.surfaces[k].faces[i].name == name) && ok && isPaint && slices.Contains(fs.colours(), paint.Colour) {
				r.assumed.add(p.ID, "the "+paint.Colour+" of figures is painted although they lie on "+paint.Colour, 1, "", "choice of the method: give base_colour to leave it")
				return
			}
		}
	}
}
