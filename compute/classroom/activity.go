package classroom

import "time"

// An Activity is what pupils do in turns at a place of which there are few, so that they
// may have to queue: a cut with the adult's knife, a flight from the launcher.
type Activity struct {
	Share  Share         // who takes turns
	Count  int           // turns that each takes
	Turn   time.Duration // how long one turn takes
	Places int           // turns that can be taken at once
}

// SharedBy returns the activity with a place for so many of those who take turns, as a
// class has a compass for three groups; at least one.
func (a Activity) SharedBy(sharing, pupils int, groups []int) Activity {
	a.Places = max(1, over(a.Share.among(pupils, groups), sharing))
	return a
}

// Turns returns how many turns the class takes: none where it has no pupils.
func (a Activity) Turns(pupils int, groups []int) int {
	return a.Count * a.Share.among(pupils, groups)
}

// Takes returns how long that many turns take, in rounds of one turn at each place. The
// last round lasts a whole turn, even if a place is left over.
func (a Activity) Takes(turns int) time.Duration {
	return time.Duration(over(turns, a.Places)) * a.Turn
}

// PlacesWithin returns how many places that many turns need to be over in time; 0 where
// one turn alone takes longer.
func (a Activity) PlacesWithin(turns int, within time.Duration) int {
	rounds := int(within / a.Turn)
	if rounds == 0 {
		return 0
	}
	return over(turns, rounds)
}

// CountWithin returns how many turns each of n may take at the places that there are; 0
// where there is no time for one.
func (a Activity) CountWithin(n int, within time.Duration) int {
	if n == 0 {
		return 0
	}
	return int(within/a.Turn) * a.Places / n
}
