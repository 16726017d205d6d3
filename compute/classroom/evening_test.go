package classroom

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// evenings reads a table of pyephem's: on which school days an evening can begin and when, and
// what Sun, Moon and planets do then (testdata/reference/evenings.py). Rows are by place.
func evenings(t *testing.T) (rows map[string][]map[string]string, places []string) {
	t.Helper()
	f, err := os.Open("../../testdata/reference/evenings.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	table, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows = map[string][]map[string]string{}
	for _, line := range table[1:] {
		row := map[string]string{}
		for i, name := range table[0] {
			row[name] = line[i]
		}
		if rows[row["place"]] == nil {
			places = append(places, row["place"])
		}
		rows[row["place"]] = append(rows[row["place"]], row)
	}
	return rows, places
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func dateOf(t *testing.T, text string) place.Date {
	t.Helper()
	at, err := time.Parse(time.DateOnly, text)
	if err != nil {
		t.Fatal(err)
	}
	return place.Date{Year: at.Year(), Month: at.Month(), Day: at.Day()}
}

// termOf is the term of a place's rows, all of whose days an evening may be on.
func termOf(t *testing.T, rows []map[string]string) (Term, place.Place) {
	t.Helper()
	first, last := dateOf(t, rows[0]["date"]), dateOf(t, rows[len(rows)-1]["date"])
	term := Term{First: first, Last: last, Weekdays: fiveDays, Times: spans(t, "9:00-9:50"),
		Outing: Outing{First: first, Length: 75 * time.Minute, EndsBy: 21*time.Hour + 30*time.Minute}}
	return term, placeIn(t, number(t, rows[0]["latitude_deg"]), number(t, rows[0]["longitude_deg"]), rows[0]["zone"])
}

// On the same days as by pyephem there are stars in time, from the same minute on, with the
// Moon and the planet that it finds. Heights are alike to 0.05° (its refraction is another
// formula), lit shares to 0.001.
func TestEveningsAgainstPyephem(t *testing.T) {
	rows, places := evenings(t)
	worst := 0.0
	near := func(what string, row map[string]string, got, want, limit float64) {
		t.Helper()
		worst = max(worst, math.Abs(got-want)/limit)
		if math.Abs(got-want) > limit {
			t.Errorf("%s %s: %s %.3f, want %.3f", row["place"], row["date"], what, got, want)
		}
	}
	for _, name := range places {
		term, p := termOf(t, rows[name])
		found := map[place.Date]Evening{}
		for _, e := range term.Evenings(p) {
			found[e.Date] = e
		}
		for _, row := range rows[name] {
			e, ok := found[dateOf(t, row["date"])]
			if ok != (row["begin"] != "") {
				t.Errorf("%s %s: an evening %t, want begin %q", name, row["date"], ok, row["begin"])
			}
			if !ok || row["begin"] == "" {
				continue
			}
			if got := new(time.Time).Add(e.From).Format("15:04"); got != row["begin"] {
				t.Errorf("%s %s begins %s, want %s", name, row["date"], got, row["begin"])
				continue
			}
			from, _ := e.Moments(p)
			sun := func(s time.Time) float64 { return almanac.SunFrom(p, s).Altitude.Degrees() }
			near("Sun at the begin", row, sun(from), number(t, row["sun_begin_deg"]), 0.01)
			near("Sun at the figures", row, sun(e.Part(Figures).middle(p)), number(t, row["sun_figures_deg"]), 0.01)
			near("Sun at the counting", row, sun(e.Part(Counting).middle(p)), number(t, row["sun_count_deg"]), 0.01)
			lit, low := number(t, row["moon_lit"]), number(t, row["moon_low_deg"])
			near("Moon lit", row, almanac.Moon.LimbFrom(p, e.Part(MoonLook).middle(p)).Lit, lit, 0.001)
			if low > 2 {
				near("Moon high", row, leastHeight(p, almanac.Moon, e.Part(MoonLook)).Degrees(), low, 0.05)
			}
			if want := low >= 10 && lit >= 0.15 && lit <= 0.85; e.Moon != want {
				t.Errorf("%s %s: Moon %t, want %t (%.2f lit, %.1f° high)", name, row["date"], e.Moon, want, lit, low)
			}
			planet := ""
			if e.HasPlanet {
				planet = e.Planet.String()
				near("planet high", row, leastHeight(p, e.Planet, e.Part(PlanetLook)).Degrees(), number(t, row["planet_low_deg"]), 0.05)
			}
			if planet != row["planet"] {
				t.Errorf("%s %s: planet %q, want %q", name, row["date"], planet, row["planet"])
			}
		}
	}
	t.Logf("worst: %.2f of its limit", worst)
}

// The nights that are chosen from these days: the Moon between 15 % and 85 % and high, Jupiter
// up, another such evening soon after it; of those the half Moon and the days before a free
// one. Tromsø has none in May, and in December of 2026, dark all day, two with the Moon, which
// stayed below the horizon before.
func TestNightsChosen(t *testing.T) {
	rows, places := evenings(t)
	want := map[string][2]string{
		"alder reach": {"2027-04-15", "2027-04-16"}, "dunedin": {"2027-05-13", "2027-05-14"}, "nairobi": {"2027-05-13", "2027-05-14"},
		"tromso": {"", ""}, "apia": {"2027-05-13", "2027-05-14"}, "tromso in winter": {"2026-12-17", "2026-12-18"},
	}
	for _, name := range places {
		term, p := termOf(t, rows[name])
		term.Outing.First = place.Date{} // the fourth day of the term
		night, reserve, found := ChooseEvening(term.Evenings(p))
		got := [2]string{night.Date.String(), reserve.Date.String()}
		for i := range got {
			if i >= found {
				got[i] = ""
			}
		}
		if got != want[name] {
			t.Errorf("%s: %v, want %v", name, got, want[name])
		}
	}
}

// The parts follow one another without a gap, from begin to end, also where an evening does
// not divide by fifteen.
func TestPartsFillTheEvening(t *testing.T) {
	for minutes := 45; minutes <= 150; minutes++ {
		s := Span{20*time.Hour + 15*time.Minute, 20*time.Hour + time.Duration(15+minutes)*time.Minute}
		at := s.From
		for part := Arriving; part <= HomeGoing; part++ {
			p := s.Part(part)
			if p.From != at || p.To <= p.From || p.From%time.Minute != 0 {
				t.Errorf("%d minutes: part %d from %s to %s, want it from %s", minutes, part, p.From, p.To, at)
			}
			at = p.To
		}
		if at != s.To {
			t.Errorf("%d minutes: ends at %s, want %s", minutes, at, s.To)
		}
	}
}

func TestChooseEvening(t *testing.T) {
	on := func(day int, moon, planet bool, score float64) Evening {
		return Evening{Slot: Slot{Date: monday.Add(day)}, Moon: moon, HasPlanet: planet, score: score}
	}
	for _, c := range []struct {
		name           string
		list           []Evening
		night, reserve int // days after monday; −1 for none
	}{
		{"none", nil, -1, -1},
		{"one", []Evening{on(3, true, true, 1)}, 3, -1},
		{"the Moon before the score", []Evening{on(1, false, true, 3), on(2, true, false, 0), on(3, true, false, 0)}, 2, 3},
		{"a planet besides the Moon", []Evening{on(1, true, false, 3), on(2, true, true, 0), on(3, true, true, 0)}, 2, 3},
		{"the best has no reserve", []Evening{on(1, true, true, 1), on(4, true, true, 2)}, 1, 4},
		{"only the last shows more", []Evening{on(1, false, true, 1), on(4, true, true, 2)}, 4, -1},
		{"a reserve that shows as much", []Evening{on(1, true, true, 1), on(2, true, true, 2), on(4, false, false, 2)}, 1, 2},
		{"a reserve soon rather than a better one late", []Evening{on(1, true, true, 1), on(5, true, true, 1), on(30, true, true, 9)}, 1, 5},
		{"a late one rather than none", []Evening{on(1, true, true, 1), on(30, true, true, 0)}, 1, 30},
		{"of equals the earlier", []Evening{on(1, true, true, 1), on(2, true, true, 1), on(3, true, true, 1)}, 1, 2},
	} {
		night, reserve, found := ChooseEvening(c.list)
		got := [2]int{-1, -1}
		if found > 0 {
			got[0] = monday.DaysUntil(night.Date)
		}
		if found > 1 {
			got[1] = monday.DaysUntil(reserve.Date)
		}
		if got != [2]int{c.night, c.reserve} {
			t.Errorf("%s: %v, want %d and %d", c.name, got, c.night, c.reserve)
		}
	}
}

// A night is looked for no earlier than some days into the term, or within the days that the
// school gives, and past the term by its days off.
func TestEveningDays(t *testing.T) {
	rows, _ := evenings(t)
	term, p := termOf(t, rows["nairobi"])
	days := func() (first, last place.Date) {
		list := term.Evenings(p)
		return list[0].Date, list[len(list)-1].Date
	}
	term.Outing.First = place.Date{}
	if first, last := days(); first != term.First.Add(EveningNotice) || last != term.Last {
		t.Errorf("from %s to %s, want the fourth day to the end", first, last)
	}
	term.Outing.First, term.Outing.Last = on(4, 20), on(4, 29)
	if first, last := days(); first != on(4, 20) || last != on(4, 29) {
		t.Errorf("from %s to %s, want 20 to 29 April", first, last)
	}
	term.DaysOff = []place.Date{on(5, 17)}
	if e, ok := term.NextEvening(p, on(5, 14), 10); !ok || e.Date != on(5, 18) {
		t.Errorf("next %s, want Tuesday 18 May: a weekend and a day off lie between", e.Date)
	}
	tromso, q := termOf(t, rows["tromso"])
	if e, ok := tromso.NextEvening(q, tromso.Last, 400); !ok || e.Date.Month != time.September {
		t.Errorf("next in Tromsø %s, want September", e.Date)
	}
}

func TestEveningAdults(t *testing.T) {
	for pupils, want := range map[int]int{0: 2, 1: 2, 16: 2, 17: 3, 24: 3, 25: 4, 27: 4} {
		if got := EveningAdults(pupils); got != want {
			t.Errorf("%d pupils: %d adults, want %d", pupils, got, want)
		}
	}
}
