package form

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"noonbook/compute/place"
)

// A Kind is the sort of value that a field takes.
type Kind int

const (
	Text   Kind = iota // a string; Choices limits it
	Number             // a finite number, float64
	Whole              // a whole number, int
	Flag               // true or false, bool
	Date               // an ISO 8601 date, place.Date
	Month              // a month of a year, 2027-04, place.Date of its first day
	Clock              // a time of day, 9:10, time.Duration since midnight
	Span               // a stretch of the day, 9:10-10:00, TimeSpan
	Zone               // an IANA time zone name, *time.Location
	Texts              // a list of strings, []string
	Dates              // a list of dates, []place.Date
	Spans              // a list of stretches of the day, []TimeSpan
	Tables             // a list of tables, each described by Fields, []Values
	CSV                // the name of a CSV file whose columns are Fields, Records
)

// A TimeSpan is a stretch of the day, as durations since midnight.
type TimeSpan struct{ From, To time.Duration }

// A Field describes one key.
type Field struct {
	Name     string // dotted, "school.latitude"
	Kind     Kind
	Unit     string   // "deg", "mm": the unit of a number
	Min, Max float64  // bounds of a number, both included; equal bounds mean none. Max of CSV: most rows
	Choices  []string // what a Text, or each item of Texts, may be; of a Date, words for none
	Fields   Form     // the keys of each table of Tables, the columns of CSV
	Required bool
	Default  any    // the value where the key is missing, of the kind's Go type
	Assumed  string // says in words what stands in for a missing key, where Default is nil
	Doc      string // one sentence for the reference page
}

// A Form is the fields of a table, in the order in which they are documented.
type Form []Field

// Field returns the field of that name.
func (f Form) Field(name string) (Field, bool) {
	i := slices.IndexFunc(f, func(field Field) bool { return field.Name == name })
	if i < 0 {
		return Field{}, false
	}
	return f[i], true
}

// Pick returns the fields of those names, in that order. A name that the form
// lacks is a fault of the program.
func (f Form) Pick(names ...string) Form {
	picked := make(Form, len(names))
	for i, name := range names {
		field, ok := f.Field(name)
		if !ok {
			panic("form: no field " + name)
		}
		picked[i] = field
	}
	return picked
}

// Names returns the names of the fields.
func (f Form) Names() []string {
	names := make([]string, len(f))
	for i, field := range f {
		names[i] = field.Name
	}
	return names
}

// Values holds checked values by the name of their field. The getters return
// the zero value where a field was not filled in; a getter of another kind than
// the field's is a fault of the program and panics.
type Values map[string]any

// Has reports whether the field was filled in, by the author or by its default.
func (v Values) Has(name string) bool { return v[name] != nil }

func get[T any](v Values, name string) T {
	var zero T
	switch x := v[name].(type) {
	case nil:
		return zero
	case T:
		return x
	default:
		panic(fmt.Sprintf("form: %s holds %T, not %T", name, x, zero))
	}
}

func (v Values) Text(name string) string         { return get[string](v, name) }
func (v Values) Number(name string) float64      { return get[float64](v, name) }
func (v Values) Whole(name string) int           { return get[int](v, name) }
func (v Values) Flag(name string) bool           { return get[bool](v, name) }
func (v Values) Date(name string) place.Date     { return get[place.Date](v, name) }
func (v Values) Clock(name string) time.Duration { return get[time.Duration](v, name) }
func (v Values) Span(name string) TimeSpan       { return get[TimeSpan](v, name) }
func (v Values) Zone(name string) *time.Location { return get[*time.Location](v, name) }
func (v Values) Texts(name string) []string      { return get[[]string](v, name) }
func (v Values) Dates(name string) []place.Date  { return get[[]place.Date](v, name) }
func (v Values) Spans(name string) []TimeSpan    { return get[[]TimeSpan](v, name) }
func (v Values) Tables(name string) []Values     { return get[[]Values](v, name) }

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
		if full[field.Name] == nil && field.Default != nil {
			full[field.Name] = field.Default
		}
	}
	return full
}

// Allowed says in words what the field takes.
func (f Field) Allowed() string {
	switch f.Kind {
	case Number, Whole:
		s := "a number"
		if f.Kind == Whole {
			s = "a whole number"
		}
		if f.Min != f.Max {
			s += " from " + f.measure(f.Min) + " to " + f.measure(f.Max)
		} else if f.Unit != "" {
			s += " of " + f.Unit
		}
		return s
	case Flag:
		return "true or false"
	case Date:
		if f.Choices != nil {
			return "a date such as 2027-04-20, or " + quotedList(f.Choices)
		}
		return "a date such as 2027-04-20"
	case Month:
		return `a month such as "2027-04"`
	case Clock:
		return `a time of day such as "9:10"`
	case Span:
		return `a stretch of the day such as "9:10-10:00"`
	case Zone:
		return `an IANA time zone such as "America/Moncton"`
	case Texts:
		if f.Choices != nil {
			return "a list of " + quotedList(f.Choices)
		}
		return "a list of texts"
	case Dates:
		return "a list of dates such as 2027-04-20"
	case Spans:
		return `a list of stretches of the day such as "9:10-10:00"`
	case Tables:
		return "a list of tables with the keys " + strings.Join(f.Fields.Names(), ", ")
	case CSV:
		return `a CSV file of the content folder such as "marks.csv", with the columns ` + strings.Join(f.Fields.Names(), ", ") + f.maxRows()
	}
	if f.Choices != nil {
		return quotedList(f.Choices)
	}
	return "a text in quotes"
}

func quotedList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = `"` + w + `"`
	}
	if n := len(quoted); n > 1 {
		return strings.Join(quoted[:n-1], ", ") + " or " + quoted[n-1]
	}
	return strings.Join(quoted, "")
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
