package estimate

import "filmbuild/products"

// hazards are what a product of a step can do to people. A product of the job's
// own that says nothing has those of the catalogue's product of its id; a new
// one is taken for what its kind usually is: unknown counts as present, as it
// does with old paint.
func (r *run) hazards(s *StepEstimate, p products.Product) []string {
	base := p.Base()
	if base.Hazards != nil || !r.ownProduct(base.ID) {
		return base.Hazards
	}
	if known, found := r.book.Product(base.ID); found {
		r.assumed.add(s.ID, "hazards of "+base.ID+", which the job does not give: those of the catalogue's product of that id", 0, "", "assumption: write what its safety data sheet says under hazards")
		return known.Base().Hazards
	}
	likely := usualHazards(p)
	if len(likely) > 0 {
		s.warnf("%s gives no hazards: it is treated as %s until its safety data sheet is read; write what that says under hazards", base.ID, listOf(likely))
	}
	return likely
}

// usualHazards is what a product of a kind is taken for while nothing is known
// of it (common practice: two-part paints are epoxies and polyurethanes).
func usualHazards(p products.Product) []string {
	switch of := p.(type) {
	case *products.Paint:
		if of.Mix != nil {
			return []string{"solvent", "isocyanate", "sensitiser"}
		}
		return []string{"solvent"}
	case *products.Thinner:
		return []string{"solvent"}
	case *products.Liquid:
		if of.Use == "stripper" {
			return []string{"solvent", "acid"}
		}
	case *products.Media, *products.Disc:
		return []string{"dust"}
	}
	return nil
}

// replaced warns of own products that stand for one of the catalogue and say
// less: what they do not give is not taken from it.
func (r *run) replaced() {
	for _, own := range r.job.Products {
		paint, isPaint := own.(*products.Paint)
		if !isPaint || paint == nil {
			continue
		}
		known, found := r.book.Product(paint.ID)
		if book, same := known.(*products.Paint); found && same && (paint.Mix == nil && book.Mix != nil || paint.PotLifeH == nil && book.PotLifeH != nil) {
			r.warn("%s of the job stands for the whole of the catalogue's: its mix, pot life, recoat times and weather limits are not known unless the job gives them; look at the data sheet", paint.ID)
		}
	}
}
