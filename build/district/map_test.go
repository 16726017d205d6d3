package district

import (
	"math"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// Every school is on the plate, wherever on the Earth the district is: across the date
// line, round the Earth, at the poles, at one place.
func TestEverySchoolIsOnTheMap(t *testing.T) {
	for name, places := range map[string][][2]float64{
		"one":           {{46.1, -64.8}},
		"a town":        {{46.1, -64.8}, {46.11, -64.82}, {46.09, -64.79}},
		"date line":     {{-43.9, -176.5}, {-45.9, 170.5}, {-35.2, 173.9}},
		"the Earth":     {{46, -64}, {-45, 170}, {0.5, 35}, {70, 25}, {-17, -150}, {35, 139}},
		"poles":         {{90, 0}, {-90, 100}},
		"a tall strip":  {{60, 10}, {-30, 11}},
		"a wide strip":  {{45, -120}, {45.1, -60}},
		"two meridians": {{0, 180}, {0, -180}, {1, 179.9}},
	} {
		l, _ := ReadList("schools.csv", []byte("school.name\nA\n"))
		d := &District{list: l}
		var schools []surveyed
		for _, p := range places {
			schools = append(schools, surveyed{latitude: p[0], longitude: p[1]})
			l.rows = append(l.rows, l.rows[0])
		}
		m := d.plate(schools)
		dots, plate := 0, drawing.Shape{}
		for _, s := range m.Shapes {
			switch s.Role {
			case "plate":
				plate = s
			case "sun":
				dots++
				at, from, to := s.Points[0], plate.Points[0], plate.Points[2]
				if at.X < from.X || at.X > to.X || at.Y < from.Y-1e-6 || at.Y > to.Y+1e-6 || math.IsNaN(at.X+at.Y) {
					t.Errorf("%s: a school is at %.1f, %.1f, and the plate goes from %v to %v", name, at.X, at.Y, from, to)
				}
			}
		}
		if dots == 0 || dots > len(places) || m.Width != mapWidth || m.Height > mapHigh+mapTop+mapBottom+1e-6 {
			t.Errorf("%s: %d dots on a map of %g × %g mm", name, dots, m.Width, m.Height)
		}
	}
}

// Sides are said with as many decimals as the net needs, and nought has none.
func TestSides(t *testing.T) {
	for _, c := range []struct {
		value say.Value
		key   string
		plain float64
		after int
	}{
		{latitude(-45, 15), "district.south", 45, 0}, {latitude(46.09, 0.1), "district.north", 46.09, 1}, {latitude(0, 5), "", 0, 0},
		{longitude(190, 10), "district.west", 170, 0}, {longitude(-10, 30), "district.west", 10, 0}, {longitude(-185, 5), "district.east", 175, 0}, {longitude(180, 45), "", 180, 0}, {longitude(-540, 45), "", 180, 0},
	} {
		v := c.value
		if v.Phrase.Key != c.key {
			t.Errorf("%v is said by %q, want %q", v, v.Phrase.Key, c.key)
		}
		if v.Phrase.Key != "" {
			v = v.Phrase.With[0]
		}
		if math.Abs(v.Number-c.plain) > 1e-9 || v.Decimals != c.after {
			t.Errorf("it is %g with %d decimals, want %g with %d", v.Number, v.Decimals, c.plain, c.after)
		}
	}
}
