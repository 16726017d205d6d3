package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"noonbook/build/desk"
	"noonbook/build/form"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/register"
	"noonbook/build/school"
	"noonbook/build/source"
	starting "noonbook/build/starter"
	"noonbook/compute/place"
	"noonbook/content"
)

// offer lays the pages to type on on the desk. after is done when something was
// saved and pressed at the desk, nil for nothing.
func (t *tender) offer(after func()) {
	pages := register.New()
	pages.Folder = t.unitFolder
	pages.Begin = t.begin
	pages.Fresh = freshSettings()
	pages.Whole = t.desk.Whole
	pages.Today = func() place.Date {
		y, m, d := time.Now().Date()
		return place.Date{Year: y, Month: m, Day: d}
	}
	pages.Press = func() {
		t.again()
		if after != nil {
			after()
		}
	}
	t.desk.Offer(pages)
}

// freshSettings are those that a new unit has from its lessons.
func freshSettings() form.Values {
	theirs, _, err := source.ReadSettings(content.Files(), demoRoot)
	if err != nil {
		return nil // the demo is part of the program
	}
	return form.Values{
		school.UnitTitle.Name():   school.UnitTitle.Of(theirs),
		school.UnitSummary.Name(): school.UnitSummary.Of(theirs),
	}
}

// begin lays a whole unit out in the folder content, and goes on with it.
func (t *tender) begin(settings form.Values) error {
	t.mu.Lock()
	defer t.mu.Unlock()
	if !t.waiting {
		return errors.New("there is a unit already; load the page again")
	}
	if err := freeFolder(defaultFolder); err != nil {
		return err
	}
	unit, problems, err := starting.Lay(content.Files(), settings, defaultFolder)
	if err != nil {
		return err
	}
	if problems.Faults() > 0 {
		return problems
	}
	if err := writeUnit(defaultFolder, unit); err != nil {
		return err
	}
	t.folder, t.waiting = defaultFolder, false
	fmt.Fprintf(t.out, "your unit is in the folder %s\n", defaultFolder)
	tellEnglish(t.out, settings)
	return nil
}

// tellEnglish says that a French school gets English lessons.
func tellEnglish(out io.Writer, settings form.Values) {
	if school.Language.Of(settings) == "fr" {
		fmt.Fprintln(out, "the lessons are in English, for you to translate; what noonbook adds is in French")
	}
}

// formTitle is what pages at the desk call the page to type on.
func formTitle(unit *source.Unit) string {
	words, err := wordsOf(unit.Settings)
	if err != nil {
		return ""
	}
	return words.Say("form.title")
}

// newcomer is for somebody who started the program without a unit: it shows a page to
// fill in, lays the unit out when that is saved, and presses the handbook. It ends with
// the context.
func newcomer(ctx context.Context, folder string, show func(address string) error, out, errs io.Writer) error {
	if err := os.Chdir(folder); err != nil {
		return fmt.Errorf("working in %s: %w", folder, err)
	}
	t := &tender{waiting: true, edition: plan.Class, desk: desk.New(), out: out, errs: errs}
	if entries, err := os.ReadDir(defaultFolder); err == nil && len(entries) > 0 {
		t.folder, t.waiting = defaultFolder, false // lessons that have no unit.toml yet
	}
	return t.host(ctx, desk.Start, "This window makes your handbook", "fill it in and save it", show)
}

// homecomer is for somebody who started the program where a unit is: it presses the
// handbook, and shows it at the desk, from where the page to change it is at hand. Where
// there are problems, it shows that page. It ends with the context.
func homecomer(ctx context.Context, at spot, show func(address string) error, out, errs io.Writer) error {
	err := alone(ctx, at, func(string) error { return nil }, out, errs)
	var problems problem.List
	if err != nil && !errors.As(err, &problems) {
		return err
	}
	t := &tender{folder: at.content, edition: plan.Class, desk: desk.New(), out: out, errs: errs}
	t.again() // which tells the problems
	if err != nil {
		return t.host(ctx, desk.Start, "This window makes your handbook, once the problems above are mended", "it mends what is wrong in unit.toml; lessons are mended with a text editor", show)
	}
	return t.host(ctx, "", "This window has made your handbook", "from there you can change what is true of your school", show)
}

// unseen is how long a desk without a window waits for somebody.
const unseen = 3 * time.Hour

// host shows a page of the desk, and says in the window what that is, what to do and how
// to end it.
func (t *tender) host(ctx context.Context, page, does, then string, show func(address string) error) error {
	out := t.out
	t.offer(func() { t.toDisk(ctx) })
	if !answers(os.Stdout) && !ownWindow() {
		t.idle = unseen // nobody could end it
	}
	listener, address, err := t.listen(0)
	if err != nil {
		return err
	}
	here, err := filepath.Abs(".")
	if err != nil {
		return fmt.Errorf("finding the folder: %w", err)
	}
	fmt.Fprint(out, folded(out, fmt.Sprintf("%s, in the folder %s. A page opens in your browser: %s. Keep this window open meanwhile; close it, or press Ctrl-C in it, when you are done. Nobody but this computer can see the page.\n", does, here, then)))
	fmt.Fprintf(out, "\nthe page: %s%s\n", address, page)
	if err := show(address + page); err != nil {
		fmt.Fprintf(out, "no browser could be started (%v); open that address in one\n", err)
	}
	return t.serve(ctx, listener, t.look())
}

// toDisk presses the handbook beside the unit, where it is found without the desk.
func (t *tender) toDisk(ctx context.Context) {
	if !t.desk.Whole() {
		return // its problems are told
	}
	if err := press(ctx, []string{"--content", t.unitFolder()}, t.out, io.Discard); err != nil {
		exitCode(err, t.errs)
	}
}

func (t *tender) unitFolder() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.folder
}

// home is where a newcomer's unit is laid out: the working folder; or that of the
// program, where a system started it in the person's own folder or at the root.
func home(working, program, own string, writable func(string) bool) string {
	root := filepath.Dir(working) == working
	if program != "" && program != working && (working == "" || root || working == own) && writable(program) {
		return program
	}
	return working
}

// newHome is home for this process.
func newHome() (string, error) {
	working, err := os.Getwd()
	if err != nil {
		working = ""
	}
	program := ""
	if file, err := os.Executable(); err == nil {
		program = filepath.Dir(file)
	}
	own, err := os.UserHomeDir()
	if err != nil {
		own = ""
	}
	folder := home(working, program, own, canWrite)
	if folder == "" {
		return "", fmt.Errorf("finding a folder for the unit: %w", fs.ErrNotExist)
	}
	return folder, nil
}

// canWrite reports whether a file can be made in the folder.
func canWrite(folder string) bool {
	f, err := os.CreateTemp(folder, ".noonbook-*")
	if err != nil {
		return false
	}
	return errors.Join(f.Close(), os.Remove(f.Name())) == nil
}

// attended reports whether somebody is there to see a page: at a terminal, in a window
// of the program's own, or at a desktop.
func attended() bool {
	return answers(os.Stdout) || ownWindow() || os.Getenv("DISPLAY")+os.Getenv("WAYLAND_DISPLAY") != ""
}
