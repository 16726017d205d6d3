package source

import (
	"strings"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// A namedDay is a day by name that a lesson's text holds.
type namedDay struct {
	what string // "sun-day: date"
	day  form.Day
	at   problem.Place
}

// DayName returns the day that the lesson names as its date; "" where it names none.
func (l *Lesson) DayName() string {
	if l.day == nil {
		return ""
	}
	return l.day.Text
}

// Course returns what a school needs to give the lessons their days.
func (u *Unit) Course() entry.Course {
	c := u.names()
	c.Lessons = u.Taught()
	return c
}

// names is the course without what is taught in it: enough to find a lesson by its name.
func (u *Unit) names() entry.Course {
	c := entry.Course{Named: map[int]form.Day{}, Files: map[string]int{}}
	for _, l := range u.left {
		c.Left = append(c.Left, l.Stem())
	}
	for _, l := range u.Lessons {
		c.Files[l.Stem()] = l.Number
		if l.Number > 0 && l.day != nil {
			c.Named[l.Number-1] = *l.day
		}
	}
	return c
}

// daysOf notes the days that a use of a placeholder names, and the dates that it types.
func (v *visitor) daysOf(name string, given form.Values, at func(key string) problem.Place) {
	for _, named := range given.Days() {
		v.lesson.namedDays = append(v.lesson.namedDays, namedDay{name + ": " + named.Key, named.Day, at(named.Key)})
	}
	v.typedIn(given, at)
}

// days checks the names of days against the unit: each names a lesson that there is, and
// no lesson's date comes round to itself.
func (r *reader) days() {
	course := r.unit.names()
	for _, l := range r.unit.Lessons {
		for _, named := range l.namedDays {
			r.namedDay(course, l, named)
		}
		if l.day != nil && !r.dated(course, l) {
			l.day = nil
		}
	}
	r.circles()
}

// namedDay reports what is wrong with a day that a page's text names.
func (r *reader) namedDay(course entry.Course, l *Lesson, named namedDay) {
	anchor, complaint := named.day.Anchor(), course.Complaint(form.ADay(), named.day)
	switch {
	case complaint != "":
		r.problems.Add(named.at, "%s %s", named.what, complaint)
	case anchor.Sort == form.DayOfThis && l.Number == 0:
		r.problems.Add(named.at, `%s is %q, and this page is no lesson; want "first day of term", or a lesson's file`, named.what, named.day.Text)
	case anchor.Sort == form.DayOfFile && course.IsLeft(anchor.File):
		r.problems.Warn(named.at, "%s is %q, and %s is left out; the day of this page stands in for its day, so see that the sentence is still true", named.what, named.day.Text, anchor.File)
	}
}

// dated reports whether a lesson keeps the day that it names as its date, and what is
// wrong with it if not.
func (r *reader) dated(course entry.Course, l *Lesson) bool {
	anchor, at := l.day.Anchor(), l.Place(BlockDate)
	complaint := course.Complaint(lessonBlock().Pick(BlockDate)[0], *l.day)
	switch {
	case complaint != "":
		r.problems.Add(at, "lesson: date %s", complaint)
	case anchor.Sort == form.DayOfFile && course.IsLeft(anchor.File):
		r.problems.Warn(at, "lesson: date is %q, and %s is left out; the date is found as if it were \"auto\"", l.day.Text, anchor.File)
	case l.Number == 0:
		r.problems.Add(at, "lesson: date is %q, and a page has no date; want part = %q", l.day.Text, PartLesson)
	case anchor.Sort == form.DayOfThis:
		r.problems.Add(at, "lesson: date is %q, and a lesson cannot be dated by itself", l.day.Text)
	default:
		return true
	}
	return false
}

// circles reports lessons whose dates come round to themselves, once for each circle, and
// opens it.
func (r *reader) circles() {
	for _, l := range r.unit.Lessons {
		way := []*Lesson{l}
		for next := r.datedBy(l); next != nil; next = r.datedBy(next) {
			if next == l {
				r.circle(way)
				break
			}
			if len(way) > len(r.unit.Lessons) { // it runs into a circle of others
				break
			}
			way = append(way, next)
		}
	}
}

// datedBy returns the lesson after which the date of l is named.
func (r *reader) datedBy(l *Lesson) *Lesson {
	if l.day == nil || l.day.Anchor().Sort != form.DayOfFile {
		return nil
	}
	number, _ := r.unit.names().Lesson(l.day.Anchor().File)
	for _, other := range r.unit.Lessons {
		if other.Number == number && number > 0 {
			return other
		}
	}
	return nil
}

func (r *reader) circle(way []*Lesson) {
	l := way[0]
	if len(way) == 1 {
		r.problems.Add(l.Place(BlockDate), "lesson: date is %q, and a lesson cannot be dated by itself", l.day.Text)
		l.day = nil
		return
	}
	names := make([]string, 0, len(way))
	for _, other := range way {
		names = append(names, other.Stem())
	}
	r.problems.Add(l.Place(BlockDate), "lesson: dates go round in a circle: %s is dated by %s, which is dated by %s", names[0], strings.Join(names[1:], ", which is dated by "), names[0])
	for _, other := range way {
		other.day = nil
	}
}
