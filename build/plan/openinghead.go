package plan

import (
	"html/template"
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// The measures of the arc over the name of a part, in millimetres.
const (
	dayWidth  = 60.0
	dayHeight = 12.0
	daySun    = 2.2 // radius
)

// openingHead is the head of a part: its name on the ground and the Sun's way over the day
// above it, with the Sun where the part is in that day.
func (d *draft) openingHead(part string) string {
	words := d.plan.words
	return `<header class="opening-head">` + string(words.AppendDrawing(nil, dayArc(part))) +
		`<h2 id="nb-` + part + `">` + template.HTMLEscapeString(words.Say(d.plan.openingKey("", part))) + `</h2></header>`
}

// openingHour says beside a part when it is read, and to staff that the class reads it; the
// class has the hour of the lesson above.
func (r lessonRenderer) openingHour(n *source.Opening, named bool) string {
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

// dayArc draws the Sun's way over a day with the Sun at the hour of a part: coming up,
// in the morning, in the afternoon, going down.
func dayArc(part string) drawing.Drawing {
	d := drawing.Drawing{Name: "day-arc", Width: dayWidth, Height: dayHeight, Ornament: true}
	at := func(t float64) drawing.Point {
		return drawing.Point{X: t * dayWidth, Y: dayHeight - (dayHeight-daySun-.5)*math.Sin(math.Pi*t)}
	}
	var way []drawing.Point
	for i := range 31 {
		way = append(way, at(float64(i)/30))
	}
	d.Line("sun-path", way...)
	t := map[string]float64{source.Prepare: .04, source.Teach: .36, source.Understand: .68, source.After: .95}[part]
	d.Disc("here", at(t), daySun)
	return d
}

// lessonHours is the mark of when a lesson begins and ends.
func lessonHours(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		held := s.calendar.Held[lesson]
		midnight := held.Date.UTC()
		return typeset.AppendText(dst, s.words.Say("page.minutes", say.Clock(midnight.Add(held.From)), say.Clock(midnight.Add(held.To))))
	}
}
