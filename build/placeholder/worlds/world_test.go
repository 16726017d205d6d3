package worlds_test

import (
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// Distances on 20 April 2027 at 15:00 UTC in au: pyephem 4.1.4 (its
// planets and ours agree to 0.0005 there); light takes 499.005 s an
// au. The rest are values of NASA's fact sheet (2024, from memory).
func TestWorldCardOfMars(t *testing.T) {
	r := reckon(t, "alder reach", "world-cards", "2027-04-20", "world=mars")
	entrytest.Near(t, "light for the distance", entrytest.Fact(t, r, "light_time").Number, 499.005*entrytest.Fact(t, r, "distance_au").Number, 1)
	entrytest.Near(t, "million km for au", entrytest.Fact(t, r, "distance").Number, 149.5979*entrytest.Fact(t, r, "distance_au").Number, 1e-3)
	for name, au := range map[string]float64{"mars": 0.98483, "jupiter": 4.99033, "moon": 382239.75 / 149597870.7} {
		got := entrytest.Fact(t, reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name), "distance_au").Number
		entrytest.Near(t, name+": au", got, au, 0.0005)
	}
	entrytest.Near(t, "pull", entrytest.Fact(t, r, "gravity").Number, 3.71, 0.005)
	entrytest.Near(t, "day in hours", entrytest.Fact(t, r, "day").Number/3600, 24.6597, 0.0001)
	entrytest.Near(t, "diameter", entrytest.Fact(t, r, "diameter").Number, 6779, 0.5)
	if got := entrytest.Fact(t, r, "moons").Number; got != 2 {
		t.Errorf("Mars has %v moons", got)
	}
}

// Two cards a sheet on both papers, at true size, each on a single piece of paper.
func TestWorldCardsFitTheirPaper(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		r := reckon(t, "south", "world-cards", "2027-04-20", "school.paper="+paper)
		if len(r.Sheets) != 6 {
			t.Errorf("%s: %d sheets", paper, len(r.Sheets))
		}
		for _, s := range r.Sheets {
			if s.Rows*s.Columns != 1 || !s.Paper.Fits(s.Drawing) {
				t.Errorf("%s: a sheet does not fit", paper)
			}
		}
	}
	r := reckon(t, "south", "world-cards", "2027-04-20", "worlds=saturn, mars, saturn")
	if got := entrytest.Fact(t, r, "cards").Number; got != 2 || entrytest.Fact(t, r, "name").Phrase.Key != "body.saturn" || len(r.Sheets) != 1 {
		t.Errorf("%v cards, the first of %s", got, entrytest.Fact(t, r, "name").Phrase.Key)
	}
}

// What a card says keeps to its room, in every language that has words: three lines
// for a feature and for a question (typeset measures on the wide side),
// values that end before the right half.
func TestWorldCardsHoldTheirText(t *testing.T) {
	for _, code := range typeset.Languages() {
		for _, customary := range []bool{false, true} {
			words, err := typeset.Language(code, customary)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range reckon(t, "alder reach", "world-cards", "2027-04-20").Sheets {
				for _, l := range words.Place(&s.Drawing, typeset.OnPaper) {
					if len(l.Lines) > 3 {
						t.Errorf("%s: %d lines: %q", code, len(l.Lines), l.Lines)
					}
					if c := l.Corners(); s.Drawing.Shapes[l.Shape].Role == "value" && c[1].X-c[0].X > 77 {
						t.Errorf("%s: too long for its row: %q", code, l.Lines)
					}
				}
			}
		}
	}
}

// The comet is known for some years only, and the Earth has no distance from itself.
func TestWorldsWithoutADistance(t *testing.T) {
	if got := entrytest.Fact(t, reckon(t, "south", "world-cards", "2040-04-20", "world=comet"), "distance"); got.Kind != say.Nothing || got.Phrase.Key != "world.not_known" {
		t.Errorf("the comet in 2040: %v", got)
	}
	if got := entrytest.Fact(t, reckon(t, "south", "world-cards", "2027-04-20", "world=earth"), "light_time"); got.Phrase.Key != "world.here" {
		t.Errorf("the Earth: %v", got)
	}
	entrytest.Near(t, "the Moon", entrytest.Fact(t, reckon(t, "south", "world-cards", "2027-04-20", "world=moon"), "distance").Number, 0.3845, 0.0285) // perigee to apogee
}

func TestWorldsBadInput(t *testing.T) {
	for _, c := range []struct{ name, date, given, want string }{
		{"world-cards", "2027-04-20", "world=vulcan", "vulcan"},
		{"world-cards", "2027-04-20", "worlds=mars, satrun", "saturn"},
		{"world-cards", "2200-04-20", "world=mars", "2200"},
		{"weight-table", "2027-04-20", "world=vulcan", "vulcan"},
		{"weight-table", "2027-04-20", "mass_kg=-4", "outside 1 kg"},
		{"weight-table", "2027-04-20", "jump_m=0", "outside 0.05 m"},
		{"weight-table", "2027-04-20", "born=2028-01-01", "after the date 2027-04-20"},
		{"weight-table", "2027-04-20", "born=1828-01-01", "130 years"},
		{"weight-table", "2027-04-20", "born=2027-02-30", "date"},
		{"journey-table", "2027-04-20", "world=earth", "mercury"},
		{"journey-table", "1900-04-20", "world=mars", "1900"},
	} {
		if got := complaint(t, c.name, c.date, c.given); !strings.Contains(got, c.want) || strings.Contains(got, "\n") {
			t.Errorf("%s %s says %q", c.name, c.given, got)
		}
	}
}

// A mass of 40 kg on the Moon: 6.6 kg on the scale and 65 N; the jump of 0.3 m
// reaches 1.8 m, by the ratio of pulls 9.798 : 1.623 from the fact sheets.
func TestWeightOnTheMoon(t *testing.T) {
	r := reckon(t, "alder reach", "weight-table", "2027-04-20", "mass_kg=40", "world=moon")
	entrytest.Near(t, "scale", entrytest.Fact(t, r, "scale").Number, 40*1.623/9.798, 0.01)
	entrytest.Near(t, "force", entrytest.Fact(t, r, "force").Number, 40*1.623, 0.1)
	entrytest.Near(t, "jump", entrytest.Fact(t, r, "jump").Number, 0.3*9.798/1.623, 0.002)
	entrytest.Near(t, "throw", entrytest.Fact(t, r, "throw").Number, 20*9.798/1.623, 0.1)
	if got := entrytest.Fact(t, reckon(t, "alder reach", "weight-table", "2027-04-20", "world=saturn"), "jump"); got.Phrase.Key != "weight-table.no_ground" {
		t.Errorf("a jump on Saturn is %v", got)
	}
	if got := entrytest.Fact(t, reckon(t, "alder reach", "weight-table", "2027-04-20", "world=comet"), "throw"); got.Phrase.Key != "weight-table.leaves" {
		t.Errorf("a throw on the comet is %v", got)
	}
}

// Birthdays by the calendar on the Earth, 29 February included, and by turns round
// the Sun elsewhere: Mars's first after 687 days.
func TestWorldBirthdays(t *testing.T) {
	for _, c := range []struct{ born, date, world, next, number string }{
		{"2016-02-29", "2027-02-28", "earth", "2027-03-01", "11"},
		{"2016-02-29", "2027-03-01", "earth", "2027-03-01", "11"},
		{"2016-02-29", "2027-03-02", "earth", "2028-02-29", "12"},
		{"2016-04-20", "2016-04-20", "earth", "2017-04-20", "1"},
		{"2016-04-20", "2016-04-21", "mars", "2018-03-08", "1"}, // 686.98 days later
	} {
		r := reckon(t, "south", "weight-table", c.date, "born="+c.born, "world="+c.world)
		if got := entrytest.Fact(t, r, "next_birthday").Time.Format("2006-01-02"); got != c.next {
			t.Errorf("%v: next is %s", c, got)
		}
		if got := entrytest.Fact(t, r, "next_number").Number; got != map[string]float64{"1": 1, "11": 11, "12": 12}[c.number] {
			t.Errorf("%v: number %v", c, got)
		}
	}
}

// What the working says is true as it stands. By hand: 3956 ÷ 365.3 is 10.8, though
// the calendar has counted ten birthdays; days are divided by days on the way to
// Saturn, 0.5 × √5.268³ years being 2208 of them and 2208 ÷ 10 755.7 of 360° 74°; and a jump on the comet is not an equation
// with words in it: √(2 GM/r) of 666.2 m³/s² and 1647 m is 0.90 m/s.
func TestWorkingOfWeightsAndWays(t *testing.T) {
	for _, c := range []struct{ name, given, want string }{
		{"weight-table", "world=earth", "= 3956 ÷ 365.3\u00a0days = 10.8."},
		{"weight-table", "world=comet", "There 0.90\u00a0m/s is enough to get away, so it never comes back."},
		{"weight-table", "world=mars", "÷ (2 × 3.71\u00a0m/s²) = 0.79\u00a0m"},
		{"journey-table", "world=saturn", "In 2208\u00a0days the goal goes 2208\u00a0days ÷ 10\u202f755.7\u00a0days × 360° = 74°"},
	} {
		given := []string{c.given}
		if c.name == "weight-table" {
			given = append(given, "born=2016-06-20")
		}
		said := ""
		for _, line := range reckon(t, "south", c.name, "2027-04-20", given...).Working {
			said += entrytest.English(t).Line(line) + "\n"
		}
		if !strings.Contains(said, c.want) {
			t.Errorf("%s %s: %q is not in %q", c.name, c.given, c.want, said)
		}
	}
	for _, line := range reckon(t, "south", "weight-table", "2027-04-20", "world=jupiter").Working {
		if strings.Contains(entrytest.English(t).Line(line), "no ground") {
			t.Errorf("a jump on Jupiter is worked out: %q", entrytest.English(t).Line(line))
		}
	}
}

// The windows for Mars that the agencies name, as in compute/journey, by the table:
// October and November 2024, November and December 2026, 30 days from the middle.
func TestJourneyWindows(t *testing.T) {
	r := reckon(t, "alder reach", "journey-table", "2024-01-01", "world=mars")
	for name, want := range map[string]string{"window": "2024-10-15", "next_window": "2026-11-15"} {
		entrytest.Near(t, name, entrytest.Fact(t, r, name).Time.Sub(entrytest.Day(t, want).UTC()).Hours()/24, 0, 30)
	}
	entrytest.Near(t, "transfer", entrytest.Fact(t, r, "transfer").Number, 258.9, 0.2)
	entrytest.Near(t, "synodic", entrytest.Fact(t, r, "synodic").Number, 779.9, 0.1)
	if got := len(r.Tables[2].Rows); got != 4 {
		t.Errorf("%d windows", got)
	}
	r = reckon(t, "alder reach", "journey-table", "2095-01-01", "world=pluto")
	if entrytest.Fact(t, r, "window").Phrase.Key != "sky.unknown" || len(r.Tables[2].Rows) != 0 {
		t.Error("a way to Pluto ends beyond the almanac")
	}
}

// The order by density, from the fact sheets' numbers, and that only Saturn and the
// comet are less dense than water; an unknown order gets one message.
func TestWorldCompareOrders(t *testing.T) {
	r := reckon(t, "alder reach", "world-compare", "2027-04-20", "sort=density")
	want := []string{"earth", "mercury", "venus", "mars", "moon", "ceres", "pluto", "neptune", "jupiter", "uranus", "saturn", "comet"}
	for i, row := range r.Tables[0].Rows {
		if got := row.Cells[0].Phrase.Key; got != "body."+want[i] {
			t.Errorf("place %d is %s, want %s", i+1, got, want[i])
		}
	}
	for name, want := range map[string]string{"largest": "jupiter", "smallest": "comet", "densest": "earth", "hottest": "venus", "most_moons": "saturn", "longest_day": "mercury", "shortest_day": "ceres"} {
		if got := entrytest.Fact(t, r, name).Phrase.Key; got != "body."+want {
			t.Errorf("%s is %s", name, got)
		}
	}
	// 1321 Earths by volume: NASA's fact sheet of Jupiter, from memory.
	entrytest.Near(t, "Earths in Jupiter", entrytest.Fact(t, r, "earths_in_jupiter").Number, 1321, 1)
	for _, table := range reckon(t, "alder reach", "world-compare", "2027-04-20", "sort=mixed").Tables {
		if table.Name == "groups" {
			t.Error("the worlds that pupils are to sort come with their groups")
		}
	}
	if got := len(reckon(t, "alder reach", "world-compare", "2027-04-20", "chart=none").Drawings); got != 0 {
		t.Errorf("%d charts where none were wanted", got)
	}
	if got := complaint(t, "world-compare", "2027-04-20", "sort=densty"); !strings.Contains(got, "density") {
		t.Errorf("it says %q", got)
	}
}

// Most and least mass and pull: NASA's fact sheets, from memory. Of the worlds on the chart
// of masses, which leaves the comet out, Ceres is the lightest.
func TestChartsOfWorldsSayTheirEnds(t *testing.T) {
	at := func(name string, given ...string) []string {
		var says []string
		for _, d := range reckon(t, "alder reach", name, "2027-04-20", given...).Drawings {
			if d.Finding.Key != "" {
				says = append(says, entrytest.English(t).Line(d.Finding))
			}
		}
		return says
	}
	if got := at("weight-table", "mass_kg=40"); len(got) != 1 || !strings.HasPrefix(got[0], "The scale would show most on Jupiter, 101") || !strings.Contains(got[0], "and least on Comet 67P, 0.") {
		t.Errorf("of weights it says %q", got)
	}
	if got := at("world-compare", "sort=mass", "chart=mass"); len(got) != 1 || got[0] != "Of these worlds, Jupiter has the most mass and Ceres the least." {
		t.Errorf("of masses it says %q", got)
	}
	if got := at("world-compare", "sort=density", "chart=both"); len(got) != 2 || !strings.HasPrefix(got[0], "The densest is ") {
		t.Errorf("of both it says %q", got)
	}
	if got := at("world-compare", "sort=mixed", "chart=both"); len(got) != 0 {
		t.Errorf("to those who are to sort it says %q", got)
	}
}
