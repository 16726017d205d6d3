package source

import (
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// number counts the lessons among the pages.
func (r *reader) number() {
	n := 0
	for _, l := range r.unit.Lessons {
		if l.Part() == PartLesson {
			n++
			l.Number = n
		}
	}
}

// Taught returns what the calendar and the lists know of the unit's lessons, in
// order. The lesson of number n stands at n−1.
func (u *Unit) Taught() []classroom.Lesson {
	var lessons []classroom.Lesson
	for _, l := range u.Lessons {
		if l.Number > 0 {
			lessons = append(lessons, l.taught())
		}
	}
	return lessons
}

func (l *Lesson) taught() classroom.Lesson {
	lesson := classroom.Lesson{
		Title:  l.Title(),
		Page:   l.Page,
		Date:   l.Block.Date("date"),
		Start:  classroom.AnyTime,
		Length: time.Duration(l.Block.Whole("minutes")) * time.Minute,
		Needs:  l.Block.Texts("needs"),
	}
	if l.Block.Has("start") {
		lesson.Start = l.Block.Clock("start")
	}
	for _, line := range l.Block.Tables("kit") {
		lesson.Kit = append(lesson.Kit, thing(line))
	}
	return lesson
}

var shares = map[string]classroom.Share{"pupil": classroom.PerPupil, "group": classroom.PerGroup, "class": classroom.PerClass}

func thing(line form.Values) classroom.Thing {
	return classroom.Thing{Item: line.Text("item"), Count: line.Number("count"), Share: shares[line.Text("each")], Spare: line.Whole("spare")}
}
