package maps

import (
	"strings"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
)

// walk leads through the map, features first, then landing sites.
func (m *marsPicture) walk(known entry.KnownWay) result.Walk {
	walk := result.Walk{Drawing: "mars-map"}
	for _, s := range globe.Spots(globe.Mars) {
		walk.Stops = append(walk.Stops, spotStop(s, clear(walk.Stops, m.at(s.At)), max(2, min(10, m.reach(s))), marsCard(s, known)...))
	}
	return walk
}

// marsCard are the lines of a card beyond what every spot has.
func marsCard(s globe.Spot, known entry.KnownWay) []say.Phrase {
	if s.Kind == globe.Site {
		lines := []say.Phrase{say.Line("mars-map.card_from", marsSender(s))}
		if place, in := near(s); in {
			return append(lines, say.Line("mars-map.card_in", spotName(place)))
		}
		return append(lines, say.Line("mars-map.card_near", marsNear(s)))
	}
	size := say.Line("mars-map.card_walk", marsDays(way{length: s.Across}.walkDays()))
	if known.Is() {
		size = say.Line("mars-map.card_known", known.Measure(s.Across))
	}
	lines := []say.Phrase{size}
	if key := latinOf(s); key != "" {
		lines = append(lines, say.Line(key))
	}
	if key, ok := marsNames[s.Name]; ok {
		lines = append(lines, say.Line(key))
	}
	return lines
}

// latinOf is the line about the Latin word in a name; "" where there is none.
func latinOf(s globe.Spot) string {
	words := strings.Fields(s.Name)
	for _, l := range []struct{ word, key string }{
		{"Mons", "mars-latin.mons"}, {"Planitia", "mars-latin.planitia"}, {"Planum", "mars-latin.planum"}, {"Terra", "mars-latin.terra"},
		{"Vallis", "mars-latin.vallis"}, {"Valles", "mars-latin.valles"}, {"Labyrinthus", "mars-latin.labyrinthus"}, {"Vastitas", "mars-latin.vastitas"},
	} {
		for _, w := range words {
			if w == l.word {
				return l.key
			}
		}
	}
	return ""
}

// marsNames are where names come from: the Gazetteer's notes on origins, from memory; those
// that are not certain are left out.
var marsNames = map[string]string{
	"Olympus Mons":       "mars-name.olympus",
	"Valles Marineris":   "mars-name.marineris",
	"Noctis Labyrinthus": "mars-name.noctis",
	"Hellas Planitia":    "mars-name.hellas",
	"Utopia Planitia":    "mars-name.utopia",
	"Meridiani Planum":   "mars-name.meridiani",
	"Vastitas Borealis":  "mars-name.borealis",
	"Planum Boreum":      "mars-name.boreum",
	"Planum Australe":    "mars-name.australe",
	"Jezero":             "mars-name.jezero",
	"Huygens":            "mars-name.huygens",
	"Schiaparelli":       "mars-name.schiaparelli",
	"Cassini":            "mars-name.cassini",
	"Korolev":            "mars-name.korolev",
	"Kasei Valles":       "mars-name.kasei",
	"Ares Vallis":        "mars-name.ares",
	"Gale":               "mars-name.gale",
	"Gusev":              "mars-name.gusev",
}
