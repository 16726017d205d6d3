package rocket_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// angleAt44 is the angle at which a height is seen from 44 m, by NASA's rule with the eye
// 1.35 m up.
func angleAt44(height float64) string {
	return format(math.Atan2(height-1.35, 44) * 180 / math.Pi)
}

// pairsOf is a file of flights in pairs, groups in turn: heights of 3 and of 6 fins.
func pairsOf(heights ...[2]float64) string {
	var b strings.Builder
	b.WriteString("group,fins,stamp,pipe_deg,baseline_m,angle_deg,second_angle_deg\n")
	for i, h := range heights {
		for n, fins := range []int{3, 6} {
			fmt.Fprintf(&b, "%d,%d,%d,90,44,%s,%s\n", i+1, fins, i+1, angleAt44(h[n]), angleAt44(h[n]))
		}
	}
	return b.String()
}

// Student's ten sleepers (Biometrika 6, 1908) as rockets: each pair differs by as many
// metres as a sleeper gained hours, about heights that differ far more from group to
// group. R's t.test has a mean difference of 1.58, with 95 % from 0.7001142 to 2.4598858;
// the means of all flights alone show nothing. Nine of ten gained, one neither gained nor
// lost, and luck does as much in 2 of 512 tests.
func TestPairsOfFlights(t *testing.T) {
	heights := [][2]float64{}
	for i, gain := range []float64{1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4} {
		plain := 6 + float64(i*7%10)*1.2
		heights = append(heights, [2]float64{plain + gain, plain})
	}
	r := ReckonFlights(t, pairsOf(heights...))
	entrytest.Near(t, "mean difference", entrytest.Fact(t, r, "pair_difference").Number, 1.58, 1e-6)
	entrytest.Near(t, "doubt", entrytest.Fact(t, r, "pair_doubt").Number, (2.4598858-0.7001142)/2, 1e-3)
	entrytest.Near(t, "luck", entrytest.Fact(t, r, "pair_luck").Number, 200.0/512, 1e-9)
	for name, want := range map[string]float64{"pairs": 10, "pairs_best": 9, "pairs_other": 0} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	if got := entrytest.Fact(t, r, "finding").Phrase; got.Key != "rocket-log.found_pairs" || got.With[0].Phrase.With[0].Plain != "3" {
		t.Errorf("the pairs show %v", got)
	}
	if difference, doubt := entrytest.Fact(t, r, "difference").Number, entrytest.Fact(t, r, "difference_doubt").Number; difference > doubt {
		t.Errorf("the two means alone differ by %.2f m, more than their doubt of %.2f m: the pairs show nothing new", difference, doubt)
	}
	if entrytest.Fact(t, r, "fair").Number != 1 {
		t.Errorf("not fair: %v", entrytest.Fact(t, r, "fair_why"))
	}
	if !entrytest.Says(r.Notes, "rocket-log.note_pairs") || entrytest.Says(r.Notes, "rocket-log.note_groups") {
		t.Error("the notes are not those of pairs")
	}
}

// Half and half is no difference; a group without its second flight is no pair; a flight
// flown again, a third rocket or a single group is no test in pairs.
func TestWhatIsNoPair(t *testing.T) {
	r := ReckonFlights(t, pairsOf([2]float64{10, 11}, [2]float64{11, 10.2}, [2]float64{9, 9.9}, [2]float64{12, 11}))
	if got := entrytest.Fact(t, r, "finding").Phrase.Key; got != "rocket-log.found_pairs_nothing" {
		t.Errorf("half and half shows %s", got)
	}
	base := pairsOf([2]float64{10, 11}, [2]float64{11, 12.1}, [2]float64{9, 9.9})
	row := func(group, fins int) string { return fmt.Sprintf("%d,%d,%d,90,44,11,11\n", group, fins, group) }
	for name, c := range map[string]struct {
		text string
		want float64
	}{
		"as it is":           {base, 3},
		"one without second": {base + row(4, 3), 3},
		"flown again":        {base + row(1, 3), 0},
		"a third rocket":     {base + row(4, 4), 0},
		"one group":          {pairsOf([2]float64{10, 11}), 0},
	} {
		r := ReckonFlights(t, c.text)
		if got := entrytest.Fact(t, r, "pairs").Number; got != c.want {
			t.Errorf("%s: %v pairs, want %v", name, got, c.want)
		}
		if says := entrytest.Says(r.Notes, "rocket-log.note_pairs"); says != (c.want > 0) {
			t.Errorf("%s: pairs are spoken of: %v", name, says)
		}
	}
}
