package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"strings"

	"noonbook/build/encode"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/compute/classroom"
)

const reckonHelp = `noonbook reckon evaluates one placeholder and prints what it computes.

  noonbook reckon NAME [KEY=VALUE …] [--json | --csv] [--content FOLDER]
  noonbook reckon --list

The school is that of ./content/unit.toml, or the demo's. A key is an argument
of the placeholder (date=2027-04-20) or a setting that it reads, which then
stands for this once (school.latitude=44). Without a date the first day of term
counts.

  --list             print the catalogue: every placeholder, argument and fact
  --json             one JSON object, numbers at full precision
  --csv              the tables as comma-separated values
  --content FOLDER   read the settings of this folder
`

func reckon(_ context.Context, args []string, out, errs io.Writer) error {
	flags := flag.NewFlagSet("reckon", flag.ContinueOnError)
	folder := flags.String("content", "", "")
	list := flags.Bool("list", false, "")
	asJSON := flags.Bool("json", false, "")
	asCSV := flags.Bool("csv", false, "")
	words, err := parse(flags, args, out, errs, reckonHelp)
	if err != nil {
		return err
	}
	catalogue := placeholder.Catalogue()
	if *list {
		return printCatalogue(out, catalogue)
	}
	names := entry.Names(catalogue)
	if len(words) == 0 {
		return usage{fmt.Errorf("reckon: name a placeholder: %s", strings.Join(names, ", "))}
	}
	entry, ok := entry.Find(catalogue, words[0])
	if !ok {
		return usage{fmt.Errorf("reckon: %q is not a placeholder%s", words[0], form.Choice(words[0], names))}
	}
	given, err := pairs(entry, words[1:])
	if err != nil {
		return err
	}
	settings, lessons, err := readFor(*folder, entry, given)
	if err != nil {
		return err
	}
	unitWords, err := wordsOf(settings.With(given))
	if err != nil {
		return err
	}
	values := entry.Complete(settings, given, school.TermFirstDay.Of(settings))
	values = entry.WithLessons(values, lessons, school.Calendar(values, lessons), 0)
	r, err := entry.Reckon(values)
	if err != nil {
		return usage{fmt.Errorf("reckon %s: %w", entry.Name, err)}
	}
	answer := encode.Answer{Placeholder: entry.Name, Sources: entry.Sources, Result: r}
	switch {
	case *asJSON:
		return encode.JSON(out, answer, unitWords)
	case *asCSV:
		return encode.CSV(out, r, unitWords)
	}
	return encode.Text(out, answer, unitWords)
}

// pairs reads the key=value words of the command line.
func pairs(entry entry.Entry, words []string) (form.Values, error) {
	given := form.Values{}
	keys := append(entry.Form(school.Settings()), school.Settings().Pick(school.Measure, school.Language)...)
	for _, word := range words {
		key, value, ok := strings.Cut(word, "=")
		if !ok {
			return nil, usage{fmt.Errorf("reckon %s: %q is not of the form key=value", entry.Name, word)}
		}
		v, complaint := keys.ParsePair(key, strings.Trim(value, `"`))
		if complaint != "" {
			return nil, usage{fmt.Errorf("reckon %s: %s", entry.Name, complaint)}
		}
		given[key] = v
	}
	return given, nil
}

// readFor reads what the entry needs: the settings and, for an entry that reads
// lessons, the whole unit, whose problems then matter.
func readFor(folder string, entry entry.Entry, given form.Values) (form.Values, []classroom.Lesson, error) {
	settings, err := settingsFor(folder, entry, given)
	if err != nil || !entry.Lessons {
		return settings, nil, err
	}
	unit, problems, err := readUnit(folder)
	if err != nil {
		return nil, nil, err
	}
	if problems.Faults() > 0 {
		return nil, nil, problems
	}
	return settings, unit.Taught(), nil
}

// settingsFor reads the settings alone, problems in lessons do not matter here,
// and the files that the given values name.
func settingsFor(folder string, entry entry.Entry, given form.Values) (form.Values, error) {
	files, root, closing, err := open(folder)
	if err != nil {
		return nil, err
	}
	defer closing()
	settings, problems, err := source.ReadSettings(files, root)
	if err != nil {
		return nil, err
	}
	named, err := source.ReadRecords(files, root, entry.Form(school.Settings()), given)
	if err != nil {
		return nil, err
	}
	problems = append(problems, named...)
	if problems.Faults() > 0 {
		return nil, problems
	}
	return settings, nil
}

func printCatalogue(out io.Writer, catalogue []entry.Entry) error {
	var b strings.Builder
	for i, e := range catalogue {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s\n  %s\n", e.Name, e.Summary)
		for _, f := range e.Arguments {
			fmt.Fprintf(&b, "  argument  %-22s %s %s; if missing: %s\n", f.Name(), f.Doc, f.Allowed(), f.Missing())
		}
		for _, name := range e.Settings {
			fmt.Fprintf(&b, "  setting   %s\n", name)
		}
		for _, f := range e.Facts {
			fmt.Fprintf(&b, "  fact      %-22s %s", f.Name, f.Doc)
			if f.Unit != "" {
				fmt.Fprintf(&b, " (%s)", f.Unit)
			}
			b.WriteByte('\n')
		}
	}
	_, err := io.WriteString(out, b.String())
	return err
}
