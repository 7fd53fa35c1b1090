package ranges

import (
	"fmt"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/risk"
)

// What is taken where nothing is asked for.
const (
	UsualTrials = 10_000
	UsualSeed   = 1
)

// MostSeed is the largest seed: the largest whole number that every reader of
// JSON takes exactly (RFC 8259 section 6).
const MostSeed = 1<<53 - 1

// Options say how many trials are made, and from which seed.
type Options struct {
	Trials   int
	Seed     uint64
	Workers  int                   // goroutines; 0 for one to a processor. It does not change the outcome
	Progress func(done, total int) // called as trials are done, one call at a time; may be nil
}

// Usual are the options where nothing is asked for.
func Usual() Options { return Options{Trials: UsualTrials, Seed: UsualSeed} }

// Check notes options that cannot be.
func (o Options) Check(report func(pointer, code, detail string)) {
	if o.Trials < risk.LeastTrials || o.Trials > risk.MostTrials {
		report("/trials", "out_of_range", fmt.Sprintf("trials is %d; it must be %d to %d", o.Trials, risk.LeastTrials, risk.MostTrials))
	}
	if o.Seed > MostSeed {
		report("/seed", "out_of_range", fmt.Sprintf("seed is %d; it must be 0 to %d", o.Seed, uint64(MostSeed)))
	}
}

// MostEffort bounds the trials of one answer: numbers drawn, worked out and
// counted, about half a minute of one processor.
const MostEffort = 4_000_000_000

// Effort is how many numbers the trials of an estimate draw, work out and count.
func Effort(g *estimate.Graph, trials int) int {
	e := g.Estimate
	return trials * (len(g.Model.Vertices) + len(g.Uncertain) + 2*len(e.Steps) + len(e.Order))
}

// Bearable returns a *fault.Error where some estimates need more effort together
// than MostEffort.
func Bearable(trials int, graphs ...*estimate.Graph) error {
	sum := 0
	for _, g := range graphs {
		sum += Effort(g, trials)
	}
	if sum <= MostEffort {
		return nil
	}
	var list fault.List
	list.Addf("/trials", "too_many", "%d trials of a job as large as this take too long; ask for at most %d", trials, max(risk.LeastTrials, int(float64(trials)*MostEffort/float64(sum))))
	return list.Err()
}
