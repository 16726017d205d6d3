package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"time"

	"noonbook/build/district"
	"noonbook/build/output"
	"noonbook/build/placeholder"
	"noonbook/theme"
)

// mostList bounds a list of schools in bytes: some hundred thousand rows.
const mostList = 64 << 20

// The soft limit of what a district takes: for the plans that it keeps, and for each school
// that is pressed at the same time, with room between two collections of garbage.
const (
	districtMemory = 112 << 20
	schoolMemory   = 16 << 20
)

// errTold says that the problems were told already.
var errTold = errors.New("some schools have problems")

// pressDistrict presses the unit of a folder for every school of a list.
func pressDistrict(ctx context.Context, folder, schools string, order district.Order, out, errs io.Writer) error {
	begin := time.Now()
	if os.Getenv("GOMEMLIMIT") == "" { // more plans are kept as more schools are pressed, but not more memory is used
		debug.SetMemoryLimit(districtMemory + int64(runtime.GOMAXPROCS(0))*schoolMemory)
	}
	d, closing, err := districtOf(folder, schools)
	if err != nil {
		return err
	}
	defer closing()
	if order.Program, err = programSum(); err != nil {
		return err
	}
	order.Skip = skipped(chosen(folder), order.Out, schools)
	watch := progressOn(errs)
	defer watch.end()
	order.Progress = func(p district.Progress) { watch.say(paced(p, time.Since(begin))) }
	order.Kept = func(kept []output.Kept) { watch.end(); tellKept(errs, kept) }
	tally, err := d.Press(ctx, order)
	watch.end()
	tellSchools(errs, tally)
	if err != nil {
		return err
	}
	if n := len(tally.Gone); n > 0 && order.Part.K <= 1 {
		fmt.Fprint(out, folded(out, fmt.Sprintf("no longer in %s, left as they are: %s\n", schools, some(tally.Gone, 12))))
	}
	words := []string{fmt.Sprintf("%d pressed", tally.Pressed), fmt.Sprintf("%d unchanged", tally.Unchanged)}
	if tally.Bad > 0 {
		words = append(words, fmt.Sprintf("%d with problems", tally.Bad))
	}
	where := ": open " + filepath.Join(order.Out, "index.html")
	if tally.Pressed+tally.Unchanged == 0 {
		where = ""
	}
	fmt.Fprintf(out, "%s: %s, %s in %.1f s%s\n", counted(tally.Schools, "school"), strings.Join(words, ", "), counted(tally.Warnings, "warning"), time.Since(begin).Seconds(), where)
	if tally.Bad > 0 {
		return errTold
	}
	return nil
}

// proofDistrict reads the list beside the unit, checks every row and writes nothing.
func proofDistrict(folder, schools string, out io.Writer) error {
	d, closing, err := districtOf(folder, schools)
	if err != nil {
		return err
	}
	defer closing()
	tally, err := d.Proof()
	if err != nil {
		return err
	}
	tellSchools(out, tally)
	fmt.Fprintf(out, "%s: %d with problems, %s\n", counted(tally.Schools, "school"), tally.Bad, counted(tally.Warnings, "warning"))
	if tally.Bad > 0 {
		return errTold
	}
	return nil
}

// districtOf reads the list of schools beside the folder of their unit.
func districtOf(folder, schools string) (*district.District, func() error, error) {
	src, err := readList(schools)
	if err != nil {
		return nil, nil, err
	}
	list, problems := district.ReadList(schools, src)
	if list == nil {
		return nil, nil, problems
	}
	files, root, closing, err := open(folder)
	if err != nil {
		return nil, nil, err
	}
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		return nil, nil, errors.Join(err, closing())
	}
	d, problems, err := district.New(district.Unit{Folder: files, Root: root, Own: own, Catalogue: placeholder.Catalogue(), Words: wordsOf}, list)
	if err != nil || d == nil {
		if err == nil {
			err = problems
		}
		return nil, nil, errors.Join(err, closing())
	}
	return d, closing, nil
}

func readList(name string) ([]byte, error) {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, usage{fmt.Errorf("there is no list %s", name)}
	case err != nil:
		return nil, fmt.Errorf("reading %s: %w", name, err)
	case !info.Mode().IsRegular():
		return nil, usage{fmt.Errorf("the list %s is no file", name)}
	case info.Size() > mostList:
		return nil, usage{fmt.Errorf("the list %s has %d MB; up to %d are read", name, info.Size()>>20, mostList>>20)}
	}
	src, err := os.ReadFile(name)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	return src, nil
}

// partOf reads a share of the list, such as 3/16.
func partOf(text string) (district.Part, error) {
	if text == "" {
		return district.Part{K: 1, N: 1}, nil
	}
	first, second, ok := strings.Cut(text, "/")
	k, errK := strconv.Atoi(first)
	n, errN := strconv.Atoi(second)
	if !ok || errK != nil || errN != nil || k < 1 || n < k || n > 1e6 {
		return district.Part{}, usage{fmt.Errorf("press: --part %s is no share of the list; the third of sixteen is --part 3/16", text)}
	}
	return district.Part{K: k, N: n}, nil
}

// programSum is the checksum of this program, which holds its theme.
func programSum() (string, error) {
	name, err := os.Executable()
	if err != nil {
		return "", fmt.Errorf("finding this program: %w", err)
	}
	file, err := os.Open(name)
	if err != nil {
		return "", fmt.Errorf("reading this program: %w", err)
	}
	defer file.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, file); err != nil {
		return "", fmt.Errorf("reading this program: %w", err)
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// skipped tells what of the content folder is no content: the folder that is written, and
// the list.
func skipped(folder string, others ...string) func(name string) bool {
	base, err := filepath.Abs(folder)
	if folder == "" || err != nil {
		return nil
	}
	names := map[string]bool{}
	for _, other := range others {
		if full, err := filepath.Abs(other); err == nil {
			if within, err := filepath.Rel(base, full); err == nil {
				names[filepath.ToSlash(within)] = true
			}
		}
	}
	return func(name string) bool { return names[name] }
}

// paced says how far the work is, how quick it is, and how long it goes on.
func paced(p district.Progress, lasted time.Duration) string {
	text := fmt.Sprintf("pressing: %d of %d schools", p.Done, p.Of)
	if p.Pressed < 3 || lasted < time.Second {
		return text + " …"
	}
	left := time.Duration(float64(lasted) / float64(p.Done) * float64(p.Of-p.Done))
	return fmt.Sprintf("%s, %.1f a second, %s left", text, float64(p.Pressed)/lasted.Seconds(), left.Round(time.Second))
}

// tellSchools tells what is wrong with the schools, each thing once.
func tellSchools(out io.Writer, tally district.Tally) {
	pen, files := penFor(out), &shelf{}
	for _, p := range tally.Problems.Shown() {
		pen.problem(p, files)
	}
}

// some names the first of many.
func some(names []string, most int) string {
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}
