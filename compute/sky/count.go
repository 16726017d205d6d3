package sky

import (
	"cmp"
	"slices"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// Stars returns the stars of the figure, each once, brightest first.
func (f Figure) Stars() []Star {
	var list []Star
	for _, path := range f.Paths {
		for _, s := range path {
			if !slices.ContainsFunc(list, func(t Star) bool { return t.Rank == s.Rank }) {
				list = append(list, s)
			}
		}
	}
	slices.SortFunc(list, func(a, b Star) int { return cmp.Compare(a.Rank, b.Rank) })
	return list
}

// What a figure must give to be looked for, and to be counted in. Common practice, no source.
const (
	findHeight  = 15 * quantity.Turn / 360 // its lowest star, as seen: above houses and haze
	countHeight = 25 * quantity.Turn / 360 // above that the air takes less than 0.4 magnitudes more than overhead (0.28 a thickness of air, as much as 2.4 of them at 25°)
	countReach  = 22 * quantity.Turn / 360 // from its middle: it is seen at one glance
	countStars  = 6
	countBright = 2.2 // magnitude of its brightest star: it is found
	countFaint  = 3.5 // and of its faintest: it tells a dark sky from a bright one
)

// ToFind returns the figures that are easiest to find over a place, at most so many: all of
// each stands high enough, those with the brightest three stars first.
func ToFind(d Dome, most int) []Figure {
	third := func(f Figure) float64 {
		stars := f.Stars()
		return stars[min(2, len(stars)-1)].Magnitude
	}
	list := standing(d, findHeight)
	list = slices.DeleteFunc(list, func(f Figure) bool { return len(f.Stars()) < 3 })
	slices.SortStableFunc(list, func(a, b Figure) int { return cmp.Compare(third(a), third(b)) })
	return list[:min(most, len(list))]
}

// A Glare is what hides or confuses the stars near to it, as the Moon and planets do.
type Glare struct {
	At     almanac.Horizontal
	Within quantity.Angle // of the middle of a figure
}

// ToCount returns the figure in which counting the stars that one sees tells best how dark
// the sky is: the one whose stars grow fainter in the smallest steps, away from the glares.
// ok is false where none stands high enough.
func ToCount(d Dome, glares ...Glare) (best Figure, ok bool) {
	least := 0.0
	for _, f := range standing(d, countHeight) {
		stars := f.Stars()
		first, last := stars[0], stars[len(stars)-1]
		if len(stars) < countStars || first.Magnitude > countBright || last.Magnitude < countFaint || !f.within(countReach) {
			continue
		}
		if middle := d.At(f.centre); slices.ContainsFunc(glares, func(g Glare) bool { return between(middle, g.At) < g.Within }) {
			continue
		}
		step := 0.0
		for i := 1; i < len(stars); i++ {
			step = max(step, stars[i].Magnitude-stars[i-1].Magnitude)
		}
		if !ok || step < least {
			best, least, ok = f, step, true
		}
	}
	return best, ok
}

// between is the angle between two places in the sky.
func between(a, b almanac.Horizontal) quantity.Angle {
	return quantity.Acos(space.At(a.Azimuth, a.Altitude, 1).Dot(space.At(b.Azimuth, b.Altitude, 1)))
}

// standing are the figures whose stars are all at a height or higher, as seen.
func standing(d Dome, height quantity.Angle) []Figure {
	var list []Figure
	for _, f := range Figures() {
		if !slices.ContainsFunc(f.Stars(), func(s Star) bool { return Seen(d.Star(s)).Altitude < height }) {
			list = append(list, f)
		}
	}
	return list
}

// within reports whether all stars of the figure are that near to its middle.
func (f Figure) within(reach quantity.Angle) bool {
	middle := f.centre.vector()
	return !slices.ContainsFunc(f.Stars(), func(s Star) bool { return s.place.Dot(middle) < reach.Cos() })
}
