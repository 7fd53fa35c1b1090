package mesh

import (
	"bytes"
	"errors"
	"io"
)

// stlText reads the text form of STL. Words may be spread over lines as they
// like, except that a solid's name ends with its line.
func (r *reading) stlText() error {
	r.contents.Format = FormatSTLText
	w := words{lines: newLines(r.from)}
	open, name, solid, facets := false, "", 0, int64(0)
	close := func() {
		open = false
		if facets == 0 {
			r.notes.add("empty_solid", w.lines.at(), "the solid %q has no facets", name)
		}
	}
	for {
		word, err := w.next()
		switch {
		case errors.Is(err, io.EOF):
			if open {
				r.notes.add("missing_endsolid", w.lines.at(), "the file ends without endsolid after %d facets, so it may be cut off", r.contents.Facets)
				close()
			}
			return nil
		case err != nil:
			return err
		case is(word, "solid"):
			if open {
				r.notes.add("missing_endsolid", w.lines.at(), "a solid begins before endsolid has ended the one before")
				close()
			}
			name, facets, open = cutName(w.line()), 0, true
			if solid, err = r.addSolid(name, w.lines.at()); err != nil {
				return err
			}
		case open && is(word, "facet"):
			if err := r.stlTextFacet(&w, solid); err != nil {
				return err
			}
			facets++
		case open && is(word, "endsolid"):
			if end := cutName(w.line()); end != "" && end != name {
				r.notes.add("solid_name_mismatch", w.lines.at(), "the solid %q ends under the name %q", name, end)
			}
			close()
		case open:
			return fault("syntax", w.lines.at(), "%q stands where facet or endsolid is expected", clip(word))
		default:
			return fault("syntax", w.lines.at(), "%q stands where solid is expected", clip(word))
		}
	}
}

// stlTextFacet reads on after the word facet. The normal is not used: the
// order of the corners says which side is which.
func (r *reading) stlTextFacet(w *words, solid int) error {
	at := w.lines.at()
	if err := r.stlTextNormal(w); err != nil {
		return err
	}
	if err := w.expect("loop"); err != nil {
		return err
	}
	r.corners = r.corners[:0]
	for {
		word, err := w.inside()
		if err != nil {
			return err
		}
		if is(word, "endloop") {
			break
		}
		if !is(word, "vertex") {
			return fault("syntax", w.lines.at(), "%q stands where vertex or endloop is expected", clip(word))
		}
		var p Point
		for k := range p {
			if word, err = w.inside(); err != nil {
				return err
			}
			if p[k], err = coordinate(word, w.lines.at()); err != nil {
				return err
			}
		}
		if err := r.addCorner(p, w.lines.at()); err != nil {
			return err
		}
	}
	if err := w.expect("endfacet"); err != nil {
		return err
	}
	if err := r.enoughCorners(at); err != nil {
		return err
	}
	if n := len(r.corners); n > 3 {
		r.notes.add("more_than_three_corners", at, "a facet of this STL has %d corners, where the format allows 3; all of them are measured", n)
	}
	return r.emit(at, solid)
}

// stlTextNormal reads up to the word outer, past a normal that may be absent
// or NaN.
func (r *reading) stlTextNormal(w *words) error {
	word, err := w.inside()
	if err != nil {
		return err
	}
	if is(word, "normal") {
		for range 4 {
			if word, err = w.inside(); err != nil || is(word, "outer") {
				break
			}
		}
	}
	if err == nil && !is(word, "outer") {
		err = fault("syntax", w.lines.at(), "%q stands where outer loop is expected", clip(word))
	}
	return err
}

// words reads a text word by word.
type words struct {
	lines *lines
	rest  []byte // of the line last read
}

// next returns the next word, or io.EOF.
func (w *words) next() ([]byte, error) {
	for {
		var word []byte
		if word, w.rest = cutWord(w.rest); len(word) > 0 {
			return word, nil
		}
		var err error
		if w.rest, err = w.lines.next(); err != nil {
			return nil, err
		}
	}
}

// inside returns the next word of something that must not end here.
func (w *words) inside() ([]byte, error) {
	word, err := w.next()
	if errors.Is(err, io.EOF) {
		return nil, fault("truncated", w.lines.at(), "the file ends inside a facet; export it again")
	}
	return word, err
}

func (w *words) expect(want string) error {
	word, err := w.inside()
	if err == nil && !is(word, want) {
		err = fault("syntax", w.lines.at(), "%q stands where %s is expected", clip(word), want)
	}
	return err
}

// line takes the rest of the line.
func (w *words) line() []byte {
	rest := w.rest
	w.rest = nil
	return rest
}

func is(word []byte, keyword string) bool { return bytes.EqualFold(word, []byte(keyword)) }
