package entry

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// A Course is the lessons of a unit while the school is open: some name the day on which
// they are held.
type Course struct {
	Lessons []classroom.Lesson // those with a day by name have no date
	Named   map[int]form.Day   // days by name, by index of the lesson
	Files   map[string]int     // pages by the name of their file without .md: the number of a lesson, 0 of other pages
	Left    []string           // lessons of the folder that the handbook goes without, by the name of their file
}

// IsLeft reports whether the lesson whose file has that name is one of those that the
// handbook goes without.
func (c Course) IsLeft(file string) bool {
	return slices.ContainsFunc(c.Left, func(name string) bool { return strings.EqualFold(strings.Join(strings.Fields(name), " "), file) })
}

// FileNames returns the names that a day can have of a lesson.
func (c Course) FileNames() []string {
	var names []string
	for name, number := range c.Files {
		if number > 0 {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// Lesson returns the number of the lesson whose file has that name; 0 for a page that
// is none.
func (c Course) Lesson(file string) (number int, ok bool) {
	for name, number := range c.Files {
		if strings.EqualFold(strings.Join(strings.Fields(name), " "), file) {
			return number, true
		}
	}
	return 0, false
}

// Complaint says what is wrong with the file that a day is named after, in a field that
// takes such a day; "" where nothing is. It follows the key: "date is …".
func (c Course) Complaint(field form.Field, day form.Day) string {
	anchor := day.Anchor()
	if anchor.Sort != form.DayOfFile {
		return ""
	}
	number, ok := c.Lesson(anchor.File)
	switch {
	case c.IsLeft(anchor.File):
		return "" // whoever reads the unit warns
	case !ok:
		return field.UnknownDay(day.Text, day.Among(c.FileNames()))
	case number == 0:
		return fmt.Sprintf("is %q, and %s is a page without a day; want a lesson's file", day.Text, anchor.File)
	}
	return ""
}

// Days says which days names are, at one school and on one page.
type Days struct {
	Settings form.Values // of the school
	Here     place.Date  // the day of the page, from which next and last count
	Held     func(file string) (place.Date, bool)
}

// ErrNoDay says that a day cannot be told because something is missing that was
// reported where it should stand.
var ErrNoDay = errors.New("the day is not known")

// Date returns the date of a day by name. An event is on its day by the school's clock.
// The error is ErrNoDay, form.ErrYears, one of a year that the almanac does not reach,
// or says that the clock does not change.
func (d Days) Date(day form.Day) (place.Date, error) {
	from := d.Here
	if day.From != nil {
		var err error
		if from, err = d.Date(*day.From); err != nil {
			return place.Date{}, err
		}
	}
	switch day.Sort {
	case form.DayTermFirst:
		return known(school.TermFirstDay.Of(d.Settings))
	case form.DayTermLast:
		return known(school.TermLastDay.Of(d.Settings))
	case form.DayOfThis:
		return known(d.Here)
	case form.DayOfFile:
		if date, ok := d.Held(day.File); ok {
			return known(date)
		}
		return place.Date{}, ErrNoDay
	case form.DayCounted:
		return day.Unit.Count(from, day.Count)
	}
	if from.IsZero() || school.TimeZone.Of(d.Settings) == nil {
		return place.Date{}, ErrNoDay
	}
	if err := RangeOf(from); err != nil {
		return place.Date{}, err
	}
	return eventDay(school.Place(d.Settings), day.Event, from, day.Sort == form.DayLast)
}

func known(date place.Date) (place.Date, error) {
	if date.IsZero() {
		return date, ErrNoDay
	}
	return date, nil
}

// eventDay returns the next day of the event after a date, or the last until it.
func eventDay(p place.Place, e form.DayEvent, from place.Date, last bool) (place.Date, error) {
	if e == form.ClockChange {
		return changeDay(p, from, last)
	}
	moments, err := moments(e, from, last)
	if err != nil {
		return place.Date{}, err
	}
	var until place.Date
	for _, t := range moments {
		switch date := p.DateAt(t); {
		case !date.After(from):
			until = date
		case !last:
			return date, nil
		}
	}
	if until.IsZero() || !last { // it is beyond what is computed
		beyond := almanac.LastYear + 1
		if last {
			beyond = almanac.FirstYear - 1
		}
		return place.Date{}, InRange(beyond)
	}
	return until, nil
}

// moments returns the moments of an event of the sky over more than one round after a
// date, or before it, as far as they are computed.
func moments(e form.DayEvent, from place.Date, last bool) ([]time.Time, error) {
	var list []time.Time
	if phase, ok := phases[e]; ok {
		begin, end := from.UTC().AddDate(0, 0, -1), from.UTC().AddDate(0, 0, moonRound)
		if last {
			begin, end = from.UTC().AddDate(0, 0, -moonRound), from.UTC().AddDate(0, 0, 2)
		}
		if first := (place.Date{Year: almanac.FirstYear - 1, Month: time.December, Day: 31}).UTC(); begin.Before(first) {
			begin = first
		}
		if beyond := LastDay().Add(1).UTC(); end.After(beyond) {
			end = beyond
		}
		all, err := almanac.Phases(begin, end)
		for _, at := range all {
			if at.Phase == phase {
				list = append(list, at.At)
			}
		}
		return list, err
	}
	for year := from.Year - 1; year <= from.Year+1; year++ {
		of, err := almanac.Seasons(year)
		if err != nil { // the other years may do
			continue
		}
		for _, season := range seasons[e] {
			list = append(list, of[season])
		}
	}
	return list, nil
}

// changeDay returns the next day after a date on which the clock changes, or the last
// until it, within two years. It is the day that the old clock shows.
func changeDay(p place.Place, from place.Date, last bool) (place.Date, error) {
	begin := from.UTC().AddDate(0, 0, -2)
	if last {
		begin = from.UTC().AddDate(-2, 0, 0)
	}
	var until place.Date
	for {
		at, _, ok := p.NextChange(begin)
		if !ok {
			break
		}
		date := BeforeChange(p, at).DateAt(at)
		if date.After(from) && !last {
			return date, nil
		}
		if date.After(from) {
			break
		}
		until, begin = date, at
	}
	if until.IsZero() || !last {
		word := "after"
		if last {
			word = "before"
		}
		return place.Date{}, fmt.Errorf("the school's clock does not change in the two years %s %s", word, from)
	}
	return until, nil
}

// moonRound is longer than any time between two like phases: 29.9 days at most (Meeus,
// More Mathematical Astronomy Morsels, 2002, chapter 4, from memory), and a day each for
// clocks ahead of and behind Greenwich.
const moonRound = 33

var (
	phases = map[form.DayEvent]almanac.Phase{
		form.NewMoon: almanac.NewMoon, form.FirstQuarterMoon: almanac.FirstQuarter,
		form.FullMoon: almanac.FullMoon, form.LastQuarterMoon: almanac.LastQuarter,
	}
	seasons = map[form.DayEvent][]almanac.Season{
		form.Solstice:         {almanac.JuneSolstice, almanac.DecemberSolstice},
		form.Equinox:          {almanac.MarchEquinox, almanac.SeptemberEquinox},
		form.JuneSolstice:     {almanac.JuneSolstice},
		form.DecemberSolstice: {almanac.DecemberSolstice},
		form.MarchEquinox:     {almanac.MarchEquinox},
		form.SeptemberEquinox: {almanac.SeptemberEquinox},
	}
)

// Arrange gives the lessons their days at a school. A day that is named after another
// lesson follows from that lesson's, and the other lessons make room for it; so all are
// arranged again until no day moves. The faults are by index of the lesson.
func (c Course) Arrange(settings form.Values) ([]classroom.Lesson, classroom.Calendar, map[int]error) {
	lessons := slices.Clone(c.Lessons)
	faults := map[int]error{}
	indices := slices.Sorted(maps.Keys(c.Named))
	calendar := classroom.Calendar{}
	arranged := false
	moved := indices
	for round := 0; round <= mostRounds; round++ {
		days := Days{Settings: settings, Here: school.TermFirstDay.Of(settings)}
		days.Held = func(file string) (place.Date, bool) {
			number, _ := c.Lesson(file)
			if number == 0 {
				return place.Date{}, false
			}
			if named, ok := c.Named[number-1]; ok {
				date, err := days.Date(named)
				return date, err == nil
			}
			if !arranged {
				return lessons[number-1].Date, true
			}
			return dayHeld(settings, lessons, calendar, number-1), true
		}
		moved = nil
		clear(faults)
		for _, i := range indices {
			date, err := days.Date(c.Named[i])
			if err != nil && !errors.Is(err, ErrNoDay) {
				faults[i] = err
			}
			if date != lessons[i].Date {
				lessons[i].Date = date
				moved = append(moved, i)
			}
		}
		if arranged && len(moved) == 0 {
			return lessons, calendar, faults
		}
		calendar, arranged = school.Calendar(settings, lessons), true
		if len(indices) == 0 {
			return lessons, calendar, faults
		}
	}
	for _, i := range moved {
		faults[i] = errors.New("its day and those of the other lessons push each other on without end; want a day that depends on the term or the sky, or on a lesson before it")
	}
	return lessons, calendar, faults
}

// mostRounds bounds how often the lessons are arranged: each round settles at least the
// lessons up to the first whose day moves, and few lessons name a day.
const mostRounds = 12

// dayHeld is the day on which a lesson is held; where it has none, which is reported,
// the first of the term.
func dayHeld(settings form.Values, lessons []classroom.Lesson, calendar classroom.Calendar, i int) place.Date {
	if calendar.Held[i].Placed {
		return calendar.Held[i].Date
	}
	if !lessons[i].Date.IsZero() {
		return lessons[i].Date
	}
	return school.TermFirstDay.Of(settings)
}

// Of returns what days are called on a page of the unit at a school: on that of a lesson,
// by its number, or on another, whose number is 0.
func (c Course) Of(settings form.Values, lessons []classroom.Lesson, calendar classroom.Calendar, number int) Days {
	days := Days{Settings: settings, Here: school.TermFirstDay.Of(settings)}
	if number > 0 {
		days.Here = dayHeld(settings, lessons, calendar, number-1)
	}
	days.Held = func(file string) (place.Date, bool) {
		if c.IsLeft(file) { // the day of the page stands in for its day
			return days.Here, true
		}
		n, _ := c.Lesson(file)
		if n == 0 {
			return place.Date{}, false
		}
		return dayHeld(settings, lessons, calendar, n-1), true
	}
	return days
}
