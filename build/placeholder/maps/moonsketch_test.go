package maps

import (
	"math"
	"testing"

	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// holds reports whether an outline goes round a point, by counting crossings to the east.
func holds(outline []globe.Point, p globe.Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Latitude > p.Latitude) != (b.Latitude > p.Latitude) {
			at := a.Longitude + (b.Longitude-a.Longitude)*(p.Latitude-a.Latitude)/(b.Latitude-a.Latitude)
			in = in != (at > p.Longitude)
		}
	}
	return in
}

// The seas in which machines and people landed: NSSDCA spacecraft catalogue, from memory. So
// a shore that was sketched on the wrong side of a landing fails.
func TestSeasHoldTheirLandings(t *testing.T) {
	in := map[string]string{
		"Apollo 11": "Mare Tranquillitatis", "Surveyor 5": "Mare Tranquillitatis",
		"Apollo 12": "Oceanus Procellarum", "Surveyor 1": "Oceanus Procellarum", "Surveyor 3": "Oceanus Procellarum",
		"Luna 9": "Oceanus Procellarum", "Chang'e 5": "Oceanus Procellarum",
		"Luna 16": "Mare Fecunditatis", "Luna 17": "Mare Imbrium", "Chang'e 3": "Mare Imbrium",
		"Luna 24": "Mare Crisium", "Surveyor 6": "Sinus Medii",
		"Apollo 14": "", "Apollo 16": "", "Surveyor 7": "", "Luna 20": "", "SLIM": "", "Chandrayaan-3": "", // in the highlands
	}
	for name, sea := range in {
		site, ok := globe.Find(globe.Moon, name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		held := false
		for _, s := range globe.Spots(globe.Moon) {
			if !isSea(s) || !holds(shore(s), site.At) {
				continue
			}
			held = held || s.Name == sea
			if sea == "" {
				t.Errorf("%s landed in the highlands, the sketch has it in %s", name, s.Name)
			}
		}
		if sea != "" && !held {
			t.Errorf("%s landed in %s, the sketch has it elsewhere", name, sea)
		}
	}
}

// Against the Gazetteer: an outline holds the middle of its sea and is about as wide as the
// sea; a line passes by the middle of its mountains and is about as long.
func TestSketchesKeepToTheGazetteer(t *testing.T) {
	for name := range moonOutlines() {
		s, ok := globe.Find(globe.Moon, name)
		if !ok || !isSea(s) {
			t.Errorf("%s is no sea of the gazetteer", name)
			continue
		}
		points := shore(s)
		wide := quantity.Length(0)
		for _, a := range points {
			for _, b := range points {
				wide = max(wide, globe.Moon.Apart(a, b))
			}
		}
		if share := wide / s.Across; share < 0.75 || share > 1.1 || !holds(points, s.At) {
			t.Errorf("%s: the sketch is %.2f times as wide, round its middle: %v", name, share, holds(points, s.At))
		}
	}
	for name, stroke := range moonStrokes() {
		s, ok := globe.Find(globe.Moon, name)
		if !ok || !isLong(s) {
			t.Errorf("%s is nothing long of the gazetteer", name)
			continue
		}
		long, near := quantity.Length(0), math.Inf(1)
		for i := 1; i < len(stroke); i++ {
			a, b := onMoon(stroke[i-1]), onMoon(stroke[i])
			long += globe.Moon.Apart(a, b)
			for k := range 11 {
				on := a.Going(a.Toward(b), a.Angle(b)*quantity.Angle(k)/10)
				near = min(near, on.Angle(s.At).Degrees())
			}
		}
		if share := long / s.Across; share < 0.6 || share > 1.2 {
			t.Errorf("%s: the sketch is %.2f times as long", name, share)
		}
		// Bent ones have the middle of their box beside them.
		if near > max(0.6, 0.16*globe.Moon.Arc(s.Across).Degrees()) {
			t.Errorf("%s: the sketch passes its middle at %.1f°", name, near)
		}
	}
}
