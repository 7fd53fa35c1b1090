package mesh

import (
	"context"
	"errors"
	"io"
	"os"
	"runtime"
	"sync"
)

// mostReaders bounds how many pieces of a file are read at the same time.
const mostReaders = 8

// aheadOutcomes is how many pieces a reader may be ahead of the slowest.
const aheadOutcomes = 8

// outcome is what became of a piece of a file.
type outcome struct {
	lanes   *lanes // nil where a coordinate is at fault
	records int    // read; fewer than wanted where the file ends
	err     error
}

// stlFile measures the records of a binary STL in a file, by as many readers as
// there are processors. Reader k of n takes the pieces k, k+n, k+2n, …, and
// their sums are added in the order of the file.
func (r *reading) stlFile(count uint64) error {
	f := fileRecords{file: r.file, from: r.start + stlHeader, count: count, origin: r.meter.origin}
	ctx, cancel := context.WithCancel(r.ctx)
	var readers []chan outcome
	var working sync.WaitGroup
	number := uint64(min(runtime.GOMAXPROCS(0), mostReaders))
	for k := range number {
		outcomes := make(chan outcome, aheadOutcomes)
		readers = append(readers, outcomes)
		working.Go(func() { f.read(ctx, k, number, outcomes) })
	}
	defer working.Wait()
	defer cancel()
	for piece := uint64(0); piece*blockRecords < count; piece++ {
		select {
		case o := <-readers[piece%number]:
			if err := r.stlOutcome(&f, piece, o); err != nil {
				return err
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return f.nothingFollows()
}

// stlOutcome takes the sums of a piece, or finds what is wrong with it.
func (r *reading) stlOutcome(f *fileRecords, piece uint64, o outcome) error {
	if o.err != nil {
		return o.err
	}
	before := piece * blockRecords
	if o.lanes != nil {
		r.meter.take(o.lanes, o.records)
		r.contents.Facets += int64(o.records)
	} else {
		data := make([]byte, o.records*stlRecord)
		if _, err := f.file.ReadAt(data, f.at(before)); err != nil {
			return err
		}
		if err := r.stlSingly(data, before); err != nil {
			return err
		}
	}
	if read := before + uint64(o.records); o.records < f.wanted(piece) {
		return truncated(f.count, read)
	}
	return nil
}

// fileRecords are the records of a binary STL in a file.
type fileRecords struct {
	file   *os.File
	from   int64 // offset of the first
	count  uint64
	origin Point
}

func (f *fileRecords) at(record uint64) int64 { return f.from + int64(record)*stlRecord }

func (f *fileRecords) wanted(piece uint64) int {
	return int(min(blockRecords, f.count-piece*blockRecords))
}

// read measures every step-th piece until the file or the context ends.
func (f *fileRecords) read(ctx context.Context, first, step uint64, outcomes chan<- outcome) {
	buffer := make([]byte, blockRecords*stlRecord)
	for piece := first; piece*blockRecords < f.count; piece += step {
		o := f.measure(piece, buffer)
		select {
		case outcomes <- o:
		case <-ctx.Done():
			return
		}
		if o.records < f.wanted(piece) {
			return
		}
	}
}

func (f *fileRecords) measure(piece uint64, buffer []byte) outcome {
	n, err := f.file.ReadAt(buffer[:f.wanted(piece)*stlRecord], f.at(piece*blockRecords))
	if err != nil && !errors.Is(err, io.EOF) {
		return outcome{err: err}
	}
	o := outcome{records: n / stlRecord, lanes: newLanes(f.origin)}
	if !o.lanes.sum(buffer[:o.records*stlRecord]) {
		o.lanes = nil
	}
	return o
}

// nothingFollows refuses a file that goes on after its records.
func (f *fileRecords) nothingFollows() error {
	if n, _ := f.file.ReadAt(make([]byte, 1), f.at(f.count)); n > 0 {
		return bytesFollow(f.count)
	}
	return nil
}
