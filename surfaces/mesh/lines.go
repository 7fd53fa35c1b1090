package mesh

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// lines reads a text line by line, none longer than MaxLineBytes.
type lines struct {
	from   *bufio.Reader
	number int64 // of the line last returned
	bytes  int64 // read so far
	long   []byte
}

func newLines(from *bufio.Reader) *lines { return &lines{from: from} }

func (l *lines) at() Place { return Place{Line: max(l.number, 1)} }

// next returns the next line without its end, or io.EOF. The bytes are
// overwritten by the next call.
func (l *lines) next() ([]byte, error) {
	l.number++
	line, err := l.from.ReadSlice('\n')
	if errors.Is(err, bufio.ErrBufferFull) {
		if line, err = l.longLine(line); err != nil && !errors.Is(err, io.EOF) {
			return nil, err
		}
	}
	if err != nil && (!errors.Is(err, io.EOF) || len(line) == 0) {
		l.number-- // the place of the end is the last line there is
		return nil, err
	}
	l.bytes += int64(len(line))
	line = bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
	if l.number == 1 {
		line = bytes.TrimPrefix(line, []byte("\xef\xbb\xbf"))
	}
	for _, c := range line {
		if c == 0 || c == '\r' {
			return nil, l.notText(c)
		}
	}
	return line, nil
}

// longLine goes on with a line that is longer than the buffer.
func (l *lines) longLine(start []byte) ([]byte, error) {
	l.long = append(l.long[:0], start...)
	for {
		more, err := l.from.ReadSlice('\n')
		if len(l.long)+len(more) > MaxLineBytes {
			return nil, fault("line_too_long", l.at(), "the line is longer than %d bytes; a mesh in text form has short lines, so this may be another kind of file", MaxLineBytes)
		}
		l.long = append(l.long, more...)
		if !errors.Is(err, bufio.ErrBufferFull) {
			return l.long, err
		}
	}
}

func (l *lines) notText(c byte) error {
	if c == '\r' {
		return fault("syntax", l.at(), "a carriage return stands inside the line; end lines with a line feed")
	}
	return fault("wrong_format", l.at(), "a zero byte stands in the line, so this is not plain text; if it is UTF-16, save it as UTF-8")
}

// isSpace says whether a byte separates words.
func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\v' || c == '\f' }

// cutWord splits the first word off a line; the word is empty at its end.
func cutWord(line []byte) (word, rest []byte) {
	start := 0
	for start < len(line) && isSpace(line[start]) {
		start++
	}
	end := start
	for end < len(line) && !isSpace(line[end]) {
		end++
	}
	return line[start:end], line[end:]
}

// cutName makes a name out of the rest of a line.
func cutName(rest []byte) string {
	name := bytes.TrimSpace(rest)
	if len(name) > MaxNameBytes {
		name = name[:MaxNameBytes]
	}
	return string(bytes.ToValidUTF8(name, []byte("?")))
}

// clip shows a word in a message, cut where it is long.
func clip(word []byte) string {
	if len(word) > 40 {
		return string(bytes.ToValidUTF8(word[:40], []byte("?"))) + "…"
	}
	return string(bytes.ToValidUTF8(word, []byte("?")))
}
