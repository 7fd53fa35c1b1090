package mesh

import (
	"encoding/binary"
	"errors"
	"io"
	"math"
)

// stlBinary reads the facets after an 84-byte header. The count of the header
// says when to stop and is held against what is there; nothing is allocated
// from it.
func (r *reading) stlBinary(count uint64) error {
	r.contents.Format = FormatSTLBinary
	if _, err := r.addSolid("", Place{}); err != nil {
		return err
	}
	if _, err := r.from.Discard(stlHeader); err != nil {
		return err
	}
	if r.meter != nil {
		r.meter.expect(count)
	}
	if count == 0 {
		if _, err := r.from.Peek(1); err == nil {
			return fault("count_mismatch", Place{Byte: 80}, "the header counts 0 facets, but more bytes follow; export the file again").counted(0, 1)
		}
		return nil
	}
	if r.inBlocks() && r.file != nil {
		first, err := r.from.Peek(stlRecord)
		if err != nil {
			return truncated(count, 0)
		}
		r.meter.start(stlCorner(first[12:]))
		return r.stlFile(count)
	}
	for read := uint64(0); read < count; {
		want := min(blockRecords, count-read)
		data, err := r.from.Peek(int(want) * stlRecord)
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		whole := len(data) / stlRecord
		if err := r.stlFacets(data[:whole*stlRecord], read); err != nil {
			return err
		}
		read += uint64(whole)
		if uint64(whole) < want {
			return truncated(count, read)
		}
		if _, err := r.from.Discard(len(data)); err != nil {
			return err
		}
		if err := r.ctx.Err(); err != nil {
			return err
		}
	}
	if _, err := r.from.Peek(1); err == nil {
		return bytesFollow(count)
	}
	return nil
}

func truncated(count, read uint64) error {
	return fault("truncated", Place{Byte: int64(stlHeader + stlRecord*read)}, "the header counts %d facets, but the file ends after %d; export it again", count, read).counted(int64(count), int64(read))
}

func bytesFollow(count uint64) error {
	return fault("count_mismatch", Place{Byte: int64(stlHeader + stlRecord*count)}, "the header counts %d facets, but more bytes follow them; export the file again", count).counted(int64(count), int64(count)+1)
}

// inBlocks says whether records may be measured in blocks.
func (r *reading) inBlocks() bool { return r.meter != nil && r.meter.fast() }

// stlFacets passes on whole records, in one piece where the sink can take them
// so, otherwise one by one.
func (r *reading) stlFacets(data []byte, before uint64) error {
	if len(data) > 0 && r.inBlocks() && r.meter.block(data) {
		r.contents.Facets += int64(len(data) / stlRecord)
		return nil
	}
	return r.stlSingly(data, before)
}

// stlSingly passes on records one by one.
func (r *reading) stlSingly(data []byte, before uint64) error {
	for i := 0; i < len(data); i += stlRecord {
		at := Place{Byte: int64(stlHeader+stlRecord*before) + int64(i)}
		r.corners = r.corners[:0]
		for k := range 3 {
			p := stlCorner(data[i+12+12*k:])
			for _, v := range p {
				if err := checkCoordinate(v, at); err != nil {
					return err
				}
			}
			r.corners = append(r.corners, p)
		}
		if err := r.emit(at, 0); err != nil {
			return err
		}
	}
	return nil
}

func stlCorner(data []byte) (p Point) {
	for k := range p {
		p[k] = float64(float32At(data, 4*k))
	}
	return p
}

func float32At(data []byte, offset int) float32 {
	return math.Float32frombits(binary.LittleEndian.Uint32(data[offset:]))
}
