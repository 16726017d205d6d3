package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"noonbook/build/crew"
	"noonbook/build/file"
	"noonbook/build/output"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/source"
)

// defaultTarget is the folder that the handbook is written to.
const defaultTarget = "handbook"

const pressHelp = `noonbook press writes the handbook.

  noonbook press [FOLDER] [--out FOLDER] [--staff] [--single] [--zip]

It reads the lessons and unit.toml of the folder and writes ./handbook: the class
edition, safe to host, without answers. Open handbook/index.html in any browser;
no network is needed. Without a folder it reads ./content, or this folder where it
holds unit.toml, or else the demo unit, and says so.

  --content FOLDER   read this folder, another way to name it
  --out FOLDER       write this folder
  --staff            also write the staff edition, with answers, to FOLDER-staff
  --single           also write each edition as one HTML file to mail, FOLDER.html:
                     all pages and pictures in it; printed from its cover it is the
                     whole handbook, printed from a page it is that page
  --zip              also pack each edition into FOLDER.zip, to upload or hand over;
                     the same handbook is the same zip, byte for byte

The old handbook is replaced only when nothing is wrong, and all that you asked
for together. If noonbook is cut off, every page is still the old one or the new
one, and the next press sorts out the rest (it may find a hidden folder
.noonbook-press). A folder with files that noonbook did not write is never
touched, nor is such a file where FOLDER.html or FOLDER.zip would stand.
Exit 0: done; 1: problems in the content; 2: wrong use; 3: the machine failed.
`

func press(ctx context.Context, args []string, out, errs io.Writer) error {
	begin := time.Now()
	flags := flag.NewFlagSet("press", flag.ContinueOnError)
	flagged := flags.String("content", "", "")
	target := flags.String("out", defaultTarget, "")
	staff := flags.Bool("staff", false, "")
	single := flags.Bool("single", false, "")
	packed := flags.Bool("zip", false, "")
	words, err := parse(flags, args, out, errs, pressHelp)
	if err != nil {
		return err
	}
	folder, err := oneFolder("press", *flagged, words)
	if err != nil {
		return err
	}
	noteDemo(errs, folder)
	watch := progressOn(errs)
	defer watch.end()
	known := &entry.Known{}
	unit, problems, err := readHere(folder, known)
	if err != nil {
		return err
	}
	if problems.Faults() > 0 {
		return problems
	}
	editions := []plan.Edition{plan.Class}
	if *staff {
		editions = append(editions, plan.Staff)
	}
	var plans [2]*plan.Plan
	var pressings [2][]file.File
	var found [2]problem.List
	var failed [2]error
	crew.Each(len(editions), nil, func(i int) {
		plans[i], pressings[i], found[i], failed[i] = pressed(unit, editions[i], nil, known, watch)
	})
	for i := range editions {
		if failed[i] != nil {
			return failed[i]
		}
		problems = append(problems, found[i]...)
		if len(pressings[i]) == 0 && problems.Faults() == 0 { // an empty handbook must never take the place of a whole one
			return errors.New("laying out the handbook: the settings lack what it needs, and no problem was found")
		}
	}
	problems = problems.Sorted()
	if problems.Faults() > 0 {
		return problems
	}
	watch.end()
	pen, shelf := penFor(errs), &shelf{}
	for _, p := range problems.Shown() {
		pen.problem(p, shelf)
	}
	pages, bytes := 0, 0
	var books []output.Edition
	for i, edition := range editions {
		book := output.Edition{Folder: *target, Files: pressings[i], Single: *single, Zip: *packed}
		if edition == plan.Staff {
			book.Folder = filepath.Clean(*target) + "-staff"
		}
		books = append(books, book)
		pages += pagesAmong(book.Files)
		for _, f := range book.Files {
			bytes += len(f.Bytes)
		}
	}
	watch.stage("writing " + *target)
	kept, err := output.Write(ctx, books...)
	watch.end()
	tellKept(errs, kept)
	if err != nil {
		return err
	}
	tellGone(out, unit)
	fmt.Fprintf(out, "%s, %s, %s, %.0f kB in %.0f ms: open %s\n",
		counted(pages, "page"), counted(plans[len(editions)-1].Asks(), "computed value"), counted(len(problems), "warning"),
		float64(bytes)/1e3, float64(time.Since(begin).Microseconds())/1e3, filepath.Join(*target, "index.html"))
	return nil
}

// tellKept says where the files are that somebody saved among noonbook's meanwhile.
func tellKept(out io.Writer, kept []output.Kept) {
	for _, k := range kept {
		if k.Now == k.Name {
			fmt.Fprintf(out, "noonbook: %s was saved while the handbook was written; it is still there\n", k.Name)
			continue
		}
		fmt.Fprintf(out, "noonbook: %s was changed while the handbook was written; your version is kept as %s\n", k.Name, k.Now)
	}
}

func pagesAmong(files []file.File) int {
	pages := 0
	for _, f := range files {
		if filepath.Ext(f.Name) == ".html" {
			pages++
		}
	}
	return pages
}

// pressed plans and presses one edition of a unit that is settled for its own school. What
// is known is not evaluated again, and what is as in the plan before, if there is one, not
// planned again.
func pressed(unit *source.Unit, edition plan.Edition, before *plan.Plan, known *entry.Known, watch *progress) (p *plan.Plan, files []file.File, found problem.List, err error) {
	words, err := wordsOf(unit.Settings)
	if err != nil {
		return nil, nil, nil, err
	}
	name := "class edition"
	if edition == plan.Staff {
		name = "staff edition"
	}
	watch.stage("laying out the " + name)
	if before != nil {
		p, err = before.Again(unit, words)
	} else {
		p, err = plan.Make(unit, words, edition, placeholder.Catalogue())
	}
	if err != nil {
		return nil, nil, nil, err
	}
	p.Progress = func(done, of int) { watch.step("computing the "+name, done, of) }
	files, found = p.PressKnowing(unit.Settings, known)
	return p, files, found, nil
}
