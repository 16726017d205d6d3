package problem

import (
	"fmt"
	"slices"
	"strings"
)

// MostShown is how many problems of one file are shown. Whoever mends a hundred
// presses again, and a file of another kind that got into the folder does not
// bury what the other files need.
const MostShown = 100

// Shown returns the list without what is too much: of a file with more than
// MostShown problems the first of them, faults before warnings, and behind them
// one that counts the rest. Counts of the whole are those of l.
func (l List) Shown() List {
	of := map[string]int{}
	for _, p := range l {
		of[p.File]++
	}
	room := map[string]int{} // for warnings, which stand back behind faults
	faults := map[string]int{}
	for _, p := range l {
		if !p.Warning {
			faults[p.File]++
		}
	}
	for file, n := range faults {
		room[file] = MostShown - min(n, MostShown)
	}
	var shown List
	given, warned, last := map[string]int{}, map[string]int{}, map[string]int{}
	for _, p := range l {
		if of[p.File] > MostShown {
			most, n := MostShown, given
			if p.Warning {
				n = warned
				if left, known := room[p.File]; known {
					most = left
				}
			}
			if n[p.File] >= most {
				continue
			}
			n[p.File]++
		}
		last[p.File] = len(shown)
		shown = append(shown, p)
	}
	return shown.counting(l, last)
}

// counting puts a problem that counts what is left out of a file behind the last one
// that is not.
func (l List) counting(all List, last map[string]int) List {
	left := map[string][2]int{}
	count := func(list List, by int) {
		for _, p := range list {
			n := left[p.File]
			if p.Warning {
				n[1] += by
			} else {
				n[0] += by
			}
			left[p.File] = n
		}
	}
	count(all, 1)
	count(l, -1)
	var list List
	for i, p := range l {
		list = append(list, p)
		if n := left[p.File]; last[p.File] == i && n != [2]int{} {
			var parts []string
			if n[0] > 0 {
				parts = append(parts, counted(n[0], "problem"))
			}
			if n[1] > 0 {
				parts = append(parts, counted(n[1], "warning"))
			}
			where := "in this file"
			if p.File == "" {
				where = "besides these"
			}
			list = append(list, Problem{Place: Place{File: p.File}, Text: strings.Join(parts, " and ") + " more " + where, Warning: n[0] == 0})
		}
	}
	return slices.Clip(list)
}

func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
