package placeholder_test

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/theme"
)

// complaint evaluates a placeholder and returns the one message that bad input
// gets, from the form or from the evaluation.
func complaint(t *testing.T, name, date string, given ...string) string {
	t.Helper()
	entry, ok := placeholder.Find(placeholder.Catalogue(), name)
	if !ok {
		t.Fatalf("no placeholder %s", name)
	}
	values := form.Values{}
	for _, pair := range given {
		key, value, _ := strings.Cut(pair, "=")
		v, complaint := entry.Form(source.Settings()).ParsePair(key, value)
		if complaint != "" {
			return complaint
		}
		values[key] = v
	}
	_, err := entry.Reckon(entry.Complete(settings(t, "alder reach"), values, day(t, date)))
	if err == nil {
		return ""
	}
	return err.Error()
}

// Distances on 20 April 2027 at 15:00 UTC in au: pyephem 4.1.4 (its
// planets and ours agree to 0.0005 there); light takes 499.005 s an
// au. The rest are values of NASA's fact sheet (2024, from memory).
func TestWorldCardOfMars(t *testing.T) {
	r := reckon(t, "alder reach", "world-cards", "2027-04-20", "world=mars")
	near(t, "light for the distance", fact(t, r, "light_time").Number, 499.005*fact(t, r, "distance_au").Number, 1)
	near(t, "million km for au", fact(t, r, "distance").Number, 149.5979*fact(t, r, "distance_au").Number, 1e-3)
	for name, au := range map[string]float64{"mars": 0.98483, "jupiter": 4.99033, "moon": 382239.75 / 149597870.7} {
		got := fact(t, reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name), "distance_au").Number
		near(t, name+": au", got, au, 0.0005)
	}
	near(t, "pull", fact(t, r, "gravity").Number, 3.71, 0.005)
	near(t, "day in hours", fact(t, r, "day").Number/3600, 24.6597, 0.0001)
	near(t, "diameter", fact(t, r, "diameter").Number, 6779, 0.5)
	if got := fact(t, r, "moons").Number; got != 2 {
		t.Errorf("Mars has %v moons", got)
	}
}

// Two cards a sheet on both papers, at true size, each on a single piece of paper.
func TestWorldCardsFitTheirPaper(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		r := reckon(t, "south", "world-cards", "2027-04-20", "school.paper="+paper)
		if len(r.Sheets) != 6 {
			t.Errorf("%s: %d sheets", paper, len(r.Sheets))
		}
		for _, s := range r.Sheets {
			if s.Rows*s.Columns != 1 || !s.Paper.Fits(s.Drawing) {
				t.Errorf("%s: a sheet does not fit", paper)
			}
		}
	}
	r := reckon(t, "south", "world-cards", "2027-04-20", "worlds=saturn, mars, saturn")
	if got := fact(t, r, "cards").Number; got != 2 || fact(t, r, "name").Phrase.Key != "body.saturn" || len(r.Sheets) != 1 {
		t.Errorf("%v cards, the first of %s", got, fact(t, r, "name").Phrase.Key)
	}
}

// What a card says keeps to its room, in every language that has words: three lines
// for a feature and for a question (theme.Lines estimates widths on the wide side),
// values that end before the right half.
func TestWorldCardsHoldTheirText(t *testing.T) {
	for _, code := range theme.Languages() {
		for _, customary := range []bool{false, true} {
			words, err := theme.Language(code, customary)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range reckon(t, "alder reach", "world-cards", "2027-04-20").Sheets {
				for _, shape := range s.Drawing.Shapes {
					text := words.Text(shape.Text)
					if shape.Wide > 0 {
						if n := len(theme.Lines(text, shape.Wide/shape.Size)); n > 3 {
							t.Errorf("%s: %d lines: %q", code, n, text)
						}
					}
					if shape.Role == "value" && len(theme.Lines(text, 70/3.4*1.25)) > 1 { // 70 mm of letters 3.4 mm tall
						t.Errorf("%s: too long for its row: %q", code, text)
					}
				}
			}
		}
	}
}

// The comet is known for some years only, and the Earth has no distance from itself.
func TestWorldsWithoutADistance(t *testing.T) {
	if got := fact(t, reckon(t, "south", "world-cards", "2040-04-20", "world=comet"), "distance"); got.Kind != say.Nothing || got.Phrase.Key != "world.not_known" {
		t.Errorf("the comet in 2040: %v", got)
	}
	if got := fact(t, reckon(t, "south", "world-cards", "2027-04-20", "world=earth"), "light_time"); got.Phrase.Key != "world.here" {
		t.Errorf("the Earth: %v", got)
	}
	near(t, "the Moon", fact(t, reckon(t, "south", "world-cards", "2027-04-20", "world=moon"), "distance").Number, 0.3845, 0.0285) // perigee to apogee
}

func TestWorldsBadInput(t *testing.T) {
	for _, c := range []struct{ name, date, given, want string }{
		{"world-cards", "2027-04-20", "world=vulcan", "vulcan"},
		{"world-cards", "2027-04-20", "worlds=mars, satrun", "saturn"},
		{"world-cards", "2200-04-20", "world=mars", "2200"},
	} {
		if got := complaint(t, c.name, c.date, c.given); !strings.Contains(got, c.want) || strings.Contains(got, "\n") {
			t.Errorf("%s %s says %q", c.name, c.given, got)
		}
	}
}
