package mesh

// blockRecords is how many records of a binary STL are measured in one piece:
// what a buffer holds, however the file is read, so that the sums are the same.
const blockRecords = bufferBytes / stlRecord

// fast says whether records of a binary STL may be measured in blocks: only
// when nothing has to be known about the single facet.
func (m *meter) fast() bool {
	return m.store == nil && m.direction == nil && len(m.chosen) == 0
}

// block measures whole records at once: the same sums as facet, in a form that
// keeps up with the memory. It changes nothing and returns false when a
// coordinate is not a number or too large; the records are then taken one by
// one, which finds the place.
func (m *meter) block(data []byte) bool {
	if !m.started {
		m.start(stlCorner(data[12:]))
	}
	l := newLanes(m.origin)
	if !l.sum(data) {
		return false
	}
	m.take(l, len(data)/stlRecord)
	return true
}

// take adds the sums of a piece.
func (m *meter) take(l *lanes, facets int) {
	l.into(m)
	m.facets += int64(facets)
}
