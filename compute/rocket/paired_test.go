package rocket_test

import (
	"math"
	"testing"

	"noonbook/compute/rocket"
)

// Published paired tests. Student's ten sleepers (Biometrika 6, 1908), as R's t.test
// prints them: a mean difference of 1.58 h, 95 % from 0.7001142 to 2.4598858. Darwin's
// fifteen pairs of maize (R. A. Fisher, The Design of Experiments, 1935, ch. 3), in
// eighths of an inch: mean 20.93, t = 2.148, whose 5 % point is 2.145; 13 taller crossed
// plants, 2 shorter. 1e-3 of the value: Student's table has four digits.
func TestPairsAgainstPublishedTests(t *testing.T) {
	sleep := rocket.Pairs(series(1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4))
	near(t, "sleep: mean", sleep.Mean().Metres(), 1.58, 1e-9)
	near(t, "sleep: doubt", sleep.Doubt().Metres(), (2.4598858-0.7001142)/2, 1e-3)
	if up, down := sleep.Ways(); up != 9 || down != 0 {
		t.Errorf("sleep: %d more and %d less", up, down)
	}
	maize := rocket.Pairs(series(49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48))
	near(t, "maize: mean", maize.Mean().Metres(), 20.93, 0.005)
	near(t, "maize: t", maize.Mean().Metres()/maize.Doubt().Metres()*2.145, 2.148, 0.002)
	if up, down := maize.Ways(); up != 13 || down != 2 {
		t.Errorf("maize: %d taller and %d shorter", up, down)
	}
}

// The sign test by Pascal's triangle: of the 512 ways in which nine coins fall, 1 + 9
// have eight heads or more, and as many eight tails or more; 46 and 46 have seven. Of
// fifteen, 1 + 15 + 105 of 32 768 have thirteen or more.
func TestLuckOfPairs(t *testing.T) {
	falls := func(up, down int) rocket.Pairs {
		var p rocket.Pairs
		for i := range up + down {
			d := 1.0
			if i >= up {
				d = -0.5
			}
			p = append(p, series(d)...)
		}
		return p
	}
	for _, c := range []struct {
		up, down int
		want     float64
	}{{9, 0, 2.0 / 512}, {8, 1, 20.0 / 512}, {1, 8, 20.0 / 512}, {7, 2, 92.0 / 512}, {13, 2, 242.0 / 32768}, {5, 4, 1}, {3, 3, 1}, {1, 0, 1}, {0, 0, 1}} {
		near(t, "luck", falls(c.up, c.down).Luck(), c.want, 1e-12)
	}
	near(t, "equal heights count for neither", append(falls(8, 1), 0, 0).Luck(), 20.0/512, 1e-12)
	if !math.IsInf(falls(1, 0).Doubt().Metres(), 1) || !math.IsInf(rocket.Pairs(nil).Doubt().Metres(), 1) {
		t.Error("a single pair tells how far it may be wrong")
	}
}
