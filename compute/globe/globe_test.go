package globe

import (
	"math"
	"slices"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

func TestGazetteerIsWhole(t *testing.T) {
	if _, err := spots(); err != nil {
		t.Fatal(err)
	}
	sites := func(s Spot) bool { return s.Kind != Site }
	moon, mars := Spots(Moon), Spots(Mars)
	for _, c := range []struct {
		name             string
		got              []Spot
		features, landed int
	}{{"Moon", moon, 67, 24}, {"Mars", mars, 33, 10}} {
		landed := slices.DeleteFunc(slices.Clone(c.got), sites)
		if len(c.got)-len(landed) != c.features || len(landed) != c.landed {
			t.Errorf("%s: %d features and %d sites, want %d and %d", c.name, len(c.got)-len(landed), len(landed), c.features, c.landed)
		}
	}
	for _, s := range append(moon, mars...) {
		if math.Abs(s.At.Latitude.Degrees()) > 90 || math.Abs(s.At.Longitude.Degrees()) > 180 {
			t.Errorf("%s lies at %v", s.Name, s.At)
		}
		if (s.Kind == Site) != (s.Across == 0) {
			t.Errorf("%s, a %s, is %v across", s.Name, s.Kind, s.Across)
		}
		if s.Source == "" {
			t.Errorf("%s has no source", s.Name)
		}
	}
	// Only two have landed on the far side: the gazetteer's own note.
	for _, s := range moon {
		if far := s.Name == "Chang'e 4" || s.Name == "Chang'e 6"; s.Far() != far {
			t.Errorf("%s: far side %v", s.Name, s.Far())
		}
	}
}

// A world is as large here as on its card.
func TestRadiusIsThatOfTheWorld(t *testing.T) {
	for _, w := range []World{Moon, Mars} {
		i := slices.IndexFunc(world.All(), func(card world.World) bool { return card.Name == string(w) })
		if got := world.All()[i].Radius; got != w.Radius() {
			t.Errorf("%s: %v km, its card has %v", w, w.Radius().Kilometres(), got.Kilometres())
		}
	}
}

func TestSitesSayWhoLanded(t *testing.T) {
	crew := 0
	for _, s := range Spots(Moon) {
		if s.Crew {
			crew++
		}
	}
	if crew != 6 { // Apollo 11, 12, 14, 15, 16, 17
		t.Errorf("%d crews landed on the Moon", crew)
	}
	rovers := map[string]string{"Luna 17": "Lunokhod 1", "Chang'e 4": "Yutu-2", "Chandrayaan-3": "Pragyan"}
	for name, rover := range rovers {
		if s, _ := Find(Moon, name); s.Rover != rover {
			t.Errorf("%s carried %q, want %q", name, s.Rover, rover)
		}
	}
	if s, _ := Find(Moon, "Luna 9"); !s.Unseen || s.Landed.String() != "1966-02-03" {
		t.Errorf("Luna 9: %+v", s)
	}
}

// Surveyor 3 stood about 160 m (NASA prints 155 to 163 m; from memory) from where
// Apollo 12 came down and fetched parts of it.
func TestApartSurveyor3(t *testing.T) {
	a, _ := Find(Moon, "Apollo 12")
	b, _ := Find(Moon, "Surveyor 3")
	if d := Moon.Apart(a.At, b.At).Metres(); math.Abs(d-160) > 30 {
		t.Errorf("%.0f m", d)
	}
}

// Distances on Mars as NASA prints them, rounded, all from memory: Perseverance landed about
// 3700 km from Curiosity, InSight about 600 km; the way round Mars is 21 297 km.
func TestApartOnMars(t *testing.T) {
	at := func(name string) Point {
		s, ok := Find(Mars, name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		return s.At
	}
	for _, c := range []struct {
		from, to      string
		want, rounded float64
	}{{"Curiosity", "Perseverance", 3700, 60}, {"Curiosity", "InSight", 600, 60}} {
		if got := Mars.Apart(at(c.from), at(c.to)).Kilometres(); math.Abs(got-c.want) > c.rounded {
			t.Errorf("%s to %s is %.0f km, want %v", c.from, c.to, got, c.want)
		}
	}
	if round := 2 * math.Pi * Mars.Radius().Kilometres(); math.Abs(round-21297) > 1 {
		t.Errorf("round Mars it is %.1f km", round)
	}
	// The twins landed on opposite sides (NASA's words for 2004; from memory): within 20° of it.
	if apart := at("Spirit").Angle(at("Opportunity")).Degrees(); apart < 160 {
		t.Errorf("Spirit and Opportunity are %.1f° apart", apart)
	}
	// In which crater each came down, as the sources of the sites say.
	for site, crater := range map[string]string{"Curiosity": "Gale", "Spirit": "Gusev", "Perseverance": "Jezero"} {
		s, _ := Find(Mars, crater)
		if off := Mars.Apart(at(site), s.At); off > s.Across/2 {
			t.Errorf("%s is %.0f km from the middle of %s", site, off.Kilometres(), crater)
		}
	}
}

func TestApartIsOfTheSphere(t *testing.T) {
	pole, equator := Point{Latitude: quantity.Turn / 4}, Point{Longitude: quantity.Degrees(123)}
	quarter := math.Pi / 2 * 1737.4
	if d := Moon.Apart(pole, equator).Kilometres(); math.Abs(d-quarter) > 1e-6 {
		t.Errorf("pole to equator %v km", d)
	}
	if b := equator.Toward(pole).Degrees(); b != 0 {
		t.Errorf("the pole lies at a bearing of %v°", b)
	}
	// Due south from 40° S on one meridian.
	from, to := Point{Latitude: quantity.Degrees(-40)}, Point{Latitude: quantity.Degrees(-60)}
	if b := from.Toward(to).Degrees(); math.Abs(b-180) > 1e-9 {
		t.Errorf("60° S lies at a bearing of %v° from 40° S", b)
	}
	east := Point{Longitude: quantity.Degrees(124)}
	if b := equator.Toward(east).Degrees(); math.Abs(b-90) > 1e-9 {
		t.Errorf("east lies at a bearing of %v°", b)
	}
}
