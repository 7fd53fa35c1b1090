package mesh

import (
	"bufio"
	"encoding/binary"
	"errors"
	"io"
	"math"
)

// plyBinary reads the rows of a binary PLY of either byte order.
type plyBinary struct {
	from   *bufio.Reader
	offset int64
	order  binary.ByteOrder
	inRow  plyElement
	done   int64
}

func newPLYBinary(from *bufio.Reader, offset int64, big bool) *plyBinary {
	b := &plyBinary{from: from, offset: offset, order: binary.LittleEndian}
	if big {
		b.order = binary.BigEndian
	}
	return b
}

func (b *plyBinary) at() Place { return Place{Byte: b.offset} }

func (b *plyBinary) row(e plyElement, done int64) error {
	b.inRow, b.done = e, done
	return nil
}

func (b *plyBinary) endRow() error { return nil }

func (b *plyBinary) value(k plyKind) (float64, error) {
	data, err := b.from.Peek(k.bytes)
	if err != nil {
		return 0, b.ended(err)
	}
	var v float64
	switch {
	case k.float && k.bytes == 4:
		v = float64(math.Float32frombits(b.order.Uint32(data)))
	case k.float:
		v = math.Float64frombits(b.order.Uint64(data))
	default:
		v = float64(b.whole(data, k))
	}
	b.offset += int64(k.bytes)
	_, err = b.from.Discard(k.bytes)
	return v, err
}

func (b *plyBinary) whole(data []byte, k plyKind) int64 {
	switch {
	case k.bytes == 1 && k.signed:
		return int64(int8(data[0]))
	case k.bytes == 1:
		return int64(data[0])
	case k.bytes == 2 && k.signed:
		return int64(int16(b.order.Uint16(data)))
	case k.bytes == 2:
		return int64(b.order.Uint16(data))
	case k.signed:
		return int64(int32(b.order.Uint32(data)))
	}
	return int64(b.order.Uint32(data))
}

func (b *plyBinary) length(k plyKind) (int64, error) {
	at := b.at()
	v, err := b.value(k)
	if err == nil && v < 0 {
		err = fault("syntax", at, "a list has the length %g", v)
	}
	return int64(v), err
}

// skip passes over values in pieces, since a length may be anything.
func (b *plyBinary) skip(k plyKind, count int64) error {
	for left := count * int64(k.bytes); left > 0; {
		n, err := b.from.Discard(int(min(left, bufferBytes)))
		b.offset += int64(n)
		left -= int64(n)
		if err != nil {
			return b.ended(err)
		}
	}
	return nil
}

// ended makes a fault of the end of the file; other errors stay as they are.
func (b *plyBinary) ended(err error) error {
	if !errors.Is(err, io.EOF) {
		return err
	}
	return fault("truncated", b.at(), "the header counts %d rows of %s, but the file ends inside row %d; export it again", b.inRow.count, b.inRow.name, b.done+1).counted(b.inRow.count, b.done)
}

func (b *plyBinary) end(last plyElement) error {
	if _, err := b.from.Peek(1); err == nil {
		return fault("count_mismatch", b.at(), "the header counts %d rows of %s, but more bytes follow them; export the file again", last.count, last.name).counted(last.count, last.count+1)
	}
	return nil
}
