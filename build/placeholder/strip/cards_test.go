package strip_test

import (
	"fmt"
	"slices"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/typeset"
)

// cardsOf returns the outlines of the cards on a sheet.
func cardsOf(s drawing.Sheet) []entrytest.Covered {
	var cards []entrytest.Covered
	for _, shape := range s.Drawing.Shapes {
		if shape.Role == "cut" {
			a, b := shape.Points[0], shape.Points[2]
			cards = append(cards, entrytest.Covered{Left: a.X, Top: a.Y, Right: b.X, Bottom: b.Y})
		}
	}
	return cards
}

// A set has a card for every pupil, all bodies first, then the five jobs, then
// checkers; a small class still gets every body.
func TestCardsForEveryPupil(t *testing.T) {
	for _, c := range []struct{ pupils, cards, jobs, checkers int }{
		{0, 11, 0, 0}, {5, 11, 0, 0}, {11, 11, 0, 0}, {13, 13, 2, 0}, {16, 16, 5, 0}, {27, 27, 5, 11}, {500, 500, 5, 484},
	} {
		r := reckon(t, "alder reach", "strip-cards", "2027-04-20", fmt.Sprint("class.pupils=", c.pupils))
		entrytest.Near(t, "cards", entrytest.Fact(t, r, "cards").Number, float64(c.cards), 0)
		entrytest.Near(t, "jobs", entrytest.Fact(t, r, "jobs").Number, float64(c.jobs), 0)
		entrytest.Near(t, "checkers", entrytest.Fact(t, r, "checkers").Number, float64(c.checkers), 0)
		drawn := 0
		for _, s := range r.Sheets {
			drawn += len(cardsOf(s))
		}
		if drawn != c.cards || len(r.Tables[0].Rows) != c.cards-c.checkers {
			t.Errorf("%d pupils: %d cards are drawn, %d listed", c.pupils, drawn, len(r.Tables[0].Rows))
		}
	}
}

// Cards have their true size (3 × 5 inches of 25.4 mm; A6 105 × 148 mm, ISO 216),
// share their edges and lie on one sheet of paper; their words stay within them,
// a letter of 3.2 mm taken as 1.7 mm wide (0.53 of its height, more than the
// average of common faces).
func TestCardsAreTrueToSize(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []string{"A4", "Letter"} {
		for card, size := range map[string]drawing.Point{"3x5": {X: 127, Y: 76.2}, "A6": {X: 148, Y: 105}} {
			r := reckon(t, "alder reach", "strip-cards", "2027-04-20", "class.pupils=27", "school.paper="+paper, "card="+card)
			for _, s := range r.Sheets {
				if s.Rows*s.Columns != 1 || !s.Paper.Fits(s.Drawing) {
					t.Errorf("%s on %s: a sheet of cards is laid over %d × %d", card, paper, s.Rows, s.Columns)
				}
				cards := cardsOf(s)
				for i, c := range cards {
					entrytest.Near(t, card+" width", c.Right-c.Left, size.X, 1e-9)
					entrytest.Near(t, card+" height", c.Bottom-c.Top, size.Y, 1e-9)
					for _, other := range cards[:i] {
						if inner := (entrytest.Covered{Left: c.Left + 1e-6, Top: c.Top + 1e-6, Right: c.Right - 1e-6, Bottom: c.Bottom - 1e-6}); inner.Meets(other) {
							t.Errorf("%s on %s: cards overlap", card, paper)
						}
					}
				}
				for _, shape := range s.Drawing.Shapes {
					if shape.Anchor == "" {
						continue
					}
					wide, at := 1.7*float64(len([]rune(words.Text(shape.Text)))), shape.Points[0]
					if shape.Role == "numeral" {
						wide *= 5 / 3.2
					}
					if !slices.ContainsFunc(cards, func(c entrytest.Covered) bool {
						return at.X > c.Left+2 && at.X+wide < c.Right-2 && at.Y-3 > c.Top && at.Y+1 < c.Bottom
					}) {
						t.Errorf("%s on %s: %q does not stay on its card", card, paper, words.Text(shape.Text))
					}
				}
			}
			if want := map[string]float64{"3x5": 4, "A6": 2}[card]; entrytest.Fact(t, r, "a_sheet").Number != want {
				t.Errorf("%v cards of %s on %s, want %v", entrytest.Fact(t, r, "a_sheet").Number, card, paper, want)
			}
		}
	}
}

// What a card says of a body is what the table says.
func TestCardsAgreeWithTheTable(t *testing.T) {
	cards, table := reckon(t, "alder reach", "strip-cards", "2027-04-20"), reckon(t, "alder reach", "strip-table", "2027-04-20")
	column := func(r result.Result, name string) []float64 { return entrytest.Column(t, r, name) }
	if a, b := column(cards, "squares")[:11], column(table, "squares"); !slices.Equal(a, b) {
		t.Errorf("cards say %v, the table %v", a, b)
	}
}
