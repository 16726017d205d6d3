package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// The cover: what it says, and its dial, on which the lessons stand in the order
// of the hours. Noon is up; above the equator morning is left, as the shadow of a
// morning points west, and below it right.
func TestCover(t *testing.T) {
	for _, c := range []struct {
		latitude, longitude float64
		where               string
		morning             float64 // sign of how far right of the middle the first lesson stands
	}{
		{46.09, -64.77, "46.1° north, 64.8° west", -1},
		{-45.87, 170.5, "45.9° south, 170.5° east", 1},
		{0, 0, "0.0° north, 0.0° east", -1},
		{5, -0.2, "5.0° north, 0.2° west", -1},
		{-5, 0.2, "5.0° south, 0.2° east", 1},
	} {
		pages, _ := smallPages(t, Staff, form.Values{"school.latitude": c.latitude, "school.longitude": c.longitude})
		cover := pages["index.html"]
		text := line(cover.words())
		for _, want := range []string{"Small & <whole>", "Three lessons.", "grade 5, 12 April to 23 April 2027", c.where, "Every number was worked out for"} {
			if !strings.Contains(text, want) {
				t.Errorf("the cover lacks %q", want)
			}
		}
		svg := cover.with("class", "drawing dial upright-dial")[0]
		var at []float64
		var leads, numbers []string
		for _, a := range svg.all("a") {
			var x0, y0, x1, y1 float64
			path := a.with("class", "lesson")[0].at["d"]
			if _, err := fmt.Sscanf(strings.NewReplacer("M", "", "L", " ").Replace(path), "%f %f %f %f", &x0, &y0, &x1, &y1); err != nil {
				t.Fatal(err)
			}
			if y1 >= y0 {
				t.Errorf("a line goes down: %s", path)
			}
			at = append(at, x1-90) // the middle of 180 mm
			// Three lessons stand at eight, twelve and sixteen hours, on the dial's own lines
			// where it is not too flat for them: atan(sin φ tan H), A. Waugh, Sundials (1973),
			// chapter 10 (from memory).
			hours := math.Tan(float64(len(at)-2) * 60 * math.Pi / 180)
			if slope, want := (x1-90)/(92-y1), -c.morning*math.Sin(math.Abs(c.latitude)*math.Pi/180)*hours; math.Abs(c.latitude) > 20 && math.Abs(slope-want) > 0.01 {
				t.Errorf("at %v the line of lesson %d leans by %.3f, want %.3f", c.latitude, len(at), slope, want)
			}
			leads = append(leads, a.at["href"])
			numbers = append(numbers, line(a.words()))
		}
		if strings.Join(leads, " ") != "alpha.html beta.html gamma.html" || strings.Join(numbers, " ") != "1 2 3" {
			t.Errorf("the dial leads to %v by %v", leads, numbers)
			continue
		}
		if at[0]*c.morning <= 0 || at[1] < -0.1 || at[1] > 0.1 || at[2]*c.morning >= 0 || at[0]+at[2] > 0.1 || at[0]+at[2] < -0.1 {
			t.Errorf("at %v the lessons stand %v right of noon", c.latitude, at)
		}
		var titles []string
		for _, item := range cover.with("class", "lesson-list")[0].children {
			if item.name == "li" {
				titles = append(titles, line(item.words()))
			}
		}
		if len(titles) != 3 || !strings.HasPrefix(titles[0], "1 Alpha 12 April The first.") || !strings.Contains(titles[0], "Take the day sheet") {
			t.Errorf("the lessons are %q", titles)
		}
	}
	class, _ := smallPages(t, Class, form.Values{"class.name": ""})
	if text := line(class["index.html"].words()); strings.Contains(text, "day sheet") || strings.Contains(text, ", 12 April to") {
		t.Errorf("the class's cover says %s", text)
	}
}

// Each lesson of the list says when it is held, with times for the script, and leads to
// what its day takes. Alpha is dry weather's and changes places with Gamma; Beta's kept
// time is the next; Gamma has two visits. By the lesson times of the unit, 9:10 and 11:30
// a day, from Monday 12 April.
func TestCoverSaysWhatADayTakes(t *testing.T) {
	for _, c := range []struct {
		edition Edition
		links   []string // of each lesson, the prints last
	}{
		{Staff, []string{"day-alpha.html room-alpha.html alpha.html pupil-alpha.html print-dial-face.html", "day-beta.html room-beta.html beta.html", "day-gamma.html room-gamma.html gamma.html"}},
		{Class, []string{"alpha.html pupil-alpha.html print-dial-face.html", "beta.html", "gamma.html"}},
	} {
		pages, _ := smallPages(t, c.edition, nil)
		var links, days, times, kept []string
		for _, part := range pages["index.html"].with("class", "day-part") {
			var to, at, reserve []string
			for _, a := range part.with("class", "day-links")[0].all("a") {
				to = append(to, a.at["href"])
			}
			days = append(days, line(part.find("p").words()))
			for _, e := range part.find("p").all("time") {
				at = append(at, e.at["datetime"])
			}
			for _, p := range part.with("class", "reserve") {
				for _, e := range p.all("time") {
					reserve = append(reserve, e.at["datetime"])
				}
			}
			links, times, kept = append(links, strings.Join(to, " ")), append(times, strings.Join(at, " ")), append(kept, strings.Join(reserve, " "))
		}
		for _, got := range []struct {
			what       string
			have, want []string
		}{
			{"links", links, c.links},
			{"days", days, []string{"Monday 12 April, 9:10 to 10:00", "Tuesday 13 April, 9:10 to 10:00", "Thursday 15 April, 9:10 to 9:45, 11:30 to 12:05"}},
			{"times", times, []string{"2027-04-12T09:10 2027-04-12T10:00", "2027-04-13T09:10 2027-04-13T10:00", "2027-04-15T09:10 2027-04-15T09:45 2027-04-15T11:30 2027-04-15T12:05"}},
			{"reserves", kept, []string{"2027-04-15T09:10 2027-04-15T10:00", "2027-04-14T09:10 2027-04-14T10:00", ""}},
		} {
			if !slices.Equal(got.have, got.want) {
				t.Errorf("%s of edition %v: %q, want %q", got.what, c.edition, got.have, got.want)
			}
		}
	}
}

// Times are written as the school writes them, and for the script always alike.
func TestCoverWritesTimesAsTheSchoolDoes(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	french, err := typeset.Language("fr", false)
	if err != nil {
		t.Fatal(err)
	}
	twelve := words.In(typeset.Manner{TwelveHour: true})
	date := place.Date{Year: 2027, Month: 4, Day: 28}
	span := func(from, to time.Duration) classroom.Slot {
		return classroom.Slot{Date: date, Span: classroom.Span{From: from, To: to}}
	}
	for _, c := range []struct {
		words *typeset.Words
		slot  classroom.Slot
		want  string
	}{
		{words, span(9*time.Hour+10*time.Minute, 10*time.Hour), `<time datetime="2027-04-28T09:10">9:10</time> to <time datetime="2027-04-28T10:00">10:00</time>`},
		{twelve, span(9*time.Hour+10*time.Minute, 10*time.Hour), `<time datetime="2027-04-28T09:10">9:10</time> to <time datetime="2027-04-28T10:00">10:00 a.m.</time>`},
		{twelve, span(11*time.Hour+30*time.Minute, 12*time.Hour), `<time datetime="2027-04-28T11:30">11:30 a.m.</time> to <time datetime="2027-04-28T12:00">noon</time>`},
		{twelve, span(11*time.Hour+30*time.Minute, 13*time.Hour+30*time.Minute), `<time datetime="2027-04-28T11:30">11:30 a.m.</time> to <time datetime="2027-04-28T13:30">1:30 p.m.</time>`},
		{words, span(23*time.Hour+30*time.Minute, 24*time.Hour+30*time.Minute), `<time datetime="2027-04-28T23:30">23:30</time> to <time datetime="2027-04-29T00:30">0:30</time>`},
		{french, span(9*time.Hour+10*time.Minute, 10*time.Hour), `de <time datetime="2027-04-28T09:10">9 h 10</time> à <time datetime="2027-04-28T10:00">10 h</time>`},
	} {
		s := &pressing{words: c.words}
		got := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(string(s.appendSpan(nil, c.slot)))
		if got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// The arc of the pages: the Sun stands at the page's own place, from left to right
// in the order of the unit, and the stick's shadow falls to the other side.
func TestArc(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	before := 0.0
	for _, name := range []string{"today.html", "alpha.html", "beta.html", "gamma.html"} {
		svg := pages[name].find("svg")
		var here, end float64
		for _, e := range svg.all("circle") {
			if strings.Contains(e.at["class"], "here") {
				here = number(e.at["cx"])
			}
		}
		for _, e := range svg.all("path") {
			if strings.Contains(e.at["class"], "shadow") {
				fields := strings.FieldsFunc(e.at["d"], func(r rune) bool { return strings.ContainsRune("MLH ", r) })
				end = number(fields[2])
			}
		}
		if here <= before {
			t.Errorf("on %s the Sun stands at %v, and before at %v", name, here, before)
		}
		before = here
		if (here-120)*(end-120) >= 0 { // the stick stands in the middle of 240 mm
			t.Errorf("on %s the Sun stands at %v and the shadow ends at %v", name, here, end)
		}
		stops := 0
		for _, a := range svg.all("a") {
			if a.at["href"] == name {
				t.Errorf("%s leads to itself", name)
			}
			stops++
		}
		if stops != 3 {
			t.Errorf("%s has %d other stops", name, stops)
		}
	}
}
