package sky

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// reference reads a table of testdata/reference, whose README says how it was made.
func reference(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil || len(records) < 100 {
		t.Fatal(name, len(records), err)
	}
	rows := make([]map[string]string, len(records)-1)
	for i, record := range records[1:] {
		rows[i] = map[string]string{}
		for j, cell := range record {
			rows[i][records[0][j]] = cell
		}
	}
	return rows
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// apart returns the angle between two directions in seconds of arc.
func apart(a, b space.Vector) float64 { return a.Angle(b).ArcSeconds() }

func direction(ra, dec float64) space.Vector {
	return Direction{quantity.Degrees(ra), quantity.Degrees(dec)}.vector()
}

func TestTablesAreWhole(t *testing.T) {
	if stars, err := parseStars(starsText); err != nil || len(stars) < 700 {
		t.Errorf("%d stars, %v", len(stars), err)
	}
	names := map[string]bool{}
	for i, s := range Stars() {
		if names[s.Designation] {
			t.Errorf("%s stands twice", s.Designation)
		}
		names[s.Designation] = true
		if i > 0 && s.Magnitude < Stars()[i-1].Magnitude {
			t.Errorf("%s is brighter than the star before", s.Designation)
		}
		if got, ok := Find(s.Designation); !ok || got.Magnitude != s.Magnitude {
			t.Errorf("%s is not found", s.Designation)
		}
	}
	if list, err := parseFigures(figuresText); err != nil || len(list) < 60 {
		t.Errorf("%d figures, %v", len(list), err)
	}
	for _, f := range Figures() {
		for _, path := range f.Paths {
			if len(path) < 2 {
				t.Errorf("%s has a path of %d star", f.Name, len(path))
			}
			for i := 1; i < len(path); i++ {
				// Hydra's tail and Carina's keel, at 26°, are the longest; a longer line joins
				// the wrong stars.
				if gap := apart(path[i-1].place, path[i].place) / 3600; gap > 26 || gap == 0 {
					t.Errorf("%s: from %s to %s are %.1f°", f.Name, path[i-1].Designation, path[i].Designation, gap)
				}
			}
		}
	}
}

// The brightest stars in their order, common knowledge, no source; and the pole star
// within a degree of the pole.
func TestBrightest(t *testing.T) {
	stars := Stars()
	for i, name := range []string{"Sirius", "Canopus", "Rigil Kentaurus", "Arcturus", "Vega", "Capella", "Rigel", "Procyon"} {
		if stars[i].Name != name {
			t.Errorf("star %d is %s, want %s", i, stars[i].Name, name)
		}
	}
	polaris, _ := Find("α UMi")
	if d := polaris.At(time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)); d.Declination.Degrees() < 89 {
		t.Errorf("Polaris stands at %.2f°", d.Declination.Degrees())
	}
}

// Mean places against ERFA (pmsafe, pmat06), which have the same theory: 1″, room for
// the frame bias of 0.02″ and proper motion along a line. Apparent places against
// ERFA (atci13): 40″, what nutation and aberration make. Both as doc.go promises.
func TestPlacesAgainstERFA(t *testing.T) {
	for file, limit := range map[string]float64{"stars-mean.csv": 1, "stars-apparent.csv": 40} {
		worst := 0.0
		for _, row := range reference(t, file) {
			tt, err := time.Parse("2006-01-02T15:04:05", row["tt"])
			if err != nil {
				t.Fatal(err)
			}
			at := tt.Add(-almanac.DeltaT(tt))
			star, ok := Find(row["star"])
			if !ok {
				t.Fatalf("no star %s", row["star"])
			}
			off := apart(star.At(at).vector(), direction(number(t, row["ra_deg"]), number(t, row["dec_deg"])))
			if worst = max(worst, off); off > limit {
				t.Errorf("%s at %s is %.1f″ off", row["star"], row["tt"], off)
			}
		}
		t.Logf("%s: worst %.2f″", file, worst)
	}
}

// The table against another catalogue: pyephem's stars, of Hipparcos. A place there
// is within 2″ (its epoch is 1991.25, and double stars have another centre); the one
// exception is α Cen, whose two suns are 6″ and more apart. Magnitudes to 0.2, a
// variable star apart.
func TestTableAgainstHipparcos(t *testing.T) {
	stars, far := Stars(), 0
	rows := reference(t, "stars-hipparcos.csv")
	for _, row := range rows {
		v := direction(number(t, row["ra_deg"]), number(t, row["dec_deg"]))
		best, off := stars[0], math.Inf(1)
		for _, s := range stars {
			if d := apart(v, s.place); d < off {
				best, off = s, d
			}
		}
		if off > 2 {
			far++
			if best.Designation != "α Cen" || off > 20 {
				t.Errorf("%s is %.1f″ from %s", row["name"], off, best.Designation)
			}
		}
		unsteady := map[string]bool{"α¹ Her": true, "θ¹ Eri": true} // stars of two, summed there
		if d := math.Abs(number(t, row["magnitude"]) - best.Magnitude); d > 0.2 && !unsteady[best.Designation] {
			t.Errorf("%s has magnitude %s, ours %.2f", row["name"], row["magnitude"], best.Magnitude)
		}
	}
	if far > 1 || len(rows) < 110 {
		t.Errorf("%d of %d are far", far, len(rows))
	}
}

// Positions on charts, read back, against horizontal coordinates by ERFA (apparent
// places, gst06a, hd2ae): 40″, as Dome.Star promises.
func TestChartsAgainstERFA(t *testing.T) {
	worst := 0.0
	rows := reference(t, "stars-horizontal.csv")
	for _, row := range rows {
		at, err := time.Parse(time.RFC3339, row["utc"])
		if err != nil {
			t.Fatal(err)
		}
		dome := DomeAt(placeAt(number(t, row["latitude_deg"]), number(t, row["longitude_deg"]), time.UTC), at)
		star, _ := Find(row["star"])
		want := direction(number(t, row["azimuth_deg"]), number(t, row["altitude_deg"]))
		for _, projection := range []Projection{Equidistant, Stereographic} {
			p := projection.At(dome.Star(star))
			altitude := 90 - away(projection, math.Hypot(p.X, p.Y))
			azimuth := math.Atan2(-p.X, p.Y) / math.Pi * 180 // from up, to the left
			off := apart(direction(azimuth, altitude), want)
			if worst = max(worst, off); off > 40 {
				t.Errorf("%s, %s, %s: %.1f″ off", row["place"], row["utc"], row["star"], off)
			}
		}
	}
	t.Logf("worst %.1f″ of %d", worst, len(rows))
}

// away reads a chart: by how many degrees a point at the radius is away from the
// middle, the projections' radii (see Radius) turned round by hand.
func away(p Projection, radius float64) float64 {
	if p == Stereographic {
		return 2 * math.Atan(radius) / math.Pi * 180
	}
	return 90 * radius
}

func placeAt(latitude, longitude float64, zone *time.Location) place.Place {
	return place.Place{Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(longitude), Zone: zone}
}

// The equator crosses the horizon due east and west and the meridian as high as the
// pole is from the zenith; the Sun stands on the ecliptic.
func TestCircles(t *testing.T) {
	at := time.Date(2027, 4, 21, 0, 30, 0, 0, time.UTC)
	for _, latitude := range []float64{46.09, -45.87, 0, 90, -90} {
		dome := DomeAt(placeAt(latitude, -64.77, time.UTC), at)
		for _, h := range dome.Equator() {
			// sin δ = sin φ sin h + cos φ cos h cos A, zero all along.
			phi := quantity.Degrees(latitude)
			if dec := phi.Sin()*h.Altitude.Sin() + phi.Cos()*h.Altitude.Cos()*h.Azimuth.Cos(); math.Abs(dec) > 1e-12 {
				t.Errorf("at %v° the equator has declination %v", latitude, dec)
			}
		}
		sun := almanac.SunAt(at)
		stands := dome.At(Direction{sun.RightAscension, sun.Declination})
		nearest := math.Inf(1)
		for _, h := range dome.Ecliptic() {
			nearest = min(nearest, apart(direction(h.Azimuth.Degrees(), h.Altitude.Degrees()), direction(stands.Azimuth.Degrees(), stands.Altitude.Degrees()))/3600)
		}
		if nearest > 1.001 { // the points are two degrees apart
			t.Errorf("at %v° the Sun is %v° from the ecliptic", latitude, nearest)
		}
	}
}

// Nothing panics and nothing is NaN outside the range.
func TestFarTimes(t *testing.T) {
	for _, year := range []int{-20000, 1, 1949, 2101, 30000} {
		for _, s := range Stars()[:5] {
			d := s.At(time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC))
			if math.IsNaN(d.RightAscension.Degrees() + d.Declination.Degrees()) {
				t.Errorf("%s in %d is at %v", s.Designation, year, d)
			}
		}
	}
}

func ExampleDomeAt() {
	zone, err := time.LoadLocation("America/Moncton")
	if err != nil {
		fmt.Println(err)
		return
	}
	school := placeAt(46.09, -64.77, zone)
	arcturus, _ := Find("α Boo")
	h := Seen(DomeAt(school, time.Date(2027, 4, 20, 21, 30, 0, 0, zone)).Star(arcturus))
	fmt.Printf("%s %.0f° high, bearing %.0f°\n", arcturus.Name, h.Altitude.Degrees(), h.Azimuth.Degrees())
	// Output: Arcturus 32° high, bearing 96°
}
