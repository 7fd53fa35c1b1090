package mesh

import (
	"bytes"
	"errors"
	"io"
)

// objReader reads OBJ: vertices (v), facets (f), objects (o) and groups (g).
// Materials, normals and texture do not change an area and are passed over.
type objReader struct {
	*reading
	lines    *lines
	vertices vertices
	joined   []byte
	object   string
	group    string
	solids   map[string]int
	solid    int // the present one, -1 until a facet needs it
}

func (r *reading) obj() error {
	r.contents.Format = FormatOBJ
	o := objReader{reading: r, lines: newLines(r.from), solids: map[string]int{}, solid: -1}
	for {
		line, err := o.statement()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err == nil {
			err = o.run(line)
		}
		if err != nil {
			return err
		}
	}
}

// statement returns a line, joined with those that follow a backslash.
func (o *objReader) statement() ([]byte, error) {
	line, err := o.lines.next()
	if err != nil || !bytes.HasSuffix(line, []byte("\\")) {
		return line, err
	}
	o.joined = o.joined[:0]
	for bytes.HasSuffix(line, []byte("\\")) {
		o.joined = append(append(o.joined, line[:len(line)-1]...), ' ')
		if line, err = o.lines.next(); errors.Is(err, io.EOF) {
			return nil, fault("truncated", o.lines.at(), "the file ends after a backslash, which says that the line goes on")
		}
		if err != nil {
			return nil, err
		}
		if len(o.joined)+len(line) > MaxLineBytes {
			return nil, fault("line_too_long", o.lines.at(), "the joined line is longer than %d bytes", MaxLineBytes)
		}
	}
	o.joined = append(o.joined, line...)
	return o.joined, nil
}

func (o *objReader) run(line []byte) error {
	if i := bytes.IndexByte(line, '#'); i >= 0 {
		line = line[:i]
	}
	word, rest := cutWord(line)
	switch string(word) {
	case "v":
		p, rest, err := corner(rest, o.lines.at())
		if err != nil {
			return err
		}
		if err := o.afterVertex(rest); err != nil {
			return err
		}
		return o.vertices.add(p, o.lines.at())
	case "f":
		return o.facet(rest)
	case "o":
		o.object, o.group, o.solid = cutName(rest), "", -1
	case "g":
		o.group, o.solid = cutName(rest), -1
	case "", "vt", "vn", "s", "usemtl", "mtllib", "usemap", "maplib", "lod", "l", "p", "bevel", "c_interp", "d_interp":
	case "vp", "cstype", "deg", "bmat", "step", "curv", "curv2", "surf", "parm", "trim", "hole", "scrv", "sp", "end", "con":
		o.notes.add("free_form_surface", o.lines.at(), "curves and free-form surfaces are not measured: only facets are; export the part as facets")
	default:
		o.notes.add("unknown_statement", o.lines.at(), "the statement %q is not known and was passed over", clip(word))
	}
	return nil
}

// afterVertex checks what follows three coordinates: a weight or a colour, in
// numbers. Anything else means that a line break is lost.
func (o *objReader) afterVertex(rest []byte) error {
	for n := 0; ; n++ {
		var word []byte
		if word, rest = cutWord(rest); len(word) == 0 {
			return nil
		}
		if _, ok := decimal(word); !ok || n == 5 {
			return fault("syntax", o.lines.at(), "%q stands after the coordinates of a vertex, where only a weight or a colour may", clip(word))
		}
	}
}

func (o *objReader) facet(rest []byte) error {
	at := o.lines.at()
	o.corners = o.corners[:0]
	for {
		var word []byte
		if word, rest = cutWord(rest); len(word) == 0 {
			break
		}
		i, err := o.index(word, at)
		if err != nil {
			return err
		}
		if err := o.addCorner(o.vertices.at(i), at); err != nil {
			return err
		}
	}
	if err := o.enoughCorners(at); err != nil {
		return err
	}
	if err := o.settle(at); err != nil {
		return err
	}
	return o.emit(at, o.solid)
}

// index reads a reference, v or v/vt/vn: counted from 1, or backwards from the
// vertex last read when negative. It returns the vertex counted from 0.
func (o *objReader) index(word []byte, at Place) (int64, error) {
	first, _, _ := bytes.Cut(word, []byte("/"))
	i, ok := whole(first)
	if !ok {
		return 0, fault("syntax", at, "%q stands where a facet refers to a vertex; write its number, as in f 1 2 3", clip(word))
	}
	count := o.vertices.count
	switch {
	case i > 0 && i <= count:
		return i - 1, nil
	case i < 0 && i >= -count:
		return count + i, nil
	}
	return 0, fault("unknown_reference", at, "a facet refers to vertex %d, and %d have been read so far", i, count).counted(i, count)
}

// settle finds the solid of a facet by the object and group it stands in. A
// name that comes again goes on with the same solid.
func (o *objReader) settle(at Place) error {
	if o.solid >= 0 {
		return nil
	}
	name := o.object
	if o.group != "" {
		if name != "" {
			name += "/"
		}
		name += o.group
	}
	known, ok := o.solids[name]
	if !ok {
		var err error
		if known, err = o.addSolid(name, at); err != nil {
			return err
		}
		o.solids[name] = known
	}
	o.solid = known
	return nil
}
