package main

import (
	"context"
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	starting "noonbook/build/starter"
	"noonbook/compute/place"
	"noonbook/content"
)

//go:embed starter
var smallUnit embed.FS

const starterHelp = `noonbook starter lays out the unit for your own school.

  noonbook starter FOLDER [KEY=VALUE …] [--small]

The folder gets the lessons with their pictures, a unit.toml with every key
explained and what is true of your school filled in, and an empty CSV file for each
kind of record that a class keeps. It must be new or empty.

On a terminal noonbook asks for what is not given: the school's name, where it is,
its time zone, paper, language, class, term and lesson times. A place may be written
as 46.09 -64.77, as 46°05′N 64°46′W, or as a map shows it. Elsewhere these must be
given: school.name, school.latitude, school.longitude, school.time_zone,
term.first_day and term.last_day. A key is one of unit.toml:

  noonbook starter our-unit school.name="Harbour Street School"
    school.latitude=-45.87 school.longitude=170.50 school.time_zone=Pacific/Auckland
    term.first_day=2028-02-07 term.last_day=2028-03-17

  --small   two short lessons that show how a lesson is written, instead of all

Then change what you like, and: noonbook press FOLDER
`

// A console is who sits before the command.
type console struct {
	in       io.Reader
	terminal bool
	today    time.Time
}

func starter(ctx context.Context, args []string, out, errs io.Writer) error {
	return layOut(ctx, args, console{os.Stdin, answers(os.Stdin), time.Now()}, out, errs)
}

// answers reports whether somebody at a terminal can answer questions.
func answers(in *os.File) bool {
	if !isTerminal(in) {
		return false
	}
	info, err := in.Stat()
	null, nullErr := os.Stat(os.DevNull)
	return err == nil && (nullErr != nil || !os.SameFile(info, null))
}

func layOut(ctx context.Context, args []string, who console, out, errs io.Writer) error {
	flags := flag.NewFlagSet("starter", flag.ContinueOnError)
	small := flags.Bool("small", false, "")
	words, err := parse(flags, args, out, errs, starterHelp)
	if err != nil {
		return err
	}
	folder, pairs, err := folderAndPairs(words)
	if err != nil {
		return err
	}
	values, wrong := settingsOf(pairs)
	if err := freeFolder(folder); err != nil {
		return err
	}
	if len(wrong) > 0 {
		if missing := unnamed(pairs); len(missing) > 0 && !who.terminal {
			wrong = append(wrong, saidMissing(missing))
		}
		return eachSaid(errs, wrong)
	}
	if values, err = completed(ctx, who, out, values); err != nil {
		return err
	}
	var lessons fs.FS = content.Files()
	if *small {
		if lessons, err = fs.Sub(smallUnit, "starter"); err != nil {
			return err
		}
	}
	unit, problems, err := starting.Lay(lessons, values, folder)
	if err != nil {
		return err
	}
	for _, p := range problems {
		if p.Warning {
			fmt.Fprintln(errs, folded(errs, "warning: "+oneLine(p.Text)))
		} else {
			wrong = append(wrong, p.Text)
		}
	}
	if len(wrong) > 0 {
		return eachSaid(errs, wrong)
	}
	if err := writeUnit(folder, unit); err != nil {
		return err
	}
	tellEnglish(out, values)
	name := filepath.Clean(folder)
	fmt.Fprintf(out, "a new unit is in %s: edit unit.toml, then noonbook press %s\n", name, name)
	return nil
}

// folderAndPairs tells the folder from the settings.
func folderAndPairs(words []string) (folder string, pairs []string, err error) {
	var folders []string
	for _, word := range words {
		if strings.Contains(word, "=") {
			pairs = append(pairs, word)
		} else {
			folders = append(folders, word)
		}
	}
	switch {
	case len(folders) == 0 || folders[0] == "":
		return "", nil, usage{errors.New("starter: name one folder to lay the unit out in")}
	case len(folders) > 1:
		return "", nil, usage{fmt.Errorf("starter: name one folder to lay the unit out in; %q is too much, or lacks its key=", folders[1])}
	}
	return folders[0], pairs, nil
}

// settingsOf reads the key=value words, and says what is wrong with each that is.
func settingsOf(pairs []string) (values form.Values, wrong []string) {
	values = form.Values{}
	for _, pair := range pairs {
		key, text, _ := strings.Cut(pair, "=")
		field, known := school.Settings().Field(key)
		_, twice := values[key]
		switch {
		case twice:
			wrong = append(wrong, key+" is there twice")
			continue
		case known && field.Kind() == form.CSV:
			wrong = append(wrong, key+" cannot be set here; starter lays its file out, and unit.toml can name another")
			continue
		case known && field.Kind() == form.Tables:
			wrong = append(wrong, key+" cannot be set here; write its tables into unit.toml")
			continue
		}
		v, complaint := school.Settings().ParsePair(key, strings.Trim(text, `"`))
		if complaint != "" {
			wrong = append(wrong, complaint)
			continue
		}
		values[key] = v
	}
	return values, wrong
}

// eachSaid says each complaint on a line of its own, the last one as the error.
func eachSaid(errs io.Writer, complaints []string) error {
	last := len(complaints) - 1
	for _, complaint := range complaints[:last] {
		fmt.Fprintln(errs, folded(errs, "noonbook: starter: "+oneLine(complaint)))
	}
	return usage{errors.New("starter: " + complaints[last])}
}

// completed asks for what is missing where somebody can answer.
func completed(ctx context.Context, who console, out io.Writer, values form.Values) (form.Values, error) {
	if who.terminal {
		y, m, d := who.today.Date()
		asked, err := starting.Ask(ctx, who.in, out, values, place.Date{Year: y, Month: m, Day: d})
		switch {
		case errors.Is(err, starting.ErrEnded), ctx.Err() != nil:
			return nil, usage{fmt.Errorf("starter: %w; nothing is written", starting.ErrEnded)}
		case err != nil:
			return nil, fmt.Errorf("asking for the settings: %w", err)
		}
		return asked, nil
	}
	missing := starting.Missing(values)
	if len(missing) == 0 {
		return values, nil
	}
	return nil, usage{errors.New("starter: " + saidMissing(missing))}
}

// unnamed are the keys that must be there and that no pair names, rightly or wrongly.
func unnamed(pairs []string) form.Keys {
	named := form.Values{}
	for _, pair := range pairs {
		key, _, _ := strings.Cut(pair, "=")
		named[key] = pair
	}
	return starting.Missing(named)
}

func saidMissing(missing form.Keys) string {
	is, example := "are", "noonbook starter FOLDER"
	if len(missing) == 1 {
		is = "is"
	}
	for _, key := range missing {
		example += " " + key.Name() + "=" + examplesOfSettings[key.Name()]
	}
	return fmt.Sprintf("%s %s missing; write for example: %s", strings.Join(missing.Names(), ", "), is, example)
}

// examplesOfSettings are those of the help.
var examplesOfSettings = map[string]string{
	school.Name.Name():         `"Harbour Street School"`,
	school.Latitude.Name():     "-45.87",
	school.Longitude.Name():    "170.50",
	school.TimeZone.Name():     "Pacific/Auckland",
	school.TermFirstDay.Name(): "2028-02-07",
	school.TermLastDay.Name():  "2028-03-17",
}

// freeFolder reports a folder that holds files already.
func freeFolder(folder string) error {
	entries, err := os.ReadDir(folder)
	if err == nil && len(entries) > 0 {
		return usage{fmt.Errorf("starter: %s holds files already, such as %s; name a new folder", folder, entries[0].Name())}
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	return nil
}

// writeUnit writes the files into the folder. Where one cannot be written, those that
// were are taken away again, and the folder too where it is new.
func writeUnit(folder string, unit fs.FS) error {
	_, err := os.Stat(folder)
	fresh := errors.Is(err, fs.ErrNotExist)
	if err = os.CopyFS(folder, unit); err == nil {
		return nil
	}
	err = fmt.Errorf("writing %s: %w", folder, err)
	if fresh {
		return errors.Join(err, os.RemoveAll(folder))
	}
	entries, readErr := os.ReadDir(folder)
	for _, entry := range entries {
		readErr = errors.Join(readErr, os.RemoveAll(filepath.Join(folder, entry.Name())))
	}
	return errors.Join(err, readErr)
}
