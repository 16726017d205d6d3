package worlds

import (
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/journey"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
	"noonbook/compute/world"
)

// What the entry takes.
const argWindows form.Key[int] = "windows"

func journeyTable() entry.Entry {
	return entry.Entry{
		Name:    "journey-table",
		Summary: "How long the way to each world is for light, a walker, an airliner and a probe, and by the least-energy way of a rocket, with its next windows.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argWorld, Choices: journeyGoals(), Default: "mars", Doc: "The goal of the facts and of the list of windows."},
			{Key: argWindows, Min: 1, Max: 12, Default: 4, Doc: "How many windows are listed."},
			entry.CraftArgument()},
		Settings: slices.Concat(school.Where(), form.Keys{school.ClassWalkKmH}),
		Facts: []entry.Fact{
			{Name: "world", Doc: "the goal"},
			{Name: "distance", Unit: "million km", Doc: "how far it is at noon on the date"},
			{Name: "light", Unit: "s", Doc: "how long light takes"},
			{Name: "walk", Unit: "years", Doc: "how long a walk would take, without a rest"},
			{Name: "jet", Unit: "years", Doc: "how long an airliner would fly"},
			{Name: "probe", Unit: "years", Doc: "how long the probe of `craft` would coast"},
			{Name: "craft", Doc: "the probe"},
			{Name: "transfer", Unit: "days", Doc: "how long the least-energy way takes"},
			{Name: "synodic", Unit: "days", Doc: "time from window to window, on the mean"},
			{Name: "ahead", Unit: "deg", Doc: "how far the goal must stand ahead of the Earth at the start; negative: behind"},
			{Name: "leave_speed", Unit: "km_s", Doc: "speed beyond the Earth's own that the way needs"},
			{Name: "window", Doc: "the next window after the date"},
			{Name: "arrival", Doc: "when the way from it ends"},
			{Name: "next_window", Doc: "the window after that"},
			{Name: "moon_days", Unit: "days", Doc: "how long the least-energy way to the Moon takes"},
		},
		Sources: []string{sourceWorlds, entry.SourcePlanets, sourceFarWorlds, entry.SourceLight, entry.SourceCraft,
			"Least-energy way: half an ellipse that touches both orbits (W. Hohmann, 1925); vis-viva and synodic periods, Bate, Mueller and White, Fundamentals of Astrodynamics, 1971; windows as compute/journey documents"},
		Harmless: "Times of travel, to read.",
		Reckon:   reckonJourney,
	}
}

func journeyGoals() []string {
	var names []string
	for _, w := range world.All() {
		if _, ok := journey.To(w); ok {
			names = append(names, w.Name)
		}
	}
	return names
}

// A trip is a world with the ways there.
type trip struct {
	world.World
	sight   world.Sight
	seen    bool // whether its distance is known
	way     journey.Transfer
	goes    bool // whether there is a least-energy way
	windows []journey.Window
}

func reckonJourney(v form.Values) (result.Result, error) {
	date, p := entry.Date.Of(v), school.Place(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	goal, err := worldOf(v)
	if err != nil {
		return result.Result{}, err
	}
	noon := noonOn(p, date)
	var trips []trip
	var own trip
	for _, w := range world.All() {
		if w.Name == "earth" {
			continue
		}
		t := trip{World: w}
		t.sight, t.seen = w.At(noon)
		t.way, t.goes = journey.To(w)
		n := 1
		if w.Name == goal.Name {
			n = max(2, argWindows.Of(v))
		}
		t.windows = journey.Windows(w, noon, n)
		if trips = append(trips, t); w.Name == goal.Name {
			own = t
		}
	}
	r := result.Result{
		Facts:  journeyFacts(v, p, own),
		Tables: []result.Table{wayTable(v, trips), transferTable(p, trips), windowTable(p, own, argWindows.Of(v))},
		Notes:  []say.Phrase{say.Line("journey-table.note_ways"), say.Line("journey-table.note_transfer"), say.Line("journey-table.note_windows")},
	}
	r.Working = []say.Phrase{own.timeWorking(), own.aheadWorking(), own.synodicWorking()}
	return r, nil
}

func (t trip) timeWorking() say.Phrase {
	au := float64(t.Orbit / quantity.AstronomicalUnit)
	axis := (1 + au) / 2
	takes, key, year := inDays(t.way.Time), "journey-table.working_time", say.Number(earth().Year.Hours()/24, "days", 2)
	if takes.Phrase.Key != "" {
		takes, key, year = takes.Phrase.With[0], "journey-table.working_years", say.Count(1)
	}
	w := entry.Enough(takes, func(x []float64) float64 { return 0.5 * math.Sqrt(x[0]*x[0]*x[0]) * x[1] }, say.Number(axis, "", 3), year)
	a := w[0]
	a.Unit = "au"
	o := entry.Enough(a, func(x []float64) float64 { return (1 + x[0]) / 2 }, say.Number(au, "au", 3))
	return say.Line(key, worldName(t.World), o[0], a, takes, w[0], w[1])
}

func (t trip) aheadWorking() say.Phrase {
	goes := 360 * t.way.Time.Hours() / t.Year.Hours()
	ahead := say.Number(t.way.Ahead.Degrees(), "deg", 0)
	turns := math.Round((t.way.Ahead.Degrees() - 180 + goes) / 360)
	g := entry.Enough(ahead, func(x []float64) float64 { return 180 - x[0] + 360*turns }, say.Number(goes, "deg", 0))
	o := entry.Enough(g[0], func(x []float64) float64 { return x[0] / x[1] * 360 }, say.Number(t.way.Time.Hours()/24, "days", 0), say.Number(t.Year.Hours()/24, "days", 1))
	if turns == 0 {
		return say.Line("journey-table.working_ahead", o[0], o[1], g[0], ahead)
	}
	return say.Line("journey-table.working_ahead_turns", o[0], o[1], g[0], ahead, say.Number(turns, "", 0))
}

func (t trip) synodicWorking() say.Phrase {
	short, long := earth().Year, t.Year
	if short > long {
		short, long = long, short
	}
	between := inDays(journey.Synodic(t.World))
	o := entry.Enough(between, func(x []float64) float64 { return 1 / (1/x[0] - 1/x[1]) }, say.Number(short.Hours()/24, "days", 1), say.Number(long.Hours()/24, "days", 1))
	return say.Line("journey-table.working_synodic", o[0], o[1], between)
}

// inDays is a stretch of time in whole days, printed in years where it is long.
func inDays(d time.Duration) say.Value {
	days := d.Hours() / 24
	v := say.Number(days, "days", 0)
	if days > 1500 {
		return v.As("world.plain", say.Number(days/365.25, "years", 1))
	}
	return v
}

func windowDay(p place.Place, t time.Time) say.Value { return say.Date(p.DateAt(t)) }

func walkSpeed(v form.Values) float64 { return school.ClassWalkKmH.Of(v) / 3.6 }

func airliner() strip.Craft {
	crafts := strip.Crafts()
	return crafts[slices.IndexFunc(crafts, func(c strip.Craft) bool { return c.Name == "airliner" })]
}

func journeyFacts(v form.Values, p place.Place, t trip) []result.Fact {
	craft := entry.CraftOf(v)
	window, arrival, next := say.None("sky.unknown"), say.None("sky.unknown"), say.None("sky.unknown")
	if len(t.windows) > 0 {
		window, arrival = windowDay(p, t.windows[0].Leave), windowDay(p, t.windows[0].Arrive)
	}
	if len(t.windows) > 1 {
		next = windowDay(p, t.windows[1].Leave)
	}
	s := t.ways(v)
	return []result.Fact{
		{Name: "world", Value: worldName(t.World)},
		{Name: "distance", Value: s[0]},
		{Name: "light", Value: s[1]},
		{Name: "walk", Value: s[2]},
		{Name: "jet", Value: s[3]},
		{Name: "probe", Value: s[4]},
		{Name: "craft", Value: entry.CraftWord(craft)},
		{Name: "transfer", Value: inDays(t.way.Time)},
		{Name: "synodic", Value: inDays(journey.Synodic(t.World))},
		{Name: "ahead", Value: say.Number(t.way.Ahead.Degrees(), "deg", 0)},
		{Name: "leave_speed", Value: say.Number(t.way.Leave/1000, "km_s", 1)},
		{Name: "window", Value: window},
		{Name: "arrival", Value: arrival},
		{Name: "next_window", Value: next},
		{Name: "moon_days", Value: say.Number(journey.ToTheMoon().Hours()/24, "days", 1)},
	}
}

// ways returns distance, light, walk, airliner and probe, straight over the gap of
// the date.
func (t trip) ways(v form.Values) []say.Value {
	if !t.seen {
		missing := say.None("world.not_known")
		return []say.Value{missing, missing, missing, missing, missing}
	}
	s := standing{}
	s.distance = sized(t.sight.Distance.Kilometres()/1e6, "million_km", 3)
	return []say.Value{
		s.distance, lightTo(t.sight.Distance),
		yearsOrLess(strip.Years(t.sight.Distance, walkSpeed(v))),
		yearsOrLess(strip.Years(t.sight.Distance, airliner().Speed)),
		yearsOrLess(strip.Years(t.sight.Distance, entry.CraftOf(v).Speed)),
	}
}

// yearsOrLess is a number of years, printed in days or hours where it is less than
// one.
func yearsOrLess(x float64) say.Value {
	v := entry.Years(x)
	if x < 1 {
		return v.As("world.plain", lasts(entry.SecondsOf(x*365.25*86400)))
	}
	return v
}

// lightTo is lightWay, with a decimal for the Moon.
func lightTo(l quantity.Length) say.Value {
	if d := strip.LightTime(l); d < 10*time.Second {
		return say.Number(d.Seconds(), "s", 1)
	}
	return entry.LightWay(l)
}

func wayTable(v form.Values, trips []trip) result.Table {
	craft := entry.CraftOf(v)
	table := result.Table{
		Name: "ways", Title: say.Line("journey-table.title_ways", say.Date(entry.Date.Of(v)), say.Number(school.ClassWalkKmH.Of(v), "km", 1), entry.CraftWord(craft), say.Number(craft.Speed/1000, "km_s", entry.WholeOrTenth(craft.Speed/1000))),
		Columns: []result.Column{{Name: "world"}, {Name: "distance", Unit: "million_km"}, {Name: "light", Unit: "s"}, {Name: "walk", Unit: "years"}, {Name: "jet", Unit: "years"}, {Name: "probe", Unit: "years"}},
	}
	for _, t := range trips {
		table.Rows = append(table.Rows, result.Row{Cells: append([]say.Value{worldName(t.World)}, t.ways(v)...)})
	}
	return table
}

func transferTable(p place.Place, trips []trip) result.Table {
	table := result.Table{
		Name: "transfers", Title: say.Line("journey-table.title_transfers"),
		Columns: []result.Column{{Name: "world"}, {Name: "transfer", Unit: "days"}, {Name: "leave_speed", Unit: "km_s"}, {Name: "ahead", Unit: "deg"}, {Name: "synodic", Unit: "days"}, {Name: "window"}, {Name: "arrival"}},
	}
	dash := say.None("sky.dash")
	for _, t := range trips {
		cells := []say.Value{worldName(t.World), say.None("journey-table.no_circle"), dash, dash, dash, dash, dash}
		switch {
		case t.Kind == world.Moon:
			cells[1] = say.Number(journey.ToTheMoon().Hours()/24, "days", 1)
			cells[5] = say.None("journey-table.every_month")
		case t.goes:
			cells = []say.Value{worldName(t.World), inDays(t.way.Time), say.Number(t.way.Leave/1000, "km_s", 1),
				say.Number(t.way.Ahead.Degrees(), "deg", 0), inDays(journey.Synodic(t.World)), say.None("sky.unknown"), say.None("sky.unknown")}
			if len(t.windows) > 0 {
				cells[5], cells[6] = windowDay(p, t.windows[0].Leave), windowDay(p, t.windows[0].Arrive)
			}
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells})
	}
	return table
}

func windowTable(p place.Place, t trip, n int) result.Table {
	table := result.Table{
		Name: "windows", Title: say.Line("journey-table.title_windows", worldName(t.World), say.Number(almanac.LastYear, "", 0)),
		Columns: []result.Column{{Name: "leave"}, {Name: "arrive"}, {Name: "days", Unit: "days"}},
	}
	for i, w := range t.windows {
		if i < n {
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				windowDay(p, w.Leave), windowDay(p, w.Arrive), say.Number(w.Arrive.Sub(w.Leave).Hours()/24, "days", 0),
			}})
		}
	}
	return table
}
