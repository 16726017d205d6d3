package classroom

import (
	"fmt"
	"slices"
	"testing"
)

// The order of the lessons is not given up to please the sky, however many needs
// that costs: without Sun and Moon until Wednesday, the first lesson is held on
// Monday all the same, because the second has Tuesday. Only where an author's own
// dates leave no day between them does the order give way.
func TestOrderComesBeforeTheSky(t *testing.T) {
	late := Sky{Meets: func(n Need, s Slot) bool { return s.Date.Day >= 14 }}
	needy := Lesson{Start: AnyTime, Needs: []Need{{Kind: SunUp}, {Kind: HourMarks}, {Kind: MoonUp}}}
	tuesday := Lesson{Start: clockOf(9, 0), Date: on(4, 13)}
	for _, c := range []struct {
		name    string
		days    int
		lessons []Lesson
		held    string
		dropped []RuleKind
	}{
		{"before a lesson with a date", 5, []Lesson{needy, tuesday}, "04-12 9:00-9:50, 04-13 9:00-9:50", []RuleKind{ForNeed, ForNeed, ForNeed}},
		{"behind one, where the sky is right", 5, []Lesson{tuesday, needy}, "04-13 9:00-9:50, 04-14 9:00-9:50", nil},
		{"behind one, at the end of the term", 2, []Lesson{{Start: clockOf(9, 0), Date: monday}, needy}, "04-12 9:00-9:50, 04-13 9:00-9:50", []RuleKind{ForNeed, ForNeed, ForNeed}},
		{"no day left before", 5, []Lesson{needy, {Start: clockOf(9, 0), Date: monday}}, "04-14 9:00-9:50, 04-12 9:00-9:50", []RuleKind{ForOrder}},
		{"all left to us", 2, []Lesson{needy, needy}, "04-12 9:00-9:50, 04-13 9:00-9:50", []RuleKind{ForNeed, ForNeed, ForNeed, ForNeed, ForNeed, ForNeed}},
	} {
		t.Run(c.name, func(t *testing.T) {
			term := Term{First: monday, Last: monday.Add(c.days - 1), Weekdays: fiveDays, Times: spans(t, "9:00-9:50")}
			got := Arrange(c.lessons, term, late)
			var kinds []RuleKind
			for _, r := range got.Dropped {
				kinds = append(kinds, r.Kind)
			}
			if told(got) != c.held || !slices.Equal(kinds, c.dropped) || !got.Smallest {
				t.Errorf("held %s, want %s\ndropped %s, want %v", told(got), c.held, fmt.Sprintf("%+v", got.Dropped), c.dropped)
			}
		})
	}
}
