package main

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"time"
)

// A tally counts faults.
type tally struct{ caught, all int }

func (t tally) part() float64 { return float64(t.caught) / float64(t.all) }

// score prints how many were caught, and fails where that is not enough or a
// survivor is not explained. With only some of the faults tried, the part that must
// be caught says nothing and is not asked for.
func score(results []Result, reasons map[string]string, all bool, took time.Duration) error {
	byPackage, byKind := make(map[string]tally), make(map[string]tally)
	var total tally
	var wrong []error
	limit := 0
	for _, r := range results {
		one := tally{all: 1}
		if r.Caught {
			one.caught = 1
		}
		if r.Limit != "" {
			limit++
		}
		total = total.plus(one)
		byPackage[r.Package] = byPackage[r.Package].plus(one)
		byKind[r.Kind] = byKind[r.Kind].plus(one)
	}
	fmt.Println("\nby package")
	show(byPackage)
	fmt.Println("\nby kind")
	show(byKind)
	fmt.Println()
	for _, r := range results {
		reason := reasons[r.ID]
		switch {
		case r.Caught && reason != "":
			fmt.Printf("caught now, take it out of survivors.txt: %s\n", r.ID)
		case !r.Caught && reason == "":
			fmt.Printf("survives unexplained: %s (faults.txt:%d)\n\t%s\n\t- %s\n\t+ %s\n", r.ID, r.Line, r.File, r.Was, r.Now)
			wrong = append(wrong, fmt.Errorf("%s survives, and survivors.txt does not say why", r.ID))
		case !r.Caught:
			fmt.Printf("survives: %s\n\t%s\n", r.ID, reason)
		}
	}
	fmt.Printf("\n%d of %d faults caught, %.1f %%, %d of them by a limit of time or memory, in %s\n",
		total.caught, total.all, 100*total.part(), limit, took)
	if all && total.part() < wanted {
		wrong = append(wrong, fmt.Errorf("fewer than %.0f %% of the faults are caught", 100*wanted))
	}
	return errors.Join(wrong...)
}

func (t tally) plus(u tally) tally { return tally{t.caught + u.caught, t.all + u.all} }

func show(tallies map[string]tally) {
	for _, name := range slices.Sorted(maps.Keys(tallies)) {
		t := tallies[name]
		fmt.Printf("%4d of %3d %4.0f %%  %s\n", t.caught, t.all, 100*t.part(), name)
	}
}
