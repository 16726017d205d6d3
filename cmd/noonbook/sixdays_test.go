package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// A school with a cycle of six days, from day 5 on. By a wall calendar: Monday 12 April
// 2027 is day 5, Tuesday day 6, whose only lesson is after noon; Wednesday is day 1,
// Thursday day 2, which has none; Friday is off; Monday the 19th is day 3, Tuesday the
// storm loses day 4, Wednesday is day 5, Thursday a half day. The long walk needs two
// lesson times: Wednesday has them in the morning.
func TestSixDays(t *testing.T) {
	out := filepath.Join(t.TempDir(), "handbook")
	said := must(t, "press", "--staff", "--content", "../../testdata/units/six-days", "--out", out)
	if want := "left out: 3-lamp (leave_out), 6-notes (draft), what 4-walk asks of the days since 3-lamp\n"; !strings.Contains(said, want) {
		t.Errorf("press says %q", said)
	}
	if proofed := must(t, "proof", "../../testdata/units/six-days"); !strings.HasPrefix(proofed, "left out: 3-lamp") {
		t.Errorf("proof says %q", proofed)
	}
	class, staff := tree(t, out), tree(t, out+"-staff")
	for page, want := range map[string]string{
		"shadow.html": "Monday 12 April, day 5, 9:10 to 10:00",
		"map.html":    "Tuesday 13 April, day 6, 13:15 to 14:05",
		"walk.html":   "Wednesday 14 April, day 1, 9:10 to 11:05",
		"fair.html":   "Monday 19 April, day 3, 9:10 to 10:00",
	} {
		for where, text := range map[string]string{"the lesson": class["/"+page], "the day sheet": staff["/day-"+page]} {
			if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
				t.Errorf("%s %s lacks %q", where, page, want)
			}
		}
	}
	if page := class["/shadow.html"]; !strings.Contains(page, `href="map.html"`) || !strings.Contains(page, "and then the lamp.") {
		t.Errorf("the first page links otherwise:\n%s", page)
	}
	if _, there := class["/lamp.html"]; there {
		t.Error("the lamp has a page")
	}
}
