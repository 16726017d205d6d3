package entry

import (
	"slices"
	"strings"

	"noonbook/build/say"
	"noonbook/compute/classroom"
)

// The names of cautions. Placeholders whose work can hurt give them, and a lesson's own
// caution block can name the one that it replaces, or print it by its name alone. Their
// words are at caution.NAME of the words files; some have a line for paper that leaves
// the room at caution-line.NAME.
const (
	CareSun             = "sun"
	CareHourKeepers     = "hour-keepers"
	CareScissors        = "scissors"
	CareTip             = "tip"
	CarePegs            = "pegs"
	CarePaperOnFloor    = "paper-on-floor"
	CareSmallParts      = "small-parts"
	CareLenses          = "lenses"
	CareTelescope       = "telescope"
	CareSaw             = "saw"
	CareBottleHole      = "bottle-hole"
	CareWetFloor        = "wet-floor"
	CareSand            = "sand"
	CareMoonByDay       = "moon-by-day"
	CareAtHome          = "at-home"
	CareEvening         = "evening"
	CareEveningAtSchool = "evening-at-school"
	CarePlanets         = "planets"
	CareEclipse         = "eclipse"
	CareViewers         = "viewers"
	CareMoonEclipse     = "moon-eclipse"
	CareLamp            = "lamp"
	CareDarkRoom        = "dark-room"
	CareLauncher        = "launcher"
	CareClearZone       = "clear-zone"
	CarePaperRocket     = "paper-rocket"
	CareSighting        = "sighting"
	CareFamilySun       = "family-sun"
	CareFamilyOutside   = "family-outside"
	CareFamilyEvening   = "family-evening"
)

// Cautions returns the names, in the order in which they are listed to authors.
func Cautions() []string {
	return []string{
		CareSun, CareHourKeepers, CareScissors, CareTip, CarePegs, CarePaperOnFloor, CareSmallParts,
		CareLenses, CareTelescope, CareSaw,
		CareBottleHole, CareWetFloor, CareSand,
		CareMoonByDay, CareAtHome, CareEvening, CareEveningAtSchool, CarePlanets, CareEclipse, CareViewers, CareMoonEclipse,
		CareLamp, CareDarkRoom,
		CareLauncher, CareClearZone, CarePaperRocket, CareSighting,
		CareFamilySun, CareFamilyOutside, CareFamilyEvening,
	}
}

const cautionKey = "caution."

// Caution returns the caution of that name; with fills its gaps, where it has numbers of
// the school.
func Caution(name string, with ...say.Value) say.Phrase {
	if name == CareMoonByDay {
		with = []say.Value{say.Degrees(classroom.MoonClear, 0)}
	}
	return say.Line(cautionKey+name, with...)
}

// CautionsOf returns cautions that have no numbers of the school.
func CautionsOf(names ...string) []say.Phrase {
	list := make([]say.Phrase, len(names))
	for i, name := range names {
		list[i] = Caution(name)
	}
	return list
}

// CautionName returns the name of a caution.
func CautionName(p say.Phrase) string { return strings.TrimPrefix(p.Key, cautionKey) }

// PaperLine returns the key of a caution's line for paper.
func PaperLine(name string) string { return "caution-line." + name }

// NeedsSchool reports whether a caution has numbers that only a placeholder knows.
func NeedsSchool(name string) bool { return slices.Contains([]string{CareClearZone}, name) }
