package strip_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/typeset"
)

const degree = math.Pi / 180

// A planet east of the Sun (the Swiss Ephemeris, aspects.csv) is one of the evening.
// On the field, seen from the Earth's peg by one who faces the Sun's, it stands to
// the left in the north and to the right in the south, as far as its elongation.
func TestFieldSides(t *testing.T) {
	variation := map[string]float64{"alder reach": -16.17, "south": 26.47, "line north": 0.25, "arctic": 11.41} // magvar at 2027.5
	rows := entrytest.Reference(t, "aspects.csv", "swisseph")
	for school, tilt := range variation {
		south := school == "south"
		checked := 0
		for _, date := range []string{"2026-09-22", "2027-01-31", "2027-06-11", "2027-10-20", "2028-07-08", "2029-08-05"} {
			r := reckon(t, school, "strip-field", date, "to=neptune", "field.width_m=80", "field.length_m=120")
			spots, skies := map[string]drawing.Point{}, map[string]string{}
			table := r.Tables[0]
			for i := range table.Rows {
				name := strings.TrimPrefix(table.Rows[i].Cells[0].Phrase.Key, "body.")
				bearing, metres := entrytest.Column(t, r, "bearing")[i], entrytest.Column(t, r, "metres")[i]
				spots[name] = drawing.Point{X: metres * math.Sin(bearing*degree), Y: metres * math.Cos(bearing*degree)} // east and north
				skies[name] = entrytest.Texts(t, r, "pegs", "sky")[i]
				if off := math.Remainder(bearing-entrytest.Column(t, r, "compass")[i]-tilt, 360); math.Abs(off) > 0.9 { // of six years
					t.Errorf("%s: %v° true is %v by compass", school, bearing, entrytest.Column(t, r, "compass")[i])
				}
			}
			if skies["earth"] != "we are here" {
				t.Errorf("the Earth is called %s", skies["earth"])
			}
			for _, row := range rows {
				spot, ok := spots[row["body"]]
				if !ok || row["utc"][:10] != date {
					continue
				}
				apart := entrytest.Number(t, row["elongation_deg"])
				earth := spots["earth"]
				toSun := math.Atan2(-earth.X, -earth.Y) / degree
				toPlanet := math.Atan2(spot.X-earth.X, spot.Y-earth.Y) / degree
				right := math.Remainder(toPlanet-toSun, 360) // clockwise from above
				what := fmt.Sprintf("%s at %s on %s, %.0f° %s of the Sun", row["body"], school, date, apart, row["side"])
				if math.Abs(math.Abs(right)-apart) > 4 { // the field is flat, orbits lean, Mercury moves
					t.Errorf("%s stands %.0f° beside the Sun's peg", what, right)
				}
				if apart < 17 || apart > 148 {
					continue
				}
				checked++
				if left := right < 0; left != ((row["side"] == "east") != south) {
					t.Errorf("%s stands %.0f° to the right of the Sun's peg", what, right)
				}
				if want := map[string]string{"east": "evening sky", "west": "morning sky"}[row["side"]]; skies[row["body"]] != want {
					t.Errorf("%s: %s", what, skies[row["body"]])
				}
				if row["body"] == "pluto" {
					continue // nobody sees it, and it is on no list
				}
				listed := entrytest.Shown(t, r, map[string]string{"east": "evening", "west": "morning"}[row["side"]])
				if !strings.Contains(strings.ToLower(listed), row["body"]) {
					t.Errorf("%s is not among %s", what, listed)
				}
			}
			// Counted on the plan: from longitude 0° the planets run anticlockwise, seen
			// from above the north, clockwise in the mirrored plan of the south.
			turn := entrytest.Fact(t, r, "turn").Number
			longitudes, bearings := entrytest.Column(t, r, "longitude"), entrytest.Column(t, r, "bearing")
			for i := range longitudes {
				want := turn - longitudes[i]
				if south {
					want = turn + longitudes[i]
				}
				entrytest.Near(t, school+": bearing", math.Remainder(bearings[i]-want, 360), 0, 1e-6)
			}
			if got := entrytest.Shown(t, r, "runs"); !strings.HasPrefix(got, map[bool]string{true: "clockwise", false: "anticlockwise"}[south]) {
				t.Errorf("%s: %s", school, got)
			}
			key, side := "strip-field.east_left", "Planets to the left of it are east of it"
			if south {
				key, side = "strip-field.east_right", "Planets to the right of it are east of it"
			}
			entrytest.Tells(t, r.Notes, key, side)
			entrytest.Tells(t, r.Cautions, "caution.pegs", "nobody looks toward the real Sun")
			entrytest.Tells(t, r.Working, "strip-field.working_bearing", map[bool]string{true: " + longitude = ", false: " - longitude = "}[south])

			// The picture has north up: each peg lies at its bearing and distance.
			d := r.Drawings[0]
			sun := entrytest.Roled(d, "sun")[0].Points[0]
			bodies := entrytest.Roled(d, "body")
			metres := entrytest.Column(t, r, "metres")
			scale := 0.0
			for i, peg := range []int{7, 6, 5, 4, 3, 2, 1, 0} { // drawn from Neptune inward; Pluto is off the field or first
				at := bodies[len(bodies)-8+i].Points[0]
				if scale == 0 {
					scale = math.Hypot(at.X-sun.X, at.Y-sun.Y) / metres[peg]
				}
				entrytest.Near(t, school+": east on the picture", (at.X-sun.X)/scale, metres[peg]*math.Sin(bearings[peg]*degree), 1e-6)
				entrytest.Near(t, school+": north on the picture", (sun.Y-at.Y)/scale, metres[peg]*math.Cos(bearings[peg]*degree), 1e-6)
			}
			arrow := entrytest.Roled(d, "seam")
			if up := arrow[len(arrow)-1].Points; up[0].Y >= up[1].Y || up[0].X != up[1].X {
				t.Errorf("the arrow to true north runs from %v to %v", up[1], up[0])
			}
		}
		if checked < 12 {
			t.Errorf("%s: %d planets", school, checked)
		}
	}
}

// Behind or in front of the Sun: by the distance. Venus passed beyond the Sun on 6 January
// 2026 and before it on 24 October 2026, Mars was opposite on 19 February 2027 (from
// memory; elongations in aspects.csv bear them out).
func TestFieldOfConjunctions(t *testing.T) {
	for date, want := range map[string][2]string{
		"2026-01-06": {"behind", "Venus"}, "2026-10-24": {"before", "Venus"}, "2027-02-19": {"night", "Mars"},
	} {
		r := reckon(t, "line north", "strip-field", date)
		for _, fact := range []string{"behind", "before", "evening", "morning", "night"} {
			if got := strings.Contains(entrytest.Shown(t, r, fact), want[1]); got != (fact == want[0]) {
				t.Errorf("%s on %s: %s are %s", want[1], date, fact, entrytest.Shown(t, r, fact))
			}
		}
	}
}

// An astronomical unit of less than two metres is called crowded.
func TestFieldCrowdedOnBothSides(t *testing.T) {
	seen := map[bool]bool{}
	for length := 20; length <= 60; length++ {
		r := reckon(t, "alder reach", "strip-field", "2027-04-20", "field.width_m=20", fmt.Sprintf("field.length_m=%d", length), "turn_deg=0")
		au := entrytest.Fact(t, r, "au_metres").Number
		said := entrytest.Says(r.Warnings, "strip-field.crowded")
		seen[said] = true
		if said != (au < 2) {
			t.Errorf("an au of %v m is crowded: %v", au, said)
		}
		if said {
			entrytest.Tells(t, r.Warnings, "strip-field.crowded", fmt.Sprintf("only %.2f m on it", au))
		}
	}
	if !seen[false] || !seen[true] {
		for size := 10; size < 100; size += 10 {
			r := reckon(t, "alder reach", "strip-field", "2027-04-20", fmt.Sprintf("field.width_m=%d", size), fmt.Sprintf("field.length_m=%d", size))
			au := entrytest.Fact(t, r, "au_metres").Number
			said := entrytest.Says(r.Warnings, "strip-field.crowded")
			seen[said] = true
			if said != (au < 2) {
				t.Errorf("an au of %v m is crowded: %v", au, said)
			}
		}
	}
	if len(seen) != 2 {
		t.Error("one side only was tried")
	}
	// Paces: metres over the pace; the margin is kept free.
	r := reckon(t, "alder reach", "strip-field", "2027-04-20", "class.pace_m=0.8", "margin_m=3", "field.width_m=60", "field.length_m=60")
	metres, paces := entrytest.Column(t, r, "metres"), entrytest.Column(t, r, "paces")
	for i := range metres {
		entrytest.Near(t, "paces", paces[i], metres[i]/0.8, 1e-9)
	}
	if far := entrytest.Fact(t, r, "outermost_metres").Number; far > 30*math.Sqrt2-3 || far < 27 {
		t.Errorf("Saturn stands %v m from the middle of 60 × 60 m with 3 m to spare", far)
	}
}

// A strip of fewer than 60 squares is crowded, one that ends before a planet says
// which, and Pluto beyond the end is no fault.
func TestStripWarningsOnBothSides(t *testing.T) {
	for squares, few := range map[string]bool{"59": true, "60": false, "61": false, "300": false} {
		r := reckon(t, "alder reach", "strip-table", "2027-04-20", "stock.strip_squares="+squares)
		if got := entrytest.Says(r.Warnings, "strip-table.few_squares"); got != few {
			t.Errorf("%s squares are few: %v", squares, got)
		}
		if few { // the Earth at 59 / 30.07
			entrytest.Tells(t, r.Warnings, "strip-table.few_squares", "With 59 squares", "only 1.96 squares")
		}
	}
	// Neptune at 30.0699 au and 149.5979 million km: 4498.4 million km, at 15 million a square 299.9.
	for squares, body := range map[string]string{"299": "Neptune", "300": "", "192": "Neptune", "191": "Uranus"} { // Uranus, 19.189 au, at 191.4
		r := reckon(t, "alder reach", "strip-table", "2027-04-20", "million_km_a_square=15", "stock.strip_squares="+squares)
		text := entrytest.Printed(t, r.Warnings, "strip-table.ends_before")
		if body == "" && text != "" || body != "" && !strings.HasPrefix(text, "The strip ends before "+body+":") {
			t.Errorf("%s squares: %q", squares, text)
		}
		if body == "Neptune" {
			entrytest.Tells(t, r.Warnings, "strip-table.ends_before", "at square 300, and the strip has "+squares)
		}
	}
	// Pluto at 39.48 au: 394 squares, 94 beyond the end.
	entrytest.Near(t, "Pluto beyond the end", entrytest.Fact(t, reckon(t, "alder reach", "strip-table", "2027-04-20"), "beyond").Number, 300*39.48/30.07-300, 0.5)
}

// The star lies along the strip's bearing: 268 550 au at the strip's scale, on a
// sphere of 6371 km; words for north, south, east and west, over the date line too.
func TestStarLandsBySide(t *testing.T) {
	far := 268550 * 33 / 30.06992 / 1000 // km
	arc := far / 6371 / degree
	for _, c := range []struct {
		school              string
		latitude, longitude float64
	}{{"alder reach", 46.09, -64.77}, {"south", -45.87, 170.5}, {"line north", 1.4, 103.8}, {"arctic", 69.6, 18.95}} {
		for bearing, want := range map[string]string{"0": "north", "90": "east", "180": "south", "270": "west", "360": "north", "45": "north-east", "225": "south-west"} {
			r := reckon(t, c.school, "strip-moon", "2027-04-20", "bearing_deg="+bearing)
			b := entrytest.Number(t, bearing) * degree
			latitude := math.Asin(math.Sin(c.latitude*degree)*math.Cos(arc*degree)+math.Cos(c.latitude*degree)*math.Sin(arc*degree)*math.Cos(b)) / degree
			longitude := c.longitude + math.Atan2(math.Sin(b)*math.Sin(arc*degree)*math.Cos(c.latitude*degree), math.Cos(arc*degree)-math.Sin(c.latitude*degree)*math.Sin(latitude*degree))/degree
			longitude = math.Remainder(longitude, 360)
			entrytest.Near(t, c.school+": latitude", entrytest.Fact(t, r, "star_latitude").Number, latitude, 0.002)
			entrytest.Near(t, c.school+": longitude", entrytest.Fact(t, r, "star_longitude").Number, longitude, 0.005)
			if got := entrytest.Shown(t, r, "star_bearing"); got != want {
				t.Errorf("a strip rolled out toward %s° goes %s", bearing, got)
			}
			lat, lon := entrytest.Shown(t, r, "star_latitude"), entrytest.Shown(t, r, "star_longitude")
			if strings.HasSuffix(lat, "north") != (latitude >= 0) || strings.HasSuffix(lon, "east") != (longitude >= 0) || strings.Contains(lat+lon, "-") {
				t.Errorf("%s, %s°: %s, %s for %v and %v", c.school, bearing, lat, lon, latitude, longitude)
			}
		}
	}
	r := reckon(t, "south", "strip-moon", "2027-04-20", "school.longitude=179", "bearing_deg=90")
	if got := entrytest.Shown(t, r, "star_longitude"); !strings.HasSuffix(got, "° west") {
		t.Error("east of 179° E the star lands at", got)
	}
	// Strips of n squares of 110 mm put it 0.9824 n km away, and words follow: in
	// sight within 1 km, a walk within 30, a drive within 300.
	for squares, key := range map[string]string{"1": "in_sight", "2": "a_walk", "30": "a_walk", "31": "by_car", "305": "by_car", "306": "by_plane", "20000": "by_plane", "20600": "other_side", "41200": "round_earth"} {
		r := reckon(t, "alder reach", "strip-moon", "2027-04-20", "stock.strip_squares="+squares)
		if got := strings.TrimPrefix(entrytest.Fact(t, r, "star_words").Phrase.Key, "strip-moon."); got != key {
			t.Errorf("%s squares, %v km: %s", squares, entrytest.Fact(t, r, "star_km").Number, got)
		}
	}
}

// A mark half a square off is a miscount, too far out or too near; Earth's place on
// 300 squares is 9.97677, and its pencil mark counts in centimetres of 11.
func TestStripLogOnBothSides(t *testing.T) {
	for _, c := range []struct{ squares, past, key, words string }{
		{"10", "5.2", "", ""}, {"10", "5.3", "strip-log.too_far", "A, Earth: too far from the Sun, with a miscount of 1"}, // 9.97677 + 0.5 = 10.47677, 5.24 cm
		{"9", "5.3", "", ""}, {"9", "5.2", "strip-log.too_near", "A, Earth: too near the Sun, with a miscount of 1"}, // 9.47677, 5.24 cm
		{"13", "0", "strip-log.too_far", "with a miscount of 3"}, {"8", "0", "strip-log.too_near", "with a miscount of 2"},
	} {
		r := reckonLog(t, "alder reach", "strip-log", "group,body,squares,past_cm\nA,earth,"+c.squares+","+c.past+"\n")
		if c.key == "" {
			if len(r.Notes) != 0 || entrytest.Fact(t, r, "miscounted").Number != 0 {
				t.Errorf("%s squares and %s cm: %s", c.squares, c.past, entrytest.Lines(t, r.Notes))
			}
			continue
		}
		entrytest.Tells(t, r.Notes, c.key, c.words)
		// Above the line of the chart is too far from the Sun.
		d := r.Drawings[0]
		mark, line := entrytest.Roled(d, "mark")[0].Points[0].Y, entrytest.Roled(d, "rule")[0].Points[0].Y
		if above := mark < line; above != (c.key == "strip-log.too_far") {
			t.Errorf("%s: the dot is above the line: %v", c.words, above)
		}
		off := entrytest.Cells(t, r, "places", "off")[0].Number
		entrytest.Near(t, "off", off, (entrytest.Number(t, c.squares)+entrytest.Number(t, c.past)/11-9.97677)*11, 0.001)
	}
	if r := reckon(t, "alder reach", "strip-log", "2027-04-20"); !entrytest.Says(r.Notes, "strip-log.no_records") {
		t.Error("an empty log says nothing of it")
	}
	// The usual error is the middle one of an odd number, the mean of two of an even.
	r := reckonLog(t, "alder reach", "strip-log", "group,body,squares,past_cm\nA,neptune,300,1\nB,neptune,300,2\nC,neptune,300,6\n")
	entrytest.Near(t, "usual", entrytest.Fact(t, r, "usual_off").Number, 2, 0.001)
	r = reckonLog(t, "alder reach", "strip-log", "group,body,squares,past_cm\nA,neptune,300,1\nB,neptune,300,2\nC,neptune,300,6\nD,neptune,299,8\n")
	entrytest.Near(t, "usual of four", entrytest.Fact(t, r, "usual_off").Number, 2.5, 0.001)
}

// On the picture the strip begins with the Sun at the left end of the first row and
// each row goes on where the one above ended.
func TestStripReadsLikeText(t *testing.T) {
	r := reckon(t, "alder reach", "strip-picture", "2027-04-20")
	d := r.Drawings[0]
	papers := entrytest.Roled(d, "paper")
	sun := entrytest.Roled(d, "sun")[0].Points[0]
	if math.Abs(sun.X-papers[0].Points[0].X) > 1e-6 || sun.Y < papers[0].Points[0].Y || sun.Y > papers[0].Points[2].Y {
		t.Errorf("the Sun is at %v, the strip begins at %v", sun, papers[0].Points[0])
	}
	for i := 1; i < len(papers); i++ {
		if papers[i].Points[0].Y <= papers[i-1].Points[0].Y {
			t.Error("rows run upwards")
		}
	}
	per := 300.0 / float64(len(papers))
	wide := papers[0].Points[1].X - papers[0].Points[0].X
	placed := map[string]typeset.Label{}
	for _, l := range entrytest.English(t).Place(&d, typeset.OnPage) {
		placed[l.Lines[0]] = l
	}
	squares := map[string]float64{"Earth": 9.97677, "Jupiter": 51.9079, "Saturn": 95.145, "Neptune": 300}
	for name, at := range squares {
		row := math.Min(math.Ceil(at/per)-1, float64(len(papers))-1)
		want := papers[int(row)].Points[0].X + (at-row*per)/per*wide
		label := placed[name]
		if math.Abs(label.At.X-0.8-want) > 0.2 {
			t.Errorf("%s stands at %v, its place is %v in row %v", name, label.At.X-0.8, want, row)
		}
		if l := label.Leader; len(l) != 2 || math.Abs(l[0].X-want) > 0.2 || l[0].Y < papers[int(row)].Points[0].Y || l[0].Y > papers[int(row)].Points[2].Y {
			t.Errorf("no line leads to %s: %v", name, l)
		}
	}
}
