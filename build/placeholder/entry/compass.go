package entry

import (
	"noonbook/build/say"
	"noonbook/compute/compass"
)

// CompassWarnings says where a magnetic field model should not be trusted.
func CompassWarnings(f compass.Field) []say.Phrase {
	var warnings []say.Phrase
	if f.OutsideModel {
		warnings = append(warnings, say.Line("place-facts.outside_model"))
	}
	switch f.Trust {
	case compass.Blackout:
		warnings = append(warnings, say.Line("place-facts.no_compass"))
	case compass.Caution:
		warnings = append(warnings, say.Line("place-facts.weak_compass"))
	}
	return warnings
}
