package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/estimate/risk"
)

// Range is how far the figures may lie from the single ones: the outcome of many
// trials, in each of which every uncertain number is drawn anew.
type Range struct {
	Trials       int          `json:"trials"`
	Seed         uint64       `json:"seed"`
	SingleFigure money.Amount `json:"single_figure"`      // the budget's total
	Holds        float64      `json:"single_holds_ratio"` // share of the trials in which the total is no more than that
	Total        MoneyRange   `json:"total"`
	CashNeeded   MoneyRange   `json:"cash_needed"`
	Hours        NumberRange  `json:"hours"`
	Steps        []StepRange  `json:"steps"`
	Order        []NeedRange  `json:"order"`
	Drivers      []Driver     `json:"drivers"` // what makes the total uncertain, the most first
	Histogram    []risk.Bin   `json:"histogram"`
	SCurve       []risk.Point `json:"s_curve"`
	Inputs       []DrawnInput `json:"inputs"` // every number that was drawn
	Method       []string     `json:"method"` // how to read all this
}

// MoneyRange is an amount by how likely it is to be enough: p80 is not passed in
// 80 % of the trials.
type MoneyRange struct {
	P10               money.Amount `json:"p10"`
	P50               money.Amount `json:"p50"`
	P80               money.Amount `json:"p80"`
	P90               money.Amount `json:"p90"`
	Mean              money.Amount `json:"mean"`
	StandardDeviation money.Amount `json:"standard_deviation"`
}

// NumberRange is a quantity by how likely it is to be enough.
type NumberRange struct {
	P10               float64 `json:"p10"`
	P50               float64 `json:"p50"`
	P80               float64 `json:"p80"`
	P90               float64 `json:"p90"`
	Mean              float64 `json:"mean"`
	StandardDeviation float64 `json:"standard_deviation"`
}

// StepRange is the range of one step.
type StepRange struct {
	Step  string      `json:"step"`
	Cost  MoneyRange  `json:"cost"`
	Hours NumberRange `json:"hours"`
}

// NeedRange is the range of the need of one line of the order.
type NeedRange struct {
	Product string      `json:"product"`
	Unit    string      `json:"unit"`
	Needed  NumberRange `json:"needed"`
}

// Driver is one source of uncertainty with its part in that of the total.
type Driver struct {
	Input       string  `json:"input"` // its key, as in inputs
	Name        string  `json:"name"`  // in words
	Share       float64 `json:"share_ratio"`
	Correlation float64 `json:"rank_correlation"` // above 0: the total rises with it
}

// DrawnInput is a number that is drawn in each trial.
type DrawnInput struct {
	Input string `json:"input"` // its key; two jobs that share it share its draws
	Name  string `json:"name"`
	Group string `json:"group,omitempty"` // inputs of one group are drawn together
	Unit  string `json:"unit,omitempty"`
	risk.Spread
	Source string `json:"source"` // where the spread comes from
}
