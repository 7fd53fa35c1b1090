package mesh

// The sizes between which the parts of machines lie; outside, the stated unit
// is probably wrong. Common practice.
const (
	smallestM = 0.05
	largestM  = 100
)

// Shares of the area from which a warning is due; below, the effect is far
// within the accuracy. Our own choice.
const (
	noticeable = 0.001
	sheetShare = 0.05
)

// warn lists what is wrong with a mesh that could be measured.
func (m *meter) warn(r Result, metres float64) []Warning {
	var w warnings
	m.warnSize(&w, r, metres)
	m.warnPolygons(&w, r, metres)
	if r.AreaM2 == 0 {
		w.say("no_area", r.Facets, "no facet has any area")
		return w.list
	}
	if m.direction != nil && r.Border.AreaM2 > noticeable*r.AreaM2 {
		w.say("near_border", 0, "%.4g m² (%.1f %%) face within %g° of the border between two parts, so a slightly different axis or angle would count them otherwise", r.Border.AreaM2, 100*r.Border.AreaM2/r.AreaM2, borderDeg)
	}
	if r.Checks == nil {
		m.warnUnchecked(&w, r)
		return w.list
	}
	m.warnChecks(&w, r)
	warnInside(&w, r)
	return w.list
}

func (m *meter) warnSize(w *warnings, r Result, metres float64) {
	switch largest := r.Box.Largest(); {
	case largest < smallestM:
		w.say("very_small", 0, "the largest dimension is %.4g m with the unit %s; is the unit right?", largest, r.Unit)
	case largest > largestM:
		w.say("very_large", 0, "the largest dimension is %.4g m with the unit %s; is the unit right?", largest, r.Unit)
	}
	// A float32 is good to 2⁻²⁴ of itself (IEEE 754).
	if rounding := m.box.farthest() / (1 << 24); r.Format == FormatSTLBinary && rounding > 1e-4*m.box.Largest() {
		w.say("far_from_origin", 0, "the mesh lies so far from the origin of its coordinates that they are rounded to %.2g m; move it to the origin and export it again", rounding*metres)
	}
}

func (m *meter) warnPolygons(w *warnings, r Result, metres float64) {
	if n := r.Polygons.ZeroArea; n > 0 {
		w.say("zero_area_facets", n, "%d of %d facets have no area; they add nothing", n, r.Facets)
	}
	say := func(form int, code, text string) {
		if n := m.forms[form]; n > 0 {
			w.say(code, n, "%d facets (%.4g m²) "+text, n, m.warped[form].value()*metres*metres)
			w.list[len(w.list)-1].First = m.first[form]
		}
	}
	say(formConcave-1, "concave_facets", "have inward corners; their area is Newell's, which is right for flat ones")
	say(formWarped-1, "warped_facets", "have corners that do not lie in one plane, so their surface is not defined; they are measured as triangles from their first corner")
	say(formCrossing-1, "crossing_facets", "have outlines that cross or repeat themselves, so their area cannot be trusted")
}

// warnUnchecked says what is not known about a mesh that was not stored.
func (m *meter) warnUnchecked(w *warnings, r Result) {
	w.say("checks_left_out", r.Facets, "the mesh has more than %d facets, so duplicates, edges, winding, components and material on both sides were not looked for; the area may count some of it twice", m.options.CheckFacets)
	if gap := m.all.gap(); gap > 1e-6 {
		w.say("not_closed", 0, "the facets do not close or do not all face outward (%.2g of the area is open), so the volume means little", gap)
	} else if r.VolumeM3 < 0 {
		warnInsideOut(w)
	}
	if m.direction != nil {
		w.say("direction_unchecked", 0, "the parts by direction rely on all facets facing outward, which was not looked at")
	}
}

func (m *meter) warnChecks(w *warnings, r Result) {
	c := r.Checks
	if c.DuplicateFacets > 0 {
		w.say("duplicate_facets", c.DuplicateFacets, "%d facets are there already; the area counts %.4g m² (%.2f %%) twice", c.DuplicateFacets, c.DuplicateAreaM2, 100*c.DuplicateAreaM2/r.AreaM2)
	}
	if c.BoundaryEdges > 0 {
		w.say("open_edges", c.BoundaryEdges, "%d edges (%.4g m) have a facet on one side only: the mesh has holes or is a sheet, so the volume means little, and whether its other side is painted is for you to say", c.BoundaryEdges, c.BoundaryM)
	}
	if c.NonManifoldEdges > 0 {
		w.say("non_manifold_edges", c.NonManifoldEdges, "%d edges have more than two facets: solids touch there, or walls meet; faces between them may not be paintable", c.NonManifoldEdges)
	}
	if c.WindingConflicts > 0 {
		w.say("winding_conflicts", c.WindingConflicts, "at %d edges the two facets face opposite ways: the volume is wrong there, and so are parts by direction", c.WindingConflicts)
	}
	if c.Closed && r.VolumeM3 < 0 {
		warnInsideOut(w)
	}
}

func warnInsideOut(w *warnings) {
	w.say("inside_out", 0, "the volume is below zero: the facets face inward, so that up and down, or left and right, are exchanged")
}

func warnInside(w *warnings, r Result) {
	in := r.Inside
	if in == nil {
		w.say("inside_left_out", 0, "material on both sides of a face was not looked for; the area may count faces between solids that nobody can paint")
		return
	}
	percent := func(n int) float64 { return 100 * float64(n) / float64(in.Samples) }
	if in.BothSides > 0 {
		w.say("inside_faces", int64(in.BothSides), "about %.1f %% of the area (%.1f to %.1f %% at 95 %% confidence, %d points) has material on both sides and cannot be painted; it is counted: unite the solids or choose some of them", percent(in.BothSides), 100*in.LowRatio, 100*in.HighRatio, in.Samples)
	}
	if float64(in.NeitherSide) > sheetShare*float64(in.Samples) {
		w.say("sheet_faces", int64(in.NeitherSide), "about %.1f %% of the area has no material behind it: an open sheet is counted on one side only", percent(in.NeitherSide))
	}
	if float64(in.Unsure) > sheetShare*float64(in.Samples) {
		w.say("inside_unsure", int64(in.Unsure), "at %.1f %% of the sampled points it could not be told whether there is material on both sides", percent(in.Unsure))
	}
}
