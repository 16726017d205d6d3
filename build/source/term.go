package source

import (
	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

// term reports a term in which no lesson can be held.
func (r *reader) term(values form.Values) {
	first, last := school.TermFirstDay.Of(values), school.TermLastDay.Of(values)
	if first.IsZero() || last.IsZero() {
		return // reported where it is missing
	}
	at := r.unit.SettingPlace(school.TermLastDay)
	switch days := first.DaysUntil(last); {
	case days < 0:
		r.problems.Add(at, "term.last_day %s is before term.first_day %s", last, first)
	case days >= classroom.LongestTerm:
		r.problems.Add(at, "term.last_day is %d days after term.first_day; a unit may last up to %d", days, classroom.LongestTerm)
	case len(school.Term(r.unit.Settings).Days()) == 0:
		r.problems.Add(at, "there is no school day from %s to %s, with term.school_days and term.days_off as they are", first, last)
	}
	r.lessonTimes(values)
	r.timetable(values)
	r.eveningTimes()
}

// lessonTimes reports a day without lesson times, and lesson times that lie over
// one another.
func (r *reader) lessonTimes(values form.Values) {
	spans := school.TermLessonTimes.Of(values)
	if school.TermLessonTimes.In(values) && len(spans) == 0 {
		r.problems.Add(r.unit.SettingPlace(school.TermLessonTimes), `term.lesson_times is empty; a lesson needs a time such as "9:10-10:00"`)
	}
	r.overOneAnother(school.TermLessonTimes.Name(), spans)
}

// groups reports a group that is larger than its class. An empty class may have
// any.
func (r *reader) groups(values form.Values) {
	pupils, size := school.ClassPupils.Of(values), school.ClassGroupSize.Of(values)
	if pupils > 0 && size > pupils {
		r.problems.Add(r.unit.SettingPlace(school.ClassGroupSize), "class.group_size %d is more than the %d of class.pupils", size, pupils)
	}
}
