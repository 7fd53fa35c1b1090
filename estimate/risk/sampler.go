package risk

import (
	"fmt"
	"math"
	"sync"
)

// Input is an uncertain number.
type Input struct {
	Key    string // tells its draws; two inputs with one key have the same score
	Group  string // where given, the source of its score: inputs of one group vary together
	Spread Spread
}

func (i Input) source() string {
	if i.Group != "" {
		return i.Group
	}
	return i.Key
}

// Sampler draws the inputs of a simulation. It is made once and read by many at
// a time.
type Sampler struct {
	seed    uint64
	inputs  []drawn
	sources []source
	tied    [][]float64 // lower triangle over the first len(tied) sources
}

type drawn struct {
	source int
	spread Spread
	table  *betaTable // of a PERT spread that varies
}

type source struct {
	name string
	key  uint64
}

// NewSampler prepares the draws of some inputs. The error names an input whose
// spread is not valid, or is ErrNotPositiveDefinite. Correlations of sources
// that no input has do nothing.
func NewSampler(inputs []Input, correlations []Correlation, seed uint64) (*Sampler, error) {
	spreads := map[string]Spread{}
	for _, in := range inputs {
		if !in.Spread.Valid() {
			return nil, fmt.Errorf("the spread of %s is not low ≤ likely ≤ high of a known distribution", in.Key)
		}
		if _, known := spreads[in.source()]; !known {
			spreads[in.source()] = in.Spread
		}
	}
	tied, err := tie(correlations, spreads)
	if err != nil {
		return nil, err
	}
	s := &Sampler{seed: seed, inputs: make([]drawn, len(inputs)), tied: tied.factor}
	place := map[string]int{}
	add := func(name string) int {
		k, known := place[name]
		if !known {
			k = len(s.sources)
			place[name] = k
			s.sources = append(s.sources, source{name, keyOf(name)})
		}
		return k
	}
	for _, name := range tied.names {
		add(name)
	}
	tables := map[float64]*betaTable{} // made together, once all shapes are known
	var group sync.WaitGroup
	for i, in := range inputs {
		s.inputs[i] = drawn{source: add(in.source()), spread: in.Spread}
		if in.Spread.Varies() && in.Spread.Distribution == PERT {
			alpha, _ := in.Spread.Shape()
			alpha = math.Round(alpha*shapeSteps) / shapeSteps
			if tables[alpha] == nil {
				table := &betaTable{}
				tables[alpha] = table
				group.Go(func() { table.build(alpha) })
			}
			s.inputs[i].table = tables[alpha]
		}
	}
	group.Wait()
	return s, nil
}

// shapeSteps is how finely shapes are told apart: spreads that differ in the last
// bits only share a table.
const shapeSteps = 1e9

// Sources names what scores are drawn for: each group and each input without
// one, in the order of Draw's scores.
func (s *Sampler) Sources() []string {
	names := make([]string, len(s.sources))
	for i, one := range s.sources {
		names[i] = one.name
	}
	return names
}

// Scratch is what one worker draws with.
type Scratch struct {
	stream *stream
	scores [][]float64 // a column for each source
}

// Scratch makes room for the draws of one worker.
func (s *Sampler) Scratch() *Scratch {
	w := &Scratch{stream: newStream(), scores: make([][]float64, len(s.sources))}
	for i := range w.scores {
		w.scores[i] = make([]float64, Block)
	}
	return w
}

// Draw fills a column for each input with the trials of one block, at most
// Block of them; all columns have the same length.
func (s *Sampler) Draw(w *Scratch, block int, columns [][]float64) {
	if len(columns) == 0 {
		return
	}
	n := len(columns[0])
	for k := range s.sources {
		w.stream.fill(s.seed, s.sources[k].key, block, w.scores[k][:n])
	}
	s.correlate(w, n)
	for i := range s.inputs {
		s.inputs[i].draw(w.scores[s.inputs[i].source][:n], columns[i])
	}
}

// correlate turns independent scores into correlated ones, the last source
// first, so that every row still finds those it builds on untouched.
func (s *Sampler) correlate(w *Scratch, n int) {
	for i := len(s.tied) - 1; i >= 0; i-- {
		row := s.tied[i]
		into := w.scores[i][:n]
		for t := range into {
			into[t] *= row[i]
		}
		for j, factor := range row[:i] {
			if factor == 0 {
				continue
			}
			for t, z := range w.scores[j][:n] {
				into[t] += factor * z
			}
		}
	}
}

func (d *drawn) draw(scores, column []float64) {
	switch {
	case !d.spread.Varies():
		for t := range column {
			column[t] = d.spread.Likely
		}
	case d.table != nil:
		low, width := d.spread.Low, d.spread.High-d.spread.Low
		for t := range column {
			column[t] = low + width*d.table.at(scores[t])
		}
	default:
		for t := range column {
			column[t] = triangular(d.spread, scores[t])
		}
	}
}
