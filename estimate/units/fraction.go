package units

import (
	"math"
	"math/big"
	"math/bits"
)

// exactInteger is the largest magnitude below which every integer is a float64,
// so that the quotient of two such integers is rounded exactly once (IEEE 754).
const exactInteger = 1 << 53

// fraction is an exact rational number. It stays in two machine words while it
// fits and moves to big.Rat when it does not, so that a conversion is rounded
// once, at its end. den is above 0; wide, when set, replaces num and den.
type fraction struct {
	num, den int64
	wide     *big.Rat
}

func whole(n int64) fraction { return fraction{num: n, den: 1} }

func (f fraction) isZero() bool {
	if f.wide != nil {
		return f.wide.Sign() == 0
	}
	return f.num == 0
}

func (f fraction) negated() fraction {
	if f.wide != nil {
		return fraction{wide: new(big.Rat).Neg(f.wide)}
	}
	return fraction{num: -f.num, den: f.den}
}

// inverse returns 1/f; f must not be zero.
func (f fraction) inverse() fraction {
	switch {
	case f.wide != nil:
		return fraction{wide: new(big.Rat).Inv(f.wide)}
	case f.num < 0:
		return fraction{num: -f.den, den: -f.num}
	}
	return fraction{num: f.den, den: f.num}
}

func (f fraction) times(g fraction) fraction {
	if f.wide == nil && g.wide == nil {
		if product, fits := product(f, g); fits {
			return product
		}
		f.num, g.den = reduced(f.num, g.den)
		g.num, f.den = reduced(g.num, f.den)
		if product, fits := product(f, g); fits {
			return product
		}
	}
	return fraction{wide: new(big.Rat).Mul(f.rat(), g.rat())}
}

func product(f, g fraction) (fraction, bool) {
	num, numFits := multiply(f.num, g.num)
	den, denFits := multiply(f.den, g.den)
	return fraction{num: num, den: den}, numFits && denFits
}

func (f fraction) plus(g fraction) fraction {
	if f.wide == nil && g.wide == nil {
		left, leftFits := multiply(f.num, g.den)
		right, rightFits := multiply(g.num, f.den)
		den, denFits := multiply(f.den, g.den)
		sum := left + right
		overflows := (left > 0) == (right > 0) && (sum > 0) != (left > 0) && left != 0 && right != 0
		if leftFits && rightFits && denFits && !overflows {
			return fraction{num: sum, den: den}
		}
	}
	return fraction{wide: new(big.Rat).Add(f.rat(), g.rat())}
}

// float64 returns the float64 nearest to f; it is infinite when f is too large.
func (f fraction) float64() float64 {
	if f.wide == nil {
		if !f.divides() {
			f.num, f.den = reduced(f.num, f.den)
		}
		if f.divides() {
			return float64(f.num) / float64(f.den)
		}
	}
	nearest, _ := f.rat().Float64()
	return nearest
}

func (f fraction) divides() bool {
	return f.num >= -exactInteger && f.num <= exactInteger && f.den <= exactInteger
}

func (f fraction) rat() *big.Rat {
	if f.wide != nil {
		return f.wide
	}
	return big.NewRat(f.num, f.den)
}

// multiply returns a·b and whether it fits in an int64.
func multiply(a, b int64) (int64, bool) {
	high, low := bits.Mul64(magnitude(a), magnitude(b))
	if high != 0 || low > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(low), true
	}
	return int64(low), true
}

// reduced divides a and b by their greatest common divisor; b is above 0.
func reduced(a, b int64) (int64, int64) {
	x, y := magnitude(a), magnitude(b)
	for y != 0 {
		x, y = y, x%y
	}
	return a / int64(x), b / int64(x)
}

func magnitude(a int64) uint64 {
	if a < 0 {
		return uint64(-a)
	}
	return uint64(a)
}
