package mesh

import "io"

// aheadPieces is how many pieces of bufferBytes are read before they are asked
// for.
const aheadPieces = 4

// ahead reads a file while what was read before is measured, so that a large
// file takes the longer of the two times and not their sum. It is used for
// files alone: a network connection may keep a read waiting.
type ahead struct {
	full  chan piece
	empty chan []byte
	stop  chan struct{}
	now   piece
	from  int // read so far of now
}

type piece struct {
	data []byte
	err  error // after data
}

// readAhead starts the reading; end must be called before r is used again.
func readAhead(r io.Reader) *ahead {
	a := &ahead{full: make(chan piece, aheadPieces), empty: make(chan []byte, aheadPieces), stop: make(chan struct{})}
	for range aheadPieces {
		a.empty <- make([]byte, bufferBytes)
	}
	go a.fill(r)
	return a
}

func (a *ahead) fill(r io.Reader) {
	defer close(a.full)
	for {
		select {
		case <-a.stop:
			return
		case buffer := <-a.empty:
			n, err := r.Read(buffer)
			a.full <- piece{buffer[:n], err} // has room: there are no more pieces than places
			if err != nil {
				return
			}
		}
	}
}

func (a *ahead) Read(p []byte) (int, error) {
	for a.from == len(a.now.data) {
		if a.now.err != nil {
			return 0, a.now.err
		}
		if a.now.data != nil {
			a.empty <- a.now.data[:cap(a.now.data)]
		}
		next, open := <-a.full
		if !open {
			return 0, io.ErrUnexpectedEOF
		}
		a.now, a.from = next, 0
	}
	n := copy(p, a.now.data[a.from:])
	a.from += n
	return n, nil
}

// end stops the reading and waits until it has stopped.
func (a *ahead) end() {
	close(a.stop)
	for range a.full {
		continue // thrown away
	}
}
