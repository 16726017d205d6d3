package classroom

import (
	"fmt"
	"strings"
	"testing"
)

// Counts for a class of 23 in groups of about four (six groups: five of four and
// one of three), worked out by hand.
func TestTotalOfParts(t *testing.T) {
	groups := Groups(23, 4)
	if len(groups) != 6 {
		t.Fatalf("groups are %v", groups)
	}
	for _, c := range []struct {
		name  string
		count float64
		share Share
		spare int
		want  int
	}{
		{"a tenth each is 2.3", 0.1, PerPupil, 0, 3},
		{"a fifth each is 4.6", 0.2, PerPupil, 0, 5},
		{"a half for each group is three whole ones", 0.5, PerGroup, 0, 3},
		{"a half for each group and one spare", 0.5, PerGroup, 1, 4},
		{"a quarter for each group is 1.5", 0.25, PerGroup, 2, 4},
		{"one and a half for the class", 1.5, PerClass, 0, 2},
		{"none", 0, PerPupil, 0, 0},
		{"none but spare ones", 0, PerPupil, 2, 2},
	} {
		if got := Total(c.count, c.share, c.spare, 23, groups); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
	// 0.1 × 30 is a little more than 3 in binary, and three are enough.
	if got := Total(0.1, PerPupil, 0, 30, nil); got != 3 {
		t.Errorf("a tenth for each of thirty is %d", got)
	}
}

// A list over three lessons, worked out by hand for ten pupils in groups of five.
func TestListOverTheUnit(t *testing.T) {
	lessons := []Lesson{
		{Kit: []Thing{
			{Item: "card", Count: 1, Share: PerPupil, Spare: 2, Source: ToBuy, UsedUp: true, Price: 2, Pack: 5},
			{Item: "lamp", Count: 1, Share: PerGroup},
		}},
		{},
		{Kit: []Thing{
			{Item: "lamp", Count: 3, Share: PerClass},
			{Item: "card", Count: 1, Share: PerGroup, Source: ToBuy, UsedUp: true, Price: 3, Pack: 5}, // dearer now
			{Item: "card", Count: 4, Source: FromHome, UsedUp: true},
			{Item: "lamp", Count: 1, Share: PerClass, Spare: 1},
		}},
		{Kit: []Thing{{Item: "card", Count: 1, Source: ToBuy, UsedUp: true, Price: 1, Pack: 100}}}, // and cheaper
	}
	var got []string
	for _, l := range List(lessons, 10, []int{5, 5}) {
		got = append(got, fmt.Sprintf("%s/%d: %d in %v, %d packs for %v", l.Item, l.Source, l.Need, l.Lessons, l.Packs, l.Cost))
	}
	want := []string{
		"card/1: 15 in [1 3 4], 3 packs for 9", // 12, 2 and 1 in fives at 3
		"lamp/0: 3 in [1 3], 0 packs for 0",
		"card/2: 4 in [3], 0 packs for 0",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
