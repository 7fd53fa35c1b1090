package formula

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestExpressionsAreWorkedOut(t *testing.T) {
	terms := map[string]float64{"A": 118, "n": 2, "t": 30, "VS": 0.55, "TE": 0.6, "A′": 3, "t1": 4, "x_2": 5, "δ": 7}
	for text, want := range map[string]float64{
		"A·n·t/(1000·VS·TE)":          118 * 2 * 30 / (1000 * .55 * .6),
		"2 + 3·4^2^0.5 − 1":           2 + 3*math.Pow(4, math.Pow(2, .5)) - 1,
		"−2^2":                        -4, // as in mathematics; spreadsheets give 4
		"8/2/2":                       2,
		"10 - 3 − 2":                  5,
		"√(9)·√4":                     6,
		"⌈A/100⌉ + ⌊7/2⌋":             5,
		"max(0, n − 5, 1)":            1,
		"min(A, n)":                   2,
		"if(n ≤ 2, 10, 20)":           10,
		"if(n < 2, 10, if(t=30,1,2))": 1,
		"round(2.345, 2)":             2.35, // halves away from zero, though 2.345 is a little less in binary
		"round(−1.005, 2)":            -1.01,
		"π·t1^2":                      16 * math.Pi,
		"A′·x_2·δ":                    105,
		"exp(ln(3))·log10(100)":       6,
		"abs(−3)":                     3,
		"⌈0.1·3·10⌉":                  3, // 3.0000000000000004 is 3
	} {
		f, err := Read(text)
		require.NoError(t, err, text)
		got, err := f.Work(terms)
		require.NoError(t, err, text)
		assert.InDelta(t, want, got, 1e-12*max(1, math.Abs(want)), text)
	}
}

func TestTheOtherKinds(t *testing.T) {
	f, err := Read("sum of the faces, openings off")
	require.NoError(t, err)
	got, err := f.Work(map[string]float64{"wing/upper": 1.5, "a face with spaces": 2})
	require.NoError(t, err)
	assert.Equal(t, 3.5, got)

	f, err = Read("by quadrature along the span")
	require.NoError(t, err)
	_, err = f.Work(nil)
	assert.Error(t, err)
}

func TestWhatIsNotAFormulaIsRefused(t *testing.T) {
	for _, text := range []string{"", "A·", "A B", "(A", "A)", "1.2.3", "min(1)", "round(1)", "if(A, 1, 2)", "A ≤ 3", "area of one", "⌈A", "A % 3"} {
		_, err := Read(text)
		assert.Error(t, err, text)
	}
	f, err := Read("A·B")
	require.NoError(t, err)
	_, err = f.Work(map[string]float64{"A": 1})
	assert.ErrorContains(t, err, "B")
	assert.Equal(t, []string{"A", "B"}, f.Expression.Names(nil))
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{"A·n·t/(1000·VS·TE)", "if(a < b, ⌈x⌉, √y)", "sum of a", "by b", "((((", "−−−x", "1e5", "π^π"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		read, err := Read(text)
		if err == nil && read.Kind == Expressed {
			names := map[string]float64{}
			for _, n := range read.Expression.Names(nil) {
				names[n] = 1
			}
			_, err = read.Work(names)
			assert.NoError(t, err, "every symbol has a value")
		}
	})
}
