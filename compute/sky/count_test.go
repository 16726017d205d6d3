package sky

import (
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func domeOver(latitude, longitude float64, utc string) Dome {
	at, _ := time.Parse("2006-01-02 15:04", utc)
	return DomeAt(place.Place{Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(longitude), Zone: time.UTC}, at)
}

// Leo's stars by the magnitudes of the Bright Star Catalogue (from memory): Regulus 1.35,
// Algieba 1.98 for the pair, Denebola 2.14, δ 2.56, ε 2.98, θ 3.34, ζ 3.44, η 3.52, μ 3.88.
func TestFigureStars(t *testing.T) {
	want := []struct {
		name      string
		magnitude float64
	}{{"α Leo", 1.35}, {"γ¹ Leo", 1.98}, {"β Leo", 2.14}, {"δ Leo", 2.56}, {"ε Leo", 2.98}, {"θ Leo", 3.34}, {"ζ Leo", 3.44}, {"η Leo", 3.52}, {"μ Leo", 3.88}}
	for _, f := range Figures() {
		if f.Name != "leo" {
			continue
		}
		stars := f.Stars()
		if len(stars) != len(want) {
			t.Fatalf("%d stars, want %d", len(stars), len(want))
		}
		for i, s := range stars {
			if d := s.Magnitude - want[i].magnitude; s.Designation != want[i].name || d > 0.15 || d < -0.15 {
				t.Errorf("star %d is %s, %.2f, want %s, %.2f", i+1, s.Designation, s.Magnitude, want[i].name, want[i].magnitude)
			}
		}
	}
}

// The figure to count in is high, is told from afar, and steps down to faint stars: over both
// hemispheres and the equator on evenings of all seasons, it and its stars are where the rules
// want them.
func TestToCount(t *testing.T) {
	seen := map[string]bool{}
	for _, latitude := range []float64{65, 46, 20, 0, -20, -46} {
		for month := 1; month <= 12; month++ {
			d := domeOver(latitude, 0, time.Date(2027, time.Month(month), 15, 21, 0, 0, 0, time.UTC).Format("2006-01-02 15:04"))
			f, ok := ToCount(d)
			if !ok {
				t.Errorf("%g° in month %d: none", latitude, month)
				continue
			}
			seen[f.Name] = true
			stars := f.Stars()
			for _, s := range stars {
				if h := Seen(d.Star(s)).Altitude.Degrees(); h < 25 {
					t.Errorf("%g° in month %d: %s of %s at %.1f°", latitude, month, s.Designation, f.Name, h)
				}
			}
			if len(stars) < 6 || stars[0].Magnitude > 2.2 || stars[len(stars)-1].Magnitude < 3.5 {
				t.Errorf("%g° in month %d: %s has %d stars, %.1f to %.1f", latitude, month, f.Name, len(stars), stars[0].Magnitude, stars[len(stars)-1].Magnitude)
			}
		}
	}
	if len(seen) < 6 {
		t.Errorf("only %v in a year", seen)
	}
}

// A figure by the Moon is passed over, and the three figures to find are those with the
// brightest stars: over Alder Reach on 15 January at 20:00 (24:00 UTC) Orion, in the south,
// leads, and a Moon in it sends the counting elsewhere.
func TestFiguresAndGlare(t *testing.T) {
	d := domeOver(46.09, -64.77, "2027-01-16 00:30")
	found := ToFind(d, 3)
	if len(found) != 3 || found[0].Name != "orion" {
		t.Fatalf("to find: %v, want Orion first", found)
	}
	f, _ := ToCount(d)
	glare := Glare{At: d.At(f.Centre()), Within: quantity.Degrees(40)}
	other, ok := ToCount(d, glare)
	if !ok || other.Name == f.Name {
		t.Errorf("with the Moon in %s: %s", f.Name, other.Name)
	}
	if got := between(d.At(other.Centre()), glare.At).Degrees(); got < 40 {
		t.Errorf("%s is %.0f° from the Moon", other.Name, got)
	}
	if got := between(almanac.Horizontal{Azimuth: quantity.Degrees(350)}, almanac.Horizontal{Azimuth: quantity.Degrees(20)}).Degrees(); got < 29.99 || got > 30.01 {
		t.Errorf("350° and 20° on the horizon are %.2f° apart, want 30", got)
	}
}
