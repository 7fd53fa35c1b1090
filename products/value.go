package products

// Value is one published or assumed number of the catalogue with its spread
// and where it comes from. Low, likely and high are equal where the source
// prints one figure.
type Value struct {
	Quantity  string  `json:"quantity"`            // wire name, such as breakdown_percent
	Substrate string  `json:"substrate,omitempty"` // what it holds on; empty for all
	Low       float64 `json:"low"`
	Likely    float64 `json:"likely"`
	High      float64 `json:"high"`
	Unit      string  `json:"unit,omitempty"`
	Provenance
}

// Limit is a published bound for work with an abrasive; of quantity forbidden it
// has no bounds, and the work itself is what is warned of or refused. Bounds turned into SI
// are rounded outwards, so that the value the source prints lies inside.
type Limit struct {
	Quantity  string   `json:"quantity"`            // wire name, such as pressure_kpa
	Substrate string   `json:"substrate,omitempty"` // what it holds on; empty for all
	Low       *float64 `json:"low,omitempty"`       // nil: no lower bound
	High      *float64 `json:"high,omitempty"`      // nil: no upper bound
	Action    string   `json:"action"`              // warn, or refuse unless somebody in charge approves it
	Unit      string   `json:"unit,omitempty"`
	Provenance
}

// Provenance is where a value comes from and how sure that is.
type Provenance struct {
	Source string `json:"source"`         // key in Sources
	Title  string `json:"title"`          // the title of that source
	Page   string `json:"page,omitempty"` // page, table or paragraph
	Ref    string `json:"ref,omitempty"`  // number in this project's list of check values
	Mark   string `json:"mark"`           // confidence, see Marks
	Since  string `json:"since,omitempty"`
	Note   string `json:"note,omitempty"`
}

// Text is the provenance in one line: title, place, number, mark.
func (p Provenance) Text() string {
	text := p.Title
	if p.Page != "" {
		text += ", " + p.Page
	}
	mark := "mark " + p.Mark
	if p.Ref != "" {
		mark = p.Ref + ", " + mark
	}
	return text + " (" + mark + ")"
}

// Source is a document or practice that values come from.
type Source struct {
	Key   string `json:"key"`
	Title string `json:"title"`
	Since string `json:"since,omitempty"` // date or edition, where known
	Note  string `json:"note,omitempty"`
}

// Mark is a degree of confidence.
type Mark struct {
	Mark    string `json:"mark"`
	Meaning string `json:"meaning"`
}
