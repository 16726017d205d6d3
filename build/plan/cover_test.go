package plan

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/form"
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
		svg := cover.find("svg")
		var at []float64
		var leads, numbers []string
		for _, a := range svg.all("a") {
			var x0, y0, x1, y1 float64
			if _, err := fmt.Sscanf(strings.NewReplacer("M", "", "L", " ").Replace(a.find("path").at["d"]), "%f %f %f %f", &x0, &y0, &x1, &y1); err != nil {
				t.Fatal(err)
			}
			if y1 >= y0 {
				t.Errorf("a line goes down: %s", a.find("path").at["d"])
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
		list := cover.find("ol").texts("li")
		if len(list) != 3 || !strings.HasPrefix(list[0], "1 Alpha The first.") || !strings.HasSuffix(list[0], "12 April") || !strings.Contains(list[0], "Day sheet") {
			t.Errorf("the lessons are %q", list)
		}
	}
	class, _ := smallPages(t, Class, form.Values{"class.name": ""})
	if text := line(class["index.html"].words()); strings.Contains(text, "Day sheet") || strings.Contains(text, ", 12 April to") {
		t.Errorf("the class's cover says %s", text)
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
