package sky

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// What the entry takes.
const (
	argYears    form.Key[int]  = "years"
	argSeenOnly form.Key[bool] = "seen_only"
)

func eclipseList() entry.Entry {
	return entry.Entry{
		Name:    "eclipse-list",
		Summary: "The eclipses of the coming years as the school has them, and whether they can be seen.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argYears, Min: 1, Max: 30, Default: 5, Doc: "Years to look ahead from the date."},
			{Key: argSeenOnly, Default: false, Doc: "Leave out what cannot be seen from the school."},
		},
		Settings: school.Where(),
		Facts: []entry.Fact{
			{Name: "next_sun", Doc: "deepest moment, with the Sun up, of the next eclipse of the Sun that can be seen from the school"},
			{Name: "next_sun_kind", Doc: "what kind of eclipse that is at the school"},
			{Name: "next_sun_covered", Unit: "percent", Doc: "how much of the Sun's disc is covered then"},
			{Name: "next_moon", Doc: "greatest moment of the next eclipse of the Moon that can be seen from the school, penumbral ones aside"},
			{Name: "next_moon_kind", Doc: "what kind of eclipse can be seen of it"},
			{Name: "sun_count", Doc: "eclipses of the Sun in the list that can be seen from the school"},
			{Name: "moon_count", Doc: "eclipses of the Moon in the list that can be seen from the school, penumbral ones aside"},
		},
		Sources: []string{entry.SourceSun, entry.SourceMoon, entry.SourceEclipses, entry.SourceIANA,
			"Viewing: advice of NASA and of the Institute of Physics; viewers: ISO 12312-2"},
		Cautions: []string{entry.CareEclipse, entry.CareViewers, entry.CareMoonEclipse},
		Reckon:   reckonEclipses,
	}
}

// An eclipse is one of the list, of the Sun or of the Moon.
type eclipse struct {
	moon        bool
	kind        almanac.EclipseKind // for the whole Earth
	here        almanac.EclipseKind // as the school has it
	seen        bool
	how         say.Value          // how much of it is seen, or why none
	greatest    almanac.Contact    // at the school, or of the whole eclipse where the school has none
	contacts    [4]almanac.Contact // begins, deep phase begins, deep phase ends, ends
	magnitude   float64
	obscuration float64   // of the Sun
	best        time.Time // deepest moment that is seen
	covered     float64   // obscuration of the Sun then
}

func reckonEclipses(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	from, _ := p.Day(date)
	span := eclipseSpan{from: date, years: argYears.Of(v)}
	to := from.AddDate(span.years, 0, 0)
	if _, end := p.Day(entry.LastDay()); end.Before(to) {
		to, span.cut = end, true
	}
	list, err := eclipsesBetween(p, from, to)
	if err != nil {
		return result.Result{}, err
	}
	facts := eclipseFacts(p, list)
	if argSeenOnly.Of(v) {
		list = slices.DeleteFunc(list, func(e eclipse) bool { return !e.seen })
	}
	r := result.Result{
		Facts: facts,
	}
	if len(list) == 0 {
		r.Notes = []say.Phrase{span.line("eclipse-list.none_seen", "eclipse-list.none_seen_to_edge")}
	} else {
		r.Tables = eclipseTables(p, list, span)
		r.Notes = []say.Phrase{say.Line("eclipse-list.note"), say.Line("eclipse-list.note_moon")}
	}
	if span.cut {
		r.Notes = append(r.Notes, entry.Edge())
	}
	return r, nil
}

// An eclipseSpan is what a list looks through: years from a date, or what of them the
// almanac has.
type eclipseSpan struct {
	from  place.Date
	years int
	cut   bool // at the end of the almanac's years
}

// line says the years of the list, or the last of them where it is cut.
func (s eclipseSpan) line(whole, cut string) say.Phrase {
	if s.cut {
		return say.Line(cut, say.Date(s.from), entry.YearValue(almanac.LastYear))
	}
	return say.Line(whole, say.Date(s.from), say.Count(s.years))
}

// eclipsesBetween lists the eclipses from an instant to before another, in the
// order of their greatest moments. The hours that the clock of the place has beyond
// the almanac's years, at their ends, are taken to have none.
func eclipsesBetween(p place.Place, from, to time.Time) ([]eclipse, error) {
	var list []eclipse
	for year := max(from.UTC().Year(), almanac.FirstYear); year <= min(to.UTC().Year(), almanac.LastYear); year++ {
		solar, err := almanac.SolarEclipses(year)
		if err != nil {
			return nil, err
		}
		lunar, err := almanac.LunarEclipses(year)
		if err != nil {
			return nil, err
		}
		for _, e := range solar {
			list = append(list, eclipseHere(p, false, e.Greatest, func() eclipse { return sunEclipse(p, e) }))
		}
		for _, e := range lunar {
			list = append(list, eclipseHere(p, true, e.Greatest, func() eclipse { return moonEclipse(p, e) }))
		}
	}
	list = slices.DeleteFunc(list, func(e eclipse) bool { return e.greatest.At.Before(from) || !e.greatest.At.Before(to) })
	slices.SortFunc(list, func(a, b eclipse) int { return a.greatest.At.Compare(b.greatest.At) })
	return list, nil
}

// A handbook lists the same eclipses more than once, of five years and of ten, of which
// there are some fifty; so they are remembered for a few schools.
var eclipsesHere = entry.Memory[eclipseKey, eclipse]{Most: 256}

type eclipseKey struct {
	place    place.Place
	moon     bool
	greatest int64 // Unix, in ns
}

func eclipseHere(p place.Place, moon bool, greatest time.Time, find func() eclipse) eclipse {
	e, _ := eclipsesHere.Of(eclipseKey{p, moon, greatest.UnixNano()}, func() (eclipse, error) { return find(), nil })
	return e
}

func sunEclipse(p place.Place, e almanac.SolarEclipse) eclipse {
	view := e.From(p)
	if view.Kind == almanac.NoEclipse {
		return eclipse{kind: e.Kind, how: say.Words("eclipse-list.shadow_elsewhere"),
			greatest: almanac.Contact{At: e.Greatest, Where: almanac.SunFrom(p, e.Greatest)}}
	}
	return eclipse{
		kind: e.Kind, here: view.Kind, seen: view.Seen,
		how:         sunSeen(p, view),
		greatest:    view.Deepest,
		contacts:    [4]almanac.Contact{view.Begins, view.DeepBegins, view.DeepEnds, view.Ends},
		magnitude:   view.Magnitude,
		obscuration: view.Obscuration,
		best:        view.Best.At,
		covered:     view.BestObscuration,
	}
}

// sunSeen says how much of an eclipse of the Sun the school sees.
func sunSeen(p place.Place, view almanac.SolarView) say.Value {
	up := func(c almanac.Contact) bool { return c.Where.Altitude > entry.SunRise() }
	best, covered := say.Clock(view.Best.At.In(p.Zone)), entry.Percent(view.BestObscuration)
	switch {
	case !view.Seen:
		return say.Words("eclipse-list.sun_down")
	case up(view.Begins) && up(view.Ends) && up(view.Deepest):
		return say.Words("eclipse-list.whole")
	case up(view.Deepest) && up(view.Begins):
		return say.Words("eclipse-list.sets_late")
	case up(view.Deepest) && up(view.Ends):
		return say.Words("eclipse-list.rises_early")
	case up(view.Deepest):
		return say.Words("eclipse-list.middle_only")
	case up(view.Begins):
		return say.Words("eclipse-list.sets_before", best, covered)
	}
	return say.Words("eclipse-list.rises_after", best, covered)
}

func moonEclipse(p place.Place, e almanac.LunarEclipse) eclipse {
	view := e.From(p)
	one := eclipse{
		moon: true, kind: e.Kind, here: view.Deepest,
		seen:      view.Deepest > almanac.Penumbral || view.Deepest == e.Kind,
		greatest:  view.Greatest,
		contacts:  [4]almanac.Contact{view.PartialBegins, view.TotalBegins, view.TotalEnds, view.PartialEnds},
		magnitude: e.Magnitude,
		best:      e.Greatest,
	}
	if e.Kind == almanac.Penumbral {
		one.contacts[0], one.contacts[3] = view.PenumbraBegins, view.PenumbraEnds
		one.magnitude = e.PenumbralMagnitude
	}
	one.how = moonSeen(p, e.Kind, one)
	return one
}

// moonSeen says how much of an eclipse of the Moon the school sees. Where only
// the penumbra is left of a deeper eclipse, that counts as not seen: no eye
// notices it low in the sky, common practice, no source.
func moonSeen(p place.Place, kind almanac.EclipseKind, e eclipse) say.Value {
	up := func(c almanac.Contact) bool { return entry.MoonUp(p, c.At) }
	switch {
	case e.here == almanac.NoEclipse:
		return say.Words("eclipse-list.moon_down")
	case !e.seen:
		return say.Words("eclipse-list.penumbra_left")
	case kind == almanac.Penumbral:
		return say.Words("eclipse-list.hardly_noticed")
	case up(e.contacts[0]) && up(e.contacts[3]) && up(e.greatest):
		return say.Words("eclipse-list.whole")
	case up(e.contacts[0]) && up(e.contacts[3]):
		return say.Words("eclipse-list.both_ends")
	}
	how := say.Words("eclipse-list.moon_rises")
	if up(e.contacts[0]) {
		how = say.Words("eclipse-list.moon_sets")
	}
	if e.here != kind {
		return say.Words("eclipse-list.only", how, kindWord(e.here))
	}
	return how
}

func kindWord(k almanac.EclipseKind) say.Value {
	if k == almanac.NoEclipse {
		return say.None("eclipse.none")
	}
	return say.Words([...]string{"eclipse.none", "eclipse.penumbral", "eclipse.partial", "eclipse.annular", "eclipse.hybrid", "eclipse.total"}[k])
}

// eclipseTables lists the eclipses of the Sun and those of the Moon; a table
// without a row is left out.
func eclipseTables(p place.Place, list []eclipse, span eclipseSpan) []result.Table {
	sun := result.Table{
		Name:  "sun",
		Title: span.line("eclipse-list.sun_title", "eclipse-list.sun_title_to_edge"),
		Columns: []result.Column{
			{Name: "date"}, {Name: "kind"}, {Name: "kind_here"}, {Name: "seen"},
			{Name: "begins"}, {Name: "greatest"}, {Name: "ends"},
			{Name: "magnitude"}, {Name: "obscuration", Unit: "percent"}, {Name: "altitude", Unit: "deg"},
		},
	}
	moon := result.Table{
		Name:  "moon",
		Title: span.line("eclipse-list.moon_title", "eclipse-list.moon_title_to_edge"),
		Columns: []result.Column{
			{Name: "date"}, {Name: "kind"}, {Name: "seen"},
			{Name: "begins"}, {Name: "total_begins"}, {Name: "greatest"}, {Name: "total_ends"}, {Name: "ends"},
			{Name: "magnitude"}, {Name: "altitude", Unit: "deg"},
		},
	}
	for _, e := range list {
		if e.moon {
			moon.Rows = append(moon.Rows, moonRow(p, e))
		} else {
			sun.Rows = append(sun.Rows, sunRow(p, e))
		}
	}
	return slices.DeleteFunc([]result.Table{sun, moon}, func(t result.Table) bool { return len(t.Rows) == 0 })
}

func sunRow(p place.Place, e eclipse) result.Row {
	date := e.date(p)
	magnitude, obscuration := say.Number(e.magnitude, "", 2), entry.Percent(e.obscuration)
	if e.here == almanac.NoEclipse {
		magnitude, obscuration = say.None("sky.dash"), say.None("sky.dash")
	}
	seen := e.how
	if e.seen && e.contacts[1].Happens() {
		seen = say.Words("eclipse-list.with_deep", seen, kindWord(e.here), contact(p, e.contacts[1], date), contact(p, e.contacts[2], date))
	}
	return result.Row{Marked: e.seen, Cells: []say.Value{
		shortDate(date), kindWord(e.kind), kindWord(e.here), seen,
		contact(p, e.contacts[0], date), contact(p, e.greatest, date), contact(p, e.contacts[3], date),
		magnitude, obscuration, entry.AltitudeOf(e.greatest.Where),
	}}
}

func moonRow(p place.Place, e eclipse) result.Row {
	date := e.date(p)
	row := result.Row{Marked: e.seen && e.kind != almanac.Penumbral, Cells: []say.Value{shortDate(date), kindWord(e.kind), e.how}}
	for _, c := range []almanac.Contact{e.contacts[0], e.contacts[1], e.greatest, e.contacts[2], e.contacts[3]} {
		row.Cells = append(row.Cells, contact(p, c, date))
	}
	row.Cells = append(row.Cells, say.Number(e.magnitude, "", 2), entry.AltitudeOf(e.greatest.Where))
	return row
}

// date is the local date of the greatest moment.
func (e eclipse) date(p place.Place) place.Date { return p.DateAt(e.greatest.At) }

func contact(p place.Place, c almanac.Contact, d place.Date) say.Value {
	if !c.Happens() {
		return say.None("sky.dash")
	}
	return clockOn(p, c.At, d)
}

func eclipseFacts(p place.Place, list []eclipse) []result.Fact {
	none := say.None("eclipse-list.none")
	sun := []result.Fact{{Name: "next_sun", Value: none}, {Name: "next_sun_kind", Value: none}, {Name: "next_sun_covered", Value: none}}
	moon := []result.Fact{{Name: "next_moon", Value: none}, {Name: "next_moon_kind", Value: none}}
	suns, moons := 0, 0
	for _, e := range list {
		switch {
		case !e.seen:
		case !e.moon:
			if suns++; suns == 1 {
				sun[0].Value, sun[1].Value, sun[2].Value = entry.Moment(p, e.best), kindWord(e.here), entry.Percent(e.covered)
			}
		case e.here > almanac.Penumbral:
			if moons++; moons == 1 {
				moon[0].Value, moon[1].Value = entry.Moment(p, e.best), kindWord(e.here)
			}
		}
	}
	return append(append(sun, moon...),
		result.Fact{Name: "sun_count", Value: say.Count(suns)},
		result.Fact{Name: "moon_count", Value: say.Count(moons)})
}

// clockOn is an instant by the clock of the place, in a row that bears a date;
// where its own date is another one, it says so.
func clockOn(p place.Place, t time.Time, d place.Date) say.Value {
	clock := say.Clock(t.In(p.Zone))
	switch own := p.DateAt(t); {
	case own.Before(d):
		return clock.As("sky.day_before", clock)
	case own.After(d):
		return clock.As("sky.day_after", clock)
	}
	return clock
}

// shortDate is a date for narrow columns, 2 Aug 2027.
func shortDate(d place.Date) say.Value {
	return say.Date(d).As("format.date", say.Count(d.Day), entry.ShortMonth(d.Month), entry.YearValue(d.Year))
}
