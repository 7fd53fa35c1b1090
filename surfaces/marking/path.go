package marking

import (
	"fmt"
	"math"
	"strconv"

	"filmbuild/surfaces/planar"
)

// PathError says where SVG path data cannot be read.
type PathError struct {
	At     int // byte, from 0
	Detail string
}

func (e *PathError) Error() string { return fmt.Sprintf("at character %d: %s", e.At+1, e.Detail) }

// mostPathEdges keeps the work bounded.
const mostPathEdges = 5000

// ReadPath reads SVG path data (M L H V C S Q T A Z, absolute and relative) into
// outlines, y turned up. A subpath that is left open is closed by a straight
// line, as for filling. Circular arcs and both kinds of Bézier curves are kept
// as they are. An arc of an ellipse becomes Bézier curves of at most 11.25°,
// which leave it by less than 1e-9 of its longer radius.
//
// Source: the path grammar and the arc parameters of the W3C SVG
// recommendation, from memory; a radius too small for its chord is scaled up,
// and one of 0 gives a straight line, as it says.
func ReadPath(data string) (planar.Region, error) {
	r := pathReader{text: data}
	for {
		command, found := r.command()
		if !found {
			break
		}
		if err := r.run(command); err != nil {
			return nil, err
		}
	}
	if r.at < len(r.text) {
		return nil, r.fault("there is no path command %q", r.text[r.at])
	}
	r.close()
	for i, o := range r.out {
		for k := range o {
			r.out[i][k] = flipped(o[k])
		}
	}
	return r.out, nil
}

// flipped turns y up: what ran to the left runs to the right now.
func flipped(c planar.Corner) planar.Corner {
	turn := func(p planar.Point) planar.Point { return planar.Point{X: p.X, Y: -p.Y} }
	c.At, c.Sweep = turn(c.At), -c.Sweep
	if c.Bend != nil {
		c.Bend = &planar.Bend{First: turn(c.Bend.First), Second: turn(c.Bend.Second)}
	}
	return c
}

type pathReader struct {
	text    string
	at      int
	out     planar.Region
	pen     planar.Point
	start   planar.Point
	handle  planar.Point // last control point, for S and T
	before  byte         // the command before, in upper case
	current planar.Outline
	edges   int
}

func (r *pathReader) fault(format string, args ...any) error {
	return &PathError{r.at, fmt.Sprintf(format, args...)}
}

func (r *pathReader) space(comma bool) {
	for r.at < len(r.text) {
		switch c := r.text[r.at]; {
		case c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f':
		case c == ',' && comma:
			comma = false
		default:
			return
		}
		r.at++
	}
}

func (r *pathReader) command() (byte, bool) {
	r.space(false)
	if r.at >= len(r.text) {
		return 0, false
	}
	switch c := r.text[r.at]; c &^ 0x20 {
	case 'M', 'L', 'H', 'V', 'C', 'S', 'Q', 'T', 'A', 'Z':
		if c < 'A' {
			return 0, false
		}
		r.at++
		return c, true
	}
	return 0, false
}

// more reports whether another number follows.
func (r *pathReader) more() bool {
	was := r.at
	r.space(true)
	if r.at < len(r.text) {
		switch c := r.text[r.at]; {
		case c >= '0' && c <= '9', c == '+', c == '-', c == '.':
			return true
		}
	}
	r.at = was
	return false
}

func (r *pathReader) number() (float64, error) {
	r.space(true)
	begin := r.at
	digits := func() (n int) {
		for ; r.at < len(r.text) && r.text[r.at] >= '0' && r.text[r.at] <= '9'; r.at++ {
			n++
		}
		return n
	}
	one := func(set string) bool {
		for i := range len(set) {
			if r.at < len(r.text) && r.text[r.at] == set[i] {
				r.at++
				return true
			}
		}
		return false
	}
	one("+-")
	n := digits()
	if one(".") {
		n += digits()
	}
	if n == 0 {
		r.at = begin
		return 0, r.fault("a number is missing")
	}
	if was := r.at; one("eE") {
		one("+-")
		if digits() == 0 {
			r.at = was
		}
	}
	x, err := strconv.ParseFloat(r.text[begin:r.at], 64)
	if err != nil || math.Abs(x) > 1e9 {
		r.at = begin
		return 0, r.fault("a number is beyond 1e9")
	}
	return x, nil
}

// flag reads one digit 0 or 1, which need not be set apart.
func (r *pathReader) flag() (bool, error) {
	r.space(true)
	if r.at < len(r.text) && (r.text[r.at] == '0' || r.text[r.at] == '1') {
		r.at++
		return r.text[r.at-1] == '1', nil
	}
	return false, r.fault("a flag of an arc must be 0 or 1")
}

// point reads a pair, relative to the pen if the command is in lower case.
func (r *pathReader) point(relative bool) (planar.Point, error) {
	x, err := r.number()
	if err != nil {
		return planar.Point{}, err
	}
	y, err := r.number()
	if err != nil {
		return planar.Point{}, err
	}
	if relative {
		x, y = x+r.pen.X, y+r.pen.Y
	}
	return planar.Point{X: x, Y: y}, nil
}

// add draws one edge from the pen.
func (r *pathReader) add(to planar.Point, sweep float64, bend *planar.Bend) error {
	if r.edges++; r.edges > mostPathEdges {
		return r.fault("the path has more than %d edges", mostPathEdges)
	}
	r.current = append(r.current, planar.Corner{At: r.pen, Sweep: sweep, Bend: bend})
	r.pen = to
	return nil
}

// close ends the subpath; one that paints nothing is dropped.
func (r *pathReader) close() {
	if len(r.current) > 0 {
		if r.pen != r.start {
			r.current = append(r.current, planar.Corner{At: r.pen})
		}
		r.out = append(r.out, r.current)
	}
	r.current, r.pen = nil, r.start
}
