package source

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
)

// overOneAnother reports lesson times of one day of which one begins before another
// ends. The name is that of their list in unit.toml.
func (r *reader) overOneAnother(name string, spans []form.TimeSpan) {
	order := make([]int, len(spans))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(spans[a].From, spans[b].From) })
	for k, i := range order {
		if k > 0 && spans[i].From < spans[order[k-1]].To {
			r.problems.Add(r.unit.settingPlace(fmt.Sprintf("%s[%d]", name, i)), "%s: this one begins before the one before it ends", name)
		}
	}
}

// timetable reports days with times of their own that do not go together.
func (r *reader) timetable(values form.Values) {
	settings := r.unit.Settings
	for day := time.Sunday; day <= time.Saturday; day++ {
		name := strings.ToLower(day.String())
		key := form.Key[[]form.TimeSpan]("term.times." + name)
		r.overOneAnother(key.Name(), key.Of(values))
		if len(key.Of(values)) > 0 && !slices.Contains(school.TermSchoolDays.Of(settings), name) {
			r.problems.Warn(r.unit.SettingPlace(key), "%s has lesson times, and term.school_days has no %s", key, name)
		}
	}
	r.cycle(values)
	term := school.Term(settings)
	for i, d := range school.TermHalfDays.Of(values) {
		if !term.Holds(d) {
			r.problems.Warn(r.unit.SettingPlace(school.TermHalfDays, i), "term.half_days: %s is a %s, not a school day of the term", d, d.Weekday())
		}
	}
	if school.TermHalfDayUntil.In(values) && len(school.TermHalfDays.Of(values)) == 0 {
		r.problems.Warn(r.unit.SettingPlace(school.TermHalfDayUntil), "term.half_day_until goes with term.half_days, and there are none")
	}
	if len(term.Days()) > 0 && len(term.Slots()) == 0 {
		r.problems.Add(r.unit.SettingPlace(school.TermFirstDay), "the term has no lesson time on any of its %d school days, with term.times, term.cycle and term.half_days as they are", len(term.Days()))
	}
}

// cycle reports days of a cycle that it does not have, or has twice.
func (r *reader) cycle(values form.Values) {
	days, rows := school.TermCycleDays.Of(values), school.TermCycle.Of(values)
	if days == 0 {
		for _, key := range (form.Keys{school.TermCycle, school.TermCycleFirst}) {
			if key.In(values) {
				r.problems.Add(r.unit.settingPlace(firstPlace(r.unit.places, key.Name())), "%s goes with term.cycle_days, which is missing", key.Name())
			}
		}
		return
	}
	if first := school.TermCycleFirst.Of(values); first > days {
		r.problems.Add(r.unit.SettingPlace(school.TermCycleFirst), "term.cycle_first is %d, and the cycle has %d days", first, days)
	}
	seen := map[int]bool{}
	for i, row := range rows {
		day := school.CycleDay.Of(row)
		at := r.unit.settingPlace(fmt.Sprintf("term.cycle[%d].day", i))
		switch {
		case day > days:
			r.problems.Add(at, "term.cycle: there is no day %d in a cycle of %d days", day, days)
		case seen[day] && day > 0:
			r.problems.Add(at, "term.cycle: day %d is there twice; give it one list of times", day)
		}
		seen[day] = true
		r.overOneAnother(fmt.Sprintf("term.cycle[%d].times", i), school.CycleTimes.Of(row))
	}
}

// firstPlace is the name under which a list of tables has its first place.
func firstPlace(places map[string]form.Place, name string) string {
	if _, ok := places[name]; ok {
		return name
	}
	return name + "[0]"
}
