package form

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"noonbook/compute/place"
)

// A Day is a day by its name, "13 weeks after this lesson": it travels to another
// school and another term, which a date does not. What day it is at a school says
// entry.Days.
//
//	DAY    = ANCHOR | N (day|days|week|weeks|month|months) (after|before) DAY
//	ANCHOR = "this lesson" | "first day of term" | "last day of term"
//	       | FILE                              a lesson's file without .md
//	       | "next" EVENT ["after" DAY]        later than that day
//	       | "last" EVENT ["before" DAY]       that day or earlier
type Day struct {
	Text  string // as it was written, with single spaces
	Sort  DaySort
	File  string   // of DayOfFile, as it was written
	Count int      // of DayCounted, negative before
	Unit  DayUnit  // of DayCounted
	Event DayEvent // of DayNext and DayLast
	From  *Day     // what it is counted from; nil for an event counted from where it is written
}

// A DaySort tells the sorts of Day apart.
type DaySort int

const (
	DayOfFile DaySort = iota
	DayOfThis
	DayTermFirst
	DayTermLast
	DayCounted
	DayNext
	DayLast
)

// A DayUnit is what days are counted in.
type DayUnit int

const (
	InDays DayUnit = iota
	InWeeks
	InMonths
)

// A DayEvent is what the sky or the clock does on a day.
type DayEvent int

const (
	NewMoon DayEvent = iota
	FirstQuarterMoon
	FullMoon
	LastQuarterMoon
	Solstice
	Equinox
	JuneSolstice
	DecemberSolstice
	MarchEquinox
	SeptemberEquinox
	ClockChange
)

var (
	dayAnchors = []string{"this lesson", "first day of term", "last day of term"} // DayOfThis and on
	dayEvents  = []string{
		"new Moon", "first-quarter Moon", "full Moon", "last-quarter Moon", "solstice", "equinox",
		"June solstice", "December solstice", "March equinox", "September equinox", "clock change",
	}
	dayUnits = map[string]DayUnit{"day": InDays, "days": InDays, "week": InWeeks, "weeks": InWeeks, "month": InMonths, "months": InMonths}
	// smallNumbers are those that an author may write as words.
	smallNumbers = map[string]string{"a": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10", "twelve": "12"}
)

// String returns the event as an author writes it.
func (e DayEvent) String() string { return dayEvents[e] }

// DayEvents returns the events as an author writes them.
func DayEvents() []string { return slices.Clone(dayEvents) }

// Bounds of a name: a term is shorter than mostCount days, and nobody writes so much.
const (
	mostCount   = 9999
	longestName = 200
)

const (
	nextWord   = "next"
	lastWord   = "last"
	afterWord  = "after"
	beforeWord = "before"
)

// ParseDay reads a day by its name. What it does not know is taken for the name of a
// file, which only the unit can tell. Where it cannot be a day at all, ok is false, and
// meant is what was most likely meant, if that can be told.
func ParseDay(s string) (day Day, meant string, ok bool) {
	text := strings.Join(strings.Fields(s), " ")
	if text == "" || len(text) > longestName {
		return Day{}, "", false
	}
	return parseDay(text)
}

func parseDay(text string) (day Day, meant string, ok bool) {
	if i := slices.IndexFunc(dayAnchors, func(a string) bool { return strings.EqualFold(a, text) }); i >= 0 {
		return Day{Text: text, Sort: DayOfThis + DaySort(i)}, "", true
	}
	if i := eventIndex(text); i >= 0 {
		return Day{}, nextWord + " " + dayEvents[i], false
	}
	first, rest, _ := strings.Cut(text, " ")
	switch word := strings.ToLower(first); {
	case rest == "":
	case word == nextWord, word == lastWord:
		return parseEvent(text, word, rest)
	case strings.Trim(word, "0123456789") == "" || smallNumbers[word] != "":
		return parseCount(text, word, rest)
	}
	return Day{Text: text, File: text}, "", true
}

func eventIndex(s string) int {
	return slices.IndexFunc(dayEvents, func(e string) bool { return strings.EqualFold(e, s) })
}

// parseEvent reads what follows next or last.
func parseEvent(text, word, rest string) (day Day, meant string, ok bool) {
	sort, relation := DayNext, afterWord
	if word == lastWord {
		sort, relation = DayLast, beforeWord
	}
	name, found, from := cutRelation(rest)
	day, right := Day{Text: text, Sort: sort}, true
	i := eventIndex(name)
	if i < 0 {
		near := Nearest(name, dayEvents)
		if near == "" {
			return Day{}, "", false
		}
		i, right = eventIndex(near), false
	}
	day.Event, meant = DayEvent(i), word+" "+dayEvents[i]
	if found == "" {
		return day, meant, right
	}
	if found != relation { // what it counts from says more than next or last
		right = false
		meant = map[string]string{afterWord: nextWord, beforeWord: lastWord}[found] + " " + dayEvents[i]
	}
	inner, innerMeant, innerRight := parseDay(from)
	if innerRight {
		innerMeant = from
	}
	if innerMeant == "" {
		return Day{}, "", false
	}
	day.From = &inner
	return day, meant + " " + found + " " + innerMeant, right && innerRight
}

// cutRelation cuts at the first "after" or "before".
func cutRelation(s string) (head, relation, tail string) {
	words := strings.Split(s, " ")
	for i, w := range words {
		if w = strings.ToLower(w); i > 0 && i < len(words)-1 && (w == afterWord || w == beforeWord) {
			return strings.Join(words[:i], " "), w, strings.Join(words[i+1:], " ")
		}
	}
	return s, "", ""
}

// parseCount reads "13 weeks after this lesson"; count is its first word.
func parseCount(text, count, rest string) (day Day, meant string, ok bool) {
	words := strings.SplitN(rest, " ", 3)
	right := true
	unit, known := dayUnits[strings.ToLower(words[0])]
	unitWord := words[0]
	if !known {
		unitWord, right = Nearest(words[0], slices.Collect(maps.Keys(dayUnits))), false
	}
	if len(words) < 3 || unitWord == "" { // "11 sky" may be a file
		return Day{Text: text, File: text}, "", len(words) < 2 || unitWord == ""
	}
	relation := strings.ToLower(words[1])
	if relation != afterWord && relation != beforeWord {
		relation, right = Nearest(relation, []string{afterWord, beforeWord}), false
	}
	if digits := smallNumbers[count]; digits != "" {
		count, right = digits, false
	}
	from, fromMeant, fromRight := parseDay(words[2])
	if fromRight {
		fromMeant = words[2]
	}
	n, err := strconv.Atoi(count)
	if relation == "" || fromMeant == "" || err != nil || n > mostCount {
		return Day{}, "", false
	}
	if relation == beforeWord {
		n = -n
	}
	return Day{Text: text, Sort: DayCounted, Count: n, Unit: unit, From: &from}, strings.Join([]string{count, unitWord, relation, fromMeant}, " "), right && fromRight
}

// Anchor returns the day that the name begins to count from, which for an event that
// is counted from where it is written is that event.
func (d Day) Anchor() Day {
	for d.From != nil {
		d = *d.From
	}
	return d
}

// Among returns what was meant by the name where its file is none of the unit's, and ""
// where nothing is near.
func (d Day) Among(files []string) string {
	file := d.Anchor().File
	names := slices.Concat(dayAnchors, files)
	for _, e := range dayEvents {
		names = append(names, nextWord+" "+e, lastWord+" "+e)
	}
	near := Nearest(file, names)
	if stem := strings.TrimSuffix(strings.ToLower(file), ".md"); near == "" {
		near = Nearest(stem, files)
	}
	if near == "" {
		return ""
	}
	return strings.TrimSuffix(d.Text, file) + near
}

// ErrYears says that a day is so far away that its year has not four digits.
var ErrYears = errors.New("that day is too far away")

// Count returns the day that many units after d, before it where n is negative. A month
// later is the same day of that month, or its last where it is shorter.
func (u DayUnit) Count(d place.Date, n int) (place.Date, error) {
	switch u {
	case InDays:
		d = d.Add(n)
	case InWeeks:
		d = d.Add(7 * n)
	case InMonths:
		months := d.Year*12 + int(d.Month) - 1 + n
		first := place.Date{Year: months / 12, Month: time.January + time.Month(months%12), Day: 1}
		last := first.Add(31)
		last.Day = 1
		d = first.Add(min(d.Day, first.DaysUntil(last)) - 1)
	}
	if d.Year < 1 || d.Year > 9999 {
		return place.Date{}, ErrYears
	}
	return d, nil
}

// A monthOf is a month by the name of one of its days.
type monthOf struct{ Day }

// A dayList is a list of dates of which some are days by name.
type dayList []any // place.Date or Day

// named reads a day by its name for a field that takes one.
func (f Field) named(s string) (any, string) {
	if advice := f.advice(s); strings.HasPrefix(advice, "write ") || advice == noSuchDay {
		return nil, f.mismatch(s)
	}
	day, meant, ok := ParseDay(s)
	switch {
	case ok && f.Kind() == Month:
		return monthOf{day}, ""
	case ok:
		return day, ""
	case meant != "":
		return nil, f.UnknownDay(s, meant)
	}
	return nil, f.mismatch(s)
}

// UnknownDay says that a name is not one of a day, and what was meant by it, if that can be
// told, or else what the field takes.
func (f Field) UnknownDay(s, meant string) string {
	if meant != "" {
		return fmt.Sprintf("is %s; did you mean %q?", found(s), meant)
	}
	return fmt.Sprintf("is %s, want %s", found(s), f.Allowed())
}

// ADay is a field that takes a day by name and nothing but a date besides.
func ADay() Field { return Field{Key: Key[place.Date]("date"), Named: true} }

// Named returns the form with days by name allowed wherever a date can stand.
func (f Form) Named() Form {
	named := slices.Clone(f)
	for i, field := range named {
		switch field.Kind() {
		case Date, Month, Dates:
			named[i].Named = true
		}
	}
	return named
}

// A NamedDay is a day by name with the key that it stands under, "date", or "days[2]"
// in a list.
type NamedDay struct {
	Key string
	Day Day
}

// Days returns the days that the values name, by key.
func (v Values) Days() []NamedDay {
	var days []NamedDay
	for _, key := range slices.Sorted(maps.Keys(v)) {
		switch x := v[key].(type) {
		case Day:
			days = append(days, NamedDay{key, x})
		case monthOf:
			days = append(days, NamedDay{key, x.Day})
		case dayList:
			for i, item := range x {
				if day, ok := item.(Day); ok {
					days = append(days, NamedDay{key + "[" + strconv.Itoa(i) + "]", day})
				}
			}
		}
	}
	return days
}

// OnDays returns v with the date of each day by name in its place.
func (v Values) OnDays(date func(Day) (place.Date, error)) (Values, error) {
	days := v.Days()
	if len(days) == 0 {
		return v, nil
	}
	on := map[string]place.Date{}
	for _, named := range days {
		d, err := date(named.Day)
		if err != nil {
			return nil, fmt.Errorf("%s is %q: %w", named.Key, named.Day.Text, err)
		}
		on[named.Key] = d
	}
	full := v.With(nil)
	for key, x := range v {
		switch x := x.(type) {
		case Day:
			full[key] = on[key]
		case monthOf:
			first := on[key]
			first.Day = 1
			full[key] = YearMonth{first}
		case dayList:
			dates := make([]place.Date, len(x))
			for i, item := range x {
				if d, ok := item.(place.Date); ok {
					dates[i] = d
				} else {
					dates[i] = on[key+"["+strconv.Itoa(i)+"]"]
				}
			}
			full[key] = dates
		}
	}
	return full, nil
}

// TakeDay returns the day by name that the values hold under the key, and takes it out.
func (v Values) TakeDay(key Key[place.Date]) (Day, bool) {
	day, ok := v[key.Name()].(Day)
	if ok {
		delete(v, key.Name())
	}
	return day, ok
}
