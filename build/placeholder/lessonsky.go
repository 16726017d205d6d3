package placeholder

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// metreStick is the height whose shadow everyone can try without a tool: a
// pupil's reach, or a stick.
var metreStick = quantity.Metres(1)

func lessonSky() Entry {
	return Entry{
		Name:      "lesson-sky",
		Summary:   "The sky while a lesson is held: Sun, shadow and Moon at its start, halfway and at its end.",
		Lessons:   true,
		Arguments: form.Form{ofLesson},
		Settings:  CalendarSettings(),
		Facts: []Fact{
			{"sun_start", "deg", "how high the Sun is seen at the start"},
			{"sun_end", "deg", "how high it is seen at the end"},
			{"shadow_start", "m", "length of the shadow of a stick of one metre at the start"},
			{"shadow_start_to", "", "which way that shadow points"},
			{"shadow_end", "m", "length of the shadow at the end"},
			{"shadow_end_to", "", "which way that shadow points"},
			{"moon", "", "the Moon halfway through, in words"},
		},
		Sources: []string{sourceSun, sourceMoon, sourceIANA},
		Reckon:  reckonLessonSky,
	}
}

// A skyMoment is the sky at one moment of a lesson.
type skyMoment struct {
	clock, altitude, shadow, to, moon say.Value
}

func reckonLessonSky(v form.Values) (result.Result, error) {
	held, n := HeldOn(v).Held, v.Whole("lesson")
	if n < 1 || n > len(held) || !held[n-1].Placed {
		return result.Result{Facts: noSky(), Notes: []say.Phrase{say.Line("lesson-sky.no_lesson")}}, nil
	}
	h := held[n-1]
	if err := rangeOf(h.Date); err != nil {
		return result.Result{}, err
	}
	p := Place(v)
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
		},
		Tables:  []result.Table{table},
		Working: []say.Phrase{say.Line("lesson-sky.working")},
	}, nil
}

// noSky are the facts where there is no lesson.
func noSky() []result.Fact {
	var facts []result.Fact
	for _, name := range lessonSky().FactNames() {
		facts = append(facts, result.Fact{Name: name, Value: say.None("lesson-sky.no_lesson")})
	}
	return facts
}

func skyAt(p place.Place, t time.Time) skyMoment {
	m := skyMoment{
		clock:    say.Clock(t.In(p.Zone)),
		altitude: altitudeOf(almanac.SunFrom(p, t)),
		shadow:   say.None("dial-table.no_shadow"),
		to:       say.None("dial-table.no_shadow"),
		moon:     moonAt(p, t),
	}
	if s, ok := shadowAt(p, t, metreStick); ok {
		m.shadow, m.to = say.Number(s.length.Metres(), "m", 1), toward(s.bearing)
		if s.length > 50*metreStick {
			m.shadow = m.shadow.As("dial-day.very_long")
		}
	}
	return m
}

// moonAt says where the Moon stands, or why nobody should look for it.
func moonAt(p place.Place, t time.Time) say.Value {
	at, aspect := almanac.MoonFrom(p, t), almanac.Moon.AspectAt(t)
	switch {
	case asSeen(at.Altitude) < 0: // no more than a rim of it is up
		return say.None("sky.below")
	case aspect.Elongation < nearSun && almanac.SunFrom(p, t).Altitude > almanac.CivilTwilight:
		return say.Words("lesson-sky.near_sun")
	}
	return say.Words("lesson-sky.moon_up", altitudeOf(at), toward(at.Azimuth), percent(aspect.Lit))
}
