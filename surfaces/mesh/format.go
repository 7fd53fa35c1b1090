package mesh

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
)

const (
	stlHeader = 84 // 80 bytes of anything and a count
	stlRecord = 50 // normal, three corners, two bytes
	peekBytes = 4096
)

// choose finds out what the file is and reads it. A binary STL is known by its
// length, 84 + 50·count bytes, whatever its first 80 bytes say: many begin
// with the word that marks the text form.
func (r *reading) choose(format string) error {
	head, err := r.from.Peek(peekBytes)
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	if len(head) == 0 {
		return fault("empty", Place{Line: 1}, "the file has no bytes")
	}
	switch format {
	case "", FormatSTL, FormatOBJ, FormatPLY:
	default:
		return fault("wrong_format", Place{Line: 1}, "%q is not a format of a mesh; the formats are stl, obj and ply", format)
	}
	if isUTF16(head) && format != FormatSTL {
		return fault("wrong_format", Place{Line: 1}, "the text is UTF-16; save it as UTF-8")
	}
	isPLY := bytes.HasPrefix(head, []byte("ply")) && len(head) > 3 && (head[3] == '\n' || head[3] == '\r')
	switch {
	case format == FormatPLY || (format == "" && isPLY):
		return r.ply()
	case format == FormatOBJ:
		return r.obj()
	case format == FormatSTL && isPLY && !r.sizeFits(head):
		return fault("wrong_format", Place{Line: 1}, "the file was given as STL but begins as a PLY does; name it .ply")
	case format == "" && !r.sizeFits(head) && !looksSTLText(head) && isText(head):
		return r.obj()
	}
	return r.stl(head)
}

func (r *reading) stl(head []byte) error {
	text := looksSTLText(head)
	if r.size > 0 {
		text = text && !r.sizeFits(head)
	}
	if text {
		return r.stlText()
	}
	count, stated := stlCount(head)
	if stated && isText(head) && !r.sizeFits(head) {
		return fault("wrong_format", Place{Line: 1}, "the file was given as STL and is text, but does not begin with the words solid and facet; give its real format")
	}
	if r.size > 0 && !r.sizeFits(head) {
		if !stated {
			return fault("wrong_format", Place{}, "the file has %d bytes: too short for a binary STL (%d at least) and without the words solid and facet of a text STL", r.size, stlHeader).counted(stlHeader, r.size)
		}
		want := stlHeader + stlRecord*count
		return fault("count_mismatch", Place{Byte: 80}, "this is neither a text STL (no solid and facet) nor a whole binary one: its header counts %d facets, which take %d bytes, and the file has %d; export it again", count, want, r.size).counted(int64(want), r.size)
	}
	if !stated {
		return fault("wrong_format", Place{}, "the file ends after %d bytes: too short for a binary STL (%d at least) and without the words solid and facet of a text STL", len(head), stlHeader).counted(stlHeader, int64(len(head)))
	}
	return r.stlBinary(count)
}

// stlCount returns the facets that the header of a binary STL counts.
func stlCount(head []byte) (count uint64, stated bool) {
	if len(head) < stlHeader {
		return 0, false
	}
	return uint64(binary.LittleEndian.Uint32(head[80:])), true
}

// sizeFits says whether the file has the length of a binary STL.
func (r *reading) sizeFits(head []byte) bool {
	count, stated := stlCount(head)
	return stated && r.size > 0 && uint64(r.size) == stlHeader+stlRecord*count
}

// looksSTLText says whether a file begins as a text STL does: plain text, the
// word solid first, and facet or endsolid further on.
func looksSTLText(head []byte) bool {
	word, _ := cutWord(bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), "\r\n\t "))
	word, _, _ = bytes.Cut(word, []byte("\n"))
	if !bytes.EqualFold(bytes.TrimSpace(word), []byte("solid")) || !isText(head) {
		return false
	}
	lower := bytes.ToLower(head)
	return bytes.Contains(lower, []byte("facet")) || bytes.Contains(lower, []byte("endsolid"))
}

// isText says whether bytes could be text: no control characters but those
// that lay it out.
func isText(head []byte) bool {
	for _, c := range head {
		if c < ' ' && c != '\n' && c != '\r' && !isSpace(c) {
			return false
		}
	}
	return true
}

func isUTF16(head []byte) bool {
	return bytes.HasPrefix(head, []byte{0xff, 0xfe}) || bytes.HasPrefix(head, []byte{0xfe, 0xff})
}
