package class

import (
	"math"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/compass"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// needleOff is how many degrees a needle must be off true north before a class sees it on
// a dial: common practice, no source.
const needleOff = 2

func placeTruths() []entry.Fact {
	return []entry.Fact{
		entry.Truth("south", "whether the school is south of the equator"),
		entry.Truth("north", "whether the school is north of the equator"),
		entry.Truth("tropics", "whether it is within the tropics, where the Sun can stand overhead"),
		entry.Truth("polar", "whether it is beyond a polar circle, where the Sun can stay up or down all day"),
		entry.Truth("warm_and_cold", "whether its seasons are of warm and cold, as they are outside the tropics"),
		entry.Truth("saving", "whether its clocks change within a year after the date"),
		entry.Truth("compass_works", "whether a compass is to be trusted there, as the World Magnetic Model judges"),
		entry.Truth("needle_off", "whether the needle is 2° or more off true north, so that a class sees it on a dial"),
	}
}

func placeIsTrue(p place.Place, midday time.Time, field compass.Field) []result.Fact {
	tropical := entry.Tropical(p.Latitude)
	change, _, changes := p.NextChange(midday)
	return []result.Fact{
		entry.True("south", p.Latitude < 0),
		entry.True("north", p.Latitude > 0),
		entry.True("tropics", tropical),
		entry.True("polar", math.Abs(p.Latitude.Degrees()) > 90-entry.Tropic),
		entry.True("warm_and_cold", !tropical),
		entry.True("saving", changes && change.Before(midday.AddDate(1, 0, 0))),
		entry.True("compass_works", field.Trust == compass.Reliable),
		entry.True("needle_off", math.Abs(field.Declination.Degrees()) >= needleOff),
	}
}

// horizon lists the directions from left to right that a drawing of the horizon
// needs: the half toward the equator, and in the tropics, where Sun and Moon pass on
// either side, all round from north to north.
func horizon(p place.Place) say.Value {
	from, to := 45.0, 315.0 // from north-east by way of south to north-west, where a summer Sun and a winter Moon set
	switch {
	case entry.Tropical(p.Latitude):
		from, to = 0, 360
	case p.Latitude < 0:
		from, to = 225, 495
	}
	var directions []say.Value
	for bearing := from; bearing <= to; bearing += 45 {
		directions = append(directions, entry.Toward(quantity.Degrees(bearing)))
	}
	return entry.Listed(directions)
}
