package risk

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// A beta table spans the scores from −tableEnd to tableEnd, beyond which one
// draw in 10^16 falls, in tablePieces pieces to a unit. The cubic of a piece
// takes value and slope at both ends from the distribution itself; a test holds
// it to 10^-8 of the range.
const (
	tableEnd    = 8.25
	tablePieces = 16
	tableHalf   = tableEnd * tablePieces
	tableSize   = 2 * tableHalf
)

// betaTable turns normal scores into numbers between 0 and 1 that have the beta
// distribution of a PERT spread.
type betaTable [tableSize][4]float64

// knot is the value of the inverse distribution at a score, and its slope there.
type knot struct{ value, slope float64 }

// build fills the table of one shape; its β is 6 − α.
func (t *betaTable) build(alpha float64) {
	below, above := lowerKnots(alpha), lowerKnots(6-alpha)
	at := func(k int) knot { // k pieces from score 0
		if k <= 0 {
			return below[-k]
		}
		return knot{1 - above[k].value, above[k].slope} // the upper half is the lower of the mirrored shape
	}
	const step = 1.0 / tablePieces
	for i := range t {
		left, right := at(i-tableHalf), at(i+1-tableHalf)
		rise, a, b := right.value-left.value, left.slope*step, right.slope*step
		t[i] = [4]float64{left.value, a, 3*rise - 2*a - b, a + b - 2*rise}
	}
}

// at looks a score up; scores beyond the ends take the value at the end.
func (t *betaTable) at(z float64) float64 {
	place := (z + tableEnd) * tablePieces
	i := int(place)
	if !(place >= 0) {
		return t[0][0]
	}
	if i >= tableSize {
		i, place = tableSize-1, tableSize
	}
	p, x := &t[i], place-float64(i)
	return p[0] + x*(p[1]+x*(p[2]+x*p[3]))
}

// lowerKnots are the knots at the scores 0, −1/tablePieces, … down to −tableEnd:
// each is first reached from the one before by value, slope and curvature, and
// then put right by one step of Newton's method on the distribution.
//
//	x′ = φ(z)/f(x)    x″ = −x′·(z + x′·f′(x)/f(x))
//
// Source: identity (F(x(z)) = Φ(z), differentiated).
func lowerKnots(alpha float64) [tableHalf + 1]knot {
	beta := 6 - alpha
	scale := mathext.Lbeta(alpha, beta)
	density := func(x float64) float64 { return math.Exp((alpha-1)*math.Log(x) + (beta-1)*math.Log1p(-x) - scale) }
	normal := func(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }
	var knots [tableHalf + 1]knot
	x := mathext.InvRegIncBeta(alpha, beta, 0.5)
	knots[0] = knot{x, normal(0) / density(x)}
	const step = -1.0 / tablePieces
	for k := 1; k < len(knots); k++ {
		before, z := knots[k-1], float64(k)*step
		bent := -before.slope * (z - step + before.slope*((alpha-1)/before.value-(beta-1)/(1-before.value)))
		guess := before.value + step*before.slope + step*step/2*bent
		if !(guess > before.value/4) {
			guess = before.value / 4 // far in the tail of a steep shape: the value itself is of no account there
		}
		x = guess - (mathext.RegIncBeta(alpha, beta, guess)-lowerTail(z))/density(guess)
		if !(x > 0) {
			x = guess
		}
		knots[k] = knot{x, normal(z) / density(x)}
	}
	return knots
}

// betaAt is the inverse of the beta distribution at a score, from the nearer
// end.
func betaAt(alpha, z float64) float64 {
	if z > 0 {
		return 1 - mathext.InvRegIncBeta(6-alpha, alpha, lowerTail(-z))
	}
	return mathext.InvRegIncBeta(alpha, 6-alpha, lowerTail(z))
}
