package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
	"unicode/utf8"
)

// Progress is shown when a job has lasted this long, and then not more often.
const (
	slow    = 400 * time.Millisecond
	refresh = 80 * time.Millisecond
)

// A progress is one line of a terminal that says what a slow job is doing. The
// next message takes its place, and nothing of it is left in the end. In a pipe
// it says nothing. Editions that are made side by side share it.
type progress struct {
	lock  sync.Mutex
	out   io.Writer // nil where nobody watches
	now   func() time.Time
	begin time.Time
	last  time.Time
	shown int // columns on the line
}

func progressOn(out io.Writer) *progress {
	p := &progress{now: time.Now, begin: time.Now()}
	if isTerminal(out) && os.Getenv("TERM") != "dumb" {
		p.out = out
	}
	return p
}

// stage says what begins now.
func (p *progress) stage(what string) { p.say(what + " …") }

// step says how far a stage is.
func (p *progress) step(what string, done, of int) {
	p.say(fmt.Sprintf("%s: %d of %d", what, done, of))
}

func (p *progress) say(line string) {
	p.lock.Lock()
	defer p.lock.Unlock()
	now := p.now()
	if p.out == nil || now.Sub(p.begin) < slow || now.Sub(p.last) < refresh {
		return
	}
	p.last = now
	width := utf8.RuneCountInString(line)
	fmt.Fprint(p.out, "\r", line, strings.Repeat(" ", max(0, p.shown-width)))
	p.shown = width
}

// end takes the line away.
func (p *progress) end() {
	p.lock.Lock()
	defer p.lock.Unlock()
	if p.shown > 0 {
		fmt.Fprint(p.out, "\r", strings.Repeat(" ", p.shown), "\r")
		p.shown = 0
	}
}
