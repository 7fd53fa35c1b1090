package risk

import (
	"context"
	"fmt"
	"runtime"
	"sync"
)

// Bounds of the number of trials.
const (
	LeastTrials = 1_000
	MostTrials  = 1_000_000
)

// mostTallies bounds the tallies that goroutines keep apart, some 32 kB each: a
// simulation of very many outputs has fewer goroutines.
const mostTallies = 4_096

// Plan is a simulation.
type Plan struct {
	Sampler *Sampler
	Inputs  int   // how many the sampler draws
	Outputs int   // how many the worker computes
	Keep    []int // outputs whose every trial is kept: 8 bytes a trial each

	// Worker makes what computes a block: a column for each input goes in, a
	// column for each output comes out. One is made for each goroutine.
	Worker func() func(in, out [][]float64)

	Trials   int
	Workers  int            // goroutines; 0 for one to a processor
	Progress func(done int) // called after every block, one call at a time; may be nil
}

// Outcome is what a simulation found.
type Outcome struct {
	Kept    [][]float64 // by Plan.Keep, each in the order of trials
	Tallies []*Tally    // one for each output
	Moments []Moments   // one for each output
	ranks   classes     // of the sources' scores, for Drivers
}

// Simulate runs the trials of a plan. It ends early with the context's error.
// The outcome depends on the sampler, the worker and the number of trials, and
// not on the number of goroutines.
func Simulate(ctx context.Context, p Plan) (*Outcome, error) {
	if p.Trials < LeastTrials || p.Trials > MostTrials {
		return nil, fmt.Errorf("trials is %d; it must be %d to %d", p.Trials, LeastTrials, MostTrials)
	}
	blocks := (p.Trials + Block - 1) / Block
	o := &Outcome{Moments: make([]Moments, p.Outputs), ranks: newClasses(len(p.Sampler.sources), p.Trials)}
	for range p.Keep {
		o.Kept = append(o.Kept, make([]float64, p.Trials))
	}
	workers := p.Workers
	if workers < 1 {
		workers = runtime.GOMAXPROCS(0)
	}
	workers = min(workers, blocks, max(1, mostTallies/max(1, p.Outputs)))
	s := &simulation{plan: p, outcome: o, blocks: blocks, moments: make([]Moments, blocks*p.Outputs)}
	tallies := make([][]*Tally, workers)
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() { tallies[w] = s.work(ctx) })
	}
	group.Wait()
	if err := ctx.Err(); err != nil && s.done < p.Trials {
		return nil, err
	}
	o.Tallies = tallies[0]
	for _, more := range tallies[1:] {
		for k := range o.Tallies {
			o.Tallies[k].join(more[k])
		}
	}
	for block := range blocks { // in their order, so that sums are the same for any number of workers
		for k := range o.Moments {
			o.Moments[k].join(s.moments[block*p.Outputs+k])
		}
	}
	return o, nil
}

// simulation is what the workers share.
type simulation struct {
	plan    Plan
	outcome *Outcome
	blocks  int
	moments []Moments // of each block and output

	mutex      sync.Mutex
	next, done int // block to take, trials made
}

// take hands out the next block.
func (s *simulation) take() (block int, ok bool) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.next++
	return s.next - 1, s.next <= s.blocks
}

func (s *simulation) report(trials int) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.done += trials
	if s.plan.Progress != nil {
		s.plan.Progress(s.done)
	}
}

// work takes blocks until none is left, and returns what it counted.
func (s *simulation) work(ctx context.Context) []*Tally {
	p := s.plan
	tallies := make([]*Tally, p.Outputs)
	for k := range tallies {
		tallies[k] = newTally()
	}
	in, out := columns(p.Inputs), columns(p.Outputs)
	scratch, compute := p.Sampler.Scratch(), p.Worker()
	for {
		block, ok := s.take()
		if !ok || ctx.Err() != nil {
			return tallies
		}
		first := block * Block
		n := min(Block, p.Trials-first)
		cut(in, n)
		cut(out, n)
		p.Sampler.Draw(scratch, block, in)
		s.outcome.ranks.note(scratch.scores, first, n)
		compute(in, out)
		for k, column := range out {
			tallies[k].add(column)
			s.moments[block*p.Outputs+k] = momentsOf(column)
		}
		for i, k := range p.Keep {
			copy(s.outcome.Kept[i][first:first+n], out[k])
		}
		s.report(n)
	}
}

func columns(n int) [][]float64 {
	list := make([][]float64, n)
	for i := range list {
		list[i] = make([]float64, Block)
	}
	return list
}

func cut(columns [][]float64, n int) {
	for i := range columns {
		columns[i] = columns[i][:n]
	}
}
