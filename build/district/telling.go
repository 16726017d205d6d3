package district

import (
	"cmp"
	"fmt"
	"slices"

	"noonbook/build/problem"
	"noonbook/build/school"
)

// A telling gathers the problems of many schools. What is wrong in a cell of the list is
// told as it is. What is wrong elsewhere most schools have: it is told once for each
// place, by the first school that has it, with how many have. What is kept does not grow
// with the schools, and does not depend on their order.
type telling struct {
	own     []ofRow // in the list
	shared  map[spot]*common
	dropped struct{ faults, warnings int } // of own, beyond those that are told
}

// An ofRow is a problem of the row with that number.
type ofRow struct {
	row int
	problem.Problem
}

// A spot is what problems of several schools have in common.
type spot struct {
	problem.Place
	warning bool
	nth     int // of those that one school has there
}

// A common is what several schools have at one spot.
type common struct {
	ofRow   // of the first school
	schools int
	alike   bool // all say the same
}

// mostOwn is how many problems of the list are kept; more than are shown of one file.
const mostOwn = 4 * problem.MostShown

func (t *telling) add(d *District, row int, found problem.List) {
	if t.shared == nil {
		t.shared = map[spot]*common{}
	}
	nth := map[spot]int{}
	for _, p := range found.Sorted() {
		if p.File == d.list.File {
			t.own = append(t.own, ofRow{row, p})
			continue
		}
		at := spot{p.Place, p.Warning, 0}
		at.nth, nth[at] = nth[at], nth[at]+1
		c := t.shared[at]
		if c == nil {
			c = &common{ofRow: ofRow{row, p}, alike: true}
			t.shared[at] = c
		}
		c.schools++
		c.alike = c.alike && c.Text == p.Text
		if row < c.row {
			c.ofRow = ofRow{row, p}
		}
	}
	if len(t.own) > 2*mostOwn {
		t.trim(mostOwn)
	}
}

// trim keeps the problems of the first rows, faults before warnings.
func (t *telling) trim(most int) {
	slices.SortStableFunc(t.own, func(a, b ofRow) int {
		if a.Warning != b.Warning {
			if b.Warning {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.row, b.row)
	})
	for _, p := range t.own[min(most, len(t.own)):] {
		if p.Warning {
			t.dropped.warnings++
		} else {
			t.dropped.faults++
		}
	}
	t.own = t.own[:min(most, len(t.own))]
}

// list returns what is to be told, and how many faults and warnings all schools have.
func (t *telling) list(d *District) (all problem.List, faults, warnings int) {
	count := func(warning bool, n int) {
		if warning {
			warnings += n
		} else {
			faults += n
		}
	}
	t.trim(mostOwn)
	faults, warnings = t.dropped.faults, t.dropped.warnings
	for _, p := range t.own {
		count(p.Warning, 1)
		all = append(all, p.Problem)
	}
	for _, c := range t.shared {
		count(c.Warning, c.schools)
		p := c.Problem
		p.Text += " (" + t.where(d, c) + ")"
		all = append(all, p)
	}
	return all.Sorted(), faults, warnings
}

func (t *telling) where(d *District, c *common) string {
	row := &d.list.rows[c.row]
	name, at, _ := d.list.cell(row, school.Name.Name())
	if name == "" {
		name = row.folder
	}
	first := fmt.Sprintf("at %s, %s:%d", name, d.list.File, at.Line)
	switch {
	case c.schools == 1:
		return first
	case c.alike:
		return fmt.Sprintf("at %d schools, the first %s", c.schools, first[len("at "):])
	}
	return fmt.Sprintf("%s; %d more of the schools have such a one here", first, c.schools-1)
}
