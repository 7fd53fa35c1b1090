package marking

import "filmbuild/surfaces/planar"

// run draws one command with all its repetitions.
func (r *pathReader) run(command byte) error {
	relative, kind := command >= 'a', command&^0x20
	if r.before == 0 && kind != 'M' {
		return r.fault("a path begins with M")
	}
	if kind == 'Z' {
		r.close()
		r.before = 'Z'
		return nil
	}
	for first := true; first || r.more(); first = false {
		if err := r.draw(kind, relative); err != nil {
			return err
		}
		r.before = kind
		if kind == 'M' {
			kind = 'L' // pairs after the first are lines
		}
	}
	return nil
}

func (r *pathReader) draw(kind byte, relative bool) error {
	switch kind {
	case 'M':
		to, err := r.point(relative)
		if err != nil {
			return err
		}
		r.close()
		r.pen, r.start = to, to
		return nil
	case 'L':
		to, err := r.point(relative)
		if err != nil {
			return err
		}
		return r.add(to, 0, nil)
	case 'H', 'V':
		x, err := r.number()
		if err != nil {
			return err
		}
		to := r.pen
		switch {
		case kind == 'H' && relative:
			to.X += x
		case kind == 'H':
			to.X = x
		case relative:
			to.Y += x
		default:
			to.Y = x
		}
		return r.add(to, 0, nil)
	case 'A':
		return r.arc(relative)
	}
	return r.curve(kind, relative)
}

// reflected is the control point opposite the last one, where the command before
// was of the same family; else the pen.
func (r *pathReader) reflected(family string) planar.Point {
	for i := range len(family) {
		if r.before == family[i] {
			return planar.Point{X: 2*r.pen.X - r.handle.X, Y: 2*r.pen.Y - r.handle.Y}
		}
	}
	return r.pen
}

// curve draws C, S, Q or T.
func (r *pathReader) curve(kind byte, relative bool) error {
	var points []planar.Point
	switch kind {
	case 'S':
		points = append(points, r.reflected("CS"))
	case 'T':
		points = append(points, r.reflected("QT"))
	}
	want := 3
	if kind == 'Q' || kind == 'T' {
		want = 2
	}
	for len(points) < want {
		p, err := r.point(relative)
		if err != nil {
			return err
		}
		points = append(points, p)
	}
	to := points[want-1]
	bend := planar.Quadratic(r.pen, points[0], to)
	if want == 3 {
		bend = &planar.Bend{First: points[0], Second: points[1]}
	}
	r.handle = points[want-2]
	return r.add(to, 0, bend)
}
