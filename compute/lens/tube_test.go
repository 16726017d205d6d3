package lens_test

import (
	"math"
	"testing"

	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

var (
	demand = lens.Demand{Nearest: 5, Eyes: 4}
	outer  = lens.Tube{Inside: mm(50), Outside: mm(53), Length: mm(330)}
	inner  = lens.Tube{Inside: mm(45), Outside: mm(48), Length: mm(300)}
)

// Whatever lenses and tubes, a cut that fits can be set to every separation of the
// travel: at the longest the tubes overlap by a diameter, at the shortest something
// is left to hold and nothing touches the front lens, and the stock suffices.
func TestCutsAllowTheTravel(t *testing.T) {
	seen := map[lens.Fit]int{}
	for front := 60.0; front <= 1500; front *= 1.17 {
		for _, eye := range []float64{20, 50, 100} {
			for _, length := range []float64{90, 230, 330, 1000} {
				scope := telescope(t, front, eye)
				big := outer
				big.Length = mm(length)
				c, fit, err := scope.CutTubes(demand, big, inner)
				if err != nil {
					t.Fatal(err)
				}
				seen[fit]++
				if fit != lens.Fits {
					continue
				}
				least, most, err := scope.Travel(demand.Nearest, demand.Eyes)
				if err != nil {
					t.Fatal(err)
				}
				const slack = 1e-9 // m: rounding
				overlap := c.Outer + c.Inner - most
				if overlap < big.Inside-slack || math.Abs(float64(overlap-c.Overlap)) > slack {
					t.Errorf("%v/%v: overlap %v, said %v", front, eye, overlap, c.Overlap)
				}
				if c.OutOf(least) < mm(20)-slack || least-c.Inner < mm(5)-slack {
					t.Errorf("%v/%v: pushed in, %v sticks out and %v is left", front, eye, c.OutOf(least), least-c.Inner)
				}
				if c.Outer > quantity.Length(c.OuterTubes)*big.Length+slack || c.Inner+c.EyeTube > quantity.Length(c.InnerTubes)*inner.Length+slack {
					t.Errorf("%v/%v: %+v is more than the stock of %v", front, eye, c, length)
				}
				for _, l := range []quantity.Length{c.Outer, c.Inner, c.EyeTube} {
					if off := math.Abs(l.Millimetres() - math.Round(l.Millimetres())); off > 1e-6 {
						t.Errorf("%v/%v: a length of %v mm", front, eye, l.Millimetres())
					}
				}
			}
		}
	}
	if seen[lens.Fits] < 50 || seen[lens.TooLong] == 0 || seen[lens.TooShort] == 0 {
		t.Errorf("cases: %v", seen)
	}
}

// 250 and 50 mm by hand: travel 291⅔ to 325.66 mm, so the outer tube is at most
// 271⅔ long; 270 and 325.66 + 50 − 270 = 105.66, in steps of 5: 110. The eye stands
// 60 mm behind its lens: a tube of 45 mm keeps the lashes off.
func TestCutByHand(t *testing.T) {
	c, fit, err := telescope(t, 250, 50).CutTubes(demand, outer, inner)
	if err != nil || fit != lens.Fits {
		t.Fatal(fit, err)
	}
	near(t, "outer", c.Outer.Millimetres(), 270, 1e-9)
	near(t, "inner", c.Inner.Millimetres(), 110, 1e-9)
	near(t, "eye tube", c.EyeTube.Millimetres(), 45, 1e-9)
	near(t, "overlap", c.Overlap.Millimetres(), 380-5000.0/19-62.5, 1e-9)
	near(t, "play", c.Play.Millimetres(), 2, 1e-9)
	near(t, "out of the outer tube at 300", c.OutOf(mm(300)).Millimetres(), 30, 1e-9)
	if c.OuterTubes != 1 || c.InnerTubes != 1 {
		t.Errorf("%d and %d tubes", c.OuterTubes, c.InnerTubes)
	}
}

func TestTubesThatDoNotServe(t *testing.T) {
	tube := func(inside, outside, length float64) lens.Tube {
		return lens.Tube{Inside: mm(inside), Outside: mm(outside), Length: mm(length)}
	}
	for name, c := range map[string]struct {
		front, eye   float64
		outer, inner lens.Tube
		want         lens.Fit
	}{
		"good":                     {250, 50, outer, inner, lens.Fits},
		"same kind":                {250, 50, outer, outer, lens.TooWide},
		"rattles":                  {250, 50, outer, tube(30, 33, 300), lens.TooLoose},
		"wide for its length":      {100, 25, tube(90, 93, 300), tube(86, 89, 300), lens.TooShort},
		"shorter than the overlap": {250, 50, tube(50, 53, 45), tube(45, 48, 45), lens.TooLong},
		"too long":                 {1200, 50, outer, inner, lens.TooLong},
		"three joined":             {600, 50, tube(50, 53, 230), tube(45, 48, 230), lens.Fits},
	} {
		cut, fit, err := telescope(t, c.front, c.eye).CutTubes(demand, c.outer, c.inner)
		if err != nil || fit != c.want {
			t.Errorf("%s: fit %v, want %v (%+v, %v)", name, fit, c.want, cut, err)
		}
		if fit != lens.Fits && (cut.Outer != 0 || cut.Most == 0) {
			t.Errorf("%s: %+v", name, cut)
		}
	}
	// A tube that is slit and lapped slides in one of its own kind.
	lapped := outer.Lapped()
	near(t, "lap", outer.Slit().Millimetres(), 3*math.Pi, 1e-9)
	if _, fit, err := telescope(t, 250, 50).CutTubes(demand, outer, lapped); fit != lens.Fits || err != nil {
		t.Errorf("lapped tube: %v, %v", fit, err)
	}
	if _, _, err := telescope(t, 250, 50).CutTubes(lens.Demand{Nearest: mm(200), Eyes: 4}, outer, inner); err == nil {
		t.Error("a target inside the focal length was taken")
	}
}

func TestPairs(t *testing.T) {
	kind := func(focal, diameter float64, count int) lens.Kind {
		return lens.Kind{Lens: lens.Lens{Focal: mm(focal), Diameter: mm(diameter)}, Count: count}
	}
	box := []lens.Kind{kind(250, 50, 12), kind(50, 30, 12), kind(400, 90, 1), kind(20, 15, 5), kind(180, 38, 5), kind(2500, 60, 3)}
	pairs, err := lens.Pairs(box, mm(1200))
	if err != nil {
		t.Fatal(err)
	}
	if want := 6*6 - 1; len(pairs) != want { // the single lens makes no pair with itself
		t.Errorf("%d pairs, want %d", len(pairs), want)
	}
	got := map[[2]int]lens.Verdict{}
	for i, p := range pairs {
		got[[2]int{p.FrontAt, p.EyeAt}] = p.Verdict
		if i > 0 && p.Verdict == lens.Usable && p.View.Detail() < pairs[i-1].View.Detail() {
			t.Error("a finer pair stands below a coarser one")
		}
		if i > 0 && p.Verdict < pairs[i-1].Verdict {
			t.Error("a usable pair stands below an unusable one")
		}
	}
	for pair, want := range map[[2]int]lens.Verdict{
		{0, 1}: lens.Usable, {2, 1}: lens.Usable, {1, 0}: lens.Shrinks, {0, 0}: lens.Equal,
		{0, 4}: lens.Weak, {5, 4}: lens.Bulky, {0, 3}: lens.Coloured, {5, 3}: lens.Dim,
	} {
		if got[pair] != want {
			t.Errorf("pair %v: %v, want %v", pair, got[pair], want)
		}
	}
	if first := pairs[0]; first.FrontAt != 2 || first.EyeAt != 1 {
		t.Errorf("the best is %+v", first)
	}
	if _, err := lens.Pairs([]lens.Kind{kind(-5, 10, 2)}, 1); err == nil {
		t.Error("a negative focal length was taken")
	}
	// A pair whose field the Moon does not fit into.
	narrow, err := lens.Pairs([]lens.Kind{kind(1000, 15, 1), kind(80, 10, 1)}, 2)
	if err != nil || narrow[0].Verdict != lens.Narrow {
		t.Errorf("narrow: %v, %v", narrow, err)
	}
}

// Mean and spread by hand, and the misread one found: 250 read as 520, and a lens
// confused with another.
func TestSummarise(t *testing.T) {
	lengths := func(values ...float64) []quantity.Length {
		var l []quantity.Length
		for _, v := range values {
			l = append(l, mm(v))
		}
		return l
	}
	s, err := lens.Summarise(lengths(248, 252, 250, 246, 254))
	if err != nil || len(s.Misread) != 0 {
		t.Fatal(s, err)
	}
	near(t, "mean", s.Mean.Millimetres(), 250, 1e-9)
	near(t, "spread", s.Spread.Millimetres(), math.Sqrt(40.0/4), 1e-9)
	near(t, "middle", s.Middle.Millimetres(), 250, 1e-9)

	s, err = lens.Summarise(lengths(248, 520, 250, 246, 252))
	if err != nil || len(s.Misread) != 1 || s.Misread[0] != 1 {
		t.Fatal(s, err)
	}
	near(t, "mean without it", s.Mean.Millimetres(), 249, 1e-9)

	if s, _ = lens.Summarise(lengths(250, 500)); len(s.Misread) != 0 {
		t.Error("of two measurements one was called misread")
	}
	if s, _ = lens.Summarise(lengths(250, 250, 250, 251)); len(s.Misread) != 0 {
		t.Error("a difference of 1 mm was called misread")
	}
	if s, _ = lens.Summarise(lengths(250)); s.Spread != 0 || s.Mean != mm(250) {
		t.Errorf("one measurement: %+v", s)
	}
}
