package planar

import "fmt"

// part is a set of borders about one frame, seen in one or more places.
type part struct {
	frame   frame
	colours []int // number in the arrangement of each colour of the borders
	borders []border
	at      []Point // how far each copy is shifted
	lines   []lineCount
	cut     bool // some borders were found by cutting, so that lines are not all
}

// lineCount is one closed line by the colours inside and outside it.
type lineCount struct{ inside, outside int }

// Copies is an arrangement seen in several places, such as one letter of a text.
type Copies struct {
	Of *Arrangement
	At []Point // the shift of each copy
}

// Together is the arrangement of copies that do not meet each other: none may
// overlap, touch or lie inside another, which is the caller's to know. Each is
// measured once, however often it stands.
func Together(copies []Copies) (*Arrangement, error) {
	a := &Arrangement{colours: []string{Base}}
	for i, c := range copies {
		for _, at := range c.At {
			if !inReach(at) {
				return nil, fmt.Errorf("copy %d: %w", i, ErrNotFinite)
			}
		}
		number := make([]int, len(c.Of.colours))
		for k, colour := range c.Of.colours {
			number[k] = a.number(colour)
		}
		for _, p := range c.Of.parts {
			placed := part{frame: p.frame, colours: make([]int, len(p.colours)), borders: p.borders, lines: p.lines, cut: p.cut}
			for k, colour := range p.colours {
				placed.colours[k] = number[colour]
			}
			for _, inner := range p.at {
				for _, outer := range c.At {
					placed.at = append(placed.at, inner.plus(outer))
				}
			}
			a.parts = append(a.parts, placed)
		}
	}
	return a, nil
}

// number is that of a colour, which joins the others if it is new.
func (a *Arrangement) number(colour string) int {
	for i, c := range a.colours {
		if c == colour {
			return i
		}
	}
	a.colours = append(a.colours, colour)
	return len(a.colours) - 1
}
