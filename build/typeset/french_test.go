package typeset_test

import (
	"testing"
	"time"

	"noonbook/build/say"
	"noonbook/compute/place"
)

// How French is set: decimal comma, groups and high marks with narrow no-break
// spaces, 1er, the hour with h. The ordinal of the first day and "9 h 10" are
// those of the Office québécois de la langue française's writing aids, from
// memory; they leave the space before ; ! ? to the printer, and ours is narrow.
func TestFrenchValues(t *testing.T) {
	w := language(t, "fr", false)
	zone := time.FixedZone("", -3*3600)
	for _, c := range []struct {
		name  string
		value say.Value
		want  string
	}{
		{"decimal comma", say.Number(-16.24, "deg", 1), "−16,2°"},
		{"groups", say.Number(299792, "km", 0), "299\u202f792\u00a0km"},
		{"percent", say.Number(4.25, "percent", 1), "4,2\u202f%"},
		{"clock", say.Clock(time.Date(2027, 4, 13, 9, 10, 0, 0, zone)), "9\u00a0h\u00a010"},
		{"full hour", say.Clock(time.Date(2027, 4, 13, 8, 59, 45, 0, zone)), "9\u00a0h"},
		{"lasting", say.Minutes(88 * time.Minute), "1\u00a0h\u00a028\u00a0min"},
		{"first of the month", say.Date(place.Date{Year: 2027, Month: 5, Day: 1}), "1er\u00a0mai 2027"},
		{"another day", say.Date(place.Date{Year: 2027, Month: 8, Day: 21}), "21\u00a0août 2027"},
		{"direction", say.Words("toward.west_northwest"), "ouest-nord-ouest"},
		{"a clock that is behind", say.Words("dial-table.slow", say.Minutes(3*time.Minute)), "3\u00a0min de retard"},
		{"a clock that is ahead", say.Words("dial-table.fast", say.Minutes(3*time.Minute)), "3\u00a0min d’avance"},
		{"against the clock's hands", say.Words("compass.anticlockwise", say.Number(16, "deg", 0)), "16° dans le sens antihoraire"},
		{"with the clock's hands", say.Words("compass.clockwise", say.Number(16, "deg", 0)), "16° dans le sens horaire"},
		{"phase", say.Words("phase.first_quarter"), "premier quartier"},
		{"article", say.Words("strip-table.ends_before", say.Words("body.earth"), say.Count(9), say.Count(5)),
			"La bande finit avant la Terre\u202f: ce serait au carré 9, et la bande en a 5."},
		{"no article", say.Words("strip-table.ends_before", say.Words("body.mars"), say.Count(9), say.Count(5)),
			"La bande finit avant Mars\u202f: ce serait au carré 9, et la bande en a 5."},
		{"elision", say.Words("lens-power.of_focal", say.Text("Uranus")), "lentille d’Uranus"},
		{"melted article", say.Words("lens-power.of_focal", say.Words("the.body.sun")), "lentille du Soleil"},
		{"a school's own name", say.Text("Le ciel : c'est où ?"), "Le ciel\u202f: c’est où\u202f?"},
	} {
		if got := w.Text(c.value); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if got := language(t, "fr", true).Text(say.Number(108, "mm", 0)); got != "4\u00a01/4\u00a0po" {
		t.Errorf("inches are %q", got)
	}
}
