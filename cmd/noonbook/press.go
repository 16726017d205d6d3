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
	"noonbook/build/district"
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

// defaultDistrict is the one that the handbooks of a list of schools are written to.
const defaultDistrict = "district"

const pressHelp = `noonbook press writes the handbook.

  noonbook press [FOLDER] [--out FOLDER] [--staff] [--single] [--zip]
  noonbook press [FOLDER] --schools LIST [--part 3/16] …   for all schools of a board

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

For all schools of a board:

  --schools LIST     read this list, a CSV file with a school a row, and write the
                     handbook of each to FOLDER/NAME, and FOLDER/index.html for the
                     board: a map and all schools; FOLDER is ./district unless --out
                     names another
  --zip              here each edition is the archive FOLDER/NAME.zip and no folder
  --part 3/16        press the third of sixteen shares of the list alone; all shares
                     together write what one run writes, and may run at once

The first line of the list has the heads. A head is a key of unit.toml, such as
school.name, school.latitude or term.first_day, or one of two of noonbook's own:
folder is NAME (without it NAME is made of the school's name), and town is said on
the board's page. A cell is read as the page "Your school" reads a line: 46.1 or
46,1, 2027-04-12, 9:10-10:00. Items of a list are parted by semicolons:
2027-04-30; 2027-05-17. An empty cell leaves what unit.toml of the folder says. Lists
of tables, such as stock.lenses, are in unit.toml alone, and so the same for all.

Mistakes in a row are told by its cells, and every other school is pressed. What many
schools have in common is told once. A school is left alone if neither its row, the
folder, the program nor what you ask for has changed, and its handbook is there with
every file; a file that somebody changed is noticed when it is pressed again. A school
that left the list is named, and its handbook stays.
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
	schools := flags.String("schools", "", "")
	part := flags.String("part", "", "")
	words, err := parse(flags, args, out, errs, pressHelp)
	if err != nil {
		return err
	}
	folder, err := oneFolder("press", *flagged, words)
	if err != nil {
		return err
	}
	noteDemo(errs, folder)
	if given(flags, "schools") {
		order := district.Order{Out: *target, Staff: *staff, Single: *single, Zip: *packed}
		if order.Part, err = partOf(*part); err != nil {
			return err
		}
		if !given(flags, "out") {
			order.Out = defaultDistrict
		}
		return pressDistrict(ctx, folder, *schools, order, out, errs)
	}
	if given(flags, "part") {
		return usage{errors.New("press: --part goes with --schools, which names the list")}
	}
	watch := progressOn(errs)
	defer watch.end()
	known := &entry.Known{}
	unit, problems, err := readHere(folder, new(source.Memory), known)
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
