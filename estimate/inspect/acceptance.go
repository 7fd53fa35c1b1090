package inspect

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// acceptance is what a film rule asks of single readings.
type acceptance struct {
	least  float64 // share of the specified film that no reading may fall below; 0 where there is none
	below  float64 // share of the readings that may lie below the specified film
	fewer  bool    // below itself is too many
	source string
}

// acceptanceOf returns what a rule asks. Source: ISO 19840, fewer than 20 % of the
// readings between 0.8 of the nominal film and the nominal film (reference
// coating A1); IMO MSC.215(82), at least 90 % at the nominal film and none below
// 0.9 of it (A4).
func acceptanceOf(rule string) (acceptance, error) {
	switch rule {
	case "", "mean":
		return acceptance{}, nil
	case "min_80_20":
		return acceptance{least: 0.8, below: 0.2, fewer: true, source: "ISO 19840: none below 0.8, fewer than 20 % below the nominal film"}, nil
	case "min_90_10":
		return acceptance{least: 0.9, below: 0.1, source: "IMO MSC.215(82): none below 0.9, at most 10 % below the nominal film"}, nil
	}
	return acceptance{}, fmt.Errorf("film_rule %q is not one of mean, min_80_20, min_90_10", rule)
}

// mostOverNominal is the usual bound of any reading over the nominal film.
// Source: ISO 19840 practice, often 3 (reference coating A1).
const mostOverNominal = 3

// accept finds what single readings must be.
func (i Inspection) accept(r *Result) error {
	rule, err := acceptanceOf(i.FilmRule)
	if err != nil || rule.least == 0 {
		return err
	}
	readings := float64(r.Readings)
	below := math.Floor(rule.below*readings + countSlack)
	if rule.fewer {
		below = math.Ceil(rule.below*readings-countSlack) - 1
	}
	r.LeastReadingUm, r.MostBelow, r.MostReadingUm = new(rule.least**i.DryFilmUm), new(int(below)), new(mostOverNominal**i.DryFilmUm)
	r.Working = append(r.Working, quantity.Working{Quantity: "least_reading_um", Value: *r.LeastReadingUm, Unit: "µm", Formula: "share·film",
		Terms: map[string]float64{"share": rule.least, "film": *i.DryFilmUm}, Source: rule.source})
	return nil
}
