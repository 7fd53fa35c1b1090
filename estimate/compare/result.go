package compare

import (
	"filmbuild/estimate"
	"filmbuild/estimate/money"
)

// Result is the ways side by side.
type Result struct {
	Name             string    `json:"name"`
	Currency         string    `json:"currency"`
	CatalogueVersion string    `json:"catalogue_version"`
	EngineVersion    string    `json:"engine_version"`
	Trials           int       `json:"trials"`
	Seed             uint64    `json:"seed"`
	Ways             []Way     `json:"ways"` // the base first
	Steps            []StepRow `json:"steps"`
	Method           []string  `json:"method"` // how to read all this
}

// Figures are what one way comes to.
type Figures struct {
	Cost      money.Amount `json:"cost"` // the budget's total: cash and in kind
	Cash      money.Amount `json:"cash"` // cash, contingency, reserve and tax
	InKind    money.Amount `json:"in_kind"`
	P80       money.Amount `json:"p80"` // of the cost
	Hours     float64      `json:"hours"`
	Litres    float64      `json:"litres"`
	Kilograms float64      `json:"kilograms"`
	WasteKg   float64      `json:"waste_kg"`
	VOCKg     float64      `json:"voc_kg"`
}

// Way is one way of doing the job.
type Way struct {
	ID         string         `json:"id"`
	Name       string         `json:"name"`
	Figures    Figures        `json:"figures"`
	Difference *Figures       `json:"difference,omitempty"` // to the base: above zero, more
	Against    *Against       `json:"against_base,omitempty"`
	Cheapest   float64        `json:"cheapest_ratio"` // share of the trials in which no other way costs less
	Range      estimate.Range `json:"range"`
	Class      int            `json:"class"`
	Cautions   []string       `json:"cautions"` // codes; the estimate of the way has their texts
	Warnings   []string       `json:"warnings"`
}

// Against is the difference of the cost to the base, trial by trial.
type Against struct {
	P10     money.Amount `json:"p10"`
	P50     money.Amount `json:"p50"`
	P80     money.Amount `json:"p80"`
	P90     money.Amount `json:"p90"`
	Mean    money.Amount `json:"mean"`
	Cheaper float64      `json:"cheaper_ratio"` // share of the trials in which this way costs less than the base
}

// StepRow is one step in every way that has it.
type StepRow struct {
	Step  string `json:"step"`
	Cells []Cell `json:"cells"` // one to a way, in their order
}

// Cell is a step in one way.
type Cell struct {
	Way        string       `json:"way"`
	Present    bool         `json:"present"` // false: this way has no such step, and all stands at 0
	Operation  string       `json:"operation,omitempty"`
	Figures    Figures      `json:"figures"`
	Difference money.Amount `json:"cost_difference"` // to the base
}
