package mesh

// plySource gives the values of a PLY file one by one, whatever its encoding.
type plySource interface {
	// row begins the next row of an element; endRow ends it.
	row(e plyElement, done int64) error
	endRow() error
	// value reads one number, length the length of a list.
	value(k plyKind) (float64, error)
	length(k plyKind) (int64, error)
	skip(k plyKind, count int64) error
	at() Place
	// end verifies that nothing follows the last row.
	end(last plyElement) error
}

// plyReader reads the two elements that make a mesh and passes over the rest.
type plyReader struct {
	*reading
	source   plySource
	vertices vertices
}

func (r *reading) ply() error {
	l := newLines(r.from)
	elements, err := r.plyHeader(l)
	if err != nil {
		return err
	}
	p := plyReader{reading: r}
	switch r.contents.Format {
	case FormatPLYText:
		p.source = &plyText{lines: l}
	default:
		p.source = newPLYBinary(r.from, l.bytes, r.contents.Format == FormatPLYBig)
	}
	header := l.at()
	if _, err := r.addSolid("", header); err != nil {
		return err
	}
	var last plyElement
	for _, e := range elements {
		if err := p.element(e, header); err != nil {
			return err
		}
		last = e
	}
	return p.source.end(last)
}

func (p *plyReader) element(e plyElement, header Place) error {
	row := func() error { return p.pass(e) }
	switch e.name {
	case "vertex":
		axes := [3]int{e.property("x"), e.property("y"), e.property("z")}
		for k, i := range axes {
			if i < 0 || e.properties[i].list {
				return fault("syntax", header, "the vertices have no coordinate %c", 'x'+rune(k))
			}
		}
		row = func() error { return p.vertex(e, axes) }
	case "face":
		corners := e.property("vertex_indices", "vertex_index")
		if corners < 0 || !e.properties[corners].list || e.properties[corners].kind.float {
			return fault("syntax", header, "the faces have no whole list vertex_indices")
		}
		row = func() error { return p.face(e, corners) }
	}
	if len(e.properties) == 0 {
		return nil // rows without values take no room
	}
	for done := range e.count {
		if err := p.source.row(e, done); err != nil {
			return err
		}
		if err := row(); err != nil {
			return err
		}
		if err := p.source.endRow(); err != nil {
			return err
		}
		if done%4096 == 0 {
			if err := p.ctx.Err(); err != nil {
				return err
			}
		}
	}
	return nil
}

// pass reads a row without using it.
func (p *plyReader) pass(e plyElement) error {
	for _, property := range e.properties {
		if err := p.passProperty(property); err != nil {
			return err
		}
	}
	return nil
}

func (p *plyReader) passProperty(property plyProperty) error {
	count := int64(1)
	if property.list {
		var err error
		if count, err = p.source.length(property.count); err != nil {
			return err
		}
	}
	return p.source.skip(property.kind, count)
}

func (p *plyReader) vertex(e plyElement, axes [3]int) error {
	var v Point
	for i, property := range e.properties {
		axis := -1
		for k, a := range axes {
			if a == i {
				axis = k
			}
		}
		if axis < 0 {
			if err := p.passProperty(property); err != nil {
				return err
			}
			continue
		}
		value, err := p.source.value(property.kind)
		if err != nil {
			return err
		}
		if err := checkCoordinate(value, p.source.at()); err != nil {
			return err
		}
		v[axis] = value
	}
	return p.vertices.add(v, p.source.at())
}

func (p *plyReader) face(e plyElement, corners int) error {
	at := p.source.at()
	p.corners = p.corners[:0]
	for i, property := range e.properties {
		if i != corners {
			if err := p.passProperty(property); err != nil {
				return err
			}
			continue
		}
		count, err := p.source.length(property.count)
		if err != nil {
			return err
		}
		for range count {
			index, err := p.source.value(property.kind)
			if err != nil {
				return err
			}
			if index < 0 || index >= float64(p.vertices.count) || index != float64(int64(index)) {
				return fault("unknown_reference", at, "a facet refers to vertex %g, and %d have been read before it, counted from 0", index, p.vertices.count).counted(int64(index), p.vertices.count)
			}
			if err := p.addCorner(p.vertices.at(int64(index)), at); err != nil {
				return err
			}
		}
	}
	if err := p.enoughCorners(at); err != nil {
		return err
	}
	return p.emit(at, 0)
}
