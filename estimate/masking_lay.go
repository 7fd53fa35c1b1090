package estimate

import (
	"fmt"

	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// layTape lists the edges of a step and notes the tape, film and hours they take.
func (r *run) layTape(y laying, s *StepEstimate, edges []edge) {
	taped, covered := sums{}, sums{}
	lengths := byTape{}
	room := map[side]float64{}
	seen := map[string]int{}
	for i := range edges {
		e := &edges[i]
		e.Tapes = 1
		colours := e.Kind == "region" || e.Kind == "marking"
		if y.fine != nil && colours && (y.fineNamed || !e.straight) {
			e.Tapes = 2
			r.assumed.add(y.id, "on the borders of regions and of figures with curved edges: narrow tape ("+y.fine.ID+") at the paint edge, wide tape ("+y.tape.ID+") behind it; straight figures: wide tape alone", 1, "", "TM 1-1500-204-23-9 and FAA-H-8083-31 ch. 8 (MK-1, MK-2, mark H); fine_tape none for one tape only")
		}
		if seen[e.key]++; seen[e.key] > 1 { // two joints of one part, two halves of one opening
			e.key += fmt.Sprintf(" (%d)", seen[e.key])
		}
		r.passes(&y, e)
		along := e.LengthM * float64(e.Passes)
		e.TapeM = along * float64(e.Tapes)
		e.CoverM2 = y.coverOf(e, room) * float64(e.Passes)
		lengths.add(y.tape, e.Kind, along)
		if e.Tapes == 2 {
			lengths.add(y.fine, e.Kind, along)
		}
		taped.add(e.Kind, e.TapeM)
		covered.add(e.Kind, e.CoverM2)
		s.Masking = append(s.Masking, e.MaskedEdge)
	}
	r.noteTapes(&y, s, lengths)
	r.noteCover(&y, s, covered)
}

// coverOf is the film that one pass takes at an edge: over an opening with its
// overlap, beside other edges a margin, as far as there is surface beyond.
//
//	opening = area + edge · overlap, margin = edge · width
//
// Source: overlap USAF TO 1-1-8 para 2.3; otherwise identity.
func (y *laying) coverOf(e *edge, room map[side]float64) float64 {
	switch {
	case e.Kind == "marking":
		return e.areaM2
	case e.covered:
		return e.areaM2 + e.LengthM*coverOverlapM
	case e.Kind == "open_end" || e.Passes == 0:
		return 0
	case !e.known:
		return min(e.LengthM*y.marginM, e.areaM2)
	}
	left, seen := room[e.other]
	if !seen {
		left = e.areaM2
	}
	area := min(e.LengthM*y.marginM, left)
	room[e.other] = left - area
	return area
}

// sums adds numbers up by kind of edge, for the terms of a working.
type sums map[string]float64

func (m sums) add(kind string, value float64) {
	if value > 0 {
		m[kind] += value
	}
}

func (m sums) total(kinds []string) float64 {
	sum := 0.0
	for _, k := range kinds {
		sum += m[k]
	}
	return sum
}

// edgeKinds are the kinds of masked edges, in the order in which they are added.
func edgeKinds() []string {
	return []string{"opening", "face", "open_end", "seam", "region", "marking"}
}

// byTape holds the lengths of each tape.
type byTape struct {
	tapes []*products.Tape
	sums  []sums
}

func (b *byTape) add(t *products.Tape, kind string, length float64) {
	if length == 0 {
		return
	}
	for i := range b.tapes {
		if b.tapes[i].ID == t.ID {
			b.sums[i].add(kind, length)
			return
		}
	}
	b.tapes, b.sums = append(b.tapes, t), append(b.sums, sums{kind: length})
}

// noteTapes gives the workings of the tapes and of the hours they take.
//
//	tape = laid · (1 + waste), hours = laid / rate
func (r *run) noteTapes(y *laying, s *StepEstimate, lengths byTape) {
	if len(lengths.tapes) == 0 {
		return
	}
	laid, all := map[string]float64{}, map[string]float64{}
	var laidLinks, allLinks []quantity.Link
	total := 0.0
	for i, t := range lengths.tapes {
		length := lengths.sums[i].total(edgeKinds())
		tape := length * (1 + y.waste.value)
		s.Working = append(s.Working, quantity.Working{Quantity: "taped_m", Of: t.ID, Value: length, Unit: "m",
			Formula: "sum of the edges, each times its passes", Terms: lengths.sums[i], Source: identity},
			quantity.Working{Quantity: "tape_m", Of: t.ID, Value: tape, Unit: "m", Formula: "T·(1 + w)", Terms: map[string]float64{"T": length, "w": y.waste.value},
				Links: append(y.waste.link("w", 0.01), quantity.From("T", quantity.StepWorking(s.ID, "taped_m", t.ID))), Source: "allowance on length: " + y.waste.source, Uses: t.ID})
		laid[t.ID], all[t.ID] = length, tape
		laidLinks = append(laidLinks, quantity.From(t.ID, quantity.StepWorking(s.ID, "taped_m", t.ID)))
		allLinks = append(allLinks, quantity.From(t.ID, quantity.StepWorking(s.ID, "tape_m", t.ID)))
		total += length
		s.MaskingTapeM += tape
		r.use(s, t, tape)
	}
	s.MaskingHours = total / y.rate.value
	s.Working = append(s.Working,
		quantity.Working{Quantity: "masking_tape_m", Value: s.MaskingTapeM, Unit: "m", Formula: "sum of the tapes, with their waste", Terms: all, Links: allLinks, Source: identity},
		quantity.Working{Quantity: "taped_m", Value: total, Unit: "m", Formula: "sum of the tapes laid", Terms: laid, Links: laidLinks, Source: identity},
		quantity.Working{Quantity: "masking_hours", Value: s.MaskingHours, Unit: "h", Formula: "T/rate", Terms: map[string]float64{"T": total, "rate": y.rate.value},
			Links: append(y.rate.link("rate", 1), quantity.From("T", quantity.StepWorking(s.ID, "taped_m", ""))), Source: y.rate.source})
}

// link says where a number comes from, times a factor; none for a constant.
func (n number) link(term string, times float64) []quantity.Link {
	if n.from == nil {
		return nil
	}
	return []quantity.Link{quantity.Scaled(term, *n.from, times)}
}

// noteCover gives the workings of the film or paper.
func (r *run) noteCover(y *laying, s *StepEstimate, covered sums) {
	area := covered.total(edgeKinds())
	if area == 0 {
		return
	}
	width := y.cover.WidthMM / 1000
	r.use(s, y.cover, area/width)
	s.Working = append(s.Working,
		quantity.Working{Quantity: "cover_m2", Value: area, Unit: "m²", Formula: "sum of what is covered: openings with their overlap, and margins beside the edges",
			Terms: covered, Source: "USAF TO 1-1-8 para 2.3: covers overlap about 1/2 in (MK-4, mark H); margins: see the assumptions"},
		quantity.Working{Quantity: "cover_m", Of: y.cover.ID, Value: area / width, Unit: "m", Formula: "C/b", Terms: map[string]float64{"C": area, "b": width},
			Links: []quantity.Link{quantity.From("C", quantity.StepWorking(s.ID, "cover_m2", ""))}, Source: identity, Uses: y.cover.ID})
}
