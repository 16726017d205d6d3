package stars_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
)

// stopOf returns the stop of a walk by its key.
func stopOf(t *testing.T, r result.Result, key string) result.Stop {
	t.Helper()
	for _, stop := range r.Walks[0].Stops {
		if stop.Key == key {
			return stop
		}
	}
	t.Fatalf("no stop %s", key)
	return result.Stop{}
}

// said returns the line of that key, if the card has it.
func said(stop result.Stop, key string) (say.Phrase, bool) {
	for _, line := range stop.Says {
		if line.Key == key {
			return line, true
		}
	}
	return say.Phrase{}, false
}

// When stars, the Moon and planets set after 21:30 on 20 April 2027 at Alder Reach and at
// Dunedin, by pyephem 4.1.4 (its own stars, horizon −34′ without pressure): to a minute, as
// cards show it. Stars that never set say so; Vega sets next afternoon, of which nothing is
// said, nor of the Moon where it is not that night.
func TestCardsSayWhenTheySet(t *testing.T) {
	for school, sets := range map[string]map[string]string{
		"alder reach": {"sirius": "23:00:24", "rigel": "22:08:22", "betelgeuse": "23:54:15", "procyon": "01:28:30", "aldebaran": "23:16:23", "spica": "06:04:19", "regulus": "04:26:01",
			"moon": "06:10:50", "mars": "04:21:06", "jupiter": "03:58:12", "capella": "never", "vega": ""},
		"south": {"sirius": "00:46:44", "rigel": "22:38:02", "betelgeuse": "22:14:01", "procyon": "00:07:15", "spica": "07:01:05", "regulus": "02:07:36",
			"moon": "07:30:00", "mars": "01:22:43", "jupiter": "00:55:27", "canopus": "never", "achernar": "never", "acrux": "never"},
	} {
		r := reckon(t, school, "sky-map", "2027-04-20", "time=21:30")
		for key, want := range sets {
			stop := stopOf(t, r, key)
			line, ok := said(stop, "sky-map.walk_sets")
			_, never := said(stop, "sky-map.walk_never_sets")
			if ok == (want == "" || want == "never") || never != (want == "never") {
				t.Errorf("%s: %s says %v, want %q", school, key, stop.Says, want)
			}
			if !ok {
				continue
			}
			got := line.With[0].Time
			clock, err := time.ParseInLocation(time.DateOnly+" 15:04:05", got.Format(time.DateOnly)+" "+want, got.Location())
			if err != nil {
				t.Fatal(err)
			}
			entrytest.Near(t, school+", "+key+" sets, minutes off", got.Sub(clock).Minutes(), 0, 1)
		}
	}
}

// A card's height is the one of the table below the chart, and its ring is round the place
// where the chart has the star: overhead in the middle, the horizon at the rim.
func TestCardsAreTheChart(t *testing.T) {
	compared := 0
	for school := range entrytest.Schools {
		r := reckon(t, school, "sky-map", "2027-04-20", "time=21:30")
		names := map[string]string{}
		for _, table := range r.Tables {
			for i, name := range entrytest.Texts(t, r, table.Name, table.Columns[0].Name) {
				names[name] = entrytest.Texts(t, r, table.Name, "altitude")[i]
			}
		}
		d := r.Drawings[0]
		for _, stop := range r.Walks[0].Stops {
			where, _ := said(stop, "sky-map.walk_where")
			height, ok := names[entrytest.Written(t, stop.Name)]
			if shown := entrytest.Written(t, where.With[1]); ok && strings.TrimSuffix(shown, "°") != strings.TrimSuffix(height, "°") {
				t.Errorf("%s: the card of %s says %s, the table %s", school, stop.Key, shown, height)
			}
			if !ok {
				continue
			}
			compared++
			marked := 0
			for _, s := range d.Shapes {
				if s.Anchor == "" && len(s.Points) > 0 && (s.Radius > 0 || s.Closed) && near(s.Points[0].X, stop.At.X) && near(s.Points[0].Y, stop.At.Y) {
					marked++
				}
			}
			if marked == 0 {
				t.Errorf("%s: nothing is drawn at %s", school, stop.Key)
			}
		}
	}
	if compared < 100 {
		t.Errorf("%d cards compared", compared)
	}
}

// near allows for the corner of a planet's square.
func near(a, b float64) bool { return a-b < 2 && b-a < 2 }

// Orion has eight stars of the first to third magnitude in our drawing, Rigel the brightest;
// Betelgeuse belongs to it.
func TestCardOfOrion(t *testing.T) {
	r := reckon(t, "alder reach", "sky-map", "2027-01-15", "time=21:30")
	orion := stopOf(t, r, "orion")
	if line, ok := said(orion, "sky-map.walk_figure"); !ok || line.With[0].Number != 8 {
		t.Errorf("Orion: %v", orion.Says)
	}
	if line, ok := said(orion, "sky-map.walk_brightest"); !ok || line.With[0].Phrase.Key != "star.rigel" {
		t.Errorf("Orion: %v", orion.Says)
	}
	if line, ok := said(stopOf(t, r, "betelgeuse"), "sky-map.walk_star_of"); !ok || line.With[0].Phrase.Key != "figure.orion" {
		t.Errorf("Betelgeuse: %v", line)
	}
}

// By day the Sun has no card: nobody is led to look for it.
func TestNobodyIsLedToTheSun(t *testing.T) {
	r := reckon(t, "alder reach", "sky-map", "2027-04-20", "time=12:00")
	up := false
	for _, body := range entrytest.Texts(t, r, "bodies", "body") {
		up = up || body == "Sun"
	}
	if !up {
		t.Error("the Sun is not up at noon")
	}
	for _, stop := range r.Walks[0].Stops {
		if stop.Key == "sun" {
			t.Error("the Sun has a card")
		}
	}
}
