package maps

import (
	"strings"

	"noonbook/build/say"
	"noonbook/compute/globe"
)

const sourceMeanings = "What the names mean: origins given in the Gazetteer of Planetary Nomenclature, from memory"

// moonMeaning is what the name of a feature means, or whom it remembers.
func moonMeaning(s globe.Spot) say.Value {
	return say.Words("moon-name." + strings.ReplaceAll(spotKey(s), "-", "_"))
}

// sender is the country that sent a lander: common knowledge, from memory.
func sender(s globe.Spot) say.Value {
	for beginning, country := range map[string]string{
		"Apollo": "moon-map.us", "Surveyor": "moon-map.us", "Luna": "moon-map.ussr",
		"Chang'e": "moon-map.china", "Chandrayaan": "moon-map.india", "SLIM": "moon-map.japan",
	} {
		if strings.HasPrefix(s.Name, beginning) {
			return say.Words(country)
		}
	}
	return say.None("sky.dash")
}
