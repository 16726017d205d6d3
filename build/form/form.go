package form

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A Kind is the sort of value that a field takes.
type Kind int

const (
	Text   Kind = iota // a string; Choices limits it
	Number             // a finite number, float64
	Whole              // a whole number, int
	Flag               // true or false, bool
	Date               // an ISO 8601 date, place.Date
	Month              // a month of a year, 2027-04, YearMonth
	Clock              // a time of day, 9:10, time.Duration since midnight
	Span               // a stretch of the day, 9:10-10:00, TimeSpan
	Zone               // an IANA time zone name, *time.Location
	Texts              // a list of strings, []string
	Dates              // a list of dates, []place.Date
	Spans              // a list of stretches of the day, []TimeSpan
	Tables             // a list of tables, each described by Fields, []Values
	CSV                // the name of a CSV file whose columns are Fields, Records
)

// A Field describes one key.
type Field struct {
	Key      AnyKey   // its name, and by its type the kind of its value
	Unit     string   // "deg", "mm": the unit of a number
	Min, Max float64  // bounds of a number, both included; equal bounds mean none. Max of CSV and lists: most rows, items
	Choices  []string // what a Text, or each item of Texts, may be; of a Date, words for none
	Fields   Form     // the keys of each table of Tables, the columns of CSV
	Named    bool     // of a Date, a Month, Dates: a day may be named, which Values then hold until OnDays
	Required bool
	Default  any    // the value where the key is missing, of the kind's Go type
	Assumed  string // says in words what stands in for a missing key, where Default is nil
	Doc      string // one sentence for the reference page
}

// Name returns the key as an author writes it, dotted: "school.latitude"; "" for no
// field.
func (f Field) Name() string { return nameOf(f.Key) }

func nameOf(key AnyKey) string {
	if key == nil {
		return ""
	}
	return key.Name()
}

// Kind returns the sort of value that the field takes.
func (f Field) Kind() Kind { return f.Key.kind() }

// Sound reports whether the default, where there is one, is of the key's own type,
// and so are those of the fields below it.
func (f Field) Sound() bool {
	return (f.Default == nil || f.Key.holds(f.Default)) &&
		!slices.ContainsFunc(f.Fields, func(below Field) bool { return !below.Sound() })
}

// A Form is the fields of a table, in the order in which they are documented.
type Form []Field

// Field returns the field of that name.
func (f Form) Field(name string) (Field, bool) {
	for i := range f { // not by value: a field is large, and this is asked for each key
		if nameOf(f[i].Key) == name {
			return f[i], true
		}
	}
	return Field{}, false
}

// Takes reports whether the form has the key, and as what it is.
func (f Form) Takes(key AnyKey) bool {
	for i := range f {
		if f[i].Key == key {
			return true
		}
	}
	return false
}

// Pick returns the fields of those keys, in that order. A key that the form
// lacks is a fault of the program.
func (f Form) Pick(keys ...AnyKey) Form {
	picked := make(Form, len(keys))
	for i, key := range keys {
		field, ok := f.Field(key.Name())
		if !ok {
			panic("form: no field " + key.Name())
		}
		picked[i] = field
	}
	return picked
}

// Names returns the names of the fields.
func (f Form) Names() []string {
	names := make([]string, len(f))
	for i, field := range f {
		names[i] = field.Name()
	}
	return names
}

// Values holds checked values by the name of their field; keys read them.
type Values map[string]any

func (v Values) has(name string) bool { return v[name] != nil }

// With returns v with the values of over in place of its own.
func (v Values) With(over Values) Values {
	m := make(Values, len(v)+len(over))
	maps.Copy(m, v)
	maps.Copy(m, over)
	return m
}

// Complete returns v with the defaults of the form's fields where v has none.
func (f Form) Complete(v Values) Values {
	full := v.With(nil)
	for _, field := range f {
		if full[field.Name()] == nil && field.Default != nil {
			full[field.Name()] = field.Default
		}
	}
	return full
}

// Missing says in words what holds where the key is not written.
func (f Field) Missing() string {
	switch x := f.Default.(type) {
	case nil:
		switch {
		case f.Required:
			return "must be there"
		case f.Assumed != "":
			return f.Assumed
		}
		return "none"
	case string:
		if x == "" {
			return "none"
		}
		return x
	case []string:
		return strings.Join(x, ", ")
	case float64:
		return f.measure(x)
	case int:
		return f.measure(float64(x))
	default:
		return fmt.Sprint(x)
	}
}
