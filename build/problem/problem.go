// Package problem holds what an author can mend: a fault in the content or a
// warning about it, with the file, line and column where it stands.
//
//	var found problem.List
//	found.Add(at, "school.latitude %s is outside %s", "95°", "−90° to 90°")
//	if found.Faults() > 0 {
//		return found // List is an error
//	}
//
// Problems are collected as the content is read and sorted before they are
// shown. What the machine does wrong (a full disk, a missing permission) is an
// ordinary wrapped error instead.
package problem

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"noonbook/build/terminal"
)

// A Place is a position in a file of the content folder. Line and Column count
// from 1, columns in bytes. A zero Line speaks of the whole file.
type Place struct {
	File         string
	Line, Column int
}

// String writes the place as file:line:column, or the file alone.
func (p Place) String() string {
	file := terminal.Line(p.File)
	if p.Line == 0 {
		return file
	}
	return fmt.Sprintf("%s:%d:%d", file, p.Line, p.Column)
}

// A Problem is one thing to mend, or with Warning set one thing to think about.
type Problem struct {
	Place
	Text    string // the thing, what was found, what is allowed; no final stop
	Warning bool
}

// Error writes "file:line:column: text".
func (p Problem) Error() string {
	text := p.Text
	if p.Warning {
		text = "warning: " + text
	}
	if p.Place == (Place{}) {
		return text
	}
	return p.Place.String() + ": " + text
}

// A List is a collection of problems. As an error it unwraps to each of them.
type List []Problem

// Add appends a fault. What the text quotes of a file is made plain.
func (l *List) Add(at Place, format string, args ...any) {
	*l = append(*l, Problem{Place: at, Text: terminal.Line(fmt.Sprintf(format, args...))})
}

// Warn appends a warning, its text made plain.
func (l *List) Warn(at Place, format string, args ...any) {
	*l = append(*l, Problem{Place: at, Text: terminal.Line(fmt.Sprintf(format, args...)), Warning: true})
}

// Faults returns the number of problems that are not warnings.
func (l List) Faults() int {
	n := 0
	for _, p := range l {
		if !p.Warning {
			n++
		}
	}
	return n
}

// Sorted returns the problems in the order of files, lines and columns, each
// said once.
func (l List) Sorted() List {
	s := slices.Clone(l)
	slices.SortStableFunc(s, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column),
			cmp.Compare(a.Text, b.Text),
		)
	})
	return slices.Compact(s)
}

// Error writes one problem a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, p := range l {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives errors.As each problem.
func (l List) Unwrap() []error {
	errs := make([]error, len(l))
	for i, p := range l {
		errs[i] = p
	}
	return errs
}
