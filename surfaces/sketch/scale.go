package sketch

import (
	"math"
	"strconv"
)

// scale is paper : real.
type scale struct{ paper, real float64 }

func (s scale) text() string {
	return strconv.FormatFloat(s.paper, 'f', -1, 64) + ":" + strconv.FormatFloat(s.real, 'f', -1, 64)
}

// perMetre is how many mm on paper 1 m makes.
func (s scale) perMetre() float64 { return 1000 * s.paper / s.real }

// scales lists the scales in use, from 200000:1 down to 1:75000000. Between 1, 2 and
// 5 there are others, so that a drawing fills its sheet.
func scales() []scale {
	var list []scale
	for _, zeros := range []float64{100000, 10000, 1000, 100, 10, 1} {
		for _, n := range []float64{2, 1, 0.5} {
			if n*zeros > 1 {
				list = append(list, scale{n * zeros, 1})
			}
		}
	}
	for _, zeros := range []float64{1, 10, 100, 1000, 10000, 1e5, 1e6, 1e7} {
		for _, n := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 7.5} {
			list = append(list, scale{1, n * zeros})
		}
	}
	return list
}

// rule is the length of a scale bar in m, and how it is written.
type rule struct {
	length float64
	text   string
}

// scaleBar finds the longest round length that takes at most 40 mm on paper.
func (d *drawing) scaleBar() rule {
	const most = 40.0 // mm
	best := rule{}
	for _, r := range d.roundLengths() {
		if r.length*d.k <= most {
			best = r
		}
	}
	return best
}

// roundLengths are lengths that a scale bar may have, growing.
func (d *drawing) roundLengths() []rule {
	var list []rule
	add := func(length float64, text string) { list = append(list, rule{length, text}) }
	if d.system == US {
		for parts := 1e6; parts >= 100; parts /= 10 {
			add(metresPerInch/parts, decimal(1/parts, 6)+`"`)
		}
		for _, inches := range []float64{1. / 64, 1. / 32, 1. / 16, 1. / 8, 1. / 4, 1. / 2, 1, 2, 3, 6} {
			add(inches*metresPerInch, imperial(inches*metresPerInch, "' ", `"`, "'"))
		}
		for zeros := 1.0; zeros <= 1e6; zeros *= 10 {
			for _, n := range []float64{1, 2, 5} {
				add(n*zeros*metresPerFoot, decimal(n*zeros, 0)+"'")
			}
		}
		return list
	}
	for power := -8; power <= 6; power++ {
		for _, n := range []float64{1, 2, 5} {
			length := n * math.Pow(10, float64(power))
			if power < 0 {
				add(length, decimal(length*1000, 5)+" mm")
			} else {
				add(length, decimal(length, 0)+" m")
			}
		}
	}
	return list
}
