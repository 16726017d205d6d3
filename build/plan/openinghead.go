package plan

import (
	"html/template"

	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/build/way"
)

// openingHead is the head of a part: its name on the ground and the Sun's way over the day
// above it, with the Sun where the part is in that day.
func (d *draft) openingHead(part string) string {
	words := d.plan.words
	return `<header class="opening-head">` + string(words.AppendDrawing(nil, way.Day(hourOf(part)))) +
		`<h2 id="nb-` + part + `">` + template.HTMLEscapeString(words.Say(d.plan.openingKey("", part))) + `</h2></header>`
}

// openingHour says beside a part when it is read, and to staff that the class reads it; the
// class has the hour of the lesson above.
func (r *lessonRenderer) openingHour(n *source.Opening, named bool) string {
	words, l := r.draft.plan.words, r.draft.plan.unit.Lessons[r.lesson]
	said := ""
	switch {
	case !named:
	case n.Part == source.Teach && l.Number > 0 && r.edition == Class:
	case n.Part == source.Teach && l.Number > 0:
		said = "<p>" + r.draft.mark(lessonHours(l.Number-1)) + "</p>"
	default:
		said = "<p>" + template.HTMLEscapeString(words.Say(r.draft.plan.openingKey("hour", n.Part))) + "</p>"
	}
	if n.Reader == source.ForClass && r.edition == Staff {
		said += "<p>" + template.HTMLEscapeString(words.Say("opening.for_class")) + "</p>"
	}
	if said == "" {
		return ""
	}
	return `<aside class="beside">` + said + "</aside>"
}

// openingKey is the key of what a part is called, or of when it is read: the class has
// words of its own.
func (p *Plan) openingKey(kind, part string) string {
	key := "opening."
	if p.edition == Class {
		key += "class_"
	}
	if kind != "" {
		key += kind + "_"
	}
	return key + part
}

// hourOf is where a part is in the day, from sunrise, 0, to sunset: coming up, in the
// morning, in the afternoon, going down.
func hourOf(part string) float64 {
	return map[string]float64{source.Prepare: .04, source.Teach: .36, source.Understand: .68, source.After: .95}[part]
}

// lessonHours is the mark of when a lesson begins and ends.
func lessonHours(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		held := s.calendar.Held[lesson]
		midnight := held.Date.UTC()
		return typeset.AppendText(dst, s.words.Say("page.minutes", say.Clock(midnight.Add(held.From)), say.Clock(midnight.Add(held.To))))
	}
}
