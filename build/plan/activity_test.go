package plan

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/build/school"
)

func pressedProblems(t *testing.T, files fstest.MapFS, pupils int) problem.List {
	t.Helper()
	unit, words := read(t, files, "unit")
	p, err := Make(unit, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	_, problems := p.Press(unit.Settings.With(school.ClassPupils.Is(pupils)))
	return problems
}

func linesOf(problems problem.List) []string {
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	return lines
}

// Queues of a class of 27 in groups of three, worked out by hand. The table begins on
// line 3.
func TestActivitiesAreReckonedForTheClass(t *testing.T) {
	for _, c := range []struct {
		name, keys string
		pupils     int
		want       []string
	}{
		{"27 cuts", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nminutes = 15\n", 27,
			[]string{`unit/1-a.md:6:11: warning: lesson: "cuts": 27 turns of 60 s at 1 place take 27 min, and the lesson gives it 15 min; 2 places, or one for each group, would do`}},
		{"15 cuts", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nminutes = 15\n", 15, nil},
		{"16 cuts", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nminutes = 15\n", 16,
			[]string{`unit/1-a.md:6:11: warning: lesson: "cuts": 16 turns of 60 s at 1 place take 16 min, and the lesson gives it 15 min; 2 places, or one for each group, would do`}},
		{"no class yet", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nminutes = 15\n", 0, nil},
		{"two places", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nplaces = 2\nminutes = 14\n", 27, nil},
		{"54 flights in the whole lesson", "what = \"flights\"\neach = \"pupil\"\ncount = 2\nseconds = 64\nadults = 1\n", 27,
			[]string{`unit/1-a.md:7:11: warning: lesson: "flights": 54 turns of 64 s at 1 place take 57 min 36 s, and the whole lesson has 50 min; 2 places with 2 adults, or 1 for each pupil, would do`}},
		{"compasses", "what = \"true north\"\neach = \"group\"\nseconds = 180\nplaces = 3\nminutes = 8\n", 27,
			[]string{`unit/1-a.md:6:11: warning: lesson: "true north": 9 turns of 180 s at 3 places take 9 min, and the lesson gives it 8 min; 5 places would do`}},
		{"compasses, one for three groups", "what = \"true north\"\neach = \"group\"\nseconds = 180\nshared_by = 3\nminutes = 9\n", 30, nil}, // ten groups, four places, three rounds
		{"and a minute less", "what = \"true north\"\neach = \"group\"\nseconds = 180\nshared_by = 3\nminutes = 8\n", 30,
			[]string{`unit/1-a.md:6:11: warning: lesson: "true north": 10 turns of 180 s at 4 places take 9 min, and the lesson gives it 8 min; 5 places would do`}},
		{"a turn too long", "what = \"a film\"\neach = \"class\"\nseconds = 900\nminutes = 10\n", 27,
			[]string{`unit/1-a.md:6:11: warning: lesson: "a film": 1 turn of 900 s at 1 place takes 15 min, and the lesson gives it 10 min; one turn alone takes longer`}},
		{"longer than the lesson", "what = \"cuts\"\neach = \"pupil\"\nseconds = 60\nminutes = 60\n", 27,
			[]string{`unit/1-a.md:7:11: warning: lesson: "cuts" is given 60 min, and the whole lesson has 50 min`}},
		{"longer than the lesson, and too slow", "what = \"cuts\"\neach = \"pupil\"\nseconds = 200\nminutes = 60\n", 27, []string{
			`unit/1-a.md:6:11: warning: lesson: "cuts": 27 turns of 200 s at 1 place take 90 min, and the whole lesson has 50 min; 2 places, or one for each group, would do`,
			`unit/1-a.md:7:11: warning: lesson: "cuts" is given 60 min, and the whole lesson has 50 min`}},
	} {
		got := linesOf(pressedProblems(t, inClassOf27("[[activity]]\n"+c.keys), c.pupils))
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}

// An activity stands where its condition holds; what it uses is looked for in the kit of
// the same school, and the places are those of the file.
func TestActivitiesThatStandAtSomeSchools(t *testing.T) {
	lesson := "[[kit]]\nitem = \"knives\"\nonly = \"place-facts.south\"\n" +
		"[[activity]]\nwhat = \"north\"\neach = \"class\"\nseconds = 1\nunless = \"place-facts.south\"\n" +
		"[[activity]]\nwhat = \"south\"\neach = \"class\"\nseconds = 1\nonly = \"place-facts.south\"\nuses = [\"knives\"]\n" +
		"[[activity]]\nwhat = \"both\"\neach = \"pupil\"\nseconds = 120\nuses = [\"knives\"]\n"
	files := inClassOf27(lesson)
	queue := `unit/1-a.md:20:11: warning: lesson: "both": 27 turns of 120 s at 1 place take 54 min, and the whole lesson has 50 min; 2 places, or one for each group, would do`
	kit := `unit/1-a.md:21:9: warning: lesson: activity: the kit lists no "knives"; write the first words of an item of the kit`
	if got, want := linesOf(pressedProblems(t, files, 27)), []string{queue, kit}; !slices.Equal(got, want) {
		t.Errorf("in the north: got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	files["unit.toml"].Data = []byte(strings.Replace(classOf27, "latitude = 46", "latitude = -46", 1))
	if got, want := linesOf(pressedProblems(t, files, 27)), []string{queue}; !slices.Equal(got, want) {
		t.Errorf("in the south: got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
