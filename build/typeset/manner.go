package typeset

import (
	"fmt"
	"maps"
	"strconv"
	"strings"
	"time"

	"noonbook/build/say"
)

// A Manner is how a school says times of day and dates, where its language has more
// than one way.
type Manner struct {
	TwelveHour bool // 1:20 p.m., noon and midnight, not 13:20
	MonthFirst bool // April 13, not 13 April
}

// In returns the same language in the manner of a school. French has one way of each,
// 13 h 20 and 13 avril, and keeps it. Why it has no twelve hours: the Banque de dépannage
// linguistique of the Office québécois de la langue française wants them without a.m.
// and p.m., as in « 1 h 20 de l'après-midi », which no column of a table can hold (from
// memory).
func (w *Words) In(m Manner) *Words {
	m.TwelveHour = m.TwelveHour && w.Has("twelve-hour.noon")
	return w.kindred(way{w.customary, m})
}

// lines returns those of a language as they are in the manner.
func (m Manner) lines(all map[string]line) map[string]line {
	lines := maps.Clone(all)
	for key, l := range all {
		if of, ok := strings.CutPrefix(key, "twelve-hour.instead."); ok && m.TwelveHour {
			lines[of] = l
		}
		if of, ok := strings.CutPrefix(key, "month-first.instead."); ok && m.MonthFirst {
			lines[of] = l
		}
	}
	return lines
}

// clock writes a time of day.
func (w *Words) clock(hour, minute int) string {
	switch {
	case w.manner.TwelveHour:
		return w.halfDay("", hour, minute)
	case minute == 0:
		return w.Say("format.clock_hour", say.Text(strconv.Itoa(hour)))
	}
	return w.Say("format.clock", say.Text(strconv.Itoa(hour)), twoDigits(minute))
}

// halfDay writes a time with its half of the day. The two moments that belong to neither
// half have their names. Another part of the section than "" writes it shorter.
func (w *Words) halfDay(part string, hour, minute int) string {
	half := "morning"
	switch {
	case hour%24 == 0 && minute == 0:
		return w.Say("twelve-hour.midnight")
	case hour == 12 && minute == 0:
		return w.Say("twelve-hour.noon")
	case hour >= 12:
		half = "afternoon"
	}
	return w.Say("twelve-hour."+half+part, say.Text(strconv.Itoa(ofTwelve(hour))), twoDigits(minute))
}

// ShortClock writes a time for a narrow column, without its half of the day: only where
// the same page says which it is.
func (w *Words) ShortClock(t time.Time) string {
	t = say.OnItsDay(t, time.Minute)
	if minutes := 60*t.Hour() + t.Minute(); !w.manner.TwelveHour || minutes%(12*60) == 0 {
		return w.clock(t.Hour(), t.Minute())
	}
	return w.shared(t)
}

func (w *Words) shared(t time.Time) string {
	return w.Say("twelve-hour.shared", say.Text(strconv.Itoa(ofTwelve(t.Hour()))), twoDigits(t.Minute()))
}

func ofTwelve(hour int) int { return (hour+11)%12 + 1 }

func twoDigits(minute int) say.Value { return say.Text(fmt.Sprintf("%02d", minute)) }

// wholeHour writes an hour where there is little room.
func (w *Words) wholeHour(kind say.Kind, hour int) string {
	switch {
	case w.manner.TwelveHour && kind == say.FaceHour:
		return strconv.Itoa(ofTwelve(hour))
	case w.manner.TwelveHour:
		return w.halfDay("_hour", hour, 0)
	case kind == say.AxisHour:
		return w.clock(hour%24, 0)
	}
	return strconv.Itoa(hour)
}

// before writes a time that another follows. In the same half of the day, and later, the
// other says for both which half it is.
func (w *Words) before(v, next say.Value) string {
	if !w.manner.TwelveHour || v.Kind != say.TimeOfDay || next.Kind != say.TimeOfDay || v.Phrase.Key != "" || next.Phrase.Key != "" {
		return w.Text(v)
	}
	from, to := say.OnItsDay(v.Time, time.Minute), say.OnItsDay(next.Time, time.Minute)
	minutes := func(t time.Time) int { return 60*t.Hour() + t.Minute() }
	const named = 12 * 60 // noon; midnight is 0
	if minutes(from)%named == 0 || minutes(to)%named == 0 || minutes(from)/named != minutes(to)/named || minutes(from) > minutes(to) {
		return w.Text(v)
	}
	return w.shared(from)
}

// following is a piece of text that comes after what is written already. The stop of
// "p.m." ends a sentence too, and a date that ends with its year has a comma behind the
// year in the middle of one.
func (w *Words) following(written []byte, l line, i int, with []say.Value) string {
	text := l[i].text
	if i == 0 {
		return text
	}
	if len(written) > 0 && written[len(written)-1] == '.' && strings.HasPrefix(text, ".") {
		return text[1:]
	}
	gap := l[i-1].gap
	if w.manner.MonthFirst && gap > 0 && gap <= len(with) && with[gap-1].Kind == say.CalendarDay && with[gap-1].Phrase.Key == "" && goesOn(text) {
		return "," + text
	}
	return text
}

// goesOn reports whether a text begins with another word of the same sentence.
func goesOn(text string) bool {
	return len(text) > 1 && text[0] == ' ' && 'a' <= text[1] && text[1] <= 'z'
}
