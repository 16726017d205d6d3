package dial

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argMinute form.Key[int] = "minute"

func dialLesson() entry.Entry {
	return entry.Entry{
		Name:    "dial-lesson",
		Summary: "What a lesson at the dial needs by its time: which hours to draw, and what dial and marks show when the class reads them.",
		Lessons: true,
		Arguments: form.Form{entry.OnDate(), entry.OfLesson(),
			{Key: argMinute, Unit: "min", Min: 0, Max: 300, Default: 41, Doc: "Minutes of the lesson until the class reads its dials."},
			{Key: argMarked, Assumed: "the date", Doc: "Day on which the hours were marked by the watch."},
		},
		Settings: append(school.CalendarSettings(), school.StockPolarHeightMM),
		Facts: []entry.Fact{
			{Name: "school_hours", Doc: "hours that the dial shows in school time, rounded outwards, with noon"},
			{Name: "lesson_hours", Doc: "hours round that reading: two lines on each side of it, as far as they are among those of school time"},
			{Name: "reading", Doc: "the clock's time of that reading"},
			{Name: "shows", Doc: "what a dial that is right then shows"},
			entry.Truth("stick_marks", "whether marks of that day round an upright stick say anything then"),
			{Name: "stick", Unit: "s", Doc: "what they then show, less the clock"},
		},
		Sources:  []string{entry.SourceSun, entry.SourceIANA, sourceStyles},
		Harmless: "Numbers for a plan; laying and reading the dial is the work of dial-north and dial-hours.",
		Reckon:   reckonDialLesson,
	}
}

func reckonDialLesson(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	first, last := markingHours(v)
	begin, end := shownAt(p, date, first), shownAt(p, date, last)
	none := say.None("dial-lesson.no_lesson")
	lesson, reading, shows, stick := none, none, none, none
	if held, n := entry.HeldOn(v).Held, entry.Lesson.Of(v); n >= 1 && n <= len(held) && held[n-1].Placed {
		at := held[n-1].From + time.Duration(argMinute.Of(v))*time.Minute
		then := shownAt(p, date, at)
		lesson = hoursToDraw(v, min(then, max(then-time.Hour, begin)), max(then, min(then+time.Hour, end)))
		reading = say.Clock(p.Clock(date, 0, int(at.Minutes())).In(p.Zone))
		shows = sunTime(then.Round(time.Minute))
		marked := argMarked.Of(v)
		if marked.IsZero() {
			marked = date
		}
		stick = stickOff(p, uprightStick(p, marked), dial.DriftOn(p, marked, date), quantity.Hours((then - 12*time.Hour).Hours()))
	}
	return result.Result{Facts: []result.Fact{
		{Name: "school_hours", Value: hoursToDraw(v, min(begin, 12*time.Hour), max(end, 12*time.Hour))},
		{Name: "lesson_hours", Value: lesson},
		{Name: "reading", Value: reading},
		{Name: "shows", Value: shows},
		entry.True("stick_marks", stick.Kind != say.Nothing),
		{Name: "stick", Value: stick},
	}}, nil
}

// shownAt is what a true dial shows at a time of the school's clock.
func shownAt(p place.Place, date place.Date, clock time.Duration) time.Duration {
	angle, _ := dial.SunAt(p, p.Clock(date, 0, int(clock.Minutes())))
	return 12*time.Hour + time.Duration(angle.Hours()*float64(time.Hour))
}

// hoursToDraw are the whole hours from one Sun time to another, rounded outwards, as
// far as the face of the school's dial has lines for them.
func hoursToDraw(v form.Values, from, to time.Duration) say.Value {
	earliest, latest := dial.SunHours(school.Place(v).Latitude)
	if builds(v) == dial.Polar {
		earliest, latest = dial.PolarFirst, dial.PolarLast
	}
	within := func(hour float64) say.Value {
		return say.HourOnFace(int(min(max(hour, earliest.Hours()), latest.Hours())))
	}
	return say.Words("dial-lesson.hours", within(math.Floor(from.Hours())), within(math.Ceil(to.Hours())))
}
