package strip

import (
	"time"

	"noonbook/compute/place"
)

// A Mission is a first of the space age, with the day on which it happened by
// Universal Time.
type Mission struct {
	Name string // a key: "sputnik_1"
	Date place.Date
}

// MissionsAsOf is the day up to which Missions is complete after its own choice.
func MissionsAsOf() place.Date { return place.Date{Year: 2024, Month: time.December, Day: 31} }

// Missions returns firsts of the space age in order, as of MissionsAsOf. Dates
// are those that the agencies publish (NASA's history timelines, NSSDCA spacecraft
// catalogue, DLR) in Universal Time; by the clock of the people concerned a date may
// be the next or the one before. Sputnik 1, Vostok 1 and 6, Mariner 2, Giotto, Voyager 2
// at Neptune, the station, Cassini, Dawn, New Horizons, Ingenuity, DART and Chang'e 6
// are from memory.
func Missions() []Mission {
	list := []struct {
		name    string
		y, m, d int
	}{
		{"sputnik_1", 1957, 10, 4},
		{"luna_2", 1959, 9, 13},
		{"vostok_1", 1961, 4, 12},
		{"mariner_2", 1962, 12, 14},
		{"vostok_6", 1963, 6, 16},
		{"mariner_4", 1965, 7, 15},
		{"apollo_11", 1969, 7, 20},
		{"venera_7", 1970, 12, 15},
		{"pioneer_10", 1973, 12, 4},
		{"mariner_10", 1974, 3, 29},
		{"viking_1", 1976, 7, 20},
		{"pioneer_11", 1979, 9, 1},
		{"voyager_uranus", 1986, 1, 24},
		{"giotto", 1986, 3, 14},
		{"voyager_neptune", 1989, 8, 25},
		{"hubble", 1990, 4, 24},
		{"pathfinder", 1997, 7, 4},
		{"station", 2000, 11, 2},
		{"cassini", 2004, 7, 1},
		{"huygens", 2005, 1, 14},
		{"voyager_1", 2012, 8, 25},
		{"philae", 2014, 11, 12},
		{"dawn", 2015, 3, 6},
		{"new_horizons", 2015, 7, 14},
		{"ingenuity", 2021, 4, 19},
		{"webb", 2021, 12, 25},
		{"dart", 2022, 9, 26},
		{"chandrayaan_3", 2023, 8, 23},
		{"change_6", 2024, 6, 25},
	}
	missions := make([]Mission, len(list))
	for i, m := range list {
		missions[i] = Mission{m.name, place.Date{Year: m.y, Month: time.Month(m.m), Day: m.d}}
	}
	return missions
}

// An Era is a strip of years: seam 0 is the first of January of its first year.
type Era struct {
	First, Last   int     // calendar years, the last one included
	YearsASquare  float64 // 1, 2, 5, 10 and so on
	SquaresNeeded float64
}

// SpaceAge returns the years from 1957 to the last one on a strip, at the
// largest round scale that fits: 1 year a square or 2, 5, 10, …; never more than
// one square a year, which children count best. It is false for a year before
// 1957.
func (s Strip) SpaceAge(last int) (Era, bool) {
	const first = 1957
	if last < first || s.Squares <= 0 {
		return Era{}, false
	}
	years := float64(last - first + 1)
	scale := 1.0
	for i := 0; years/scale > float64(s.Squares); i++ {
		scale *= [...]float64{2, 2.5, 2}[i%3]
	}
	return Era{first, last, scale, years / scale}, true
}

// Squares returns how many squares from the era's beginning a date lies.
func (e Era) Squares(d place.Date) float64 {
	start := place.Date{Year: d.Year, Month: time.January, Day: 1}
	length := start.DaysUntil(place.Date{Year: d.Year + 1, Month: time.January, Day: 1})
	part := float64(start.DaysUntil(d)) / float64(length)
	return (float64(d.Year-e.First) + part) / e.YearsASquare
}
