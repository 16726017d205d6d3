package moon_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
)

// New Moon, first quarter, full Moon and last quarter are stops 1, 3, 5 and 7 (Swiss
// Ephemeris, as in month_test.go), and four days after each the Moon is at the stop that
// follows: an eighth of its round is 29.53 ÷ 8 = 3.7 days.
func TestStopOfTheDay(t *testing.T) {
	for date, want := range map[string]float64{
		"2027-04-06": 1, "2027-04-10": 2, "2027-04-13": 3, "2027-04-17": 4,
		"2027-04-20": 5, "2027-04-24": 6, "2027-04-28": 7, "2027-05-02": 8, "2027-05-06": 1,
	} {
		for _, school := range []string{"alder reach", "south", "equator"} {
			entrytest.Near(t, school+" on "+date, entrytest.Fact(t, reckon(t, school, "moon-ring", date), "stop").Number, want, 0)
		}
	}
}

// The way round is that of TestTurnWithTheMoon: counterclockwise on paper in the north, so
// that stop 3 is to the left of the head when the lamp is above; clockwise in the south.
// Every ball is dark on the side away from the lamp, and its carrier, whose face is to the
// ball, sees the light on the lamp's side, by the turn from one direction to the other.
func TestRingOfStops(t *testing.T) {
	for school, counterclockwise := range map[string]bool{"alder reach": true, "equator": true, "south": false, "south pole": false} {
		r := reckon(t, school, "moon-ring", "2027-04-20", "lit=true")
		d := r.Drawings[0]
		balls, dark, seen := entrytest.Roled(d, "ball"), entrytest.Roled(d, "dark"), entrytest.Roled(d, "lit")
		if len(balls) != 8 || len(dark) != 8 || len(seen) != 8 {
			t.Fatalf("%s: %d balls, %d dark halves, %d as seen", school, len(balls), len(dark), len(seen))
		}
		skull := entrytest.Roled(d, "skull")[0].Points[0]
		numbers := entrytest.Labels(t, d)
		for i, b := range balls {
			at := b.Points[0]
			wanted := float64(i) * 45 // from the lamp, which is up on the paper, counterclockwise
			if !counterclockwise {
				wanted = -wanted
			}
			got := math.Atan2(skull.X-at.X, skull.Y-at.Y) * 180 / math.Pi
			if math.Abs(math.Remainder(got-wanted, 360)) > 0.01 {
				t.Errorf("%s: stop %d is %.1f° round, want %.0f°", school, i+1, got, wanted)
			}
			number := string(rune('1' + i))
			if entrytest.Apart(numbers[number], at) > 16 {
				t.Errorf("%s: number %s is not beside its ball", school, number)
			}
			middle, area := entrytest.Centroid(dark[i].Points)
			if middle.Y <= at.Y || math.Abs(middle.X-at.X) > 1e-9 {
				t.Errorf("%s: the dark half of ball %d is not away from the lamp", school, i+1)
			}
			entrytest.Near(t, "half of a ball", math.Abs(area)/(math.Pi*b.Radius*b.Radius), 0.5, 0.01)
			carrierSees(t, school, i+1, skull, at, seen[i].Points)
		}
		today := entrytest.Roled(d, "today")
		if len(today) != 1 || entrytest.Apart(today[0].Points[0], balls[4].Points[0]) > 1e-9 {
			t.Errorf("%s: the full Moon of 20 April 2027 is not marked at stop 5", school)
		}
		words := map[bool]string{true: "numbered counterclockwise", false: "numbered clockwise"}[counterclockwise]
		if got := entrytest.English(t).Line(d.Description); !strings.Contains(got, words) {
			t.Errorf("%s: in words the ring is %q", school, got)
		}
	}
}

// carrierSees compares the small disc with what follows from the places alone: the face is
// turned to the ball, the lamp is up on the paper. Seen is 1 less cosine, halved, of the
// angle between ball and lamp, on the side on which the lamp then is.
func carrierSees(t *testing.T, school string, stop int, skull, ball drawing.Point, seen []drawing.Point) {
	t.Helper()
	far := entrytest.Apart(skull, ball)
	forward := drawing.Point{X: (ball.X - skull.X) / far, Y: (ball.Y - skull.Y) / far}
	// To the right of somebody seen from above who looks along forward, on paper whose y
	// runs down; the lamp lies along (0, −1).
	toRight := -(forward.X)
	apart := math.Acos(-forward.Y)
	middle, area := entrytest.Centroid(seen)
	centre := drawing.Point{X: skull.X + forward.X*23, Y: skull.Y + forward.Y*23}
	entrytest.Near(t, school+": lit part as seen", math.Abs(area)/(math.Pi*4.5*4.5), (1-math.Cos(apart))/2, 0.02)
	if math.Abs(toRight) > 0.01 && (middle.X-centre.X)*toRight <= 0 {
		t.Errorf("%s: at stop %d the light is on the wrong side", school, stop)
	}
}

// Pupils find out for themselves: their ring shows no light and says nothing of it, in
// the drawing, its words and the notes.
func TestRingForPupilsIsEmpty(t *testing.T) {
	for _, school := range []string{"alder reach", "south"} {
		r := reckon(t, school, "moon-ring", "2027-04-20")
		d := r.Drawings[0]
		for _, role := range []string{"dark", "lit", "night", "today"} {
			if n := len(entrytest.Roled(d, role)); n > 0 {
				t.Errorf("%s: %d shapes of %q", school, n, role)
			}
		}
		if words := entrytest.English(t).Line(d.Description); strings.Contains(words, "lit") || strings.Contains(words, "white") || !strings.Contains(words, "empty") {
			t.Errorf("%s: in words the ring is %q", school, words)
		}
		if len(r.Notes) > 0 {
			t.Errorf("%s: notes %v", school, entrytest.Lines(t, r.Notes))
		}
	}
}
