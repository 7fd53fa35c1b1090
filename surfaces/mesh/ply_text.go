package mesh

import (
	"errors"
	"io"
)

// plyText reads the rows of a text PLY: one a line, with exactly the values
// that the header declares.
type plyText struct {
	lines *lines
	rest  []byte
}

func (t *plyText) at() Place { return t.lines.at() }

func (t *plyText) row(e plyElement, done int64) error {
	for {
		line, err := t.lines.next()
		if errors.Is(err, io.EOF) {
			return fault("truncated", t.at(), "the header counts %d rows of %s, but the file ends after %d; export it again", e.count, e.name, done).counted(e.count, done)
		}
		if err != nil {
			return err
		}
		if word, _ := cutWord(line); len(word) > 0 {
			t.rest = line
			return nil
		}
	}
}

func (t *plyText) word() ([]byte, error) {
	var word []byte
	if word, t.rest = cutWord(t.rest); len(word) == 0 {
		return nil, fault("syntax", t.at(), "the row has fewer values than the header declares")
	}
	return word, nil
}

func (t *plyText) value(k plyKind) (float64, error) {
	word, err := t.word()
	if err != nil {
		return 0, err
	}
	if k.float {
		return coordinate(word, t.at())
	}
	v, ok := whole(word)
	if !ok || v > 1<<53 || v < -1<<53 {
		return 0, fault("syntax", t.at(), "%q stands where a whole number is expected", clip(word))
	}
	return float64(v), nil
}

func (t *plyText) length(plyKind) (int64, error) {
	word, err := t.word()
	if err != nil {
		return 0, err
	}
	n, ok := whole(word)
	if !ok || n < 0 {
		return 0, fault("syntax", t.at(), "%q stands where the length of a list is expected", clip(word))
	}
	return n, nil
}

func (t *plyText) skip(_ plyKind, count int64) error {
	for range count {
		if _, err := t.word(); err != nil {
			return err
		}
	}
	return nil
}

func (t *plyText) endRow() error {
	if word, _ := cutWord(t.rest); len(word) > 0 {
		return fault("syntax", t.at(), "%q stands after the last value of the row: it has more values than the header declares", clip(word))
	}
	return nil
}

func (t *plyText) end(last plyElement) error {
	for {
		line, err := t.lines.next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if word, _ := cutWord(line); len(word) > 0 {
			return fault("count_mismatch", t.at(), "the header counts %d rows of %s, but more follow; export the file again", last.count, last.name).counted(last.count, last.count+1)
		}
	}
}
