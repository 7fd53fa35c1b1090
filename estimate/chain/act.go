package chain

// Work is what a step does to the surface.
type Work string

// The kinds of work; sanding to metal and scuffing are told apart.
const (
	Blast    Work = "blast"
	Strip    Work = "strip"
	Sand     Work = "sand"
	Scuff    Work = "scuff"
	Wash     Work = "wash"
	Protect  Work = "protect"
	Pretreat Work = "pretreat"
	Coat     Work = "coat"
	Mark     Work = "mark" // paints figures on the surface and leaves the rest as it is
)

// Act is one step as a piece of surface sees it.
type Act struct {
	Step      string
	Place     int // among the steps of the job
	Work      Work
	Paints    []Paint // one of a coat, several side by side of a mark
	Corrosive bool    // blasted with media whose residue corrodes

	Begin, End float64  // h of work since the job began, steps one after the other
	Starts     *float64 // h of the calendar at which the step starts, where the job says it
}

// Paint is what matters of a paint for what may lie under it.
type Paint struct {
	ID     string
	Role   string // primer, etch_primer, topcoat or clear; empty where the product does not say
	Colour string
	Gloss  bool
}

// neutral are the colours that hide primer by themselves (common practice).
func neutral() []string {
	return []string{"", "white", "black", "grey", "light-grey", "silver", "clear"}
}

// weak are the colours that hide so poorly that they need white under them
// wherever they lie (common practice: organic pigments are transparent).
func weak() []string { return []string{"yellow", "orange", "red"} }

// Piece is a part of the surface before the first step.
type Piece struct {
	Substrate string
	OldPaint  bool // it is known to be painted
}

// light metals are treated before they are primed.
func (p Piece) light() bool {
	return p.Substrate == "aluminium" || p.Substrate == "clad_aluminium" || p.Substrate == "magnesium"
}

// rusts says whether bare metal of this substrate rusts in the air.
func (p Piece) rusts() bool { return p.Substrate == "steel" || p.Substrate == "cast_iron" }

// Finding is something about one step that should be looked at: a step that is
// missing before it, or, where Check is set, a test to make at its end.
type Finding struct {
	Step   string
	Code   string
	Text   string
	Source string
	Check  bool
}

// Trace is what one piece went through.
type Trace struct {
	Findings []Finding
	Covers   []Cover
}

// Cover is what lay under a gloss topcoat when it was put on.
type Cover struct {
	Step     string
	Old      bool // old paint that was not taken off
	Stripped int  // place of the act that took the old paint off, −1 where none did
	Sanded   int  // place of the last act that sanded the paint, −1 where none did
}
