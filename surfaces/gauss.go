package surfaces

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// node is one abscissa of a quadrature rule with its weight.
type node struct{ at, weight float64 }

// gauss returns the 32-point Gauss-Legendre rule on [0, 1].
//
// Source: gonum integrate/quad; with the nose singularity of a section removed,
// 32 points reach machine precision (geometry tests assert it).
var gauss = sync.OnceValue(func() []node { return gaussOf(32) })

// gaussOf returns the Gauss-Legendre rule of n points on [0, 1].
func gaussOf(n int) []node {
	at, weight := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(at, weight, 0, 1)
	nodes := make([]node, n)
	for i := range nodes {
		nodes[i] = node{at[i], weight[i]}
	}
	return nodes
}

// integrate returns the integral of f from a to b by the rule of gauss.
func integrate(f func(float64) float64, a, b float64) float64 {
	sum := 0.0
	for _, n := range gauss() {
		sum += n.weight * f(a+(b-a)*n.at)
	}
	return sum * (b - a)
}

// arcNode is a point of a quarter of a superellipse in the parameter θ, with
// tan θ = e^g: the logarithms of cos θ and sin θ stay good where the cosines
// themselves vanish, which powers below 1 need.
type arcNode struct {
	cos, sin, logCos, logSin float64
	weight                   float64 // dg
}

// quarterEllipse and quarterAny return the nodes of a quarter of an ellipse,
// and of a quarter of any superellipse with an exponent from 1 to 20. Steps and
// reach are such that finer ones change an area by less than 1e-12 of it, and by
// less than 1e-9 on a section a hundred times as wide as high.
var (
	quarterEllipse = sync.OnceValue(func() []arcNode { return quarter(3.7, 26) })
	rough          = sync.OnceValue(func() []arcNode { return quarter(3.7, 8) })
	quarterAny     = sync.OnceValue(func() []arcNode { return quarter(6.2, 40) })
)

// quarter is the trapezium rule in u over ±reach, with g = π/2·sinh u.
//
// Source: the double exponential rule of Takahasi and Mori (from memory).
func quarter(reach float64, steps int) []arcNode {
	nodes := make([]arcNode, 0, 2*steps+1)
	for i := -steps; i <= steps; i++ {
		u := reach * float64(i) / float64(steps)
		g := math.Pi / 2 * math.Sinh(u)
		logCos := -math.Log1p(math.Exp(2*g)) / 2
		if g > 300 { // e^2g is beyond the numbers' range
			logCos = -g
		}
		nodes = append(nodes, arcNode{
			cos: math.Exp(logCos), sin: math.Exp(g + logCos), logCos: logCos, logSin: g + logCos,
			weight: math.Pi / 2 * math.Cosh(u) * reach / float64(steps),
		})
	}
	return nodes
}
