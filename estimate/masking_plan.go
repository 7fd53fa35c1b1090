package estimate

// Masked is what steps have that may need masking.
type Masked struct {
	Mask *bool `json:"mask,omitempty" doc:"tape the edges of the selection; true wherever there are edges, and then no edge is left to another step"`
	MaskMaterials
	MaskRateMH *float64 `json:"mask_rate_m_h,omitempty" limit:"[0.01,1000]" doc:"tape one person lays in an hour; the job's or the book's where left out"`
	EdgeRule   string   `json:"edge_rule,omitempty" doc:"once: each border is taped by the later of the two colours, the earlier one running over it (taken unless given); or two_sided: each colour inside its own mask"`
	TapeOnH    *float64 `json:"tape_on_h,omitempty" limit:"(0,10000]" doc:"time that the tape stays on for each coat: until the next one may follow, or the tape may be pulled"`
	TapeAtC    *float64 `json:"tape_at_c,omitempty" limit:"[-20,300]" doc:"highest temperature while the tape is on"`
	KeepTape   bool     `json:"keep_tape,omitempty" doc:"the tape of the step before on the same edges is still on"`
}

// MaskMaterials are what a step is masked with.
type MaskMaterials struct {
	Tape     string `json:"tape,omitempty" doc:"product id of the tape"`
	FineTape string `json:"fine_tape,omitempty" doc:"product id of the narrow tape laid first where two colours meet, the other behind it; none for one tape only"`
	Film     string `json:"film,omitempty" doc:"product id of the film or paper over openings and beside the edges; a mark step cuts a stencil from it instead of taping"`

	TapeWastePercent *float64 `json:"tape_waste_percent,omitempty" limit:"[0,100]" doc:"tape thrown away, of the length laid"`
	FilmMarginM      *float64 `json:"film_margin_m,omitempty" limit:"[0,20]" doc:"width of film or paper beside the edges, over what is not treated"`
}

// MaskingPlan says for the whole job how edges are masked where a step does not.
type MaskingPlan struct {
	Mask             *bool    `json:"mask,omitempty" doc:"false: no step is masked unless it says so, as where the work is in other hands"`
	RateMH           *float64 `json:"rate_m_h,omitempty" limit:"[0.01,1000]" doc:"tape one person lays in an hour, films included"`
	TapeWastePercent *float64 `json:"tape_waste_percent,omitempty" limit:"[0,100]" doc:"tape thrown away, of the length laid"`
	FilmMarginM      *float64 `json:"film_margin_m,omitempty" limit:"[0,20]" doc:"width of film or paper beside the edges, over what is not treated"`
	TapeOnH          *float64 `json:"tape_on_h,omitempty" limit:"(0,10000]" doc:"time that the tape stays on for each coat"`
}

// Rules for the edges that two colours share.
const (
	edgeOnce     = "once"
	edgeTwoSided = "two_sided"
)

// Classes of work: tape laid for one does not serve another.
const (
	workRemoval = "removal" // grit and stripper get at it
	workWet     = "wet"
	workFilm    = "film"
)

func workClass(operation string) string {
	switch operation {
	case "blast", "sand", "strip":
		return workRemoval
	case "wash", "protect", "pretreat":
		return workWet
	case "coat", "mark":
		return workFilm
	}
	return ""
}

// masks says whether a step masks its edges: coats, markings and removal do
// unless told otherwise, wet work on request only.
func (j *Job) masks(step Step) bool {
	m, ok := step.(interface{ masked() *Masked })
	if !ok {
		return false
	}
	switch {
	case m.masked().Mask != nil:
		return *m.masked().Mask
	case j.Masking.Mask != nil:
		return *j.Masking.Mask && workClass(step.base().Operation) != workWet
	}
	return workClass(step.base().Operation) != workWet
}

func (m *Masked) masked() *Masked { return m }

// first returns the first of some numbers that is given, and whether one is.
func first(numbers ...*float64) (float64, bool) {
	for _, n := range numbers {
		if n != nil {
			return *n, true
		}
	}
	return 0, false
}
