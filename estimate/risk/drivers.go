package risk

import (
	"cmp"
	"math"
	"slices"
)

// RankedTrials is the most trials that drivers are ranked over.
const RankedTrials = 4_096

// Scores are ranked by class: classes are 1/128 wide, and all scores of one
// share their middle rank. Against exact ranks that moves a correlation by less
// than one part in a thousand.
const (
	scoreEnd    = 6
	scorePieces = 128
	scoreSize   = 2 * scoreEnd * scorePieces
)

// classes hold the class of every source's score, trial by trial.
type classes [][]uint16

func newClasses(sources, trials int) classes {
	c := make(classes, sources)
	for i := range c {
		c[i] = make([]uint16, min(trials, RankedTrials))
	}
	return c
}

// note keeps the classes of a block whose first trial is given.
func (c classes) note(scores [][]float64, first, n int) {
	for i := range c {
		if first >= len(c[i]) {
			return
		}
		into := c[i][first:min(first+n, len(c[i]))]
		for t := range into {
			into[t] = uint16(min(max((scores[i][t]+scoreEnd)*scorePieces, 0), scoreSize-1))
		}
	}
}

// Driver is how much one source of uncertainty does.
type Driver struct {
	Source      int     // its place in Sampler.Sources
	Correlation float64 // Spearman's, of the source and the output
	Share       float64 // of the variance, all shares adding up to 1
}

// Drivers ranks the sources by what they do to a kept output: the square of
// Spearman's rank correlation, over the sum of all squares. It is over the
// first RankedTrials trials at most. Squares below what chance alone gives
// (four times its mean, 4/(n−1)) count as nothing. Where sources are
// correlated, each is given what it shares with the others. Ranks weigh the
// largest driver a little more than its part of the variance: 0.78 where a sum
// of normal numbers has 0.76.
//
// Source: rank correlation normalised to shares is common practice of
// simulation; Spearman's is a textbook identity.
func (o *Outcome) Drivers(kept int) []Driver {
	if len(o.ranks) == 0 {
		return nil
	}
	n := len(o.ranks[0])
	output := midRanks(o.Kept[kept][:n])
	chance := 4 / float64(n-1)
	drivers := make([]Driver, 0, len(o.ranks))
	sum := 0.0
	for i, column := range o.ranks {
		rho := correlation(classRanks(column), column, output)
		if rho*rho <= chance {
			continue
		}
		drivers = append(drivers, Driver{Source: i, Correlation: rho, Share: rho * rho})
		sum += rho * rho
	}
	for i := range drivers {
		drivers[i].Share /= sum
	}
	slices.SortStableFunc(drivers, func(a, b Driver) int { return cmp.Compare(b.Share, a.Share) })
	return drivers
}

// classRanks is the middle rank of each class, less the mean of all ranks.
func classRanks(column []uint16) []float64 {
	counts := make([]float64, scoreSize)
	for _, c := range column {
		counts[c]++
	}
	before := -float64(len(column)) / 2
	for i, n := range counts {
		counts[i] = before + n/2
		before += n
	}
	return counts
}

// midRanks are the ranks of numbers, less their mean; equal numbers share their
// middle rank.
func midRanks(numbers []float64) []float64 {
	type placed struct {
		number float64
		trial  int
	}
	order := make([]placed, len(numbers))
	for i, x := range numbers {
		order[i] = placed{x, i}
	}
	slices.SortFunc(order, func(a, b placed) int { return cmp.Compare(a.number, b.number) })
	ranks := make([]float64, len(numbers))
	for i := 0; i < len(order); {
		k := i
		for k < len(order) && order[k].number == order[i].number {
			k++
		}
		for _, one := range order[i:k] {
			ranks[one.trial] = float64(i+k)/2 - float64(len(numbers))/2
		}
		i = k
	}
	return ranks
}

// correlation is that of two lists whose means are 0; 0 where one does not vary.
func correlation(rankOf []float64, column []uint16, output []float64) float64 {
	var both, own, other float64
	for t, c := range column {
		a, b := rankOf[c], output[t]
		both += a * b
		own += a * a
		other += b * b
	}
	if own == 0 || other == 0 {
		return 0
	}
	return both / math.Sqrt(own*other)
}
