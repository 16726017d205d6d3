package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"noonbook/build/encode"
	"noonbook/build/file"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/sky"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// agenda writes the calendar file: the lessons, their reserves, and what the sky
// does in the term. It says nothing that the class edition does not.
func (p *Plan) agenda(s *pressing) file.File {
	stamp, _ := school.Place(s.settings).Day(school.TermFirstDay.Of(s.settings))
	events := append(p.lessonEvents(s), p.skyEvents(s)...)
	return file.File{Name: typeset.CalendarFile, Bytes: encode.ICS(school.UnitTitle.Of(s.settings), stamp, events)}
}

// uid names an event the same way in every pressing: by what it is and by the
// school.
func (s *pressing) uid(parts ...any) string {
	sum := sha256.Sum256([]byte(school.Name.Of(s.settings) + "\n" + school.UnitTitle.Of(s.settings)))
	return strings.ToLower(strings.TrimSpace(strings.ReplaceAll(fmt.Sprintln(parts...), " ", "-"))) + "-" + hex.EncodeToString(sum[:6]) + "@noonbook"
}

func (p *Plan) lessonEvents(s *pressing) []encode.Event {
	school := school.Place(s.settings)
	var events []encode.Event
	add := func(e encode.Event, slots []classroom.Slot) {
		uid := e.UID
		e.Summary = strings.ReplaceAll(e.Summary, "\u00a0", " ") // a calendar is searched for "Lesson 1" as it is typed
		for i, slot := range slots {
			e.From, e.To = slot.Moments(school)
			if e.UID = uid; i > 0 {
				e.UID = fmt.Sprint(i+1, "-", uid)
			}
			events = append(events, e)
		}
	}
	for i, l := range p.taught() {
		h := s.calendar.Held[i]
		if !h.Placed {
			continue
		}
		title := say.Words("agenda.lesson", say.Count(i+1), say.Text(l.Title()))
		stem := strings.TrimSuffix(l.Page, ".html")
		add(encode.Event{UID: s.uid("lesson", stem), Summary: s.words.Text(title), Description: source.BlockSummary.Of(l.Block)},
			append([]classroom.Slot{h.Slot}, h.More...))
		switch r := h.Reserve; r.Kind {
		case classroom.AtAnotherTime:
			add(encode.Event{UID: s.uid("reserve", stem), Summary: s.words.Say("agenda.reserve", title), Description: s.words.Say("agenda.reserve_about"), Tentative: true},
				append([]classroom.Slot{r.Slot}, r.More...))
		case classroom.InExchange:
			other := say.Text(p.course.Lessons[r.With-1].Title)
			add(encode.Event{UID: s.uid("reserve", stem), Summary: s.words.Say("agenda.reserve", title), Description: s.words.Say("agenda.exchange", other), Tentative: true},
				append([]classroom.Slot{r.Slot}, r.More...))
		}
	}
	return events
}

func (p *Plan) skyEvents(s *pressing) []encode.Event {
	var events []encode.Event
	for _, day := range sky.SkyDays(s.settings) {
		about := s.words.Text(day.Look)
		if day.Sun {
			about += " " + s.words.Line(entry.Caution(entry.CareEclipse))
		}
		events = append(events, encode.Event{
			UID:  s.uid("sky", day.At.UTC().Format("20060102"), day.Key),
			From: day.At, To: day.At, Free: true,
			Summary:     capital(s.words.Text(day.What)),
			Description: about,
		})
	}
	return events
}

// capital begins a line with a capital letter.
func capital(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}
