package maps

import (
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
)

// walk leads through what shows of the map, features first, then landing sites.
func (m *moonPicture) walk(known entry.KnownWay) result.Walk {
	walk := result.Walk{Drawing: "moon-map"}
	for _, s := range globe.Spots(globe.Moon) {
		at, shows := m.at(s.At)
		if !shows {
			continue
		}
		var more []say.Phrase
		if s.Kind == globe.Site {
			more = append(more, say.Line("moon-map.card_from", sender(s)))
		} else {
			more = append(more, say.Line("moon-map.card_name", moonMeaning(s)))
			more = append(more, beside(s, known)...)
		}
		walk.Stops = append(walk.Stops, spotStop(s, clear(walk.Stops, at), max(2, min(10, m.reach(s))), more...))
	}
	return walk
}

// beside says a feature's size by the way that the class knows. Where the school names
// none, it compares what is as wide as it is long with Tycho.
func beside(s globe.Spot, known entry.KnownWay) []say.Phrase {
	if known.Is() {
		return []say.Phrase{say.Line("moon-map.card_known", known.Measure(s.Across))}
	}
	if isLong(s) {
		return nil
	}
	tycho, _ := globe.Find(globe.Moon, "Tycho")
	switch times := float64(s.Across / tycho.Across); {
	case s.Name == tycho.Name || times < 0.9:
		return nil
	case times < 1.3:
		return []say.Phrase{say.Line("moon-map.card_same")}
	default:
		decimals := 0
		if times < 3 {
			decimals = 1
		}
		return []say.Phrase{say.Line("moon-map.card_times", say.Number(times, "", decimals))}
	}
}
