package source

import (
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// An Activity is one table [[activity]] of the lesson block.
type Activity struct {
	classroom.Activity
	What    string
	Sharing int // how many of those who take turns share a place; 0 where the places are counted
	Minutes int // that the lesson gives it; 0 for the whole lesson
	Adults  int // at each place
}

// Activities returns the lesson's activities. RowPlace knows their places by their
// numbers in this list, from 0.
func (l *Lesson) Activities() []Activity {
	var list []Activity
	for _, row := range BlockActivity.Of(l.Block) {
		list = append(list, Activity{
			Activity: classroom.Activity{
				Share:  shares[ActivityEach.Of(row)],
				Count:  ActivityCount.Of(row),
				Turn:   time.Duration(ActivitySeconds.Of(row)) * time.Second,
				Places: ActivityPlaces.Of(row),
			},
			What:    ActivityWhat.Of(row),
			Sharing: ActivitySharedBy.Of(row),
			Minutes: ActivityMinutes.Of(row),
			Adults:  ActivityAdults.Of(row),
		})
	}
	return list
}

// activities reports the things that an activity uses and the kit does not list. Where
// the kit lists them at other schools it is a warning. It also reports places that are
// shared by one.
func (r *reader) activities(l *Lesson) {
	report := r.problems.Add
	if r.answers != nil {
		report = r.problems.Warn
	}
	var items []string
	for _, thing := range BlockKit.Of(l.Block) {
		items = append(items, KitItem.Of(thing))
	}
	for i, row := range BlockActivity.Of(l.Block) {
		if ActivitySharedBy.In(row) && ActivityEach.Of(row) == "class" {
			r.problems.Add(l.RowPlace(BlockActivity, i, ActivitySharedBy), `lesson: activity: shared_by goes with each = "group" or "pupil"; write places`)
		}
		for k, use := range ActivityUses.Of(row) {
			if !begins(items, use) {
				report(l.RowPlace(BlockActivity, i, ActivityUses, k), "lesson: activity: the kit lists no %q%s", use, nearItem(use, items))
			}
		}
	}
}

// begins reports whether some item begins with the words.
func begins(items []string, words string) bool {
	words = strings.ToLower(strings.TrimSpace(words))
	for _, item := range items {
		if words != "" && strings.HasPrefix(strings.ToLower(item), words) {
			return true
		}
	}
	return false
}

// nearItem names the item that was most likely meant: one that holds the words further
// on, or whose first words are nearly the same.
func nearItem(words string, items []string) string {
	var firsts []string
	count := len(strings.Fields(words))
	for _, item := range items {
		if count > 0 && strings.Contains(strings.ToLower(item), strings.ToLower(strings.TrimSpace(words))) {
			return `; did you mean "` + item + `"?`
		}
		fields := strings.Fields(item)
		firsts = append(firsts, strings.TrimRight(strings.Join(fields[:min(count, len(fields))], " "), ",;"))
	}
	if hint := form.Meant(words, firsts); hint != "" {
		return hint
	}
	return "; write the first words of an item of the kit"
}
