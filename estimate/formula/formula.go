package formula

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Kind tells how a formula can be worked out.
type Kind int

// The kinds of formula.
const (
	Expressed Kind = iota // an expression in its terms
	Summed                // the sum of its terms
	Described             // words for a procedure
)

const (
	sumOf = "sum of "
	by    = "by "
)

// Formula is a formula that was read.
type Formula struct {
	Kind       Kind
	Expression *Expression // of an Expressed formula
}

// Read reads the text of a formula. The error says at which character it
// cannot be understood.
func Read(text string) (Formula, error) {
	switch {
	case strings.HasPrefix(text, sumOf):
		return Formula{Kind: Summed}, nil
	case strings.HasPrefix(text, by):
		return Formula{Kind: Described}, nil
	}
	e, err := parse(text)
	if err != nil {
		return Formula{}, err
	}
	return Formula{Kind: Expressed, Expression: e}, nil
}

// Work works a formula out. A Described one gives an error: its value cannot
// be found from its terms.
func (f Formula) Work(terms map[string]float64) (float64, error) {
	switch f.Kind {
	case Summed:
		var sum float64
		for _, name := range slices.Sorted(maps.Keys(terms)) { // in order, so that the sum is the same each time
			sum += terms[name]
		}
		return sum, nil
	case Expressed:
		return f.Expression.Work(terms)
	}
	return 0, fmt.Errorf("a value found by a procedure cannot be worked out from its terms")
}
