package plan

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/quantity"
)

// lowSun is the altitude below which a dial lesson has no useful shadow:
// houses and trees stand higher, common practice, no source.
var lowSun = quantity.Degrees(10)

// weather warns where a lesson needs something of the sky that its date and
// time do not give.
func (p *Plan) weather(problems *problem.List, l *source.Lesson, h classroom.Held, settings form.Values) {
	school := placeholder.Place(settings)
	if school.Zone == nil {
		return
	}
	from := school.Clock(h.Date, int(h.From.Hours()), int(h.From.Minutes())%60)
	to := from.Add(h.To - h.From)
	for _, need := range l.Block.Texts("needs") {
		for t := from; !t.After(to); t = t.Add(5 * time.Minute) {
			altitude := almanac.SunFrom(school, t).Altitude
			if need == "sun" && altitude < lowSun {
				problems.Warn(l.Place("needs"), "lesson: it needs the Sun, which stands at %.0f° at %s on %s; 10° clears most roofs", altitude.Degrees(), t.Format("15:04"), h.Date)
				break
			}
			if need == "dark" && altitude > almanac.CivilTwilight {
				problems.Warn(l.Place("needs"), "lesson: it needs darkness, and at %s on %s the Sun stands at %.0f°", t.Format("15:04"), h.Date, altitude.Degrees())
				break
			}
		}
	}
}
