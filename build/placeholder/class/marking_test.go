package class_test

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
)

// The note asks by the day that lies home_days of school before the first lesson that
// needs the thing, and goes out note_days of school before that, by a wall calendar. Lesson 1 of the small
// unit is held on its first day, Monday 12 April 2027, with 24 pupils in eight
// groups of three.
func TestFamilyNote(t *testing.T) {
	r := reckon(t, "alder reach", "family-note", "2027-04-12", "class.pupils=24", "class.group_size=3", "supplies.home_days=5", "supplies.note_days=10")
	if got := entrytest.English(t).Text(entrytest.Fact(t, r, "first_by")); got != "5 April 2027" {
		t.Errorf("the box is wanted by %s", got)
	}
	if got := entrytest.English(t).Text(entrytest.Fact(t, r, "send_by")); got != "22 March 2027" {
		t.Errorf("the note goes out on %s", got)
	}
	row := r.Tables[0].Rows[0].Cells
	if len(r.Tables[0].Rows) != 1 || row[0].Plain != "box" || row[1].Number != 8 {
		t.Errorf("families are asked for %v", r.Tables[0].Rows)
	}
	if len(r.Cautions) == 0 || r.Cautions[0].Key != "caution.family-sun" {
		t.Errorf("the note does not begin with the Sun: %v", r.Cautions)
	}
	if r := reckon(t, "alder reach", "family-note", "2027-04-12", "lesson=3", "class.pupils=24"); entrytest.Fact(t, r, "things").Number != 0 {
		t.Errorf("lesson 3 needs nothing from home: %v", r.Tables)
	}
	if r := reckon(t, "alder reach", "family-note", "2027-04-12", "class.pupils=0"); entrytest.Fact(t, r, "things").Number != 0 {
		t.Errorf("an empty class is asked for %v", r.Tables)
	}
}

func TestRubric(t *testing.T) {
	e, _ := entry.Find(entries(), "rubric")
	try := func(text string) (string, int) {
		values, faults, _ := e.Form(nil).Read([]byte(text))
		if len(faults) > 0 {
			return faults[0].Text, 0
		}
		r, err := e.Reckon(e.Complete(form.Values{}, values, entrytest.Day(t, "2027-04-12")))
		if err != nil {
			return err.Error(), 0
		}
		return "", int(entrytest.Fact(t, r, "most").Number)
	}
	for text, want := range map[string]string{
		"levels = [\"no\"]":                            "levels has 1 names, want two to 4",
		"levels = [\"a\",\"b\",\"c\"]":                 "levels has 3 names; give criteria",
		"[[criteria]]\nname = \"A\"":                   "levels is missing",
		"[[criteria]]\nname = \"A\"\nlevels = [\"x\"]": `criteria: "A" has 1 texts for 4 levels`,
	} {
		if got, _ := try(text); !strings.Contains(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	const whole = "title = \"The poster\"\nlevels = [\"no\", \"yes\"]\n[[criteria]]\nname = \"A\"\nlevels = [\"x\", \"y\"]\n[[criteria]]\nname = \"B\"\nlevels = [\"x\", \"y\"]\n"
	if complaint, most := try(whole); complaint != "" || most != 2 {
		t.Errorf("two criteria on two levels: %q, %d points", complaint, most)
	}
	if complaint, most := try(""); complaint != "" || most != 9 {
		t.Errorf("its own criteria: %q, %d points", complaint, most)
	}
}
