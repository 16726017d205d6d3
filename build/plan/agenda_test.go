package plan

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// An event of the calendar file.
func eventsOf(ics string) []map[string]string {
	var events []map[string]string
	for text := range strings.SplitSeq(strings.ReplaceAll(ics, "\r\n ", ""), "\r\n") {
		key, value, _ := strings.Cut(text, ":")
		if text == "BEGIN:VEVENT" {
			events = append(events, map[string]string{})
		} else if len(events) > 0 {
			events[len(events)-1][key] = value
		}
	}
	return events
}

// The calendar file has every lesson with its reserve and the Moon's phases of the
// term; names of events are the same in each pressing, no two are alike, and those
// of another school or unit are others.
func TestAgenda(t *testing.T) {
	_, texts := smallPages(t, Class, nil)
	events := eventsOf(texts["unit.ics"])
	byName := map[string]map[string]string{}
	for _, e := range events {
		stem, _, _ := strings.Cut(e["UID"], "@")
		stem = stem[:strings.LastIndex(stem, "-")] // without the school's part
		if byName[stem] != nil {
			t.Errorf("two events are named %s", stem)
		}
		byName[stem] = e
		if e["DTSTAMP"] != "20270412T030000Z" { // the first day of the term begins, by the school's clock
			t.Errorf("%s is stamped %s", stem, e["DTSTAMP"])
		}
	}
	for name, want := range map[string]map[string]string{
		"lesson-alpha":   {"SUMMARY": "Lesson 1: Alpha", "DESCRIPTION": "The first.", "DTSTART": "20270412T121000Z", "DTEND": "20270412T130000Z", "STATUS": "CONFIRMED", "TRANSP": ""},
		"reserve-alpha":  {"SUMMARY": "In reserve: Lesson 1: Alpha", "DESCRIPTION": "If the weather spoils its own time\\, it changes places with Gamma.", "DTSTART": "20270415T121000Z", "STATUS": "TENTATIVE"},
		"lesson-beta":    {"SUMMARY": "Lesson 2: Beta", "DTSTART": "20270413T121000Z", "STATUS": "CONFIRMED"},
		"reserve-beta":   {"DESCRIPTION": "Kept for the lesson in case of bad weather.", "DTSTART": "20270414T121000Z", "DTEND": "20270414T130000Z", "STATUS": "TENTATIVE"},
		"lesson-gamma":   {"DTSTART": "20270415T121000Z", "DTEND": "20270415T124500Z", "STATUS": "CONFIRMED"},
		"2-lesson-gamma": {"DTSTART": "20270415T143000Z", "DTEND": "20270415T150500Z"},
	} {
		for key, value := range want {
			if got := byName[name][key]; got != value {
				t.Errorf("%s: %s is %q, want %q", name, key, got, value)
			}
		}
	}
	if byName["reserve-gamma"] != nil {
		t.Error("a lesson that no weather spoils has a reserve")
	}
	// First quarter 13 April 22:57 UTC, full Moon 20 April 22:27 UTC: testdata/reference/phases.csv.
	moons := 0
	for name, e := range byName {
		if strings.HasPrefix(name, "sky-") {
			if e["TRANSP"] != "TRANSPARENT" || e["DTEND"] != "" {
				t.Errorf("%s takes up time: %v", name, e)
			}
			if !strings.HasPrefix(name, "sky-"+e["DTSTART"][:8]) {
				t.Errorf("%s is on %s", name, e["DTSTART"])
			}
			if strings.Contains(strings.ToLower(e["SUMMARY"]), "moon") || strings.Contains(strings.ToLower(e["SUMMARY"]), "quarter") {
				moons++
			}
			if c := e["SUMMARY"][:1]; c != strings.ToUpper(c) {
				t.Errorf("%s begins with a small letter: %s", name, e["SUMMARY"])
			}
		}
	}
	if moons < 2 {
		t.Errorf("there are %d events of the Moon in %v", moons, byName)
	}
	ids := func(over form.Values) []string {
		_, texts := smallPages(t, Staff, over)
		var list []string
		for _, e := range eventsOf(texts["unit.ics"]) {
			list = append(list, e["UID"])
		}
		return list
	}
	same := ids(nil)
	for i, e := range events {
		if same[i] != e["UID"] {
			t.Errorf("%s is called %s in another pressing", e["UID"], same[i])
		}
	}
	for _, over := range []form.Values{{"school.name": "Oak School"}, {"unit.title": "Another"}} {
		for _, id := range ids(over) {
			if slices.Contains(same, id) {
				t.Errorf("%v: two schools share the event %s", over, id)
			}
		}
	}
}

// An eclipse of the Sun stands in the calendar file with its caution, and nothing
// else there has it. On 12 August 2026 a part of the Sun is covered at the school,
// most at 17:55:52 UTC: testdata/reference/local-eclipses.csv, swisseph.
func TestAgendaCautionsOfTheSun(t *testing.T) {
	_, texts := smallPages(t, Class, form.Values{"term.first_day": place.Date{Year: 2026, Month: 8, Day: 10}, "term.last_day": place.Date{Year: 2026, Month: 8, Day: 31}})
	eclipses, others := 0, 0
	for _, e := range eventsOf(texts["unit.ics"]) {
		cautioned := strings.Contains(strings.ToLower(e["DESCRIPTION"]), "never look at the sun")
		if strings.HasPrefix(e["DTSTART"], "20260812T175") {
			eclipses++
			if !cautioned {
				t.Errorf("the eclipse says only %q", e["DESCRIPTION"])
			}
		} else if others++; cautioned {
			t.Errorf("%s on %s has the caution of an eclipse of the Sun", e["SUMMARY"], e["DTSTART"])
		}
	}
	if eclipses != 1 || others < 5 {
		t.Errorf("%d eclipses and %d other events", eclipses, others)
	}
}
