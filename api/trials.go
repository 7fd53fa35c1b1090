package api

import (
	"net/url"
	"strconv"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/ranges"
)

// trialsOf reads how many trials are asked for, and from which seed. asked is
// false where the query says neither.
func trialsOf(values url.Values, faults *fault.List) (o ranges.Options, asked bool) {
	o = ranges.Usual()
	for _, p := range []struct {
		name string
		set  func(uint64)
	}{{"trials", func(n uint64) { o.Trials = int(min(n, 1<<31)) }}, {"seed", func(n uint64) { o.Seed = n }}} {
		value, given := values[p.name]
		if !given {
			continue
		}
		asked = true
		n, err := strconv.ParseUint(value[0], 10, 64)
		if err != nil {
			faults.Addf(pointerTo(p.name), "wrong_type", "%s is %q; it must be a whole number", p.name, value[0])
			continue
		}
		p.set(n)
	}
	o.Check(faults.At(""))
	return o, asked
}
