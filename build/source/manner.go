package source

import (
	"noonbook/build/form"
	"noonbook/build/school"
)

// manner warns of a clock and of dates that the language does not write. The handbook
// is right all the same, so nothing is held up.
func (r *reader) manner(values form.Values) {
	if school.Language.Of(values) != "fr" {
		return
	}
	if school.Clock.Of(values) == school.TwelveHour {
		r.problems.Warn(r.unit.SettingPlace(school.Clock), "school.clock %q changes nothing: French is written with 24 hours, as in 13 h 20", school.TwelveHour)
	}
	if school.Dates.Of(values) == school.MonthFirst {
		r.problems.Warn(r.unit.SettingPlace(school.Dates), "school.dates %q changes nothing: French is written with the day first, as in mardi 13 avril", school.MonthFirst)
	}
}
