package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"strings"
	"time"
)

// A work is one line of the table: something measured, and what it must and should be. The
// run fails at twice what it must, and later only where fails says so: work that is not there
// yet, and must not get worse unseen.
type work struct {
	name      string
	must, aim float64
	atLeast   bool    // more is better
	fails     float64 // times what it must be; 2 where nothing is said
	measure   func(*bench) (measured, error)
}

// A measured is a ratio, or seconds where the work says so, and what it was made of.
type measured struct {
	value  float64
	of     string // both sides, in words
	steady bool   // two runs agreed within a tenth
}

// run measures all, prints a line for each as it comes, and returns how many are past their limit
// what they must or could not be measured.
func run(out io.Writer, b *bench, works []work) int {
	fmt.Fprintf(out, "%-44s %8s %8s %8s  %s\n", "work", "now", "must", "aim", bars(1, 1)+" = what it must be")
	slow := 0
	for _, w := range works {
		m, err := w.measure(b)
		if err != nil {
			fmt.Fprintf(out, "%-44s could not be measured: %s\n", w.name, strings.ReplaceAll(strings.TrimSpace(err.Error()), "\n", "\n    "))
			slow++
			continue
		}
		share, sign := m.value/w.must, "≤"
		if w.atLeast {
			share, sign = w.must/m.value, "≥"
		}
		if share > cmp.Or(w.fails, 2) || math.IsNaN(share) {
			slow++
		}
		doubt := " "
		if !m.steady {
			doubt = "~"
		}
		fmt.Fprintf(out, "%-44s %s%7s %8s %8s  %s %s\n", w.name, doubt, short(m.value), sign+short(w.must), sign+short(w.aim), bars(share, 2), m.of)
	}
	fmt.Fprintln(out, "\n~ two runs did not agree within a tenth: the machine had other work")
	return slow
}

// bars draws a share of one, ten blocks long, up to a length of so many times one.
func bars(share, upTo float64) string {
	const blocks = 10
	full := int(math.Round(math.Min(share, upTo) * blocks))
	line := []rune(strings.Repeat("█", full) + strings.Repeat("·", int(upTo*blocks)-full))
	end := ""
	if upTo > 1 {
		line = append(line[:blocks], append([]rune{'|'}, line[blocks:]...)...)
		end = " "
		if share > upTo {
			end = "▸"
		}
	}
	return string(line) + end
}

// short writes three figures.
func short(x float64) string {
	switch {
	case x >= 99.5:
		return fmt.Sprintf("%.0f", x)
	case x >= 9.95:
		return fmt.Sprintf("%.1f", x)
	}
	return fmt.Sprintf("%.2f", x)
}

// A side is one half of a ratio: it does its work once and returns what that took.
type side func() (time.Duration, error)

// ratio lets two sides take turns, twice so many rounds, and divides their least times. They
// are steady when both halves give the same within a tenth; what is not is tried once more.
func ratio(rounds int, a, b side) (measured, error) {
	var m measured
	for range 2 {
		var halves [2]float64
		least := [2]time.Duration{math.MaxInt64, math.MaxInt64}
		for half := range halves {
			mine := [2]time.Duration{math.MaxInt64, math.MaxInt64}
			for range (rounds + 1) / 2 {
				for i, s := range []side{a, b} {
					took, err := s()
					if err != nil {
						return measured{}, err
					}
					mine[i] = min(mine[i], took)
				}
			}
			halves[half] = float64(mine[0]) / float64(mine[1])
			least[0], least[1] = min(least[0], mine[0]), min(least[1], mine[1])
		}
		again := measured{
			value:  float64(least[0]) / float64(least[1]),
			of:     fmt.Sprintf("%s ÷ %s", milliseconds(least[0]), milliseconds(least[1])),
			steady: math.Abs(halves[0]/halves[1]-1) <= 0.1,
		}
		if m.of == "" || again.steady {
			m = again
		}
		if m.steady {
			break
		}
	}
	return m, nil
}

func milliseconds(d time.Duration) string {
	ms := float64(d) / float64(time.Millisecond)
	return cmp.Or(short(ms), "0") + " ms"
}
