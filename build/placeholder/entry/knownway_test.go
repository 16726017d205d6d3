package entry_test

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/quantity"
)

func TestKnownWayMeasures(t *testing.T) {
	way := entry.KnownWayOf(form.Values{school.WayTo.Name(): "Halifax", school.WayKm.Name(): 200.0})
	for km, want := range map[float64]string{
		21297: "106 times the way to Halifax",
		2000:  "10 times the way to Halifax",
		1980:  "9.9 times the way to Halifax",
		220:   "1.1 times the way to Halifax",
		205:   "about the way to Halifax",
		195:   "about the way to Halifax",
		185:   "about nine tenths of the way to Halifax",
		66:    "about a third of the way to Halifax",
		22:    "about a tenth of the way to Halifax",
		10:    "5 % of the way to Halifax",
		0.4:   "0.2 % of the way to Halifax",
	} {
		if got := written(t, way.Measure(quantity.Kilometres(km))); got != want {
			t.Errorf("%v km is %s, want %s", km, got, want)
		}
	}
	if got := written(t, way.Times(quantity.Kilometres(620))); got != "3.1" {
		t.Errorf("620 km are %s ways", got)
	}
}

// A part of a way is told by the name of a fraction within a sixth of it.
func TestKnownWayPartsAreNear(t *testing.T) {
	sizes := map[string]float64{
		"a tenth": 1. / 10, "an eighth": 1. / 8, "a sixth": 1. / 6, "a fifth": 1. / 5, "a quarter": 1. / 4, "a third": 1. / 3, "two fifths": 2. / 5,
		"half": 1. / 2, "three fifths": 3. / 5, "two thirds": 2. / 3, "three quarters": 3. / 4, "nine tenths": 9. / 10,
	}
	way := entry.KnownWay{To: "B", Length: quantity.Kilometres(1)}
	for n := 0.09; n < 0.95; n += 0.003 {
		got := written(t, way.Measure(quantity.Kilometres(n)))
		part, ok := strings.CutPrefix(strings.TrimSuffix(got, " of the way to B"), "about ")
		if size := sizes[part]; !ok || size == 0 || size/n > 7./6 || n/size > 7./6 {
			t.Errorf("%.3f is told as %q", n, got)
		}
	}
}

func TestKnownWayOfBothOrNone(t *testing.T) {
	for _, v := range []form.Values{nil, {school.WayTo.Name(): "Halifax"}, {school.WayKm.Name(): 185.0}, {school.WayTo.Name(): "", school.WayKm.Name(): 185.0}} {
		way := entry.KnownWayOf(v)
		if way.Is() || way.Measure(quantity.Kilometres(9)).Kind != say.Nothing || way.Times(quantity.Kilometres(9)).Kind != say.Nothing || way.Name().Kind != say.Nothing {
			t.Errorf("%v gives a way", v)
		}
	}
}

func TestKnownWayMeltsInFrench(t *testing.T) {
	french, err := typeset.Language("fr", false)
	if err != nil {
		t.Fatal(err)
	}
	for to, want := range map[string]string{"Halifax": "3,5 fois le trajet jusqu’à Halifax", "le port": "3,5 fois le trajet jusqu’au port"} {
		way := entry.KnownWay{To: to, Length: quantity.Kilometres(100)}
		got := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(french.Text(way.Measure(quantity.Kilometres(350))))
		if got != want {
			t.Errorf("to %s: %s, want %s", to, got, want)
		}
	}
}
