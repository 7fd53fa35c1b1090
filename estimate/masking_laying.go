package estimate

import (
	"math"

	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// laying is how one step masks: with what, how often, how fast.
type laying struct {
	step      int    // whose borders are decided: of a mask step the one it works for
	id, class string // of the step that lays
	operation string // that the tape is for

	tape, fine *products.Tape // fine is nil for one tape only
	cover      *products.Film
	waste      number // of the length laid, as a fraction
	rate       number // m/h of one person
	marginM    float64
	coats      int
	perLaying  int // coats before the tape has to come off

	forced, twoSided, keep, explicit bool
	fineNamed                        bool   // the step names its narrow tape
	product                          string // of a coat: its paint
}

// number is a value with where it comes from.
type number struct {
	value  float64
	source string
	from   *quantity.Node
}

const (
	identity = "identity"
	noSource = "assumption, no source"

	// tapeWastePercent is thrown away at ends and corners: the lower end of what is
	// usual (common practice; reference markings MK-9: no public figure was found).
	tapeWastePercent = 10

	// sprayMarginM of film is laid beside the edges of what is sprayed, and
	// stripMarginM beside what is stripped (common practice; no published width).
	sprayMarginM = 0.5
	stripMarginM = 0.3

	// coatOnH is how long a coat dries before the next may follow.
	//
	// Source: USAF TO 1-1-8 para 6.12.7, second topcoat after 4 h (read; FN-7).
	coatOnH = 4

	// coverOverlapM is how far film or paper reaches beyond the edge of an opening.
	//
	// Source: USAF TO 1-1-8 para 2.3, covers overlap about 1/2 in (read; MK-4).
	coverOverlapM = 0.0127
)

// usual are the products that an operation is masked with where the step names
// none (common practice).
func usual(operation string) (tape, fine, cover string) {
	switch operation {
	case "blast":
		return "blast-tape-48", "none", "blast-sheet"
	case "strip":
		return "aluminium-tape-50", "none", "masking-film"
	case "mark":
		return "masking-tape-24", "fine-line-tape-6", "masking-film"
	case "coat":
		return "masking-tape-24", "fine-line-tape-12", "masking-film"
	}
	return "masking-tape-24", "none", "masking-film"
}

// laying settles how a step masks its own edges.
func (r *run) laying(m *Masked, b *StepBase, at string) (laying, bool) {
	r.oneOf(orWord(m.EdgeRule, edgeOnce), at, "edge_rule", []string{edgeOnce, edgeTwoSided})
	y := laying{step: r.masks.now, id: b.ID, operation: b.Operation, class: workClass(b.Operation), coats: 1, perLaying: math.MaxInt}
	y.forced, y.twoSided, y.keep = m.Mask != nil && *m.Mask, m.EdgeRule == edgeTwoSided, m.KeepTape
	if !r.materials(&y, &m.MaskMaterials, at) {
		return y, false
	}
	y.rate = r.layingRate(b.ID, m.MaskRateMH, "mask_rate_m_h")
	r.timeOn(&y, m)
	return y, true
}

// layingAhead settles how a mask step masks for the step that follows it.
func (r *run) layingAhead(m *Mask, at string) (laying, bool) {
	y := laying{step: r.follower(r.masks.now), id: m.ID, class: workFilm, operation: "coat", perLaying: math.MaxInt, explicit: true}
	var own Masked
	if next := r.job.Steps[y.step]; y.step != r.masks.now {
		y.operation, y.class = next.base().Operation, workClass(next.base().Operation)
		if masked, ok := next.(interface{ masked() *Masked }); ok {
			own = *masked.masked()
		}
	}
	y.twoSided = own.EdgeRule == edgeTwoSided
	if !r.materials(&y, &m.MaskMaterials, at) {
		return y, false
	}
	y.rate = r.layingRate(m.ID, m.RateMH, "rate_m_h")
	r.timeOn(&y, &own)
	y.coats = 0
	return y, true
}

// materials finds the products, the waste and the width of film.
func (r *run) materials(y *laying, m *MaskMaterials, at string) bool {
	tape, fine, cover := usual(y.operation)
	if m.Tape != "" {
		tape = m.Tape
	} else {
		r.assumed.add(y.id, "tape where the step names none: "+tape, 1, "", "common practice")
	}
	if m.Film != "" {
		cover = m.Film
	}
	switch {
	case m.FineTape != "":
		fine, y.fineNamed = m.FineTape, true
	case m.Tape != "" && y.operation == "mark":
		fine = "none" // whoever names one tape for a figure lays that one
	}
	var tapeOK, fineOK, coverOK bool
	y.tape, tapeOK = product[*products.Tape](r.checker, tape, at, "tape", "tape")
	y.cover, coverOK = product[*products.Film](r.checker, cover, at, "film", "film or paper")
	fineOK = true
	if fine != "none" {
		y.fine, fineOK = product[*products.Tape](r.checker, fine, at, "fine_tape", "tape")
	}
	waste, given := first(m.TapeWastePercent, r.job.Masking.TapeWastePercent)
	y.waste = number{value: waste / 100, source: "the job"}
	switch {
	case m.TapeWastePercent != nil:
		y.waste.from = new(quantity.Setting(y.id, "tape_waste_percent"))
	case given:
		y.waste.from = &quantity.Node{Kind: "job", ID: "masking", Quantity: "tape_waste_percent"}
	default:
		y.waste = number{value: tapeWastePercent / 100.0, source: "10 to 15 % is usual (common practice); no published figure was found"}
		r.assumed.add("", "tape thrown away, of the length laid, beside allowance_percent", tapeWastePercent, "%", y.waste.source)
	}
	r.margin(y, m)
	return tapeOK && fineOK && coverOK
}

// margin is the width of film beside the edges: spray and stripper travel.
func (r *run) margin(y *laying, m *MaskMaterials) {
	width, given := first(m.FilmMarginM, r.job.Masking.FilmMarginM)
	if given {
		y.marginM = width
		return
	}
	painted, ok := r.job.Steps[y.step].(interface{ film() *FilmPlan })
	switch {
	case ok && sprayed(painted.film().Method):
		y.marginM = sprayMarginM
	case y.operation == "strip":
		y.marginM = stripMarginM
	default:
		return
	}
	r.assumed.add(y.id, "film or paper beside the edges, over what is not treated", y.marginM, "m", "common practice; no published width was found: give film_margin_m")
}

func sprayed(method string) bool { return method != "" && method != "brush" && method != "roller" }

// layingRate is what one person lays in an hour.
func (r *run) layingRate(id string, own *float64, field string) number {
	switch {
	case own != nil:
		return number{*own, "the job", new(quantity.Setting(id, field))}
	case r.job.Masking.RateMH != nil:
		return number{*r.job.Masking.RateMH, "the job", &quantity.Node{Kind: "job", ID: "masking", Quantity: "rate_m_h"}}
	}
	book := r.operation("mask").Rate
	r.assumed.add(id, "tape one person lays in an hour, film and paper included", book.Likely, "m/h", noted(book))
	return number{book.Likely, book.Text(), new(valueOf("operation", "mask", "rate"))}
}

func orWord(word, otherwise string) string {
	if word == "" {
		return otherwise
	}
	return word
}
