package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"time"
)

// A Result is what became of a fault.
type Result struct {
	Fault
	Package string        // of the fault
	Caught  bool          //
	By      string        // package and test that caught it
	Limit   string        // "time" or "memory", where it was caught by running out of it
	Took    time.Duration //
}

// measure runs all tests without any fault: they must pass, or a fault would be
// caught by what is broken anyway. How long each package takes is the order in
// which packages are asked later.
func (h *House) measure(ctx context.Context) error {
	v, err := h.test(ctx, "", "./...", "")
	switch {
	case err != nil:
		return err
	case v.unbuilt != "":
		return fmt.Errorf("without any fault the tests do not build:\n%s", v.unbuilt)
	case v.failed:
		return fmt.Errorf("without any fault a test fails: %s", v.by)
	}
	for name, p := range h.packages {
		p.usual = v.took[name]
	}
	return nil
}

// run tries every fault and prints each as it is done, in whatever order.
func (h *House) run(ctx context.Context, faults []Fault) ([]Result, error) {
	results := make([]Result, len(faults))
	problems := make([]error, len(faults))
	next := make(chan int)
	var all sync.WaitGroup
	for range abreast {
		all.Go(func() {
			for i := range next {
				results[i], problems[i] = h.tryOne(ctx, faults[i])
				if problems[i] == nil {
					fmt.Println(results[i])
				}
			}
		})
	}
	for i := range faults {
		next <- i
	}
	close(next)
	all.Wait()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return results, errors.Join(problems...)
}

// tryOne asks the tests of the fault's own package, then those of the packages that
// are built from it, until one fails.
func (h *House) tryOne(ctx context.Context, f Fault) (Result, error) {
	if ctx.Err() != nil {
		return Result{}, ctx.Err()
	}
	began := time.Now()
	overlay, err := h.overlay(f)
	if err != nil {
		return Result{}, err
	}
	defer os.RemoveAll(filepath.Dir(overlay))
	own := h.of(f.File)
	result := Result{Fault: f, Package: h.short(own)}
	for _, p := range h.testers(own) {
		v, err := h.testTwice(ctx, overlay, p.ImportPath)
		if err != nil {
			return result, fmt.Errorf("%s: %w", f.ID, err)
		}
		if v.unbuilt != "" {
			return result, fmt.Errorf("faults.txt:%d: %s does not compile:\n%s", f.Line, f.ID, v.unbuilt)
		}
		if v.failed {
			result.Caught, result.By, result.Limit = true, v.by, v.limit
			break
		}
	}
	result.Took = time.Since(began)
	return result, nil
}

// testTwice runs the tests of a package, and the one that fails once more: a test
// that fails now and then on a busy machine has seen nothing. What ran out of time
// or memory is taken at its word.
func (h *House) testTwice(ctx context.Context, overlay, name string) (verdict, error) {
	for range 3 {
		first, err := h.test(ctx, overlay, name, "")
		if err != nil || !first.failed || first.limit != "" {
			return first, err
		}
		run, _, _ := strings.Cut(first.test, "/")
		again, err := h.test(ctx, overlay, name, run)
		if err != nil || again.failed {
			return first, err
		}
		fmt.Printf("           fails and passes with one fault, which says nothing: %s\n", first.by)
	}
	return verdict{}, nil
}

// A verdict is what one call of go test says.
type verdict struct {
	failed  bool
	by      string // package and test that failed first
	test    string // the test alone; empty where none is named
	limit   string // "time" or "memory", where the test ran out of it
	killed  bool   // from outside, which says nothing
	unbuilt string // what the compiler said, where it did not build
	took    map[string]time.Duration
}

// test runs the tests of a package, or of all of them, under an overlay if there is
// one. A test that takes ten times as long as it does without a fault, and five
// minutes, is taken to run for ever. With the name of a test only that one is run. Vet is
// left out: what it sees is no test's work.
func (h *House) test(ctx context.Context, overlay, name, run string) (verdict, error) {
	limit := 30 * time.Minute
	args := []string{"test", "-json", "-failfast", "-vet=off"}
	if p := h.packages[name]; p != nil {
		limit = 5*time.Minute + 10*p.usual
	}
	if overlay != "" {
		args = append(args, "-p=1", "-overlay", overlay)
	}
	if run != "" {
		args = append(args, "-count=1", "-run", "^"+regexp.QuoteMeta(run)+"$")
	}
	c := h.command(ctx, append(args, "-timeout", limit.String(), name)...)
	var complaint bytes.Buffer
	c.Stderr = &complaint
	out, err := c.Output()
	if ctx.Err() != nil {
		return verdict{}, ctx.Err()
	}
	v, readErr := readEvents(out)
	if readErr != nil {
		return v, readErr
	}
	if err != nil && !v.failed && v.unbuilt == "" {
		return v, fmt.Errorf("go test %s: %w\n%s", name, err, complaint.Bytes())
	}
	if v.killed && v.limit == "" {
		return v, fmt.Errorf("go test %s was killed from outside, perhaps because the memory of the machine is full", name)
	}
	if v.by = strings.TrimPrefix(v.by, h.module+"/"); err == nil && v.failed {
		return v, fmt.Errorf("go test %s fails and is content at once", name)
	}
	return v, nil
}

// An event is a line of `go test -json`: see `go doc test2json` and, for the build,
// `go help buildjson`.
type event struct {
	Action, Package, Test, Output, FailedBuild string
	Elapsed                                    float64
}

// readEvents sums them up. The time of a package is that of its tests, which stays
// known where the go command did not run them again.
func readEvents(out []byte) (verdict, error) {
	v := verdict{took: make(map[string]time.Duration)}
	var build strings.Builder
	unbuilt := false
	at := "" // the test that said something last
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var e event
		if err := d.Decode(&e); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return v, fmt.Errorf("go test -json: %w", err)
		}
		switch {
		case e.Action == "build-output":
			build.WriteString(e.Output)
		case e.Action == "build-fail" || e.FailedBuild != "":
			unbuilt = true
		case e.Action == "output":
			v.readOutput(e.Output)
			if e.Test != "" {
				at = e.Test
			}
		case e.Action == "fail":
			if !v.failed {
				v.test = cmp.Or(e.Test, at)
				v.by = e.Package + " " + v.test
			}
			v.failed = true
		case e.Action == "pass" && e.Test != "" && !strings.Contains(e.Test, "/"):
			v.took[e.Package] += time.Duration(e.Elapsed * float64(time.Second))
		}
	}
	if unbuilt {
		v.unbuilt = build.String() + " "
	}
	return v, nil
}

// readOutput looks for the last words of a test that was ended.
func (v *verdict) readOutput(line string) {
	switch {
	case strings.HasPrefix(line, "panic: test timed out"), strings.HasPrefix(line, "*** Test killed"):
		v.limit = "time"
	case strings.HasPrefix(line, "fatal error: ") && strings.Contains(line, "memory"):
		v.limit = "memory"
	case strings.HasPrefix(line, "signal: killed"):
		v.killed = true
	}
}

// String is the line that is printed when the fault has been tried.
func (r Result) String() string {
	if !r.Caught {
		return fmt.Sprintf("%7.1f s  SURVIVES  %s", r.Took.Seconds(), r.ID)
	}
	by := r.By
	if r.Limit != "" {
		by += ", out of " + r.Limit
	}
	return fmt.Sprintf("%7.1f s  caught    %-32s %s", r.Took.Seconds(), r.ID, by)
}
