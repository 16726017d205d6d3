package moon

import (
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argMonth      form.Key[form.YearMonth] = "month"
	argTime       form.Key[time.Duration]  = "time"
	argWeekStarts form.Key[string]         = "week_starts"
)

func moonMonth() entry.Entry {
	return entry.Entry{
		Name:    "moon-month",
		Summary: "A month of Moons: drawn as they look from the school, with phases, rise and set.",
		Arguments: form.Form{
			{Key: argMonth, Assumed: "the month of the date", Doc: "Month that is drawn."},
			entry.OnDate(),
			{Key: argTime, Assumed: "sunset while the Moon grows and sunrise while it shrinks, or when it stands highest if it is down then", Doc: "Time by the school's clock at which each Moon is drawn."},
			{Key: argWeekStarts, Choices: []string{"monday", "sunday"}, Default: "monday", Doc: "First day of the week in the calendar."},
		},
		Settings: school.Where(),
		Facts: []entry.Fact{
			{Name: "new_moon", Doc: "moment of the first new Moon from the beginning of the month on"},
			{Name: "first_quarter", Doc: "moment of the first first quarter from the beginning of the month on"},
			{Name: "full_moon", Doc: "moment of the first full Moon from the beginning of the month on"},
			{Name: "last_quarter", Doc: "moment of the first last quarter from the beginning of the month on"},
			{Name: "phase", Doc: "what the Moon is called on the date"},
			{Name: "lit", Unit: "percent", Doc: "how much of its disc is lit on the date, when it is drawn"},
			{Name: "side", Doc: "which side of it is lit then, as seen from the school"},
			{Name: "turn", Doc: "to which side you turn as you carry the Moon round your head: left in the north, right in the south"},
			{Name: "growing_side", Doc: "on which side the Moon that is carried so is lit while it grows: right in the north, left in the south"},
			{Name: "shrinking_side", Doc: "on which side it is lit while it shrinks"},
			{Name: "rise", Doc: "moonrise on the date"},
			{Name: "set", Doc: "moonset on the date"},
			entry.Truth("rises", "whether it rises on the date; once a month, and for days near a pole, it does not"),
			entry.Truth("stays_up", "whether the Moon stays up all the date"),
			entry.Truth("stays_down", "whether it stays down all the date"),
		},
		Sources:  []string{entry.SourceMoon, entry.SourceMoonrise, sourcePhases, entry.SourceIANA},
		Harmless: "Times and dates, to read; looking by day is the work of moon-school, at home of moon-diary.",
		Reckon:   reckonMoonMonth,
	}
}

func reckonMoonMonth(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	turn, behind := turning(p)
	first := place.Date{Year: date.Year, Month: date.Month, Day: 1}
	if argMonth.In(v) {
		first = argMonth.Of(v).First
	}
	facts, phases, err := principalPhases(p, first)
	if err != nil {
		return result.Result{}, err
	}
	moons := moonDays(v, p, first, phases)
	dayFrom, dayTo := p.Day(date)
	onDate, _ := almanac.Phases(dayFrom, dayTo) // none where the date is out of range and the month is not
	today := moonDay(v, p, date, onDate)
	r := result.Result{
		Facts: append(facts,
			result.Fact{Name: "phase", Value: today.named()},
			result.Fact{Name: "lit", Value: entry.Percent(today.limb.Lit)},
			result.Fact{Name: "side", Value: today.side()},
			result.Fact{Name: "turn", Value: turn},
			result.Fact{Name: "growing_side", Value: behind},
			result.Fact{Name: "shrinking_side", Value: turn},
			result.Fact{Name: "rise", Value: entry.TimesOr(today.day.Rises, today.day.State, "sun-day.no_rise")},
			result.Fact{Name: "set", Value: entry.TimesOr(today.day.Sets, today.day.State, "sun-day.no_set")},
			entry.True("rises", len(today.day.Rises) > 0),
			entry.True("stays_up", today.day.State == almanac.UpAllDay),
			entry.True("stays_down", today.day.State == almanac.DownAllDay),
		),
		Drawings: []drawing.Drawing{moonCalendar(first, moons, argWeekStarts.Of(v) == "sunday")},
		Tables:   []result.Table{moonTable(first, moons), phaseTable(p, first, phases)},
		Notes:    []say.Phrase{drawnWhen(v)},
	}
	if first.Year == date.Year && first.Month == date.Month { // another month shows nothing of the date
		r.Working = moonWorking(today)
	}
	return r, nil
}

// turning says to which side somebody turns who carries the Moon round, and which side
// is left behind: it goes from west to east, which is counterclockwise as seen from above
// the north pole and clockwise from above the south pole. Until full Moon the lamp that
// stands for the Sun is on the side left behind, and lights the Moon from there.
func turning(p place.Place) (turn, behind say.Value) {
	left, right := say.Words("moon-month.left"), say.Words("moon-month.right")
	if p.Latitude < 0 {
		return right, left
	}
	return left, right
}

// drawnWhen says at which time the Moons are drawn.
func drawnWhen(v form.Values) say.Phrase {
	if argTime.In(v) {
		at := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC).Add(argTime.Of(v))
		return say.Line("moon-month.drawn_at", say.Clock(at))
	}
	return say.Line("moon-month.drawn_evening_morning")
}

// principalPhases returns the first phase of each kind from the beginning of
// the month on, as facts, and all phases of the month.
func principalPhases(p place.Place, first place.Date) ([]result.Fact, []almanac.PhaseTime, error) {
	if err := entry.RangeOf(first); err != nil {
		return nil, nil, err
	}
	from, _ := p.Day(first)
	to, _ := p.Day(nextMonth(first))
	const round = 32 * 24 * time.Hour // more than the longest time from a phase to the next of its kind, 29.9 d
	list, err := almanac.Phases(from, from.Add(round))
	if err != nil { // the last month of the range: what follows it is not known
		if list, err = almanac.Phases(from, to); err != nil {
			return nil, nil, err
		}
	}
	names := [...]string{"new_moon", "first_quarter", "full_moon", "last_quarter"}
	var facts []result.Fact
	for _, name := range names {
		facts = append(facts, result.Fact{Name: name, Value: say.None("sky.unknown")})
	}
	var month []almanac.PhaseTime
	for _, x := range list {
		if f := &facts[x.Phase]; f.Value.Kind == say.Nothing {
			f.Value = entry.Moment(p, x.At)
		}
		if x.At.Before(to) {
			month = append(month, x)
		}
	}
	return facts, month, nil
}

func nextMonth(first place.Date) place.Date {
	t := first.UTC().AddDate(0, 1, 0)
	return place.Date{Year: t.Year(), Month: t.Month(), Day: 1}
}

// A moonDate is the Moon on one day of the calendar.
type moonDate struct {
	date  place.Date
	day   almanac.Day
	drawn time.Time // when it is drawn
	up    bool      // whether it is up then
	limb  almanac.Limb
	phase *almanac.PhaseTime // the principal phase that falls on the date, if one does
}

func moonDays(v form.Values, p place.Place, first place.Date, phases []almanac.PhaseTime) []moonDate {
	var moons []moonDate
	for d := first; d.Month == first.Month; d = d.Add(1) {
		if m := moonDay(v, p, d, phases); m.day.State != almanac.NoDay {
			moons = append(moons, m)
		}
	}
	return moons
}

func moonDay(v form.Values, p place.Place, d place.Date, phases []almanac.PhaseTime) moonDate {
	m := moonDate{date: d, day: entry.MoonDay(p, d)}
	if argTime.In(v) {
		minutes := int(argTime.Of(v).Minutes())
		m.drawn = p.Clock(d, minutes/60, minutes%60)
		m.up = entry.MoonUp(p, m.drawn)
	} else {
		m.drawn, m.up = eveningOrMorning(p, m.day, d)
	}
	m.limb = almanac.Moon.LimbFrom(p, m.drawn)
	for i, x := range phases {
		if p.DateAt(x.At) == d {
			m.phase = &phases[i]
		}
	}
	return m
}

// eveningOrMorning returns when a class meets the Moon of a date: at sunset
// while it grows, at sunrise while it shrinks. Where it is down then, or the Sun
// neither rises nor sets, it is when the Moon stands highest in the day, which
// may be an end of it. Without any such moment the Moon is down all day.
func eveningOrMorning(p place.Place, moon almanac.Day, d place.Date) (t time.Time, up bool) {
	sun := entry.SunDay(p, d)
	midday := sun.From.Add(sun.To.Sub(sun.From) / 2)
	meetings := sun.Rises
	if almanac.Moon.AspectAt(midday).East {
		meetings = sun.Sets
	}
	meetings = append(meetings[:len(meetings):len(meetings)], moon.Transits...)
	for _, t := range append(meetings, moon.From, moon.To.Add(-time.Minute)) {
		if entry.MoonUp(p, t) {
			return t.In(p.Zone), true
		}
	}
	return midday.In(p.Zone), false
}

// side is which side is lit when the Moon is drawn.
func (m moonDate) side() say.Value {
	if !m.up {
		return say.None("sky.below")
	}
	return entry.LitSide(m.limb.Side)
}

// named is what the Moon of a date is called: a principal phase if its moment
// falls on it, else by how it grows and how much of it is lit at midday.
func (m moonDate) named() say.Value {
	if m.phase != nil {
		return PhaseName(m.phase.Phase)
	}
	aspect := almanac.Moon.AspectAt(m.day.From.Add(m.day.To.Sub(m.day.From) / 2))
	switch {
	case aspect.East && aspect.Lit < 0.5:
		return say.Words("phase.waxing_crescent")
	case aspect.East:
		return say.Words("phase.waxing_gibbous")
	case aspect.Lit >= 0.5:
		return say.Words("phase.waning_gibbous")
	}
	return say.Words("phase.waning_crescent")
}

func PhaseName(x almanac.Phase) say.Value {
	return say.Words([...]string{"phase.new_moon", "phase.first_quarter", "phase.full_moon", "phase.last_quarter"}[x])
}

func moonTable(first place.Date, moons []moonDate) result.Table {
	table := result.Table{
		Name:  "days",
		Title: say.Line("moon-month.title", say.Words(entry.MonthKey(first.Month)), entry.YearValue(first.Year)),
		Columns: []result.Column{
			{Name: "date"}, {Name: "phase"}, {Name: "rise"}, {Name: "set"}, {Name: "lit", Unit: "percent"}, {Name: "lit_side"}, {Name: "drawn_at"},
		},
	}
	for _, m := range moons {
		drawn := say.Clock(m.drawn)
		if !m.up {
			drawn = say.None("sky.dash")
		}
		table.Rows = append(table.Rows, result.Row{Marked: m.phase != nil, Cells: []say.Value{
			entry.DayOfYear(m.date),
			m.named(),
			entry.TimesOr(m.day.Rises, m.day.State, "sun-day.no_rise"),
			entry.TimesOr(m.day.Sets, m.day.State, "sun-day.no_set"),
			entry.Percent(m.limb.Lit),
			m.side(),
			drawn,
		}})
	}
	return table
}

func phaseTable(p place.Place, first place.Date, phases []almanac.PhaseTime) result.Table {
	table := result.Table{
		Name:    "phases",
		Title:   say.Line("moon-month.phases_title", say.Words(entry.MonthKey(first.Month)), entry.YearValue(first.Year)),
		Columns: []result.Column{{Name: "phase"}, {Name: "at"}},
	}
	for _, x := range phases {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{PhaseName(x.Phase), entry.Moment(p, x.At)}})
	}
	return table
}

// moonWorking is the lit fraction of the date from the phase angle: Meeus,
// Astronomical Algorithms, 2nd ed. 1998, equation 48.1.
func moonWorking(m moonDate) []say.Phrase {
	angle := almanac.Moon.AspectAt(m.drawn).PhaseAngle
	lit := say.Number((1+angle.Cos())/2, "", 3)
	c := entry.Enough(lit, func(x []float64) float64 { return (1 + x[0]) / 2 }, say.Number(angle.Cos(), "", 3))
	a := entry.Enough(lit, func(x []float64) float64 { return (1 + quantity.Degrees(x[0]).Cos()) / 2 }, say.Number(angle.Degrees(), "deg", 1))
	a = entry.Enough(c[0], func(x []float64) float64 { return quantity.Degrees(x[0]).Cos() }, a[0])
	return []say.Phrase{say.Line("moon-month.working", say.Date(m.date), say.Clock(m.drawn), a[0], c[0], lit)}
}

const sourcePhases = "Phases: the moments at which the Moon's apparent geocentric longitude is 0°, 90°, 180° and 270° ahead of the Sun's"
