package class

import (
	"slices"
	"time"

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

// metreStick is the height whose shadow everyone can try without a tool: a
// pupil's reach, or a stick.
var metreStick = quantity.Metres(1)

func lessonSky() entry.Entry {
	return entry.Entry{
		Name:      "lesson-sky",
		Summary:   "The sky while a lesson is held: Sun, shadow and Moon at its start, halfway and at its end.",
		Lessons:   true,
		Arguments: form.Form{entry.OfLesson()},
		Settings:  school.CalendarSettings(),
		Facts: []entry.Fact{
			{Name: "sun_start", Unit: "deg", Doc: "how high the Sun is seen at the start"},
			{Name: "sun_end", Unit: "deg", Doc: "how high it is seen at the end"},
			{Name: "shadow_start", Unit: "m", Doc: "length of the shadow of a stick of one metre at the start"},
			{Name: "shadow_start_to", Doc: "which way that shadow points"},
			{Name: "shadow_end", Unit: "m", Doc: "length of the shadow at the end"},
			{Name: "shadow_end_to", Doc: "which way that shadow points"},
			{Name: "moon", Doc: "the Moon halfway through, in words"},
			entry.Truth("moon_by_day", "whether, at some time of the lesson, the Moon is at least 10° high and far enough from the Sun to be looked for"),
			entry.Truth("moon_in_sunshine", "whether a ball can be held in sunshine beside the Moon: when it is at its highest in the lesson, it can be looked for and the Sun is at least 10° high"),
		},
		Sources:  []string{entry.SourceSun, entry.SourceMoon, entry.SourceIANA},
		Harmless: "A table for whoever leads the lesson; it says itself which Moon nobody searches for.",
		Reckon:   reckonLessonSky,
	}
}

// A skyMoment is the sky at one moment of a lesson.
type skyMoment struct {
	clock, altitude, shadow, to, moon say.Value
}

func reckonLessonSky(v form.Values) (result.Result, error) {
	held, n := entry.HeldOn(v).Held, argLesson.Of(v)
	if n < 1 || n > len(held) || !held[n-1].Placed {
		return result.Result{Facts: noSky(), Notes: []say.Phrase{say.Line("lesson-sky.no_lesson")}}, nil
	}
	h := held[n-1]
	if err := entry.RangeOf(h.Date); err != nil {
		return result.Result{}, err
	}
	p := school.Place(v)
	from := p.Clock(h.Date, int(h.From.Hours()), int(h.From.Minutes())%60)
	to := from.Add(h.To - h.From)
	moments := []skyMoment{skyAt(p, from), skyAt(p, from.Add(to.Sub(from)/2)), skyAt(p, to)}
	start, middle, end := moments[0], moments[1], moments[2]
	table := result.Table{
		Name:    "moments",
		Title:   say.Line("lesson-sky.title", say.Date(h.Date)),
		Columns: []result.Column{{Name: "clock"}, {Name: "sun_altitude", Unit: "deg"}, {Name: "shadow_length", Unit: "m"}, {Name: "shadow_to"}, {Name: "moon"}},
	}
	for _, m := range moments {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{m.clock, m.altitude, m.shadow, m.to, m.moon}})
	}
	return result.Result{
		Facts: []result.Fact{
			{Name: "sun_start", Value: start.altitude}, {Name: "sun_end", Value: end.altitude},
			{Name: "shadow_start", Value: start.shadow}, {Name: "shadow_start_to", Value: start.to},
			{Name: "shadow_end", Value: end.shadow}, {Name: "shadow_end_to", Value: end.to},
			{Name: "moon", Value: middle.moon},
			entry.True("moon_by_day", moonInLesson(p, h, false)),
			entry.True("moon_in_sunshine", moonInLesson(p, h, true)),
		},
		Tables:  []result.Table{table},
		Working: []say.Phrase{say.Line("lesson-sky.working")},
	}, nil
}

// noSky are the facts where there is no lesson.
func noSky() []result.Fact {
	var facts []result.Fact
	for _, f := range lessonSky().Facts {
		if f.Truth {
			facts = append(facts, entry.True(f.Name, false))
			continue
		}
		facts = append(facts, result.Fact{Name: f.Name, Value: say.None("lesson-sky.no_lesson")})
	}
	return facts
}

// moonInLesson reports whether the class can look for the Moon, by the measures of
// moon-school; in sunshine, whether the Sun then is high enough to light a ball above
// roofs and trees.
func moonInLesson(p place.Place, h classroom.Held, inSunshine bool) bool {
	chances := entry.ChancesOn(p, h.Date, []form.TimeSpan{{From: h.From, To: h.To}}, quantity.Degrees(entry.LeastMoon()))
	return slices.ContainsFunc(chances, func(c entry.Chance) bool {
		return c.Safe && (!inSunshine || entry.AsSeen(almanac.SunFrom(p, c.Best).Altitude) >= classroom.SunLeast)
	})
}

func skyAt(p place.Place, t time.Time) skyMoment {
	m := skyMoment{
		clock:    say.Clock(t.In(p.Zone)),
		altitude: entry.AltitudeOf(almanac.SunFrom(p, t)),
		shadow:   say.None("dial-table.no_shadow"),
		to:       say.None("dial-table.no_shadow"),
		moon:     moonAt(p, t),
	}
	if s, ok := entry.ShadowAt(p, t, metreStick); ok {
		m.shadow, m.to = say.Number(s.Length.Metres(), "m", 1), entry.Toward(s.Bearing)
		if s.Length > 50*metreStick {
			m.shadow = m.shadow.As("dial-day.very_long")
		}
	}
	return m
}

// moonAt says where the Moon stands, or why nobody should look for it.
func moonAt(p place.Place, t time.Time) say.Value {
	at, aspect := almanac.MoonFrom(p, t), almanac.Moon.AspectAt(t)
	switch {
	case entry.AsSeen(at.Altitude) < 0: // no more than a rim of it is up
		return say.None("sky.below")
	case classroom.MoonTooNear(p, t):
		return say.Words("lesson-sky.near_sun")
	}
	return say.Words("lesson-sky.moon_up", entry.AltitudeOf(at), entry.Toward(at.Azimuth), entry.Percent(aspect.Lit))
}
