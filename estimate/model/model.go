package model

import (
	"filmbuild/estimate/formula"
	"filmbuild/surfaces/quantity"
)

// Kind tells what a vertex of the graph is.
type Kind int

// The kinds of vertex.
const (
	Input   Kind = iota // a number that nothing here works out
	Worked              // by a formula of its terms
	Stepped             // by a table, from its one term
)

// Vertex is one number of the graph.
type Vertex struct {
	Node    quantity.Node
	Kind    Kind
	Value   float64 // in the estimate
	Unit    string
	Text    string // the formula as it is shown
	Source  string // where the formula is from
	Formula formula.Formula
	Terms   []TermOf // in the order of their names
	Steps   Steps    // of a Stepped vertex
}

// TermOf is one term of a vertex: a constant, or a factor times another vertex
// (or over it, where Inverse is set).
type TermOf struct {
	Name    string
	Value   float64 // in the estimate
	From    int     // index of the vertex it comes from, -1 for a constant
	Times   float64
	Inverse bool
}

// Steps says which value a table has at x, and up to which x it stays so. upTo
// is at least x.
type Steps func(x float64) (value, upTo float64)

// Model is the graph of one estimate, each vertex after those it comes from.
type Model struct {
	Vertices []Vertex
	index    map[quantity.Node]int
}

// Find returns the index of a node.
func (m *Model) Find(node quantity.Node) (int, bool) {
	k, known := m.index[node]
	return k, known
}

// Inputs lists the indices of the inputs.
func (m *Model) Inputs() []int {
	var list []int
	for i := range m.Vertices {
		if m.Vertices[i].Kind == Input {
			list = append(list, i)
		}
	}
	return list
}
