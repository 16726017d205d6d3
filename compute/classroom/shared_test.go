package classroom

import "testing"

// Things that several share, counted by hand.
func TestSharedThings(t *testing.T) {
	for _, c := range []struct {
		name         string
		thing        Thing
		pupils, size int
		want         int
	}{
		{"one for three groups, nine groups", Thing{Count: 1, Share: PerGroup, Shared: 3}, 27, 3, 3},
		{"one for three groups, ten groups", Thing{Count: 1, Share: PerGroup, Shared: 3}, 30, 3, 4},
		{"and one spare", Thing{Count: 1, Share: PerGroup, Shared: 3, Spare: 1}, 30, 3, 5},
		{"two for three groups, ten groups", Thing{Count: 2, Share: PerGroup, Shared: 3}, 30, 3, 8},
		{"half a sheet for two groups, ten groups", Thing{Count: 0.5, Share: PerGroup, Shared: 2}, 30, 3, 3},
		{"one for four pupils, 27", Thing{Count: 1, Share: PerPupil, Shared: 4}, 27, 3, 7},
		{"one for more groups than there are", Thing{Count: 1, Share: PerGroup, Shared: 20}, 27, 3, 1},
		{"nobody there", Thing{Count: 1, Share: PerGroup, Shared: 3, Spare: 2}, 0, 3, 0},
		{"not shared", Thing{Count: 1, Share: PerGroup, Shared: 1}, 27, 3, 9},
	} {
		if got := c.thing.Need(c.pupils, Groups(c.pupils, c.size)); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}
