package source

import (
	"fmt"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

// ofSchoolTime are the keys that give a lesson its day and its time among the lesson times,
// and what they ask of the sky: an evening has a night of its own.
func ofSchoolTime() []form.AnyKey {
	return []form.AnyKey{
		BlockDate, BlockStart, BlockMinutes, BlockLessons, BlockVisits, BlockNeeds, BlockSunHeightDeg, BlockOutsideMinutes,
		BlockDarkBy, BlockHourlyMarks, BlockFollows, BlockDaysAfter, BlockDaysWithin, BlockSameClock, BlockIfWet, BlockChangeWith,
	}
}

// evening reports what an evening under the sky cannot have.
func (r *reader) evening(l *Lesson) {
	if !BlockEvening.Of(l.Block) {
		return
	}
	if l.Part() != PartLesson {
		r.problems.Add(l.Place(BlockEvening), "lesson: evening is for a lesson, and part is %q; want part = %q", l.Part(), PartLesson)
	}
	for _, key := range ofSchoolTime() {
		if _, wrote := l.places[key.Name()]; wrote {
			r.problems.Add(l.Place(key), "lesson: %s does not go with evening, whose night follows from the sky and the keys of [evening] in unit.toml", key)
		}
	}
}

// eveningTimes reports settings with which no evening can be.
func (r *reader) eveningTimes() {
	v := r.unit.Settings
	ends, minutes := school.EveningEndsBy.Of(v), school.EveningMinutes.Of(v)
	switch at := r.unit.SettingPlace(school.EveningEndsBy); {
	case ends > school.LatestEnd:
		r.problems.Add(at, "evening.ends_by %s is too late for a class; want %s or earlier", clockText(ends), clockText(school.LatestEnd))
	case classroom.EveningBegins+time.Duration(minutes)*time.Minute > ends:
		r.problems.Add(at, "evening.ends_by %s leaves no time for an evening of %d minutes, which begins at %s at the earliest", clockText(ends), minutes, clockText(classroom.EveningBegins))
	}
	if first, last := school.EveningFirstDay.Of(v), school.EveningLastDay.Of(v); !first.IsZero() && !last.IsZero() && last.Before(first) {
		r.problems.Add(r.unit.SettingPlace(school.EveningLastDay), "evening.last_day %s is before evening.first_day %s", last, first)
	}
}

func clockText(t time.Duration) string {
	return fmt.Sprintf("%d:%02d", int(t.Hours()), int(t.Minutes())%60)
}
