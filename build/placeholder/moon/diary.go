package moon

import (
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argWeeks       form.Key[int]           = "weeks"
	argEarliest    form.Key[time.Duration] = "earliest"
	argLatest      form.Key[time.Duration] = "latest"
	argAltitudeDeg form.Key[float64]       = "altitude_deg"
	argShape       form.Key[bool]          = "shape"
	argHeight      form.Key[bool]          = "height"
)

func moonDiary() entry.Entry {
	return entry.Entry{
		Name:      "moon-diary",
		Summary:   "When and where to look for the Moon on each day of some weeks, from school or from home, with a sheet to draw it on.",
		Printable: true,
		Arguments: form.Form{
			entry.OnDate(),
			{Key: argWeeks, Min: 1, Max: 8, Default: 4, Doc: "Weeks from the date on that the diary is kept."},
			{Key: argEarliest, Assumed: "7:00", Doc: "Nobody looks earlier in the day."},
			{Key: argLatest, Assumed: "21:00", Doc: "Nobody stays up later."},
			{Key: argAltitudeDeg, Unit: "deg", Min: 0, Max: 60, Default: entry.LeastMoon(), Doc: "How high the Moon has to stand, as seen; roofs and trees hide what is lower."},
			{Key: argShape, Default: true, Doc: "Whether the table says what the Moon looks like; pupils are to find that out."},
			{Key: argHeight, Default: true, Doc: "Whether the table says how high it stands; pupils are to measure that."},
		},
		Settings: slices.Concat(school.Where(), form.Keys{school.Paper}, school.TimetableSettings()),
		Facts: []entry.Fact{
			{Name: "first_day", Doc: "the first day of the diary"},
			{Name: "last_day", Doc: "its last day"},
			{Name: "days", Doc: "how many days it has"},
			{Name: "chances", Doc: "days on which the Moon can be looked for"},
			{Name: "in_lessons", Doc: "of these, the days on which it can be in a lesson"},
			{Name: "by_day", Doc: "of these, the days on which it can be outside lessons with the Sun up"},
			{Name: "after_sunset", Doc: "of these, the days on which it takes an evening or a morning without the Sun"},
			{Name: "near_sun", Doc: "days on which it is left alone because it stands too near the Sun"},
			{Name: "first_look", Doc: "the first time to look"},
		},
		Sources:  []string{entry.SourceMoon, entry.SourceSun, entry.SourceRefraction, entry.SourceIANA, sourceMoonClear, "From home 35° after sunset too: common practice, no source", "The hours at which pupils are up: common practice, no source"},
		Cautions: []string{entry.CareMoonByDay, entry.CareAtHome},
		Reckon:   reckonMoonDiary,
	}
}

// A lookFrom says where the class looks for the Moon on a day.
type lookFrom int

const (
	fromLesson lookFrom = iota // in a lesson
	byDay                      // outside lessons, the Sun up
	withAdult                  // outside lessons, the Sun down
	tooNear                    // up, but too near the Sun
	notUp                      // not high enough while pupils are up
)

func (l lookFrom) value() say.Value {
	return say.Words([...]string{"moon-diary.lesson", "moon-diary.day", "moon-diary.night", "moon-diary.near", "moon-diary.down"}[l])
}

// A look is what a day of the diary asks for. Without one of the first three
// kinds it has no time.
type look struct {
	entry.Chance
	from lookFrom
}

// homeTime is what pupils need between a lesson and home: common practice.
const homeTime = time.Hour

func reckonMoonDiary(v form.Values) (result.Result, error) {
	p := school.Place(v)
	looks, edge, err := diaryLooks(v, p)
	if err != nil {
		return result.Result{}, err
	}
	notes := []say.Phrase{say.Line("moon-diary.note"), say.Line("sky.fist")}
	if !argHeight.Of(v) {
		notes[0] = say.Line("moon-diary.note_measure")
	}
	notes = append(notes, edge...)
	d := diarySheet(p, looks)
	return result.Result{
		Facts:  moonDiaryFacts(p, looks),
		Tables: []result.Table{diaryTable(p, looks, argShape.Of(v), argHeight.Of(v))},
		Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(d),
		Notes:  notes,
	}, nil
}

// diaryLooks returns a look for each day of the diary, and the note that the almanac ends
// before the diary does, where it does.
func diaryLooks(v form.Values, p place.Place) (looks []look, edge []say.Phrase, err error) {
	first := entry.Date.Of(v)
	last := first.Add(7*argWeeks.Of(v) - 1)
	if end := entry.LastDay(); end.Before(last) && !end.Before(first) {
		last, edge = end, []say.Phrase{entry.Edge()}
	}
	if err := entry.SchoolRange(first, last); err != nil {
		return nil, nil, err
	}
	for d := first; !d.After(last); d = d.Add(1) {
		looks = append(looks, lookOn(v, p, d))
	}
	return looks, edge, nil
}

// lookOn chooses the time of a day: the highest Moon in a lesson; if there is
// none, the highest in daylight before or after school; then one without the Sun. At
// home the Moon must be as far from the Sun after sunset as by day: a thinner one is hard
// to find, and a child who searches for it early searches beside the Sun.
func lookOn(v form.Values, p place.Place, d place.Date) look {
	altitude := quantity.Degrees(argAltitudeDeg.Of(v))
	lessons, home := diaryHours(v, d)
	near := false
	for _, from := range []lookFrom{fromLesson, byDay, withAdult} {
		hours := home
		if from == fromLesson {
			hours = lessons
		}
		best := look{from: notUp}
		for _, c := range entry.ChancesOn(p, d, hours, altitude) {
			for _, part := range litParts(p, d, c.From, c.To, from) {
				c := entry.ChanceIn(p, d, part.From, part.To)
				if c.Best = onTheQuarter(c); !c.Safe || from != fromLesson && almanac.Moon.SunApart(p, c.Best) < classroom.MoonClear {
					near = true
					continue
				}
				c.Where, c.Limb = almanac.MoonFrom(p, c.Best), almanac.Moon.LimbFrom(p, c.Best)
				if best.from == notUp || c.Where.Altitude > best.Where.Altitude {
					best = look{c, from}
				}
			}
		}
		if best.from != notUp {
			return best
		}
	}
	none := look{Chance: entry.Chance{Date: d}, from: notUp}
	if near {
		none.from = tooNear
	}
	return none
}

// diaryHours returns the lessons of a date, and when pupils are at home and up.
func diaryHours(v form.Values, d place.Date) (lessons, home []form.TimeSpan) {
	earliest, latest := 7*time.Hour, 21*time.Hour // common practice for pupils of about eleven
	if argEarliest.In(v) {
		earliest = argEarliest.Of(v)
	}
	if argLatest.In(v) {
		latest = argLatest.Of(v)
	}
	term := school.Term(v)
	if !term.Teaches(d) {
		return nil, []form.TimeSpan{{From: earliest, To: latest}}
	}
	lessons = school.LessonTimesOn(term, d)
	day := lessons
	if len(day) == 0 { // a school day all the same
		day, _ = school.LessonTimes(v)
	}
	begins, ends := day[0].From, day[0].To
	for _, l := range day {
		begins, ends = min(begins, l.From), max(ends, l.To)
	}
	return lessons, []form.TimeSpan{{From: earliest, To: begins - homeTime}, {From: ends + homeTime, To: latest}}
}

// litParts cuts a stretch to what of it has the Sun up or, for a look with an
// adult, down.
func litParts(p place.Place, d place.Date, from, to time.Time, kind lookFrom) []almanac.Span {
	if kind == fromLesson {
		return []almanac.Span{{From: from, To: to}}
	}
	sun := entry.SunDay(p, d)
	up := sun.Spans()
	if kind == withAdult {
		up = gaps(up, sun.From, sun.To)
	}
	var parts []almanac.Span
	for _, s := range up {
		if part, ok := entry.Clip(s, from, to); ok {
			parts = append(parts, part)
		}
	}
	return parts
}

// gaps returns what of a day the stretches leave, in order.
func gaps(taken []almanac.Span, from, to time.Time) []almanac.Span {
	var rest []almanac.Span
	for _, s := range taken {
		if from.Before(s.From) {
			rest = append(rest, almanac.Span{From: from, To: s.From})
		}
		from = s.To
	}
	if from.Before(to) {
		rest = append(rest, almanac.Span{From: from, To: to})
	}
	return rest
}

// onTheQuarter moves the best moment to the nearest quarter of an hour that lies
// in the stretch, because nobody looks at 16:47. The Moon moves 4° by then at
// most.
func onTheQuarter(c entry.Chance) time.Time {
	const quarter = 15 * time.Minute
	_, offset := c.Best.Zone()
	shift := time.Duration(offset) * time.Second
	t := c.Best.Add(shift).Round(quarter).Add(-shift)
	for _, t := range []time.Time{t, t.Add(-quarter), t.Add(quarter)} {
		if !t.Before(c.From) && !t.After(c.To) {
			return t
		}
	}
	return c.Best
}

func diaryTable(p place.Place, looks []look, shape, height bool) result.Table {
	table := result.Table{
		Name:    "days",
		Title:   say.Line("moon-diary.title", say.Date(looks[0].Date), say.Date(looks[len(looks)-1].Date)),
		Columns: []result.Column{{Name: "date"}, {Name: "place"}, {Name: "at"}, {Name: "direction"}},
	}
	if height {
		table.Columns = append(table.Columns, result.Column{Name: "altitude", Unit: "deg"})
	}
	if shape {
		table.Columns = append(table.Columns, result.Column{Name: "lit", Unit: "percent"}, result.Column{Name: "lit_side"})
	}
	dash := say.None("sky.dash")
	for _, l := range looks {
		at, direction, altitude, lit, side := dash, dash, dash, dash, dash
		if l.from <= withAdult {
			at, direction = say.Clock(l.Best.In(p.Zone)), entry.Toward(l.Where.Azimuth)
			altitude = say.Number(entry.AsSeen(l.Where.Altitude).Degrees(), "deg", 0)
			lit, side = entry.Percent(l.Limb.Lit), entry.LitSide(l.Limb.Side)
		}
		cells := []say.Value{entry.Weekday(l.Date), l.from.value(), at, direction}
		if height {
			cells = append(cells, altitude)
		}
		if shape {
			cells = append(cells, lit, side)
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells})
	}
	return table
}

// The diary's sheet: a column a weekday, a row a week. A cell of 26 mm goes
// seven times on Letter and A4 alike.
const (
	diaryCell   = 26.0
	diaryRow    = 55.0
	diaryTop    = 16.0
	diaryRadius = 10.5
)

func diarySheet(p place.Place, looks []look) drawing.Drawing {
	d := drawing.Drawing{
		Name: "moon-diary", Width: 7 * diaryCell, Height: diaryTop + diaryRow*float64((len(looks)+6)/7),
		Title:       say.Line("moon-diary.sheet", say.Date(looks[0].Date), say.Date(looks[len(looks)-1].Date)),
		Description: say.Line("moon-diary.description"),
	}
	d.Label("strong", drawing.Point{X: 0, Y: 4}, drawing.Start, say.Words("moon-diary.sheet", say.Date(looks[0].Date), say.Date(looks[len(looks)-1].Date)))
	d.Label("small", drawing.Point{X: d.Width, Y: 4}, drawing.End, say.Words("moon-diary.name_line"))
	for i, l := range looks {
		x, y := diaryCell*(float64(i%7)+0.5), diaryTop+diaryRow*float64(i/7)
		if i < 7 {
			d.Label("strong", drawing.Point{X: x, Y: diaryTop - 4}, drawing.Middle, say.Words(entry.WeekdayKey(l.Date)))
		}
		if i%7 == 0 {
			d.Line("mark", drawing.Point{X: 0, Y: y - 1.5}, drawing.Point{X: d.Width, Y: y - 1.5})
		}
		d.Label("strong", drawing.Point{X: x, Y: y + 3.5}, drawing.Middle, entry.DayOfYear(l.Date))
		centre := drawing.Point{X: x, Y: y + 6.5 + diaryRadius}
		d.Disc("rim", centre, diaryRadius)
		y += 2*diaryRadius + 11.5
		told := []say.Value{l.from.value()}
		if l.from <= withAdult {
			told = []say.Value{say.Clock(l.Best.In(p.Zone)).As("moon-diary.look_at", say.Clock(l.Best.In(p.Zone))), entry.Toward(l.Where.Azimuth), l.from.value()}
		}
		for k, text := range told {
			line := d.Paragraph("small", drawing.Point{X: x, Y: y}, diaryCell-1, 3.5, text)
			line.Anchor, line.After = drawing.Middle, k > 0
		}
		d.Label("small", drawing.Point{X: x, Y: y + 17}, drawing.Middle, say.Words("moon-diary.seen_at"))
	}
	return d
}

func moonDiaryFacts(p place.Place, looks []look) []result.Fact {
	var count [notUp + 1]int
	firstLook := say.None("sky.nothing")
	for _, l := range looks {
		if count[fromLesson]+count[byDay]+count[withAdult] == 0 && l.from <= withAdult {
			firstLook = entry.Moment(p, l.Best)
		}
		count[l.from]++
	}
	return []result.Fact{
		{Name: "first_day", Value: say.Date(looks[0].Date)},
		{Name: "last_day", Value: say.Date(looks[len(looks)-1].Date)},
		{Name: "days", Value: say.Count(len(looks))},
		{Name: "chances", Value: say.Count(count[fromLesson] + count[byDay] + count[withAdult])},
		{Name: "in_lessons", Value: say.Count(count[fromLesson])},
		{Name: "by_day", Value: say.Count(count[byDay])},
		{Name: "after_sunset", Value: say.Count(count[withAdult])},
		{Name: "near_sun", Value: say.Count(count[tooNear])},
		{Name: "first_look", Value: firstLook},
	}
}
