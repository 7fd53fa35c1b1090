// Package spread gives a spread to figures that come without one: how far the
// true value may lie from the figure, by what kind of figure it is and where it
// came from. The rules stand in a CSV file, each with its source; most are
// common practice and say so. A job that knows better gives its own range.
package spread

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"filmbuild/estimate/risk"
)

//go:embed spreads.csv
var table string

const columns = "kind,quantity,low_ratio,high_ratio,least,most,source,mark,note"

// Rule is the spread of one kind of figure, as ratios to the figure.
type Rule struct {
	Low, High   float64
	Least, Most float64 // no value goes beyond
	Source      string  // with its mark and what else to know
}

// Rules are the spreads by kind and quantity, as package quantity names nodes.
type Rules map[[2]string]Rule

// Load returns the rules, read once: they are shared and must not be changed. The
// error tells what is wrong with the file.
func Load() (Rules, error) { return loaded() }

var loaded = sync.OnceValues(readAll)

func readAll() (Rules, error) {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != columns {
		return nil, fmt.Errorf("spreads.csv must have the columns %s", columns)
	}
	rules := Rules{}
	for line, row := range rows[1:] {
		rule, err := read(row)
		if err != nil {
			return nil, fmt.Errorf("spreads.csv line %d: %w", line+2, err)
		}
		key := [2]string{row[0], row[1]}
		if _, twice := rules[key]; twice {
			return nil, fmt.Errorf("spreads.csv line %d: %s %s stands twice", line+2, row[0], row[1])
		}
		rules[key] = rule
	}
	return rules, nil
}

func read(row []string) (Rule, error) {
	if row[6] == "" || row[7] == "" {
		return Rule{}, fmt.Errorf("no source or no mark")
	}
	r := Rule{Source: row[6] + " (" + row[7] + ")"}
	if row[6] == "common practice" && row[7] == "assumption" {
		r.Source = row[6]
	}
	if row[8] != "" {
		r.Source += ": " + row[8]
	}
	for _, c := range []struct {
		text   string
		absent float64
		into   *float64
	}{{row[2], math.NaN(), &r.Low}, {row[3], math.NaN(), &r.High}, {row[4], math.Inf(-1), &r.Least}, {row[5], math.Inf(1), &r.Most}} {
		*c.into = c.absent
		if c.text == "" {
			continue
		}
		x, err := strconv.ParseFloat(c.text, 64)
		if err != nil {
			return Rule{}, fmt.Errorf("%q is no number", c.text)
		}
		*c.into = x
	}
	if !(r.Low > 0 && r.Low <= 1 && r.High >= 1 && r.Least < r.Most) {
		return Rule{}, fmt.Errorf("the ratios must enclose 1, and least lie below most")
	}
	return r, nil
}

// Of returns the spread of a figure by the rule for its kind and quantity. Where
// there is no rule, or the figure is 0, it does not vary, and ok is false.
func (rules Rules) Of(kind, quantity string, value float64) (s risk.Spread, source string, ok bool) {
	r, known := rules[[2]string{kind, quantity}]
	if !known || value <= 0 {
		return risk.Spread{}, "", false
	}
	s = risk.Spread{Low: max(value*r.Low, min(r.Least, value)), Likely: value, High: min(value*r.High, max(r.Most, value)), Distribution: risk.PERT}
	return s, r.Source, s.Varies()
}

// Within returns the spread that a published value has, carried over to the
// figure that is used: low and high keep their ratios to the likely value.
func Within(low, likely, high, value float64) (s risk.Spread, ok bool) {
	if !(low <= likely && likely <= high && low < high && likely > 0 && value > 0) {
		return risk.Spread{}, false
	}
	return risk.Spread{Low: value * low / likely, Likely: value, High: value * high / likely, Distribution: risk.PERT}, true
}

// Around returns the spread of a figure that is known to a number of percent,
// plus or minus.
func Around(value, percent float64) (s risk.Spread, ok bool) {
	if !(percent > 0 && value > 0) {
		return risk.Spread{}, false
	}
	part := min(percent/100, 1)
	return risk.Spread{Low: value * (1 - part), Likely: value, High: value * (1 + part), Distribution: risk.PERT}, true
}
