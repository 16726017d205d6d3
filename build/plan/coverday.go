package plan

import (
	"fmt"
	"strings"
	"time"

	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// What the cover says of the day of a lesson. Its script reads the times, so they stand
// in the page for it too, as the school's clock shows them and without a zone.

// weekday is the day of a lesson, "Wednesday 28 April".
func weekday(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		return typeset.AppendText(dst, s.words.Weekday(s.calendar.Held[lesson].Date.UTC()))
	}
}

// hours says from when to when a lesson is held, each of its visits.
func hours(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		h := s.calendar.Held[lesson]
		return s.appendSpans(dst, h.Slot, h.More)
	}
}

// reserve is a paragraph that names the time kept for a lesson in case of bad weather, or
// nothing.
func reserve(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		r := s.calendar.Held[lesson].Reserve
		if r.Kind != classroom.AtAnotherTime && r.Kind != classroom.InExchange {
			return dst
		}
		dst = append(dst, `<p class="reserve">`...)
		dst = typeset.AppendText(dst, s.words.Say("cover.reserve"))
		dst = append(dst, ` <span class="weekday">`...)
		dst = typeset.AppendText(dst, s.words.Weekday(r.Date.UTC()))
		dst = append(dst, `</span>, <span class="hours">`...)
		dst = s.appendSpans(dst, r.Slot, r.More)
		return append(dst, `</span></p>`...)
	}
}

// appendSpans writes the first visit of a lesson and those that follow on the same day.
func (s *pressing) appendSpans(dst []byte, first classroom.Slot, more []classroom.Slot) []byte {
	dst = s.appendSpan(dst, first)
	for _, visit := range more {
		dst = append(dst, ", "...)
		dst = s.appendSpan(dst, visit)
	}
	return dst
}

// appendSpan writes "9:10 to 10:00 a.m." as the school writes it, with a time element
// round each of the two.
func (s *pressing) appendSpan(dst []byte, visit classroom.Slot) []byte {
	midnight := visit.Date.UTC()
	from, to := midnight.Add(visit.From), midnight.Add(visit.To)
	text := s.words.Say("cover.hours", say.Clock(from), say.Clock(to))
	// The first time may be written without its half of the day, which the other names.
	early, late := s.words.Text(say.Clock(from)), s.words.Text(say.Clock(to))
	if !strings.Contains(text, early) {
		early = s.words.ShortClock(from)
	}
	before, rest, _ := strings.Cut(text, early)
	between, after, _ := strings.Cut(rest, late)
	dst = typeset.AppendText(dst, before)
	dst = appendTime(dst, from, early)
	dst = typeset.AppendText(dst, between)
	dst = appendTime(dst, to, late)
	return typeset.AppendText(dst, after)
}

func appendTime(dst []byte, at time.Time, text string) []byte {
	dst = fmt.Appendf(dst, `<time datetime="%s">`, at.Format("2006-01-02T15:04"))
	dst = typeset.AppendText(dst, text)
	return append(dst, "</time>"...)
}
