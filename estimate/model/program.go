package model

import (
	"math"

	"filmbuild/estimate/formula"
)

// Program works outputs out for many sets of inputs at a time. It is made once
// and used by many goroutines, each with a worker of its own.
type Program struct {
	inputs    int
	outputs   []operand
	code      []instruction
	registers int
}

// allot gives every instruction a register, and registers back as soon as their
// last reader is done, so that the columns in use stay small.
func (p *Program) allot() {
	last := make([]int, len(p.code))
	for i, in := range p.code {
		last[i] = i
		for _, a := range in.arguments {
			if !a.constant {
				last[a.column] = i
			}
		}
	}
	for _, o := range p.outputs {
		if !o.constant {
			last[o.column] = len(p.code)
		}
	}
	ends := make([][]int, len(p.code)+1)
	for i, l := range last {
		ends[l] = append(ends[l], i)
	}
	var free []int
	for i := range p.code {
		// A register is free only after the instruction that reads it last: an
		// instruction never writes over its own argument.
		if n := len(free); n > 0 {
			p.code[i].register = free[n-1]
			free = free[:n-1]
		} else {
			p.code[i].register = p.registers
			p.registers++
		}
		for _, k := range ends[i] {
			free = append(free, p.code[k].register)
		}
	}
}

// Worker makes what works blocks out: in has a column for each varied input,
// out one for each output, all of one length. A worker is for one goroutine.
func (p *Program) Worker() func(in, out [][]float64) {
	w := &worker{program: p, registers: make([][]float64, p.registers)}
	return w.run
}

type worker struct {
	program   *Program
	registers [][]float64
	length    int
	numbers   []float64
}

func (w *worker) run(in, out [][]float64) {
	n := 0
	switch {
	case len(in) > 0:
		n = len(in[0])
	case len(out) > 0:
		n = len(out[0])
	}
	if cap(w.numbers) < 8 {
		w.numbers = make([]float64, 0, 8)
	}
	if w.length < n {
		for k := range w.registers {
			w.registers[k] = make([]float64, n)
		}
		w.length = n
	}
	p := w.program
	for i := range p.code {
		c := &p.code[i]
		to := w.registers[c.register][:n]
		switch {
		case c.operator == "":
			copy(to, in[c.input])
		case c.operator == lookUp:
			for k, x := range w.column(c.arguments[0], n) {
				to[k] = c.table.at(x)
			}
		default:
			w.apply(c, to)
		}
	}
	for k, o := range p.outputs {
		if !o.constant {
			copy(out[k], w.column(o, n))
			continue
		}
		for i := range out[k] {
			out[k][i] = o.number
		}
	}
}

func (w *worker) column(o operand, n int) []float64 {
	return w.registers[w.program.code[o.column].register][:n]
}

// apply works out one column. The four operations have loops of their own.
func (w *worker) apply(c *instruction, to []float64) {
	n := len(to)
	if len(c.arguments) == 2 {
		a, b := c.arguments[0], c.arguments[1]
		switch {
		case b.constant:
			if withConstant(c.operator, to, w.column(a, n), b.number) {
				return
			}
		case a.constant:
			if constantWith(c.operator, to, a.number, w.column(b, n)) {
				return
			}
		default:
			if columns(c.operator, to, w.column(a, n), w.column(b, n)) {
				return
			}
		}
	}
	if c.operator == formula.Max {
		w.most(c, to)
		return
	}
	numbers := w.numbers[:0]
	for range c.arguments {
		numbers = append(numbers, 0)
	}
	w.numbers = numbers
	for i := range to {
		for k, a := range c.arguments {
			if numbers[k] = a.number; !a.constant {
				numbers[k] = w.registers[w.program.code[a.column].register][i]
			}
		}
		to[i] = formula.Apply(c.operator, numbers)
	}
}

// most is the largest of any number of columns and constants.
func (w *worker) most(c *instruction, to []float64) {
	for k, o := range c.arguments {
		switch {
		case k == 0 && o.constant:
			for i := range to {
				to[i] = o.number
			}
		case k == 0:
			copy(to, w.column(o, len(to)))
		case o.constant:
			withConstant(formula.Max, to, to, o.number)
		default:
			for i, x := range w.column(o, len(to)) {
				to[i] = max(to[i], x)
			}
		}
	}
}

func withConstant(o formula.Operator, to, a []float64, b float64) bool {
	a = a[:len(to)]
	switch o {
	case formula.Add:
		for i := range to {
			to[i] = a[i] + b
		}
	case formula.Sub:
		for i := range to {
			to[i] = a[i] - b
		}
	case formula.Mul:
		for i := range to {
			to[i] = a[i] * b
		}
	case formula.Div:
		for i := range to {
			to[i] = a[i] / b
		}
	case formula.Max:
		for i := range to {
			to[i] = max(a[i], b)
		}
	case formula.Min:
		for i := range to {
			to[i] = min(a[i], b)
		}
	case formula.Round:
		unit := math.Pow(10, b)
		for i := range to {
			to[i] = formula.RoundToUnit(a[i], unit)
		}
	default:
		return false
	}
	return true
}

func constantWith(o formula.Operator, to []float64, a float64, b []float64) bool {
	b = b[:len(to)]
	switch o {
	case formula.Add:
		for i := range to {
			to[i] = a + b[i]
		}
	case formula.Sub:
		for i := range to {
			to[i] = a - b[i]
		}
	case formula.Mul:
		for i := range to {
			to[i] = a * b[i]
		}
	case formula.Div:
		for i := range to {
			to[i] = a / b[i]
		}
	case formula.Max:
		for i := range to {
			to[i] = max(a, b[i])
		}
	case formula.Min:
		for i := range to {
			to[i] = min(a, b[i])
		}
	default:
		return false
	}
	return true
}

func columns(o formula.Operator, to, a, b []float64) bool {
	a, b = a[:len(to)], b[:len(to)]
	switch o {
	case formula.Add:
		for i := range to {
			to[i] = a[i] + b[i]
		}
	case formula.Sub:
		for i := range to {
			to[i] = a[i] - b[i]
		}
	case formula.Mul:
		for i := range to {
			to[i] = a[i] * b[i]
		}
	case formula.Div:
		for i := range to {
			to[i] = a[i] / b[i]
		}
	case formula.Max:
		for i := range to {
			to[i] = max(a[i], b[i])
		}
	case formula.Min:
		for i := range to {
			to[i] = min(a[i], b[i])
		}
	default:
		return false
	}
	return true
}
