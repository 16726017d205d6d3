package worlds

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

const sourceMissions = "Flights: the file that records.missions names, as of the day beside each line"

const missionsHarmless = "Flights of others, to read."

// rungs are the rungs of the ladder of exploring, from the lowest.
var rungs = []string{
	"mission-record.look", "mission-record.fly_past", "mission-record.orbit", "mission-record.set_down",
	"mission-record.about", "mission-record.bring_back", "mission-record.people",
}

func missionRecord() entry.Entry {
	return entry.Entry{
		Name:     "mission-record",
		Summary:  "How far exploring has come at each world, the first visit and the highest rung, from a file with the day on which it was so.",
		Settings: form.Keys{school.RecordsMissions},
		Facts: []entry.Fact{
			{Name: "as_of", Doc: "the earliest day that a line of the record has beside it"},
			{Name: "worlds", Doc: "how many worlds have been visited"},
			{Name: "ladder", Doc: "each world with the number of its highest rung, in words"},
			entry.Truth("kept", "whether the file has any flight that is done"),
		},
		Sources:  []string{sourceMissions},
		Harmless: missionsHarmless,
		Reckon:   reckonRecord,
	}
}

func missionPlans() entry.Entry {
	return entry.Entry{
		Name:     "mission-plans",
		Summary:  "Flights that are planned or under way, from a file with the day on which each was planned so, and a warning when those days are long past.",
		Settings: form.Keys{school.RecordsMissions, school.TermFirstDay},
		Facts: []entry.Fact{
			{Name: "as_of", Doc: "the earliest day that a plan has beside it"},
			{Name: "plans", Doc: "how many plans there are"},
			{Name: "under_way", Doc: "how many of them have left the Earth"},
			entry.Truth("old", "whether the term begins more than a year after that day"),
			entry.Truth("kept", "whether the file has any plan"),
		},
		Sources:  []string{sourceMissions},
		Harmless: missionsHarmless,
		Reckon:   reckonPlans,
	}
}

// A mission is a line of the file.
type mission struct {
	world, flight, who, task, state string

	rung, year int
	asOf       place.Date
}

// missionsWith are the lines whose state is wanted, with the earliest of their days; it
// is zero where there is none.
func missionsWith(v form.Values, wanted func(state string) bool) (missions []mission, asOf place.Date) {
	for _, row := range school.RecordsMissions.Of(v).Rows {
		m := mission{
			world: school.MissionsWorld.Of(row), flight: school.MissionsFlight.Of(row), who: school.MissionsWho.Of(row),
			task: school.MissionsTask.Of(row), state: school.MissionsState.Of(row),
			rung: school.MissionsRung.Of(row), year: school.MissionsYear.Of(row), asOf: school.MissionsAsOf.Of(row),
		}
		if !wanted(m.state) {
			continue
		}
		if missions = append(missions, m); asOf.IsZero() || m.asOf.Before(asOf) {
			asOf = m.asOf
		}
	}
	return missions, asOf
}

func asOfDay(day place.Date) say.Value {
	if day.IsZero() {
		return say.None("mission-plans.none")
	}
	return say.Date(day)
}

// A reached is a world with what was done there: the first visit, and the first flight
// that reached the highest rung.
type reached struct{ first, highest mission }

func reckonRecord(v form.Values) (result.Result, error) {
	done, asOf := missionsWith(v, func(state string) bool { return state == "done" })
	var names []string
	worlds := map[string]reached{}
	for _, m := range done {
		w, known := worlds[m.world]
		if !known {
			names = append(names, m.world)
			w = reached{m, m}
		}
		if m.year < w.first.year {
			w.first = m
		}
		if m.rung > w.highest.rung || m.rung == w.highest.rung && m.year < w.highest.year {
			w.highest = m
		}
		worlds[m.world] = w
	}
	table := result.Table{
		Name: "worlds", Title: say.Line("mission-record.title", asOfDay(asOf)),
		Columns: []result.Column{{Name: "world"}, {Name: "rung"}, {Name: "what"}, {Name: "first"}, {Name: "highest"}, {Name: "task"}},
	}
	var ladder []say.Value
	for _, name := range names {
		w := worlds[name]
		ladder = append(ladder, say.Words("mission-record.world", say.Text(name), say.Count(w.highest.rung)))
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Text(name), say.Count(w.highest.rung), say.Words(rungs[w.highest.rung-1]),
			inYear(w.first), inYear(w.highest), say.Text(w.highest.task),
		}})
	}
	r := result.Result{Facts: []result.Fact{
		{Name: "as_of", Value: asOfDay(asOf)}, {Name: "worlds", Value: say.Count(len(names))},
		{Name: "ladder", Value: entry.Listed(ladder)}, entry.True("kept", len(names) > 0),
	}}
	if len(names) == 0 {
		r.Notes = []say.Phrase{say.Line("mission-plans.no_records")}
		return r, nil
	}
	r.Tables = []result.Table{table}
	return r, nil
}

func inYear(m mission) say.Value {
	return say.Words("mission-record.in_year", say.Text(m.flight), entry.YearValue(m.year))
}

func reckonPlans(v form.Values) (result.Result, error) {
	plans, asOf := missionsWith(v, func(state string) bool { return state != "done" })
	table := result.Table{
		Name: "plans", Title: say.Line("mission-plans.title", asOfDay(asOf)),
		Columns: []result.Column{{Name: "flight"}, {Name: "who"}, {Name: "task"}, {Name: "state"}, {Name: "year"}, {Name: "as_of"}},
	}
	underWay := 0
	for _, m := range plans {
		if m.state == "under_way" {
			underWay++
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Text(m.flight), say.Text(m.who), say.Words("mission-plans.task", say.Text(m.world), say.Text(m.task)),
			stateWord(m.state), entry.YearValue(m.year), say.Date(m.asOf),
		}})
	}
	old := len(plans) > 0 && school.TermFirstDay.Of(v).After(yearAfter(asOf))
	r := result.Result{Facts: []result.Fact{
		{Name: "as_of", Value: asOfDay(asOf)}, {Name: "plans", Value: say.Count(len(plans))},
		{Name: "under_way", Value: say.Count(underWay)}, entry.True("old", old), entry.True("kept", len(plans) > 0),
	}}
	if len(plans) == 0 {
		r.Notes = []say.Phrase{say.Line("mission-plans.no_records")}
		return r, nil
	}
	if old {
		// Pupils read the page and cannot mend the file.
		r.Warnings = []say.Phrase{say.Line("mission-plans.old", say.Date(asOf))}
		r.Upkeep = []say.Phrase{say.Line("mission-plans.keep", say.Date(asOf), say.Text(school.RecordsMissions.Of(v).File))}
	}
	r.Tables = []result.Table{table}
	return r, nil
}

// yearAfter is the same day a year later, the last of February for a leap day.
func yearAfter(d place.Date) place.Date {
	if d.Month == time.February && d.Day == 29 {
		return place.Date{Year: d.Year + 1, Month: time.February, Day: 28}
	}
	return place.Date{Year: d.Year + 1, Month: d.Month, Day: d.Day}
}

func stateWord(state string) say.Value {
	return map[string]say.Value{
		"under_way": say.Words("mission-plans.under_way"), "not_launched": say.Words("mission-plans.not_launched"),
		"cancelled": say.Words("mission-plans.cancelled"),
	}[state]
}
