package plan

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
)

// eveningUnit has an evening between two lessons, at a latitude.
func eveningUnit(latitude, only string) fstest.MapFS {
	lesson := func(extra string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("```lesson\ntitle = \"L\"\n" + extra + "\n```\n")}
	}
	return fstest.MapFS{
		"unit.toml": {Data: []byte("unit.title = \"T\"\n[school]\nname = \"S\"\nlatitude = " + latitude + "\nlongitude = 18.95\ntime_zone = \"Europe/Oslo\"\n" +
			"[term]\nfirst_day = 2027-04-12\nlast_day = 2027-05-14\nlesson_times = [\"10:00-10:45\"]\n")},
		"1.md": lesson(""),
		"2.md": lesson("evening = true" + only),
		"3.md": lesson(""),
	}
}

// At a school where no evening of the term gets dark in time, a lesson that is one is a fault
// at its key, with the first evening that does and the way out; with that condition it is
// gone, and nothing is wrong. (The Sun in Tromsø: TestNoEvening of build/placeholder/class.)
func TestEveningThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		latitude, only, fault, page string
	}{
		{"69.6", "", `unit/2.md:3:11: lesson: on no evening of the term are the stars out early enough for it to end by 21:30; the first day after the term on which they are is 20 September 2027; want another term, or only = "evening-plan.stands" for a term without it`, ""},
		{"69.6", "\nonly = \"evening-plan.stands\"", "", "no"},
		{"30", "\nonly = \"evening-plan.stands\"", "", "yes"},
	} {
		unit, words := read(t, eveningUnit(c.latitude, c.only), "unit")
		p, err := Make(unit, words, Staff, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		files, problems := p.Press(unit.Settings)
		if got := problems.Error(); problems.Faults() > 0 != (c.fault != "") || c.fault != "" && got != c.fault {
			t.Errorf("%s° %s: got %s\nwant %s", c.latitude, c.only, got, c.fault)
		}
		there := "no"
		for _, f := range files {
			if f.Name == "2.html" {
				there = "yes"
				if want := "Wednesday 12 May"; !strings.Contains(strings.ReplaceAll(string(f.Bytes), "\u00a0", " "), want) {
					t.Errorf("%s°: the page does not say %s", c.latitude, want)
				}
			}
		}
		if c.page != "" && there != c.page {
			t.Errorf("%s° %s: a page of the evening: %s, want %s", c.latitude, c.only, there, c.page)
		}
	}
}

// Lists of lessons say of an evening that it is one, since its day may come before that of
// the lesson above it; of the others they say nothing.
func TestListsSayWhatIsInTheEvening(t *testing.T) {
	unit, words := read(t, eveningUnit("30", ""), "unit")
	p, err := Make(unit, words, Class, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	files, problems := p.Press(unit.Settings)
	if problems.Faults() > 0 {
		t.Fatal(problems)
	}
	lists := 0
	for _, f := range files {
		page := strings.ReplaceAll(string(f.Bytes), "\u00a0", " ")
		evening, all := strings.Count(page, `<time datetime="2027-05-12">12 May</time>, evening`), strings.Count(page, "</time>, evening")
		if evening != all {
			t.Errorf("%s: %d other lessons are in the evening", f.Name, all-evening)
		}
		if f.Name == "index.html" || f.Name == "1.html" {
			lists += evening
		}
	}
	if lists < 2 {
		t.Errorf("cover and contents name the evening %d times", lists)
	}
}
