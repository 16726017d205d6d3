package class

import (
	"math"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/compute/compass"
	"noonbook/compute/place"
)

// What is true at some places only. The limits are latitudes in degrees, either side of
// the equator.
const (
	// obliquity is the tilt of the Earth's axis, 23°26′ (IAU 2006: 84381.406″ less 46.8″ a
	// century, 23.436° in 2027). To there the Sun can stand overhead, and seasons of warm
	// and cold begin there; as far from a pole it can stay up for a day.
	obliquity = 23.44
	// flat is where the shadow of a level dial is hard to read, because its gnomon lies
	// almost flat: common practice, no source.
	flat = 15
)

func placeTruths() []entry.Fact {
	return []entry.Fact{
		entry.Truth("south", "whether the school is south of the equator"),
		entry.Truth("north", "whether the school is north of the equator"),
		entry.Truth("tropics", "whether it is within the tropics, where the Sun can stand overhead"),
		entry.Truth("polar", "whether it is beyond a polar circle, where the Sun can stay up or down all day"),
		entry.Truth("warm_and_cold", "whether its seasons are of warm and cold, as they are outside the tropics"),
		entry.Truth("near_equator", "whether it is so near the equator, within 15°, that the gnomon of a level dial lies almost flat"),
		entry.Truth("saving", "whether its clocks change within a year after the date"),
		entry.Truth("compass_works", "whether a compass is to be trusted there, as the World Magnetic Model judges"),
	}
}

func placeIsTrue(p place.Place, midday time.Time, field compass.Field) []result.Fact {
	latitude := p.Latitude.Degrees()
	away := math.Abs(latitude)
	change, _, changes := p.NextChange(midday)
	return []result.Fact{
		entry.True("south", latitude < 0),
		entry.True("north", latitude > 0),
		entry.True("tropics", away <= obliquity),
		entry.True("polar", away > 90-obliquity),
		entry.True("warm_and_cold", away > obliquity),
		entry.True("near_equator", away < flat),
		entry.True("saving", changes && change.Before(midday.AddDate(1, 0, 0))),
		entry.True("compass_works", field.Trust == compass.Reliable),
	}
}
