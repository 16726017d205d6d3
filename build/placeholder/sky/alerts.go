package sky

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

func skyAlerts() entry.Entry {
	return entry.Entry{
		Name:    "sky-alerts",
		Summary: "Days of the term on which the sky is worth interrupting for: eclipses, the Moon beside planets, planets at their best, equinox and solstice, the Moon by day, meteors, clock changes.",
		Arguments: form.Form{
			{Key: entry.From, Assumed: "term.first_day", Doc: "First day to look at."},
			{Key: entry.To, Assumed: "term.last_day", Doc: "Last day to look at, at most 400 days later."},
		},
		Settings: slices.Concat(school.Where(), school.TimetableSettings(), form.Keys{school.Seasons}),
		Facts: []entry.Fact{
			{Name: "alerts", Doc: "how many there are"},
			{Name: "first", Doc: "the moment of the first"},
			{Name: "first_what", Doc: "what it is"},
			{Name: "eclipses", Doc: "how many of them are eclipses that can be seen from the school"},
		},
		Sources: []string{entry.SourceSun, entry.SourceMoon, entry.SourcePlanets, entry.SourceEclipses, sourceShowers, entry.SourceIANA,
			"What is worth it: the Moon within 6° of a planet, a fist held at arm's length being 10°; a planet at least 5° high at civil dusk or dawn: common practice, no source"},
		Sometimes: []string{entry.CareEclipse, entry.CareViewers},
		Harmless:  "A list, to read; with an eclipse of the Sun in it, the cautions of eclipse-list come with it.",
		Reckon:    reckonAlerts,
	}
}

// An alert is one thing that the sky does.
type alert struct {
	at      time.Time      // the moment, or when it is best seen
	zone    *time.Location // whose clock shows it; nil for the school's
	what    say.Value
	look    say.Value // where to look, or what to do
	Short   say.Value // for a calendar
	eclipse bool
	sun     bool // an eclipse of the Sun
}

func reckonAlerts(v form.Values) (result.Result, error) {
	p := school.Place(v)
	from, to, err := entry.DaysAsked(v)
	if err != nil {
		return result.Result{}, err
	}
	list, err := AlertsBetween(v, p, from, to)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:    "days",
		Title:   say.Line("sky-alerts.title", say.Date(from), say.Date(to)),
		Columns: []result.Column{{Name: "date"}, {Name: "time"}, {Name: "what"}, {Name: "look"}},
	}
	eclipses := 0
	r := result.Result{}
	for _, a := range list {
		table.Rows = append(table.Rows, result.Row{
			Cells:  []say.Value{entry.Weekday(a.Date(p)), a.clock(p), a.what, a.look},
			Marked: a.eclipse,
		})
		if a.eclipse {
			eclipses++
		}
		if a.sun && len(r.Cautions) == 0 {
			r.Cautions = entry.CautionsOf(entry.CareEclipse, entry.CareViewers)
		}
	}
	if len(list) > 0 {
		r.Tables = []result.Table{table}
	}
	r.Notes = []say.Phrase{say.Line("sky-alerts.note")}
	first, what := say.None("sky-alerts.none"), say.None("sky-alerts.none")
	if len(list) > 0 {
		first, what = entry.Moment(list[0].by(p), list[0].at), list[0].what
	}
	r.Facts = []result.Fact{
		{Name: "alerts", Value: say.Count(len(list))},
		{Name: "first", Value: first},
		{Name: "first_what", Value: what},
		{Name: "eclipses", Value: say.Count(eclipses)},
	}
	return r, nil
}

// by is the place with the clock that shows the alert.
func (a alert) by(p place.Place) place.Place {
	if a.zone != nil {
		p.Zone = a.zone
	}
	return p
}

func (a alert) clock(p place.Place) say.Value { return say.Clock(a.at.In(a.by(p).Zone)) }

func (a alert) Date(p place.Place) place.Date { return a.by(p).DateAt(a.at) }

// AlertsBetween gathers everything from one date to another, both included, in
// order of time.
func AlertsBetween(v form.Values, p place.Place, from, to place.Date) ([]alert, error) {
	if err := entry.SchoolRange(from, to); err != nil {
		return nil, err
	}
	list, err := eclipseAlerts(p, from, to)
	if err != nil {
		return nil, err
	}
	seasons, err := turnAlerts(v, p, from, to)
	if err != nil {
		return nil, err
	}
	list = slices.Concat(list, seasons, moonAndPlanets(p, from, to), bestPlanets(p, from, to),
		meteors(p, from, to), clockAlerts(p, from, to), dayMoons(v, p, from, to), dialAlert(p, from, to))
	list = slices.DeleteFunc(list, func(a alert) bool { return a.Date(p).Before(from) || a.Date(p).After(to) })
	slices.SortStableFunc(list, func(a, b alert) int { return a.at.Compare(b.at) })
	return list, nil
}

// A SkyDay is an alert for a calendar.
type SkyDay struct {
	At         time.Time
	Key        string // tells it from others of its day, in any language
	Sun        bool   // an eclipse of the Sun, which wants its caution
	What, Look say.Value
}

// SkyDays returns the alerts of the term, none outside the almanac's years.
func SkyDays(v form.Values) []SkyDay {
	list, err := AlertsBetween(v, school.Place(v), school.TermFirstDay.Of(v), school.TermLastDay.Of(v))
	if err != nil {
		return nil
	}
	var days []SkyDay
	for _, a := range list {
		key := a.Short.Phrase.Key
		if len(a.Short.Phrase.With) > 0 {
			key += "-" + a.Short.Phrase.With[0].Phrase.Key
		}
		days = append(days, SkyDay{a.at, key, a.sun, a.what, a.look})
	}
	return days
}
