package encode

import (
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"noonbook/build/say"
)

// An Event is one entry of a calendar file.
type Event struct {
	UID         string    // the same in every pressing, so that a calendar changes the entry instead of adding one
	From, To    time.Time // equal for a moment
	Summary     string
	Description string
	Tentative   bool // it may not take place, such as a reserve for rain
	Free        bool // it takes up nobody's time, such as an eclipse
}

// ICS writes a calendar (RFC 5545). Times are in UTC: a moment of the unit is
// fixed by the rules of the school's zone when the handbook is pressed, every
// calendar program shows it by its own clock, and no definition of the zone has
// to be carried along that could be wrong. The stamp, which the standard wants
// and which says when an entry was made, is given, so that a pressing is the same
// bytes each time.
func ICS(name string, stamp time.Time, events []Event) []byte {
	c := &icsWriter{}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//noonbook//unit calendar//EN")
	c.line("CALSCALE", "GREGORIAN")
	c.line("METHOD", "PUBLISH")
	c.line("X-WR-CALNAME", escapeICS(name))
	for _, e := range events {
		c.line("BEGIN", "VEVENT")
		c.line("UID", escapeICS(e.UID))
		c.line("DTSTAMP", utc(stamp))
		c.line("DTSTART", utc(e.From))
		if e.To.After(e.From) {
			c.line("DTEND", utc(e.To))
		}
		c.line("SUMMARY", escapeICS(e.Summary))
		if e.Description != "" {
			c.line("DESCRIPTION", escapeICS(e.Description))
		}
		if e.Tentative {
			c.line("STATUS", "TENTATIVE")
		} else {
			c.line("STATUS", "CONFIRMED")
		}
		if e.Free {
			c.line("TRANSP", "TRANSPARENT")
		}
		c.line("END", "VEVENT")
	}
	c.line("END", "VCALENDAR")
	return c.out
}

func utc(t time.Time) string {
	return say.OnItsDay(t, time.Minute).UTC().Format("20060102T150405Z")
}

type icsWriter struct{ out []byte }

// foldAt is the number of octets that a line may have without its end, RFC 5545
// section 3.1.
const foldAt = 75

// line appends a content line, folded between characters: the rest goes on
// after a line end and a space.
func (c *icsWriter) line(name, value string) {
	text := name + ":" + value
	room := foldAt
	for len(text) > room {
		cut := room
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		c.out = append(c.out, text[:cut]...)
		c.out = append(c.out, "\r\n "...)
		text, room = text[cut:], foldAt-1
	}
	c.out = append(c.out, text...)
	c.out = append(c.out, "\r\n"...)
}

// escapeICS writes a text value, RFC 5545 section 3.3.11. Control characters
// other than the line end have no place in one.
func escapeICS(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = oneLineEnd.Replace(s)
	s = strings.Map(func(r rune) rune {
		if r != '\n' && r != '\t' && unicode.IsControl(r) {
			return -1
		}
		return r
	}, s)
	return escapes.Replace(s)
}

var (
	oneLineEnd = strings.NewReplacer("\r\n", "\n", "\r", "\n")
	escapes    = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`)
)
