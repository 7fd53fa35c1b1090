package risk

import (
	"errors"

	"gonum.org/v1/gonum/mat"
)

// Correlation ties two sources: the keys of inputs without a group, or the names
// of groups. The ratio is the ordinary correlation of the values of the first
// input of each; groups, whose inputs need not be alike, follow these.
type Correlation struct {
	A, B  string
	Ratio float64 // −1 to 1
}

// ErrNotPositiveDefinite says that no numbers can be correlated as asked.
var ErrNotPositiveDefinite = errors.New("the correlations contradict each other (their matrix is not positive definite)")

// ties are the sources that are correlated, and the lower triangle by which
// independent scores become theirs.
type ties struct {
	names  []string
	factor [][]float64
}

// tie factors the matrix of some correlations between the scores of sources with
// these spreads. Pairs that are not named are not correlated; a pair that is named
// again takes the later ratio.
func tie(correlations []Correlation, spreads map[string]Spread) (ties, error) {
	var t ties
	place := map[string]int{}
	for _, c := range correlations {
		for _, name := range []string{c.A, c.B} {
			if _, known := place[name]; !known {
				place[name] = len(t.names)
				t.names = append(t.names, name)
			}
		}
	}
	n := len(t.names)
	if n == 0 {
		return t, nil
	}
	matrix := mat.NewSymDense(n, nil)
	for i := range n {
		matrix.SetSym(i, i, 1)
	}
	for _, c := range correlations {
		if i, j := place[c.A], place[c.B]; i != j {
			matrix.SetSym(i, j, scoreRatio(spreads[c.A], spreads[c.B], c.Ratio))
		}
	}
	var cholesky mat.Cholesky
	if !cholesky.Factorize(matrix) {
		return ties{}, ErrNotPositiveDefinite
	}
	var lower mat.TriDense
	cholesky.LTo(&lower)
	for i := range n {
		row := make([]float64, i+1)
		for j := range row {
			row[j] = lower.At(i, j)
		}
		t.factor = append(t.factor, row)
	}
	return t, nil
}
