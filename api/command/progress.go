package command

import (
	"fmt"
	"io"
	"time"
)

// progress tells how far a long run is, once a second from the first on.
type progress struct {
	out         io.Writer
	start, last time.Time
	shown       bool
}

func progressOf(out io.Writer) *progress {
	now := time.Now()
	return &progress{out: out, start: now, last: now}
}

func (p *progress) report(done, total int) {
	if now := time.Now(); now.Sub(p.last) >= time.Second {
		p.last, p.shown = now, true
		left := time.Duration(float64(now.Sub(p.start)) * float64(total-done) / float64(done))
		fmt.Fprintf(p.out, "\r%3.0f %% of %d trials, %s left ", 100*float64(done)/float64(total), total, left.Round(time.Second))
	}
}

// end closes the line, where one was begun.
func (p *progress) end() {
	if p.shown {
		fmt.Fprintln(p.out)
	}
}
