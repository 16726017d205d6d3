package strip

import (
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// An Event is something in the long story, with the age that is published for
// it. Ages carry errors: the last digit, or what Error says.
type Event struct {
	Name   string  // English, lower case, a key: "first_solids"
	Years  float64 // before now
	Error  float64 // years either way; 0 where the source gives none
	Source string
}

// Beginning is the age of the solar system in years: of its first solids.
const Beginning = 4567.3e6

// Story returns the events from the first solids to the telescope, the oldest
// first. The ages of the solids, grain, rock, animals, dinosaurs, people and farming
// are those of the papers named (the chart of 2023 and later for the two bases); the
// other papers' ages are from memory. Where a beginning is disputed it is the oldest
// sign that is widely accepted. The telescope's age is that on the date, in whole
// years: every page of a handbook is given the same one, and none asks the machine's
// clock. The others are rounded by more than a school's years.
func Story(now place.Date) []Event {
	return []Event{
		{"first_solids", Beginning, 0.16e6, "Connelly et al., Science 338, 651 (2012)"},
		{"moon", 4510e6, 10e6, "Barboni et al., Science Advances 3, e1602365 (2017)"},
		{"oldest_grain", 4404e6, 8e6, "Wilde et al., Nature 409, 175 (2001)"},
		{"oldest_rock", 4031e6, 3e6, "Bowring & Williams, Contrib. Mineral. Petrol. 134, 3 (1999)"},
		{"first_fossils", 3481e6, 4e6, "Van Kranendonk et al., Precambrian Research 167, 93 (2008)"},
		{"oxygen", 2400e6, 100e6, "Lyons, Reinhard & Planavsky, Nature 506, 307 (2014)"},
		{"cells_with_kernel", 1650e6, 50e6, "Javaux & Lepot, Earth-Science Reviews 176, 68 (2018)"},
		{"many_animals", 538.8e6, 0.6e6, "International Chronostratigraphic Chart (2023): base of the Cambrian"},
		{"land_plants", 470e6, 5e6, "Rubinstein et al., New Phytologist 188, 365 (2010)"},
		{"walking_fish", 375e6, 5e6, "Daeschler, Shubin & Jenkins, Nature 440, 757 (2006)"},
		{"dinosaurs", 231.4e6, 0.3e6, "Martínez et al., Science 331, 206 (2011)"},
		{"dinosaurs_end", 66.04e6, 0.05e6, "Renne et al., Science 339, 684 (2013)"},
		{"people", 315e3, 34e3, "Richter et al., Nature 546, 293 (2017)"},
		{"farming", 11.7e3, 0.1e3, "International Chronostratigraphic Chart: base of the Holocene, about when farming began"},
		{"writing", 5.3e3, 0.2e3, "common practice: clay tablets of Uruk"},
		{"telescope", wholeYears(firstLook, now), 0, "Galilei, Sidereus Nuncius (1610): seen from late 1609"},
	}
}

// firstLook is the night of Galilei's first drawing of the Moon, from memory.
var firstLook = place.Date{Year: 1609, Month: time.November, Day: 30}

// wholeYears counts the birthdays of what began on a date.
func wholeYears(began, now place.Date) float64 {
	years := now.Year - began.Year
	if now.Before(place.Date{Year: now.Year, Month: began.Month, Day: began.Day}) {
		years--
	}
	return float64(max(0, years))
}

// A Moment is an event on a strip that runs from the beginning to now.
type Moment struct {
	Event
	Squares float64         // from the beginning
	Before  quantity.Length // from the strip's end, now
}

// Years returns how long one square lasts when the whole strip is the time from
// the beginning to now.
func (s Strip) Years() float64 { return Beginning / float64(s.Squares) }

// Moments returns the story along the strip: the first edge is the beginning,
// the last seam is now.
func (s Strip) Moments(now place.Date) []Moment {
	var moments []Moment
	for _, e := range Story(now) {
		moments = append(moments, Moment{e, (Beginning - e.Years) / s.Years(), s.Ago(e.Years)})
	}
	return moments
}

// Ago returns how far before the strip's end, now, a number of years ago lies.
func (s Strip) Ago(years float64) quantity.Length {
	return s.Length() * quantity.Length(years/Beginning)
}
