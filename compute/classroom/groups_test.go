package classroom_test

import (
	"slices"
	"testing"
	"testing/quick"

	"noonbook/compute/classroom"
)

func TestGroups(t *testing.T) {
	for _, c := range []struct {
		name         string
		pupils, size int
		want         []int
	}{
		{"even", 27, 3, []int{3, 3, 3, 3, 3, 3, 3, 3, 3}},
		{"one over", 28, 3, []int{4, 3, 3, 3, 3, 3, 3, 3, 3}},
		{"one short", 26, 3, []int{3, 3, 3, 3, 3, 3, 3, 3, 2}},
		{"fewer than a group", 2, 5, []int{2}},
		{"empty class", 0, 3, nil},
		{"no size", 12, 0, nil},
	} {
		if got := classroom.Groups(c.pupils, c.size); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Whatever the class, everyone is in a group and no two groups differ by more
// than one.
func TestGroupsHoldEveryone(t *testing.T) {
	holds := func(pupils, size uint8) bool {
		total, least, most := 0, 1<<30, 0
		for _, n := range classroom.Groups(int(pupils), int(size)) {
			total, least, most = total+n, min(least, n), max(most, n)
		}
		return size == 0 || pupils == 0 || total == int(pupils) && most-least <= 1 && least > 0
	}
	if err := quick.Check(holds, nil); err != nil {
		t.Error(err)
	}
}

func TestTotal(t *testing.T) {
	groups := classroom.Groups(28, 3)
	for _, c := range []struct {
		name   string
		count  float64
		share  classroom.Share
		spare  int
		pupils int
		groups []int
		want   int
	}{
		{"a group", 2, classroom.PerGroup, 1, 28, groups, 19},
		{"a pupil", 1, classroom.PerPupil, 2, 28, groups, 30},
		{"half a sheet", 0.5, classroom.PerPupil, 0, 27, groups, 14},
		{"the class", 1, classroom.PerClass, 0, 28, groups, 1},
		{"empty class", 2, classroom.PerGroup, 3, 0, nil, 0},
	} {
		if got := classroom.Total(c.count, c.share, c.spare, c.pupils, c.groups); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}
