package form

import (
	"math"
	"strconv"
	"strings"
)

// A Phrase says what a field takes, to the terminal and to a page of any language:
// Key names the line of the words files, and English is that line as the terminal
// says it. The gaps, {1} and {2}, hold a Bound, Choices, an int or a string. Where
// the choices are all there is to say, Key is empty and they are the only gap.
type Phrase struct {
	Key, English string
	Gaps         []any
}

// A Bound is a bound of a number, in the unit of its field.
type Bound float64

// Choices are words of which one is written.
type Choices []string

// Takes says what the field takes.
func (f Field) Takes() Phrase {
	switch f.Kind() {
	case Number, Whole:
		return f.takesNumber()
	case Flag:
		return Phrase{"reference.flag", "true or false", nil}
	case Date:
		if f.Choices != nil && f.Named {
			return Phrase{"reference.day_or", `a date such as 2027-04-20, a day by name such as "next full Moon", or {1}`, []any{Choices(f.Choices)}}
		}
		if f.Named {
			return Phrase{"reference.day", `a date such as 2027-04-20, or a day by name such as "next full Moon"`, nil}
		}
		if f.Choices != nil {
			return Phrase{"reference.date_or", "a date such as 2027-04-20, or {1}", []any{Choices(f.Choices)}}
		}
		return Phrase{"reference.date", "a date such as 2027-04-20", nil}
	case Month:
		if f.Named {
			return Phrase{"reference.month_of_day", `a month such as "2027-04", or a day by name such as "next full Moon" for its month`, nil}
		}
		return Phrase{"reference.month", `a month such as "2027-04"`, nil}
	case Clock:
		return Phrase{"reference.clock", `a time of day such as "9:10"`, nil}
	case Span:
		return Phrase{"reference.span", `a stretch of the day such as "9:10-10:00"`, nil}
	case Zone:
		return Phrase{"reference.zone", `an IANA time zone such as "America/Moncton"`, nil}
	case Texts:
		if f.Choices != nil {
			return Phrase{"reference.list_of", "a list of {1}", []any{Choices(f.Choices)}}
		}
		return Phrase{"reference.texts", "a list of texts", nil}
	case Dates:
		if f.Named {
			return Phrase{"reference.days", `a list of dates such as 2027-04-20 or of days by name such as "next full Moon"`, nil}
		}
		return Phrase{"reference.dates", "a list of dates such as 2027-04-20", nil}
	case Spans:
		return Phrase{"reference.spans", `a list of stretches of the day such as "9:10-10:00"`, nil}
	case Tables:
		return Phrase{"reference.tables", "a list of tables with the keys {1}", []any{f.inner()}}
	case CSV:
		if f.Max > 0 && !math.IsInf(f.Max, 1) {
			return Phrase{"reference.csv_rows", `a CSV file of the content folder such as "marks.csv", with the columns {1}, up to {2} rows`, []any{f.inner(), int(f.Max)}}
		}
		return Phrase{"reference.csv", `a CSV file of the content folder such as "marks.csv", with the columns {1}`, []any{f.inner()}}
	}
	if f.Choices != nil {
		return Phrase{"", "{1}", []any{Choices(f.Choices)}}
	}
	return Phrase{"reference.text", "a text in quotes", nil}
}

func (f Field) takesNumber() Phrase {
	switch bounds := []any{Bound(f.Min), Bound(f.Max)}; {
	case f.Min != f.Max && f.Kind() == Whole:
		return Phrase{"reference.whole_between", "a whole number from {1} to {2}", bounds}
	case f.Min != f.Max:
		return Phrase{"reference.number_between", "a number from {1} to {2}", bounds}
	case f.Kind() == Whole:
		return Phrase{"reference.whole", "a whole number", nil}
	case f.Unit != "":
		return Phrase{"reference.number_of", "a number of {1}", []any{f.Unit}}
	}
	return Phrase{"reference.number", "a number", nil}
}

// inner names the keys of Tables and the columns of CSV.
func (f Field) inner() string { return strings.Join(f.Fields.Names(), ", ") }

// Allowed says in English what the field takes.
func (f Field) Allowed() string {
	takes := f.Takes()
	var filled []string
	for i, gap := range takes.Gaps {
		filled = append(filled, "{"+strconv.Itoa(i+1)+"}", f.english(gap))
	}
	return strings.NewReplacer(filled...).Replace(takes.English)
}

// english writes what fills a gap.
func (f Field) english(gap any) string {
	switch gap := gap.(type) {
	case Bound:
		return f.measure(float64(gap))
	case Choices:
		return quotedList(gap)
	case int:
		return strconv.Itoa(gap)
	}
	return gap.(string)
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
