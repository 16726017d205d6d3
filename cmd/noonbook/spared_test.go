package main

import (
	"strings"
	"testing"
)

// A term that is too short: proof names the lessons to leave out, in order, and core
// ones are not among them; without those the handbook is pressed. Five days for
// seven lessons, two too many.
func TestProofAdvisesWhatToLeaveOut(t *testing.T) {
	week := monctonUnit + "first_day = 2027-04-12\nlast_day = 2027-04-16\nlesson_times = [\"9:00-9:50\"]\n"
	files := map[string]string{
		"1-dial.md": block("Dial", "core = true"), "2-strip.md": block("Strip", ""), "3-story.md": block("Story", ""), "4-scope.md": block("Scope", ""),
		"5-rocket.md": block("Rocket", "follows = \"4-scope.md\"\ndays_after = 1"), "6-fair.md": block("Fair", "core = true"), "7-end.md": block("End", "core = true"),
	}
	files["unit.toml"] = week
	code, _, errs := noonbook(t, "proof", folder(t, files))
	const advice = "lesson: no school day is left for it before term.last_day 2027-04-16; 2 more school days would do; or leave out 5-rocket, then 4-scope, and the rest fits\n"
	if code != contentFault || strings.Count(errs, advice) != 2 {
		t.Errorf("exit %d: %s", code, errs)
	}

	files["unit.toml"] = strings.Replace(week, "[unit]\n", "[unit]\nleave_out = [\"5-rocket\", \"4-scope\"]\n", 1)
	if code, _, errs := noonbook(t, "proof", folder(t, files)); code != done {
		t.Errorf("without them: exit %d: %s", code, errs)
	}

	for _, name := range []string{"2-strip.md", "3-story.md", "4-scope.md", "5-rocket.md"} {
		files[name] = strings.Replace(files[name], "```lesson\n", "```lesson\ncore = true\n", 1)
	}
	files["unit.toml"] = week
	if _, _, errs := noonbook(t, "proof", folder(t, files)); !strings.Contains(errs, "2 more school days would do; leaving out lessons that are not core is not enough\n") {
		t.Errorf("all core: %s", errs)
	}
}
