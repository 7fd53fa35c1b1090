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
	tableSize   = 2 * tableEnd * tablePieces
)

// betaTable turns normal scores into numbers between 0 and 1 that have the beta
// distribution of a PERT spread.
type betaTable [tableSize][4]float64

// newBetaTable builds the table of one shape; its β is 6 − α.
func newBetaTable(alpha float64) *betaTable {
	t := &betaTable{}
	const step = 1.0 / tablePieces
	left, leftSlope := betaAt(alpha, -tableEnd), betaSlope(alpha, -tableEnd)
	for i := range t {
		z := -tableEnd + float64(i+1)*step
		right, rightSlope := betaAt(alpha, z), betaSlope(alpha, z)
		rise, a, b := right-left, leftSlope*step, rightSlope*step
		t[i] = [4]float64{left, a, 3*rise - 2*a - b, a + b - 2*rise}
		left, leftSlope = right, rightSlope
	}
	return t
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

// betaAt is the inverse of the beta distribution at a score, from the nearer
// end.
func betaAt(alpha, z float64) float64 {
	if z > 0 {
		return 1 - mathext.InvRegIncBeta(6-alpha, alpha, lowerTail(-z))
	}
	return mathext.InvRegIncBeta(alpha, 6-alpha, lowerTail(z))
}

// betaSlope is its derivative by the score: the normal density over the beta
// density at the value there.
func betaSlope(alpha, z float64) float64 {
	beta := 6 - alpha
	if z > 0 {
		alpha, beta, z = beta, alpha, -z // mirrored, and the slope is the same
	}
	x := mathext.InvRegIncBeta(alpha, beta, lowerTail(z))
	normal := -z*z/2 - math.Log(2*math.Pi)/2
	density := (alpha-1)*math.Log(x) + (beta-1)*math.Log1p(-x) - mathext.Lbeta(alpha, beta)
	return math.Exp(normal - density)
}
