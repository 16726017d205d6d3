package district

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"noonbook/build/crew"
	"noonbook/build/file"
	"noonbook/build/output"
	"noonbook/build/plan"
	"noonbook/build/problem"
)

// An Order says what to press, and where to.
type Order struct {
	Out     string // the folder of the district
	Staff   bool   // the staff edition too
	Single  bool   // each edition also as one HTML file
	Zip     bool   // each edition as an archive, in the place of its folder
	Part    Part
	Program string // which noonbook this is; another one presses all schools again

	Skip     func(name string) bool   // of the content folder: what is no part of it
	Progress func(p Progress)         // unless nil it is told how far the work is, never twice at a time
	Kept     func(kept []output.Kept) // unless nil it is told of files that somebody saved meanwhile, never twice at a time
}

// A Part is a share of a list: number K of N shares that follow one another.
type Part struct{ K, N int }

// of returns which rows of a list are in the part.
func (p Part) of(rows int) (from, to int) {
	if p.N <= 1 {
		return 0, rows
	}
	return rows * (p.K - 1) / p.N, rows * p.K / p.N
}

// A Progress is how far the work is.
type Progress struct {
	Done, Of int // schools
	Pressed  int // of those done
}

// A Tally is what came of a pressing.
type Tally struct {
	Schools, Pressed, Unchanged, Bad int
	Gone                             []string // schools that are no longer in the list
	Problems                         problem.List
	Faults, Warnings                 int // of all schools, where Problems tells many at once
}

func (o Order) editions() []plan.Edition {
	if o.Staff {
		return []plan.Edition{plan.Class, plan.Staff}
	}
	return []plan.Edition{plan.Class}
}

func suffix(edition plan.Edition) string {
	if edition == plan.Staff {
		return staffSuffix
	}
	return ""
}

// Press presses the schools of the order's part and writes the board's page. Each school
// is whole or as it was, whenever the work ends. The error is what the machine did; it
// ends the work.
func (d *District) Press(ctx context.Context, o Order) (Tally, error) {
	if err := mayWrite(o.Out); err != nil {
		return Tally{}, err
	}
	if err := os.MkdirAll(filepath.Join(o.Out, recordFolder), 0o777); err != nil {
		return Tally{}, fmt.Errorf("making %s: %w", o.Out, err)
	}
	shared, err := d.sumOf(o)
	if err != nil {
		return Tally{}, err
	}
	schools, err := d.survey()
	if err != nil {
		return Tally{}, err
	}
	from, to := o.Part.of(len(d.list.rows))
	run := &run{District: d, order: o, shared: shared}
	run.tally.Schools = to - from
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	crew.Each(to-from, run.progress, func(i int) {
		if ctx.Err() != nil {
			return
		}
		if err := run.school(ctx, from+i); err != nil {
			stop(err)
		}
	})
	if ctx.Err() != nil {
		return run.told(), context.Cause(ctx)
	}
	if run.tally.Pressed+run.tally.Unchanged == 0 { // what is wrong is wrong with all; the page would lead nowhere
		return run.told(), nil
	}
	page, err := d.page(o, schools)
	if err != nil {
		return run.told(), err
	}
	kept, err := output.WritePage(ctx, filepath.Join(o.Out, boardsOwn+".html"), page, filepath.Join(o.Out, recordFolder))
	if o.Kept != nil && len(kept) > 0 {
		o.Kept(kept)
	}
	if err != nil {
		return run.told(), err
	}
	run.tally.Gone, err = d.gone(o.Out)
	return run.told(), err
}

// A run is one pressing of a part.
type run struct {
	*District
	order  Order
	shared []byte // checksum of what all schools share

	lock  sync.Mutex // of what follows
	tally Tally
	says  telling
}

func (r *run) progress(begun, of int) {
	if r.order.Progress == nil {
		return
	}
	r.lock.Lock()
	pressed := r.tally.Pressed
	r.lock.Unlock()
	r.order.Progress(Progress{begun, of, pressed})
}

func (r *run) told() Tally {
	r.tally.Problems, r.tally.Faults, r.tally.Warnings = r.says.list(r.District)
	return r.tally
}

// school presses one school, unless it is unchanged or has a fault.
func (r *run) school(ctx context.Context, i int) error {
	row := &r.list.rows[i]
	given, settings, problems, err := r.checked(row)
	if err != nil {
		return err
	}
	if problems.Faults() > 0 {
		r.bad(i, problems)
		return nil
	}
	sum := r.sumOfRow(r.shared, row)
	if r.District.unchanged(r.order, row.folder, sum) {
		r.lock.Lock()
		r.tally.Unchanged++
		r.lock.Unlock()
		return nil
	}
	unit, err := r.read(given, settings, r.order.editions())
	if err != nil {
		return err
	}
	problems = append(problems, r.here(row, unit.problems)...)
	var books []output.Edition
	known := r.common.Known()
	for n, p := range unit.plans {
		files, found := p.PressKnowing(settings, known)
		problems = append(problems, r.here(row, found)...)
		if len(files) == 0 && problems.Faults() == 0 { // an empty handbook must never take the place of a whole one
			return errors.New("laying out a handbook: the settings lack what it needs, and no problem was found")
		}
		books = append(books, r.book(row.folder, r.order.editions()[n], files))
	}
	if problems.Faults() > 0 {
		r.bad(i, problems)
		return nil
	}
	return r.write(ctx, i, sum, books, problems)
}

func (r *run) book(name string, edition plan.Edition, files []file.File) output.Edition {
	return output.Edition{Folder: filepath.Join(r.order.Out, name+suffix(edition)), Files: files,
		Single: r.order.Single, Zip: r.order.Zip, Loose: r.order.Zip, Bench: recordOf(r.order.Out, name)}
}

// write puts the handbooks of a school in place, and notes what went into them.
func (r *run) write(ctx context.Context, i int, sum string, books []output.Edition, problems problem.List) error {
	row := &r.list.rows[i]
	if err := os.MkdirAll(recordOf(r.order.Out, row.folder), 0o777); err != nil {
		return fmt.Errorf("making a folder: %w", err)
	}
	kept, err := output.Write(ctx, books...)
	if len(kept) > 0 && r.order.Kept != nil {
		r.lock.Lock()
		r.order.Kept(kept)
		r.lock.Unlock()
	}
	if errors.Is(err, output.ErrNotOurs) {
		problems.Add(r.list.at(row, 0), "%v", err)
		r.bad(i, problems)
		return nil
	}
	if err != nil {
		return err
	}
	if err := r.record(r.order, row.folder, sum); err != nil {
		return err
	}
	r.lock.Lock()
	defer r.lock.Unlock()
	r.tally.Pressed++
	r.says.add(r.District, i, problems)
	return nil
}

func (r *run) bad(i int, problems problem.List) {
	r.lock.Lock()
	defer r.lock.Unlock()
	r.tally.Bad++
	r.says.add(r.District, i, problems)
}

// Proof checks the rows of the list and reads no lesson.
func (d *District) Proof() (Tally, error) {
	var says telling
	tally := Tally{Schools: len(d.list.rows)}
	for i := range d.list.rows {
		_, _, problems, err := d.checked(&d.list.rows[i])
		if err != nil {
			return Tally{}, err
		}
		if problems.Faults() > 0 {
			tally.Bad++
		}
		says.add(d, i, problems)
	}
	tally.Problems, tally.Faults, tally.Warnings = says.list(d)
	return tally, nil
}
