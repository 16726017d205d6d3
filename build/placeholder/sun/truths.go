package sun

import (
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// overhead is how near the zenith the Sun counts as overhead: a stick of one metre then
// throws a shadow of less than 2 cm.
var overhead = quantity.Degrees(1)

func dayTruths() []entry.Fact {
	return []entry.Fact{
		entry.Truth("rises_and_sets", "whether the Sun rises and sets on the day"),
		entry.Truth("stays_up", "whether it stays up all day"),
		entry.Truth("stays_down", "whether it stays down all day"),
		entry.Truth("north_noon", "whether it stands to the north at its noon"),
		entry.Truth("overhead", "whether it stands overhead at its noon, to a degree"),
	}
}

// dayIsTrue says of the Sun's noon what can be seen: a Sun that is down then stands
// nowhere, and at a pole every direction is the other one.
func dayIsTrue(p place.Place, date place.Date, day almanac.Day) []result.Fact {
	noon := almanac.SunFrom(p, entry.NoonOr(p, date))
	zenith := quantity.Turn/4 - entry.AsSeen(noon.Altitude)
	up := zenith <= quantity.Turn/4
	return []result.Fact{
		entry.True("rises_and_sets", len(day.Rises) > 0 && len(day.Sets) > 0),
		entry.True("stays_up", day.State == almanac.UpAllDay),
		entry.True("stays_down", day.State == almanac.DownAllDay),
		entry.True("north_noon", up && noon.Azimuth.Cos() > 0),
		entry.True("overhead", zenith <= overhead),
	}
}
