package rocket

import (
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/rocket"
)

// What the wind moves: the words are those of the published scale for use on land.
const sourceWind = "What the wind moves: Beaufort scale of wind, WMO, Manual on Codes (WMO-No. 306)"

// signOf is what one sees at a force. field.wind_m_s ends at 15 m/s, so force 7 is the
// last that is asked for.
func signOf(f rocket.Force) say.Value {
	return say.Words([...]string{
		"rocket-zone.force_0", "rocket-zone.force_1", "rocket-zone.force_2", "rocket-zone.force_3",
		"rocket-zone.force_4", "rocket-zone.force_5", "rocket-zone.force_6", "rocket-zone.force_7",
	}[f])
}

// windFacts say without an instrument when nobody launches. A force has a width: what is
// seen at the limit is seen at weaker and stronger winds too, so the class waits from the
// first sign on that may mean more than the limit.
func windFacts(limit rocket.Speed) []result.Fact {
	f := rocket.TooStrong(limit)
	return []result.Fact{
		{Name: "wind_good", Value: signOf(f - 1)},
		{Name: "wind_sign", Value: signOf(f)},
		{Name: "wind_force", Value: say.Count(int(f))},
	}
}

// windNote tells the two signs.
func windNote(limit rocket.Speed) say.Phrase {
	f := rocket.TooStrong(limit)
	return say.Line("rocket-zone.note_wind", signOf(f-1), signOf(f), say.Count(int(f)), speedOf(f.From()))
}
