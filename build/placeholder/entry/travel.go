package entry

import (
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// Craft names what travels.
const Craft form.Key[string] = "craft"

// CraftArgument is the argument of what tells how long a journey takes.
func CraftArgument() form.Field {
	var names []string
	for _, c := range strip.Crafts() {
		names = append(names, c.Name)
	}
	return form.Field{Key: Craft, Choices: names, Default: names[0], Doc: "What the years of travel are for."}
}

// CraftOf returns the craft that the argument names.
func CraftOf(v form.Values) strip.Craft {
	crafts := strip.Crafts()
	return crafts[slices.IndexFunc(crafts, func(c strip.Craft) bool { return c.Name == Craft.Of(v) })]
}

// CraftWord is the name of a craft.
func CraftWord(c strip.Craft) say.Value {
	return map[string]say.Value{
		"voyager_1": say.Words("craft.voyager_1"), "voyager_2": say.Words("craft.voyager_2"),
		"new_horizons": say.Words("craft.new_horizons"), "parker": say.Words("craft.parker"), "airliner": say.Words("craft.airliner"),
	}[c.Name]
}

// SecondsOf is a stretch of time, held at three centuries, the most that a
// duration reaches.
func SecondsOf(seconds float64) time.Duration {
	return time.Duration(math.Min(seconds, 9e9) * float64(time.Second))
}

// Years is a number of years with two digits that count.
func Years(x float64) say.Value {
	decimals := 0
	if x < 10 {
		decimals = 1
	}
	if x < 1 {
		decimals = 2
	}
	return say.Number(x, "years", decimals)
}

// LightWay is how long light takes, in years where that is easier to think of.
func LightWay(way quantity.Length) say.Value {
	if ly := float64(way / strip.LightYear); ly >= 0.05 {
		return say.Number(ly*365.25*86400, "s", 0).As("strip-table.ground", Years(ly))
	}
	d := strip.LightTime(way)
	switch {
	case d < time.Hour:
		return say.Seconds(d)
	case d > 48*time.Hour:
		return say.Number(d.Seconds(), "s", 0).As("strip-table.ground", say.Number(d.Hours()/24, "days", 0))
	}
	return say.Minutes(d)
}
