package entry

import (
	"fmt"
	"slices"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/compute/place"
)

// Date is the day that an evaluation is for.
const Date form.Key[place.Date] = "date"

// CountedFrom is the day from which an evaluation counts days.
const CountedFrom form.Key[place.Date] = "counted_from"

// An Entry is one placeholder of the catalogue.
type Entry struct {
	Name      string
	Topic     string    // the folder that it is from, which the catalogue notes
	Summary   string    // one line
	Arguments form.Form // its own arguments
	Settings  form.Keys // the settings of unit.toml that it reads, in the order they are documented
	Facts     []Fact
	Sources   []string // what the numbers rest on
	Cautions  []string // names of those that always come with it
	Sometimes []string // names of those that Reckon adds for some values, or with numbers of the school
	OnPaper   []string // names of those that only its sheets tell, for where they are taken
	Harmless  string   // why no caution comes with it, for an entry without
	Plate     bool     // its drawing is a large picture that opens a lesson
	Printable bool     // its results have sheets, which get a page of their own
	For       Reader   // who needs a sheet of it, for a sheet that no lesson's kit counts
	ForStaff  bool     // a block of it repeats what lessons say to staff alone, and may only be where the class does not read
	Lessons   bool     // it reads the unit's lessons and their calendar, and lists CalendarSettings
	// OnSheet says how many of the things one sheet holds for these values; nil where it
	// is one, or where they are a set that goes together.
	OnSheet func(form.Values) int
	// Reckon evaluates the placeholder. The values hold its arguments and the
	// settings it reads, complete and checked, the lessons where it reads them
	// (WithLessons), and nothing else: equal values give equal results.
	Reckon func(form.Values) (result.Result, error)
}

// A Reader is whoever needs a sheet.
type Reader int

const (
	Unsaid   Reader = iota // it depends on the lesson
	OneClass               // one sheet serves all, as a calendar on the wall does
	EachGroup
	EachPupil
)

// A Fact documents one value that an entry offers to sentences.
type Fact struct {
	Name string
	Unit string // "" for a moment, a date or words
	Doc  string
	// Truth says that the value is a yes or no (say.Yes), never none, whatever the
	// settings: a lesson can ask for it with only and unless.
	Truth bool
}

// Form returns the keys that a use of the entry may write: its arguments, and
// the settings it reads, which then stand for that use only.
func (e Entry) Form(settings form.Form) form.Form {
	keys := slices.Grow(slices.Clone(e.Arguments), len(e.Settings))
	for _, field := range settings.Pick(e.Settings...) {
		field.Required, field.Default = false, nil
		keys = append(keys, field)
	}
	return keys
}

// Careful returns the entry with its cautions in every result, before those that a result
// has of its own.
func (e Entry) Careful() Entry {
	reckon, cautions := e.Reckon, CautionsOf(e.Cautions...)
	e.Reckon = func(v form.Values) (result.Result, error) {
		r, err := reckon(v)
		if err == nil {
			r.Cautions = append(slices.Clip(cautions), r.Cautions...)
		}
		return r, err
	}
	return e
}

// FactNames returns the names of the facts.
func (e Entry) FactNames() []string {
	names := make([]string, len(e.Facts))
	for i, f := range e.Facts {
		names[i] = f.Name
	}
	return names
}

// Truths returns the names of the facts that are yes or no.
func (e Entry) Truths() []string {
	var names []string
	for _, f := range e.Facts {
		if f.Truth {
			names = append(names, f.Name)
		}
	}
	return names
}

// Find returns the entry of that name.
func Find(catalogue []Entry, name string) (Entry, bool) {
	for i := range catalogue { // not by value: an entry is large, and this is asked for each sentence
		if catalogue[i].Name == name {
			return catalogue[i], true
		}
	}
	return Entry{}, false
}

// Names returns the names of the entries.
func Names(catalogue []Entry) []string {
	names := make([]string, len(catalogue))
	for i, e := range catalogue {
		names[i] = e.Name
	}
	return names
}

// Complete returns the values that Reckon reads: what the author gave, then
// the school's settings, then defaults. Where the arguments date and counted_from are
// left open they are the given day.
func (e Entry) Complete(settings, given form.Values, day place.Date) form.Values {
	full := e.Arguments.Complete(given)
	for _, key := range e.Settings {
		if !key.In(full) && key.In(settings) {
			full[key.Name()] = settings[key.Name()]
		}
	}
	for _, key := range []form.Key[place.Date]{Date, CountedFrom} {
		if e.Arguments.Takes(key) && !key.In(full) {
			full[key.Name()] = day
		}
	}
	return full
}

// Mark tells uses of the entry apart before a school is known: two with one mark have the
// same values at every school. The number of its page, lesson, counts only where the
// use leaves open what depends on it.
func (e Entry) Mark(given form.Values, lesson int) string {
	open := func(key form.AnyKey) bool { return e.Arguments.Takes(key) && !key.In(given) }
	if !open(Date) && !open(CountedFrom) && !open(Lesson) && len(given.Days()) == 0 {
		lesson = -1
	}
	return string(given.Append(fmt.Append(nil, e.Name, " ", lesson, " ")))
}

// OnDate is the argument of everything that depends on a day.
func OnDate() form.Field {
	return form.Field{Key: Date, Assumed: "the lesson's day, else the first day of term", Doc: "Day that the numbers are for."}
}
