package maps

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

func marsReckon(t *testing.T, name string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, Entries(), "alder reach", name, "2027-04-20", given...)
}

// Where each of the ten landed, by the names that the sources of the gazetteer have: Gusev,
// Meridiani Planum, Gale, Elysium Planitia, Jezero, Utopia Planitia; those of the Vikings,
// Pathfinder and Phoenix from memory.
func TestMarsSitesAreInTheirPlaces(t *testing.T) {
	want := map[string]string{
		"Viking 1": "Chryse Planitia", "Viking 2": "Utopia Planitia", "Pathfinder": "Chryse Planitia", "Spirit": "Gusev",
		"Opportunity": "Meridiani Planum", "Phoenix": "near Vastitas Borealis", "Curiosity": "Gale", "InSight": "Elysium Planitia",
		"Perseverance": "Jezero", "Zhurong": "Utopia Planitia",
	}
	r := marsReckon(t, "mars-map")
	names, places := entrytest.TextsOf(t, r, "sites", "name"), entrytest.TextsOf(t, r, "sites", "near")
	if len(names) != len(want) {
		t.Fatalf("%d sites", len(names))
	}
	for i, name := range names {
		if places[i] != want[name] {
			t.Errorf("%s is in %q, want %q", name, places[i], want[name])
		}
	}
}

// The way of the facts, by the formula of half angles (R. W. Sinnott, Sky & Telescope 68, 1984,
// page 159), which compute/globe does not use, and what walker and rover make of it.
func TestMarsWay(t *testing.T) {
	r := marsReckon(t, "mars-map", "from=Opportunity", "to=Hellas Planitia", "school.way_to=Halifax", "school.way_km=185")
	half := func(a float64) float64 { s := math.Sin(a * math.Pi / 360); return s * s }
	cos := func(a float64) float64 { return math.Cos(a * math.Pi / 180) }
	h := half(-42.43+1.9462) + cos(-42.43)*cos(-1.9462)*half(70.50+5.5266)
	km := 2 * 3389.5 * math.Asin(math.Sqrt(h))
	for name, want := range map[string]float64{
		"way": km, "walk": km / 24, "drive_nonstop": km / 0.152 / 24, "drive": km / 0.4 / 365.25, "known": km / 185,
		"strip": 2 * math.Pi * 3389.5 / 360 * math.Hypot(-42.43+1.9462, 70.50+5.5266), "round": 21297,
	} {
		if got := entrytest.Fact(t, r, name).Number; math.Abs(got/want-1) > 1e-4 {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	// Hellas is to the south-east.
	if got := entrytest.English(t).Text(entrytest.Fact(t, r, "toward")); got != "south-east" {
		t.Errorf("it sets out toward the %s", got)
	}
}

func TestMarsUnknownNames(t *testing.T) {
	for given, want := range map[string]string{
		"from=Olimpus Mons": `from is "Olimpus Mons", not a name of the map's tables; did you mean "Olympus Mons"?`,
		"to=Curiousity":     `to is "Curiousity", not a name of the map's tables; did you mean "Curiosity"?`,
	} {
		if got := entrytest.Complaint(t, []entry.Entry{marsMap()}, "mars-map", "2027-04-20", given); got != want {
			t.Errorf("%s: %s, want %s", given, got, want)
		}
	}
}

// Without a way that the class knows nothing speaks of one.
func TestMarsWithoutAKnownWay(t *testing.T) {
	with := marsReckon(t, "mars-map", "school.way_to=Halifax", "school.way_km=185")
	without := marsReckon(t, "mars-map", "school.way_to=")
	if entrytest.Fact(t, with, "knows_way").Number != 1 || entrytest.Fact(t, without, "knows_way").Number != 0 {
		t.Error("knows_way is wrong")
	}
	columns := func(r result.Result) int { return len(r.Tables[0].Columns) }
	if columns(with) != columns(without)+1 {
		t.Errorf("%d columns with a way and %d without", columns(with), columns(without))
	}
	words := entrytest.English(t)
	for _, d := range []drawing.Drawing{without.Drawings[0], marsWall(entry.KnownWay{}), marsSheet(entry.KnownWay{})} {
		for _, l := range words.Place(&d, typeset.OnPaper) {
			if text := strings.Join(l.Lines, " "); strings.Contains(text, "way") {
				t.Errorf("%s says %q", d.Name, text)
			}
		}
	}
}

// A bar of so many ways is 1000 to 2500 km long, whatever the way, or one way.
func TestMarsScaleBars(t *testing.T) {
	for km := 1.0; km < 20000; km *= 1.13 {
		known := entry.KnownWay{To: "B", Length: quantity.Kilometres(km)}
		if long := barWays(known) * km; km < 1000 && (long < 1000-1e-6 || long > 2500+1e-6) || km >= 1000 && long != km {
			t.Errorf("ways of %.1f km make a bar of %.0f km", km, long)
		}
	}
	m := marsPicture{scale: 1.35}
	if got, want := m.millimetres(quantity.Kilometres(2000)), 2000/(2*math.Pi*3389.5/360)*1.35; math.Abs(got-want) > 1e-9 {
		t.Errorf("2000 km are %v mm, want %v", got, want)
	}
}

// Latitude and longitude of the net: north is up, east is right.
func TestMarsIsTheRightWayRound(t *testing.T) {
	m := marsPicture{corner: drawing.Point{X: 10, Y: 20}, scale: 0.5}
	olympus, _ := globe.Find(globe.Mars, "Olympus Mons")
	got := m.at(olympus.At)
	if want := (drawing.Point{X: 10 + (180-133.8)*0.5, Y: 20 + (90-18.65)*0.5}); math.Hypot(got.X-want.X, got.Y-want.Y) > 1e-9 {
		t.Errorf("Olympus Mons is at %v, want %v", got, want)
	}
}

// What is long is as long as the Gazetteer has it, and passes its middle.
func TestMarsStrokes(t *testing.T) {
	point := func(f globe.Flat) globe.Point {
		return globe.Point{Latitude: quantity.Degrees(f.North), Longitude: quantity.Degrees(f.East)}
	}
	for _, s := range globe.Spots(globe.Mars) {
		stroke, ok := marsStrokes[s.Name]
		if ok != isLong(s) {
			t.Errorf("%s: long %v, drawn as a line %v", s.Name, isLong(s), ok)
			continue
		}
		if !ok {
			continue
		}
		span := globe.Mars.Apart(point(stroke[0]), point(stroke[len(stroke)-1]))
		if share := float64(span / s.Across); share < 0.85 || share > 1.1 {
			t.Errorf("%s spans %.0f km, the Gazetteer has %.0f", s.Name, span.Kilometres(), s.Across.Kilometres())
		}
		near := math.Inf(1)
		for i, to := range stroke[1:] {
			for k := range 20 {
				from, f := stroke[i], float64(k)/20
				near = min(near, math.Hypot(from.East+f*(to.East-from.East)-s.At.Longitude.Degrees(), from.North+f*(to.North-from.North)-s.At.Latitude.Degrees()))
			}
		}
		if near > 3 {
			t.Errorf("%s passes %.1f° from its middle", s.Name, near)
		}
	}
}

// Blank and key agree number by number, and each number stands at its feature: within its
// circle, or beside it.
func TestMarsBlankAndKeyAgree(t *testing.T) {
	key := marsReckon(t, "mars-map-key")
	names, numbers := entrytest.TextsOf(t, key, "key", "name"), entrytest.TextsOf(t, key, "key", "number")
	for _, paper := range []string{"Letter", "A4"} {
		blank := marsReckon(t, "mars-blank", "school.paper="+paper)
		if len(blank.Sheets) != 1 {
			t.Fatalf("%s: %d sheets", paper, len(blank.Sheets))
		}
		d := blank.Sheets[0].Drawing
		at := map[string]drawing.Point{}
		for _, l := range entrytest.English(t).Place(&d, typeset.OnPaper) {
			if d.Shapes[l.Shape].Role == "number" {
				at[l.Lines[0]] = l.At
			}
		}
		if len(at) != len(names) || entrytest.Fact(t, blank, "count").Number != float64(len(names)) || entrytest.Fact(t, key, "count").Number != float64(len(names)) {
			t.Fatalf("%d numbers on the sheet, %d in the key", len(at), len(names))
		}
		for i, name := range names {
			s, ok := globe.Find(globe.Mars, name)
			if !ok || numbers[i] != strconv.Itoa(i+1) {
				t.Fatalf("%s %s is not in the gazetteer", numbers[i], name)
			}
			mm := marsSheetScale
			want := drawing.Point{X: marsSheetLeft + (180+s.At.Longitude.Degrees())*mm, Y: marsSheetTop + (90-s.At.Latitude.Degrees())*mm}
			reach := max(4, min(6, s.Across.Kilometres()/59.16*mm/2))
			if off := math.Hypot(at[numbers[i]].X-want.X, at[numbers[i]].Y-want.Y); off > reach+0.7 {
				t.Errorf("%s: %s, %s, stands %.1f mm from its middle", paper, numbers[i], name, off)
			}
		}
	}
	if slices.Contains(names, "") || len(slices.Compact(slices.Sorted(slices.Values(names)))) != len(names) {
		t.Errorf("a name is there twice: %v", names)
	}
}

// Each card says what a spot is, where, and who landed; and leads to a library.
func TestMarsWalk(t *testing.T) {
	r := marsReckon(t, "mars-map", "school.way_to=Halifax", "school.way_km=185")
	if len(r.Walks) != 1 || len(r.Walks[0].Stops) != 43 || r.Walks[0].Drawing != r.Drawings[0].Name {
		t.Fatalf("walks %+v", r.Walks)
	}
	words := entrytest.English(t)
	cards, keys := map[string]string{}, map[string]bool{}
	for _, s := range r.Walks[0].Stops {
		if keys[s.Key] {
			t.Errorf("two stops are called %s", s.Key)
		}
		keys[s.Key] = true
		if s.At.X < 0 || s.At.X > r.Drawings[0].Width || s.At.Y < 0 || s.At.Y > r.Drawings[0].Height {
			t.Errorf("%s is off the map", s.Key)
		}
		var lines []string
		for _, line := range s.Says {
			lines = append(lines, words.Text(say.Value{Kind: say.Wording, Phrase: line}))
		}
		cards[s.Key] = strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(strings.Join(lines, " "))
	}
	for key, want := range map[string][]string{
		"olympus-mons": {"mountain, 610 km across", "3.3 times the way to Halifax", "Mons means mountain", "search for"},
		"zhurong":      {"China (CNSA)", "Zhurong drove about", "Utopia Planitia"},
		"curiosity":    {"United States (NASA)", "came down in Gale"},
	} {
		for _, part := range want {
			if !strings.Contains(cards[key], part) {
				t.Errorf("the card of %s lacks %q: %s", key, part, cards[key])
			}
		}
	}
}

// The poster fills two sheets by two of either paper, laid on its long side.
func TestMarsPosterIsOnFourSheets(t *testing.T) {
	for _, paper := range []string{"Letter", "A4"} {
		r := marsReckon(t, "mars-poster", "school.paper="+paper)
		if len(r.Sheets) != 4 || r.Sheets[0].Rows != 2 || r.Sheets[0].Columns != 2 {
			t.Errorf("%s: %d sheets", paper, len(r.Sheets))
		}
		// A degree, 59.16 km, is 1.35 mm on it.
		if got := entrytest.Fact(t, r, "scale").Number; math.Abs(got-438.2) > 0.1 {
			t.Errorf("a centimetre is %v km", got)
		}
	}
}
