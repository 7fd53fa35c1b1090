package estimate

import (
	"fmt"
	"slices"
	"strings"

	"filmbuild/estimate/class"
)

// Class is how mature the estimate is, by the published classes of cost
// estimates.
type Class struct {
	Class             int        `json:"class"` // 5, the roughest, to 1
	Name              string     `json:"name"`
	LowPercent        [2]float64 `json:"low_percent"`  // between which the low end of the expected range lies, of the total
	HighPercent       [2]float64 `json:"high_percent"` // likewise the high end
	DefinitionPercent float64    `json:"definition_percent"`
	AreasRatio        float64    `json:"areas_known_ratio"`  // how well the areas are known, by area
	RatesRatio        float64    `json:"rates_known_ratio"`  // share of the money whose rates and consumption are tried or the job's own
	PricesRatio       float64    `json:"prices_known_ratio"` // share of the money whose prices are the job's own
	Why               []string   `json:"why"`
	Up                []string   `json:"up"` // what would move it up, what bears most money first
	Source            string     `json:"source"`
}

// What counts as known. A test patch counts whole; a figure of the job's own that
// was not tried, half; a figure of the book, nothing. An area counts whole up to
// 3 % accuracy and nothing from 25 % on. All assumptions.
const (
	ownFigure   = 0.5
	sureAreaAt  = 3.0
	roughAreaAt = 25.0
)

// weighed is a share of some whole that is known, and what it would take to know
// more.
type weighed struct {
	weight, known float64
	up            string
}

// shareKnown is the known share of all; nothing to know counts as known.
func shareKnown(parts []weighed) float64 {
	whole, known := 0.0, 0.0
	for _, p := range parts {
		whole += p.weight
		known += p.weight * p.known
	}
	if whole == 0 {
		return 1
	}
	return min(known/whole, 1)
}

// classify finds the class of the estimate and what would move it up.
func (r *run) classify() error {
	areas, rates, prices := r.areasKnown(), r.ratesKnown(), r.pricesKnown()
	known := class.Known{Areas: shareKnown(areas), Rates: shareKnown(rates), Prices: shareKnown(prices)}
	if r.estimate.Budget.Total.IsZero() {
		known.Prices = 0 // no price at all is known
	}
	found, definition, err := class.Of(known)
	if err != nil {
		return err
	}
	r.estimate.Class = Class{Class: found.Number, Name: found.Name, LowPercent: [2]float64{found.LowFrom, found.LowTo}, HighPercent: [2]float64{found.HighFrom, found.HighTo},
		DefinitionPercent: definition, AreasRatio: known.Areas, RatesRatio: known.Rates, PricesRatio: known.Prices,
		Why: []string{
			fmt.Sprintf("areas are known to %.0f %%, rates and consumption to %.0f %%, prices to %.0f %%, each by what rests on it", 100*known.Areas, 100*known.Rates, 100*known.Prices),
			"a test patch counts whole, a figure of the job's own half, a figure of the book nothing; the class is that of the mean, and at most one better than that of the weakest (assumption)",
		},
		Up: upwards(known, areas, rates, prices), Source: found.Source}
	return nil
}

// upwards lists what would move the class up: the weakest of the three first,
// and in each what bears most.
func upwards(known class.Known, areas, rates, prices []weighed) []string {
	lists := []struct {
		known float64
		parts []weighed
	}{{known.Prices, prices}, {known.Rates, rates}, {known.Areas, areas}}
	slices.SortStableFunc(lists, func(a, b struct {
		known float64
		parts []weighed
	}) int {
		return sign(a.known - b.known)
	})
	up := []string{}
	for _, list := range lists {
		parts := slices.Clone(list.parts)
		slices.SortStableFunc(parts, func(a, b weighed) int { return sign(b.weight*(1-b.known) - a.weight*(1-a.known)) })
		for i, p := range parts {
			if i == mostAdvice || p.weight*(1-p.known) == 0 || p.up == "" {
				break
			}
			if !slices.Contains(up, p.up) {
				up = append(up, p.up)
			}
		}
	}
	return up
}

// mostAdvice is how many ways up each of the three shares is told.
const mostAdvice = 3

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

func (r *run) areasKnown() []weighed {
	var parts []weighed
	for _, a := range r.estimate.Areas {
		known := (roughAreaAt - a.AccuracyPercent) / (roughAreaAt - sureAreaAt)
		parts = append(parts, weighed{a.AreaM2, min(max(known, 0), 1),
			fmt.Sprintf("measure %s better: its area is known to ±%.0f %%", a.Component, a.AccuracyPercent)})
	}
	return parts
}

// ratesKnown weighs the labour of each step by how its rate was found, and its
// materials by how their consumption was.
func (r *run) ratesKnown() []weighed {
	var parts []weighed
	for i, step := range r.job.Steps {
		s, b, t := &r.estimate.Steps[i], step.base(), r.tested(step.base().ID)
		hours, stuff := 0.0, 0.0
		if b.RateM2H != nil {
			hours = ownFigure
		}
		switch p := step.(type) {
		case *Blast:
			if p.StripRateM2H != nil {
				hours = ownFigure
			}
			if p.MediaFlowKgH != nil && (p.BreakdownPercent != nil || !p.Recovered) {
				stuff = ownFigure
			}
		case *Mask:
			if p.RateMH != nil {
				hours = ownFigure
			}
		case *Coat:
			if p.TransferEfficiencyPercent != nil {
				stuff = ownFigure
			}
		case *Mark:
			if p.TransferEfficiencyPercent != nil {
				stuff = ownFigure
			}
		case *Sand:
			if p.DiscAreaM2 != nil {
				stuff = ownFigure
			}
		case interface{ liquid() *Liquid }:
			if p.liquid().CoverageLM2 != nil {
				stuff = ownFigure
			}
		}
		if t.hours > 0 {
			hours = 1
		}
		if t.mediaKg > 0 || t.litres > 0 {
			stuff = 1
		}
		parts = append(parts,
			weighed{s.LabourCost.Float64(), hours, fmt.Sprintf("time a test patch for %s: %s of labour rests on a rate that was not tried", s.ID, s.LabourCost)},
			weighed{s.MaterialCost.Float64(), stuff, fmt.Sprintf("measure what a test patch for %s uses: %s of material rests on a figure that was not tried", s.ID, s.MaterialCost)})
	}
	return parts
}

func (l *Liquid) liquid() *Liquid { return l }

// pricesKnown weighs the lines of the budget by whose prices they are. A wage of
// the job counts as known; a lump sum is a figure of the job's own, one that was
// given as a range is known as far as the range is narrow.
func (r *run) pricesKnown() []weighed {
	var parts []weighed
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		known := 0.0
		if r.ownProduct(line.Product) && line.Priced {
			known = 1
		}
		parts = append(parts, weighed{line.Cost.Float64(), known, fmt.Sprintf("get a quotation for %s: %s rests on a price of the catalogue", line.Product, line.Cost)})
	}
	for i := range r.estimate.Steps {
		parts = append(parts, weighed{r.estimate.Steps[i].LabourCost.Float64(), 1, ""})
	}
	for i := range r.estimate.Items {
		item, known := &r.estimate.Items[i], ownFigure
		if s := r.job.ItemSpread(i); s.Varies() && s.Likely > 0 {
			known = max(0, ownFigure*(1-(s.High-s.Low)/s.Likely))
		}
		if r.job.Items[i].PriceDate != "" {
			known = 1 // a quotation with its date
		}
		parts = append(parts, weighed{item.Amount.Float64(), known, fmt.Sprintf("get a dated quotation for item %s, %s, and give its price_date", item.ID, strings.TrimSpace(item.Amount.String()))})
	}
	return parts
}
