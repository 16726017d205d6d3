package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
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

// The fan: however many lessons, at whatever latitude, each line stands where the dial
// has it, its leading line ends at the middle of its row, crosses no other and does not
// cut the dial. South of the equator all of it is mirrored, and morning still above.
func TestFan(t *testing.T) {
	for _, latitude := range []float64{90, 68, 46.09, 21, 0, -5, -45.87, -90} {
		for n := 1; n <= 40; n++ {
			lessons := make([]typeset.Link, n)
			for i := range lessons {
				lessons[i] = typeset.Link{Title: "A lesson", Number: strconv.Itoa(i + 1), File: fmt.Sprintf("%d.html", i+1)}
			}
			rows := rowsFor(lessons)
			d := rows.fan(quantity.Degrees(latitude), lessons)
			centre := drawing.Point{X: 32, Y: d.Height / 2} // as the style sheet's 29.5 rem have room for
			side := 1.0
			if latitude < 0 {
				centre.X, side = 118-32, -1
			}
			var leaders [][]drawing.Point
			edge := 0.0
			for _, s := range d.Shapes {
				if s.Role == "rim" && s.Closed {
					edge = centre.Y - s.Points[0].Y
				}
			}
			for _, s := range d.Shapes {
				switch s.Role {
				case "leader":
					leaders = append(leaders, s.Points)
				case "lesson":
					// atan(sin φ tan H), A. Waugh, Sundials (1973), chapter 10 (from memory); the
					// lessons are evenly far apart in hours, and the first has the least.
					hours := -6 + 12*(float64(len(leaders))-0.5)/float64(n)
					phi := max(20, math.Abs(latitude)) * math.Pi / 180
					want := math.Atan(math.Sin(phi) * math.Tan(hours*math.Pi/12))
					end := s.Points[1]
					if got := math.Atan2(end.Y-centre.Y, side*(end.X-centre.X)); math.Abs(got-want) > 1e-6 {
						t.Errorf("%v, lesson %d of %d: the line is turned %.2f, want %.2f", latitude, len(leaders), n, got, want)
					}
				}
			}
			if len(leaders) != n {
				t.Fatalf("%d leading lines for %d lessons", len(leaders), n)
			}
			for i, l := range leaders {
				end := l[len(l)-1]
				if row := d.Height/2 + rows.height*(float64(i)-float64(n-1)/2); math.Abs(end.Y-row) > 1e-9 || math.Abs(end.X-(118/2+side*118/2)) > 1e-9 {
					t.Errorf("%v, lesson %d of %d: the line ends at %v, and its row is at %.1f", latitude, i+1, n, end, row)
				}
				for k := 1; k < len(l); k++ {
					if near := nearest(l[k-1], l[k], centre); near < edge {
						t.Errorf("%v, lesson %d of %d: its leading line comes to %.2f of the centre, into the dial of %.2f", latitude, i+1, n, near, edge)
					}
				}
				if i > 0 && meet(leaders[i-1], l) {
					t.Errorf("%v, %d lessons: the leading lines of %d and %d cross", latitude, n, i, i+1)
				}
			}
			for _, s := range d.Shapes {
				for _, p := range s.Points {
					if p.X-s.Radius < -1e-9 || p.X+s.Radius > d.Width+1e-9 || p.Y-s.Radius < -1 || p.Y+s.Radius > d.Height+1 {
						t.Errorf("%v, %d lessons: %s reaches out of the drawing, %v", latitude, n, s.Role, p)
					}
				}
			}
		}
	}
}

// nearest is how near a stretch comes to a point.
func nearest(a, b, p drawing.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	along := 0.0
	if length := dx*dx + dy*dy; length > 0 {
		along = max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length))
	}
	return math.Hypot(a.X+along*dx-p.X, a.Y+along*dy-p.Y)
}

// meet reports whether two lines cross.
func meet(a, b []drawing.Point) bool {
	turn := func(p, q, r drawing.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	for i := 1; i < len(a); i++ {
		for j := 1; j < len(b); j++ {
			p, q, r, s := a[i-1], a[i], b[j-1], b[j]
			if turn(p, q, r)*turn(p, q, s) < 0 && turn(r, s, p)*turn(r, s, q) < 0 {
				return true
			}
		}
	}
	return false
}

// Every row is as high as the longest title needs, and the style sheet has rows of the
// same heights.
func TestRowsOfTheCover(t *testing.T) {
	titles := func(n int, title string) []typeset.Link { return slices.Repeat([]typeset.Link{{Title: title}}, n) }
	for _, c := range []struct {
		lessons []typeset.Link
		want    string
	}{
		{titles(3, "Rocket day"), "rows-middle"},
		{titles(14, "Moon phases with a lamp and a ball"), "rows-middle"},
		{titles(30, "Rocket day"), "rows-low"},
		{titles(30, "Moon phases with a lamp and a ball"), "rows-middle"},
		{titles(5, "Mesurer la hauteur du Soleil avec un bâton, une ficelle et un rapporteur"), "rows-high"},
	} {
		if got := rowsFor(c.lessons).class; got != c.want {
			t.Errorf("%d lessons called %q: %s, want %s", len(c.lessons), c.lessons[0].Title, got, c.want)
		}
	}
	css := string(typeset.Style())
	for _, r := range rowSizes() {
		if rule := fmt.Sprintf(".%s { --row: %grem; }", r.class, r.height/4); !strings.Contains(css, rule) {
			t.Errorf("the style sheet lacks %s", rule)
		}
	}
	if rule := fmt.Sprintf("--fan: %grem;", fanWidth/4); !strings.Contains(css, rule) {
		t.Errorf("the style sheet lacks %s", rule)
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
