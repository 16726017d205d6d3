package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"noonbook/build/encode"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

const reckonHelp = `noonbook reckon evaluates one placeholder and prints what it computes.

  noonbook reckon NAME [KEY=VALUE …] [--json | --csv] [--content FOLDER]
  noonbook reckon NAME.FACT [KEY=VALUE …]
  noonbook reckon --list [NAME]

The school is that of ./content/unit.toml, or of ./unit.toml, or the demo's. A key
is an argument of the placeholder (date=2027-04-20) or a setting that it reads,
which then stands for this once (school.latitude=52). Without a date the first day
of term counts. A date is one such as 2027-04-20, or a day by name such as
"next full Moon", "13 weeks after first day of term" or "3-paper-strip", the file of
a lesson; next and last count from the first day of term, and so does "this lesson".

NAME.FACT prints that fact alone, as a page words it, on one line; cautions and
warnings then go to the error stream.

  --list             print every placeholder, argument and fact, or those of NAME
  --json             one JSON object, numbers at full precision, with the date and
                     the place that they are for
  --csv              the facts and the tables as comma-separated values, each below
                     a row of headings, with an empty line between them
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
	if *asJSON && *asCSV {
		return usage{errors.New("reckon: --json and --csv are two forms of one answer; want one of them")}
	}
	catalogue := placeholder.Catalogue()
	if *list {
		return printCatalogue(out, catalogue, words)
	}
	if len(words) == 0 {
		return usage{fmt.Errorf("reckon: name a placeholder: %s", strings.Join(entry.Names(catalogue), ", "))}
	}
	name, fact, alone := strings.Cut(words[0], ".")
	entry, err := entryNamed(catalogue, name)
	if err != nil {
		return err
	}
	if alone && !slices.Contains(entry.FactNames(), fact) {
		return usage{fmt.Errorf("reckon: %s has no fact %q%s", name, fact, form.Choice(fact, entry.FactNames()))}
	}
	answer, unitWords, err := evaluate(entry, *folder, words[1:])
	if err != nil {
		return err
	}
	if alone {
		if answer.Result, err = only(answer.Result, fact); err != nil {
			return usage{fmt.Errorf("reckon %s: %w", name, err)}
		}
	}
	switch {
	case *asJSON:
		return encode.JSON(out, answer, unitWords)
	case *asCSV:
		return encode.CSV(out, answer.Result, unitWords)
	case alone:
		return sayFact(out, errs, answer, unitWords)
	}
	var b strings.Builder
	if err := encode.Text(&b, answer, unitWords); err != nil {
		return err
	}
	_, err = io.WriteString(out, folded(out, b.String()))
	return err
}

func entryNamed(catalogue []entry.Entry, name string) (entry.Entry, error) {
	e, ok := entry.Find(catalogue, name)
	if !ok {
		return e, usage{fmt.Errorf("reckon: %q is not a placeholder%s", name, form.Choice(name, entry.Names(catalogue)))}
	}
	return e, nil
}

// evaluate answers the placeholder for the settings of the folder and the pairs of
// the command line.
func evaluate(entry entry.Entry, folder string, words []string) (encode.Answer, *typeset.Words, error) {
	given, err := pairs(entry, words)
	if err != nil {
		return encode.Answer{}, nil, err
	}
	settings, course, err := readFor(folder, entry, given)
	if err != nil {
		return encode.Answer{}, nil, err
	}
	unitWords, err := wordsOf(settings.With(given))
	if err != nil {
		return encode.Answer{}, nil, err
	}
	values, err := complete(entry, settings, given, course)
	if err != nil {
		return encode.Answer{}, nil, err
	}
	r, err := entry.Reckon(values)
	if err != nil {
		return encode.Answer{}, nil, usage{fmt.Errorf("reckon %s: %w", entry.Name, err)}
	}
	answer := encode.Answer{Placeholder: entry.Name, Sources: entry.Sources, Result: r}
	used(&answer, entry, values, settings.With(given))
	return answer, unitWords, nil
}

// complete returns the values that the entry reads, with dates in place of days by name:
// they count from the term's first day.
func complete(e entry.Entry, settings, given form.Values, course entry.Course) (form.Values, error) {
	for _, named := range given.Days() {
		if complaint := course.Complaint(form.ADay(), named.Day); complaint != "" {
			return nil, usage{fmt.Errorf("reckon %s: %s %s", e.Name, named.Key, complaint)}
		}
	}
	first := school.TermFirstDay.Of(settings)
	over := settings.With(given)
	lessons, calendar, _ := course.Arrange(over)
	given, err := given.OnDays(course.Of(over, lessons, calendar, 0).Date)
	if err != nil {
		return nil, usage{fmt.Errorf("reckon %s: %w", e.Name, err)}
	}
	values := e.Complete(settings, given, first)
	return e.WithLessons(values, lessons, calendar, 0), nil
}

// used tells the answer the day and the place that the evaluation was for, as far as
// it reads them.
func used(answer *encode.Answer, e entry.Entry, values, settings form.Values) {
	if e.Arguments.Takes(entry.Date) {
		answer.Date = entry.Date.Of(values).String()
	}
	at := encode.Place{Name: school.Name.Of(settings)}
	for _, key := range school.Where() {
		if !slices.Contains(e.Settings, key) {
			continue
		}
		answer.Place = &at
		switch key {
		case school.Latitude:
			at.Latitude = new(school.Latitude.Of(values))
		case school.Longitude:
			at.Longitude = new(school.Longitude.Of(values))
		case school.ElevationM:
			at.ElevationM = new(school.ElevationM.Of(values))
		case school.TimeZone:
			at.TimeZone = new(school.TimeZone.Of(values).String())
		}
	}
}

// only returns a result with one of its facts, and with what must be known first.
func only(r result.Result, name string) (result.Result, error) {
	v, ok := r.Fact(name)
	if !ok {
		return r, fmt.Errorf("it does not give %s here", name)
	}
	return result.Result{Facts: []result.Fact{{Name: name, Value: v}}, Cautions: r.Cautions, Warnings: r.Warnings, Metric: r.Metric}, nil
}

// sayFact prints the one fact of an answer for a script.
func sayFact(out, errs io.Writer, a encode.Answer, w *typeset.Words) error {
	w = w.For(a.Result)
	for _, p := range append(slices.Clone(a.Cautions), a.Warnings...) {
		fmt.Fprintln(errs, folded(errs, "! "+oneLine(w.Line(p))))
	}
	_, err := fmt.Fprintln(out, oneLine(w.Text(a.Facts[0].Value)))
	return err
}

// pairs reads the key=value words of the command line.
func pairs(entry entry.Entry, words []string) (form.Values, error) {
	given := form.Values{}
	keys := append(entry.Form(school.Settings()), school.Settings().Pick(school.Measure, school.Language, school.Clock, school.Dates)...)
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
// lessons or a day that is named after one, the whole unit, whose problems then matter.
func readFor(folder string, e entry.Entry, given form.Values) (form.Values, entry.Course, error) {
	settings, err := settingsFor(folder, e, given)
	if err != nil || !e.Lessons && !ofFile(given) {
		return settings, entry.Course{}, err
	}
	unit, problems, err := readUnit(folder, new(source.Memory))
	if err != nil {
		return nil, entry.Course{}, err
	}
	if problems.Faults() > 0 {
		return nil, entry.Course{}, problems
	}
	here, problems, err := plan.Settled(unit, unit.Settings.With(settings).With(given), &entry.Known{})
	if err != nil {
		return nil, entry.Course{}, err
	}
	if problems.Faults() > 0 {
		return nil, entry.Course{}, problems
	}
	return settings, here.Course(), nil
}

// ofFile reports whether a day is named after a lesson's file.
func ofFile(given form.Values) bool {
	return slices.ContainsFunc(given.Days(), func(named form.NamedDay) bool { return named.Day.Anchor().Sort == form.DayOfFile })
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

// printCatalogue prints what the entries take and give, or what the one does that
// is named.
func printCatalogue(out io.Writer, catalogue []entry.Entry, words []string) error {
	if len(words) > 1 {
		return usage{fmt.Errorf("reckon: %q is too much; --list takes one placeholder", words[1])}
	}
	if len(words) == 1 {
		e, err := entryNamed(catalogue, words[0])
		if err != nil {
			return err
		}
		catalogue = []entry.Entry{e}
	}
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
			if f.Truth {
				b.WriteString(" (yes or no)")
			}
			b.WriteByte('\n')
		}
	}
	_, err := io.WriteString(out, folded(out, b.String()))
	return err
}
