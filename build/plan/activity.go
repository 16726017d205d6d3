package plan

import (
	"fmt"
	"strings"
	"time"

	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/compute/classroom"
)

// queues warns of activities for which a lesson has not time enough at this school.
func (p *Plan) queues(s *pressing, problems *problem.List) {
	for i, l := range p.taught() {
		if i >= len(s.calendar.Held) || !s.calendar.Held[i].Placed {
			continue
		}
		whole := s.term.Lasts(s.lessons[i], s.calendar.Held[i])
		for k, a := range l.Activities() {
			if a.Turn <= 0 { // a fault of its own
				continue
			}
			if a.Sharing > 0 {
				a.Activity = a.SharedBy(a.Sharing, school.ClassPupils.Of(s.settings), s.groups)
			}
			given := time.Duration(a.Minutes) * time.Minute
			if given > whole {
				problems.Warn(l.RowPlace(source.BlockActivity, k, source.ActivityMinutes), "lesson: %q is given %s, and the whole lesson has %s", a.What, lasting(given), lasting(whole))
			}
			has := "the lesson gives it " + lasting(given)
			if given == 0 || given > whole {
				given, has = whole, "the whole lesson has "+lasting(whole)
			}
			if queue := s.queue(a, given); queue != "" {
				problems.Warn(l.RowPlace(source.BlockActivity, k, source.ActivitySeconds), "lesson: %s, and %s%s", queue, has, s.shorter(a, given))
			}
		}
	}
}

// queue says how long an activity takes, where that is longer than the time for it.
func (s *pressing) queue(a source.Activity, given time.Duration) string {
	turns := a.Turns(school.ClassPupils.Of(s.settings), s.groups)
	if takes := a.Takes(turns); takes > given {
		take := "take"
		if turns == 1 {
			take = "takes"
		}
		return fmt.Sprintf("%q: %s of %d s at %s %s %s", a.What, counted(turns, "turn"), a.Turn/time.Second, counted(a.Places, "place"), take, lasting(takes))
	}
	return ""
}

// shorter says what would bring the activity into the time.
func (s *pressing) shorter(a source.Activity, given time.Duration) string {
	pupils := school.ClassPupils.Of(s.settings)
	turns := a.Turns(pupils, s.groups)
	places := a.PlacesWithin(turns, given)
	if places == 0 {
		return "; one turn alone takes longer"
	}
	more := counted(places, "place")
	if a.Adults > 0 {
		more += " with " + counted(a.Adults*places, "adult")
	}
	ways := []string{more}
	if fewer := a.CountWithin(turns/a.Count, given); fewer > 0 {
		ways = append(ways, fmt.Sprintf("%d for each %s", fewer, eachWords[a.Share]))
	} else if a.Share == classroom.PerPupil && a.CountWithin(len(s.groups), given) > 0 {
		ways = append(ways, "one for each group")
	}
	if len(ways) == 1 {
		return "; " + more + " would do"
	}
	return "; " + strings.Join(ways, ", or ") + ", would do"
}

var eachWords = map[classroom.Share]string{classroom.PerPupil: "pupil", classroom.PerGroup: "group", classroom.PerClass: "class"}

// lasting writes a time in minutes: 27 min, 22 min 30 s.
func lasting(d time.Duration) string {
	if seconds := d % time.Minute / time.Second; seconds > 0 {
		return fmt.Sprintf("%d min %d s", d/time.Minute, seconds)
	}
	return fmt.Sprintf("%d min", d/time.Minute)
}

// counted writes a number of things: 1 place, 2 places.
func counted(n int, thing string) string {
	if n != 1 {
		thing += "s"
	}
	return fmt.Sprintf("%d %s", n, thing)
}
