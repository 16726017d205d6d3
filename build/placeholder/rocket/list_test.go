package rocket_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// What any fair list of pairs must do, by counting on the printed sheet itself: each
// group has one plain and one changed line, next to each other, so that both have the
// same stamper, bottle and wind; half of the groups fly the changed rocket first (one
// more or less where their number is odd); the lines are numbered through.
func TestFlightListPairsEveryGroup(t *testing.T) {
	for _, c := range []struct{ pupils, size, teams string }{{"27", "3", "3"}, {"4", "4", "3"}, {"26", "3", "2"}, {"60", "2", "3"}, {"13", "1", "6"}} {
		r := reckon(t, "alder reach", "rocket-list", "2027-04-28", "class.pupils="+c.pupils, "class.group_size="+c.size, "teams="+c.teams)
		groups := int(entrytest.Fact(t, r, "groups").Number)
		var numbers []int  // of flights and groups, in turn
		var kinds []string // of rockets, line by line
		for _, sheet := range r.Sheets {
			if sheet.Rows*sheet.Columns != 1 {
				t.Fatalf("%v: the list is tiled", c)
			}
			for _, l := range sheet.Drawing.Shapes {
				if l.Writing == nil {
					continue
				}
				switch key := l.Text.Phrase.Key; {
				case l.Text.Kind == say.Quantity && l.Role == "small":
					numbers = append(numbers, int(l.Text.Number))
				case key == "rocket-list.plain" || key == "rocket-list.changed":
					kinds = append(kinds, key)
				}
			}
		}
		if len(kinds) != 2*groups || len(numbers) != 4*groups {
			t.Fatalf("%v: %d lines and %d numbers for %d groups", c, len(kinds), len(numbers), groups)
		}
		changedFirst := 0
		for i := 0; i < len(kinds); i += 2 {
			if kinds[i] == kinds[i+1] {
				t.Errorf("%v: flights %d and %d are both %s", c, i+1, i+2, kinds[i])
			}
			if kinds[i] == "rocket-list.changed" {
				changedFirst++
			}
			if numbers[2*i] != i+1 || numbers[2*i+2] != i+2 || numbers[2*i+1] != i/2+1 || numbers[2*i+3] != i/2+1 {
				t.Errorf("%v: lines %d and %d read %v", c, i+1, i+2, numbers[2*i:2*i+4])
			}
		}
		if changedFirst != groups/2 {
			t.Errorf("%v: %d of %d groups fly the changed rocket first", c, changedFirst, groups)
		}
		sum := 0.0
		for _, n := range entrytest.Column(t, r, "flights") {
			sum += n
		}
		if int(sum) != 2*groups {
			t.Errorf("%v: the rounds hold %v flights", c, sum)
		}
	}
}

// Nine groups in three teams are three rounds of six flights: of that the lesson's
// minutes are made.
func TestRoundsOfTheDemo(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-list", "2027-04-28", "class.pupils=27", "class.group_size=3")
	for name, want := range map[string]float64{"groups": 9, "flights": 18, "rounds": 3, "most": 6} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}
