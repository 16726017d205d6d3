package dial_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// A truth is what put the marks of a class out of place.
type truth struct {
	latitude, declination float64 // degrees
	turn, gnomon          float64 // degrees
	watch                 float64 // minutes fast
	noise                 float64 // degrees
}

// marksOf makes the marks of a day, one for each of the hour angles by the
// watch, by points: the tip of the gnomon is carried down the Sun's ray.
func marksOf(t *testing.T, c truth, noise *rand.Rand, hours ...float64) []dial.Mark {
	t.Helper()
	var marks []dial.Mark
	noon, side := 0.0, 1.0
	if c.latitude < 0 {
		noon, side = 180, -1
	}
	slope := (math.Abs(c.latitude) + c.gnomon) * math.Pi / 180
	for _, watch := range hours {
		azimuth, altitude := dial.SunDirection(deg(c.latitude), deg(c.declination), deg(watch-c.watch/4))
		bearing, length, ok := dial.Shadow(quantity.Metres(math.Sin(slope)), azimuth, altitude)
		if !ok {
			t.Fatalf("the Sun is down at hour angle %g°", watch)
		}
		laid := deg(noon + c.turn)
		north := math.Cos(slope)*laid.Cos() + length.Metres()*bearing.Cos()
		east := math.Cos(slope)*laid.Sin() + length.Metres()*bearing.Sin()
		line := side * (quantity.Atan2(east, north) - laid).Signed().Degrees()
		if noise != nil {
			line += c.noise * noise.NormFloat64()
		}
		marks = append(marks, dial.Mark{Line: deg(line), HourAngle: deg(watch), Declination: deg(c.declination)})
	}
	return marks
}

var all = dial.Unknown{Turn: true, Gnomon: true, Watch: true}

// Marks without noise give the causes back, far from right ones too. 1e-6°, a
// ten thousandth of a minute: where the search has settled.
func TestFitFindsTheCauses(t *testing.T) {
	for _, c := range []truth{
		{46.09, 11.5, -16.2, 0, 0, 0},
		{46.09, -15, 7, -5, 4, 0},
		{-45.87, -10, 25, 6, -60, 0},
		{-45.87, 15, -130, 0, 0, 0},
		{64.1, 11.5, 180, 3, 60, 0},
		{27.7, 0, 2, -8, -3, 0},
	} {
		fit, err := dial.FitMarks(deg(c.latitude), marksOf(t, c, nil, -60, -45, -30, -10, 5, 20, 40, 55), all)
		if err != nil {
			t.Errorf("%+v: %v", c, err)
			continue
		}
		name := fmt.Sprintf("%+v", c)
		near(t, name+": turn", (fit.Turn - deg(c.turn)).Signed().Degrees(), 0, 1e-6)
		near(t, name+": gnomon", fit.Gnomon.Degrees(), c.gnomon, 1e-6)
		near(t, name+": watch", fit.Watch.Minutes(), c.watch, 1e-4)
		near(t, name+": scatter", fit.Scatter.Degrees(), 0, 1e-6)
		if fit.TurnMargin <= 0 || fit.GnomonMargin <= 0 || fit.WatchMargin <= 0 {
			t.Errorf("%s: margins %v %v %v", name, fit.TurnMargin, fit.GnomonMargin, fit.WatchMargin)
		}
	}
}

// 1000 classes in all, each case with its own seed: turn, gnomon and watch lie
// within the stated margins together in at least 95 of 100. Where the watch was
// set, to the standard deviation given, its true error is drawn from that; where
// nothing is known of it, it is what the case says.
func TestFitMarginsHold(t *testing.T) {
	const trials = 200
	within, n := 0, 0
	for seed, c := range []struct {
		truth
		set time.Duration
	}{
		{truth{46.09, 11.5, -16.2, 0, 0, 0.5}, time.Minute},
		{truth{46.09, -8, 5, 4, 0, 1}, 2 * time.Minute},
		{truth{-45.87, -22, -20, -3, -60, 0.4}, 0},
		{truth{54.8, 20, 3, 2, 5, 0.5}, 0},
		{truth{27.7, 23, 12, -6, 2, 0.3}, 0},
	} {
		noise := rand.New(rand.NewPCG(uint64(seed), 4))
		failed := 0
		for range trials {
			if c.set > 0 {
				c.watch = c.set.Minutes() * noise.NormFloat64()
			}
			ask := all
			ask.WatchWithin = c.set
			fit, err := dial.FitMarks(deg(c.latitude), marksOf(t, c.truth, noise, -60, -45, -30, -15, 0, 15, 30, 45, 60), ask)
			n++
			if err != nil {
				failed++
				continue
			}
			if math.Abs((fit.Turn-deg(c.turn)).Signed().Degrees()) <= fit.TurnMargin.Degrees() &&
				math.Abs((fit.Gnomon-deg(c.gnomon)).Degrees()) <= fit.GnomonMargin.Degrees() &&
				math.Abs(fit.Watch.Minutes()-c.watch) <= fit.WatchMargin.Minutes() {
				within++
			}
		}
		t.Logf("case %d: %d of %d so far, %d without an answer", seed, within, n, failed)
	}
	if within < n*95/100 {
		t.Errorf("%d of %d within the margins", within, n)
	}
	if within > n*995/1000 {
		t.Errorf("%d of %d within the margins: they are too wide to be worth stating", within, n)
	}
}

// One cause at a time holds its 95 of 100 too.
func TestFitOfOneCause(t *testing.T) {
	noise := rand.New(rand.NewPCG(9, 4))
	within := 0
	for range 300 {
		fit, err := dial.FitMarks(deg(46.09), marksOf(t, truth{46.09, 11.5, -16.2, 0, 0, 0.8}, noise, -30, -15, 0, 15, 30), dial.Unknown{Turn: true})
		if err != nil {
			t.Fatal(err)
		}
		if fit.Gnomon != 0 || fit.Watch != 0 || fit.GnomonMargin != 0 || fit.WatchMargin != 0 {
			t.Fatalf("causes that were not asked for: %+v", fit)
		}
		if math.Abs((fit.Turn - deg(-16.2)).Degrees()) <= fit.TurnMargin.Degrees() {
			within++
		}
	}
	// Three standard deviations of 300 throws at 0.95 are 11.3.
	near(t, "within the margin", float64(within), 285, 11.3)
}

func TestMarksThatTellNothing(t *testing.T) {
	good := truth{46.09, 11.5, -16.2, 0, 0, 0}
	var few *dial.TooFew
	if _, err := dial.FitMarks(deg(46.09), marksOf(t, good, nil, -30, 0, 15, 30), all); !errors.As(err, &few) || few.Marks != 4 || few.Want != 5 {
		t.Errorf("four marks: %v", err)
	}
	if _, err := dial.FitMarks(deg(46.09), nil, all); !errors.As(err, &few) {
		t.Errorf("no marks: %v", err)
	}
	var undecided *dial.Undecided
	for name, marks := range map[string][]dial.Mark{
		"all at one hour": marksOf(t, good, nil, 30, 30, 30, 30, 30, 30),
		"one quarter of an hour": marksOf(t, truth{46.09, 11.5, -16.2, 0, 0, 0.5}, rand.New(rand.NewPCG(1, 1)),
			30, 30.5, 31, 31.5, 32, 32.5, 33, 33.5),
	} {
		if fit, err := dial.FitMarks(deg(46.09), marks, all); !errors.As(err, &undecided) {
			t.Errorf("%s: %v, turn %.1f ± %.1f°", name, err, fit.Turn.Degrees(), fit.TurnMargin.Degrees())
		}
	}
	// At a pole a turned plate and a wrong watch are the same thing, on the equator
	// every shadow of a flat style lies along it.
	pole := marksOf(t, truth{90, 15, 10, 0, 0, 0}, nil, -60, -30, 0, 30, 60, 90)
	if _, err := dial.FitMarks(deg(90), pole, dial.Unknown{Turn: true, Watch: true}); !errors.As(err, &undecided) {
		t.Errorf("pole: %v", err)
	}
	if fit, err := dial.FitMarks(deg(90), pole, dial.Unknown{Turn: true}); err != nil || math.Abs(fit.Turn.Degrees()-10) > 1e-6 {
		t.Errorf("pole, turn alone: %+v, %v", fit, err)
	}
	if _, err := dial.FitMarks(0, marksOf(t, truth{0, 11.5, 0, 0, 0, 0}, nil, -60, -30, 0, 30, 60, 50), all); !errors.As(err, &undecided) {
		t.Errorf("equator: %v", err)
	}
	var against *dial.Contradictory
	swapped := marksOf(t, good, nil, -60, -45, -30, -15, 0, 15, 30, 45, 60)
	for i := range swapped {
		if i%2 == 0 {
			swapped[i].Line = -swapped[i].Line
		}
	}
	if _, err := dial.FitMarks(deg(46.09), swapped, all); !errors.As(err, &against) || against.Scatter < deg(4) {
		t.Errorf("marks on both sides: %v", err)
	}
	if _, err := dial.FitMarks(deg(95), swapped, all); err == nil {
		t.Error("latitude 95° was taken")
	}
	for _, err := range []error{few, undecided, against} {
		if err.Error() == "" {
			t.Error("an error without words")
		}
	}
}

// A class in Alder Reach laid its plate along the needle; its marks say so.
func ExampleFitMarks() {
	latitude, declination := quantity.Degrees(46.09), quantity.Degrees(11.5)
	needle := dial.True(latitude).Turned(quantity.Degrees(-16.2))
	var marks []dial.Mark
	for hour := -4.0; hour <= 4; hour++ {
		h := quantity.Hours(hour)
		line, _ := needle.Line(dial.SunDirection(latitude, declination, h))
		nearest := quantity.Degrees(math.Round(line.Degrees())) // as a protractor reads it
		marks = append(marks, dial.Mark{Line: nearest, HourAngle: h, Declination: declination})
	}
	fit, err := dial.FitMarks(latitude, marks, dial.Unknown{Turn: true, Gnomon: true, Watch: true, WatchWithin: time.Minute})
	fmt.Printf("turned %.0f° ± %.0f°, watch %v fast, %v\n",
		fit.Turn.Degrees(), fit.TurnMargin.Degrees(), fit.Watch.Round(time.Minute), err)
	// Output:
	// turned -16° ± 2°, watch 0s fast, <nil>
}
