package source

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/form"
)

// The parts of a day sheet that a lesson fills with its own sections: the keys
// of the table [sheet] of its block.
const (
	SheetBefore  form.Key[[]string] = "sheet.before"
	SheetMinutes form.Key[[]string] = "sheet.minutes"
	SheetBoard   form.Key[[]string] = "sheet.board"
	SheetSteps   form.Key[[]string] = "sheet.steps"
	SheetToday   form.Key[[]string] = "sheet.today"
	SheetRain    form.Key[[]string] = "sheet.rain"
	SheetTidy    form.Key[[]string] = "sheet.tidy"
	SheetNote    form.Key[[]string] = "sheet.note"
)

// sheetKeys are the fields of the table [sheet].
func sheetKeys() form.Form {
	var keys form.Form
	for _, part := range []struct {
		key   form.Key[[]string]
		holds string
	}{
		{SheetBefore, "what to do before the bell"},
		{SheetMinutes, "the minutes: a table whose first column holds whole minutes from the start, which get their clock times"},
		{SheetBoard, "what to put on the board"},
		{SheetSteps, "how each thing is done, as far as a substitute must know it"},
		{SheetToday, "what pupils will see today"},
		{SheetRain, "what to do if it rains"},
		{SheetTidy, "tidying up"},
		{SheetNote, "what to note back"},
	} {
		keys = append(keys, form.Field{Key: part.key,
			Doc: "Headings of this lesson, written as in a link, whose sections are that part of its day sheet: " + part.holds + ". Left out, the part is a blank to fill in."})
	}
	return keys
}

// A Section is a heading of a lesson with what belongs to it, up to the next
// heading of its level or above.
type Section struct {
	Heading *ast.Heading
	Body    []ast.Node
}

// Sheet returns the sections that stand for one part of the day sheet.
func (l *Lesson) Sheet(part form.Key[[]string]) []Section {
	var sections []Section
	for _, anchor := range part.Of(l.Block) {
		if s, ok := l.section(anchor); ok {
			sections = append(sections, s)
		}
	}
	return sections
}

func (l *Lesson) section(anchor string) (s Section, found bool) {
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		h, ok := n.(*ast.Heading)
		if !ok || !entering {
			return ast.WalkContinue, nil
		}
		if id, _ := h.AttributeString("id"); fmt.Sprintf("%s", id) != anchor {
			return ast.WalkSkipChildren, nil
		}
		s, found = Section{Heading: h}, true
		for c := h.NextSibling(); c != nil; c = c.NextSibling() {
			if next, ok := c.(*ast.Heading); ok && next.Level <= h.Level {
				break
			}
			s.Body = append(s.Body, c)
		}
		return ast.WalkStop, nil
	})
	return s, found
}

// Minutes returns the minutes, from the start of the lesson, of each row of a
// table; false where its first column holds anything else.
func Minutes(table *extension.Table, src []byte) ([]time.Duration, bool) {
	var minutes []time.Duration
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		if row.Kind() != extension.KindTableRow {
			continue
		}
		n, err := strconv.Atoi(strings.TrimSpace(string(row.FirstChild().Lines().Value(src))))
		if err != nil || n < 0 || n > 24*60 {
			return nil, false
		}
		minutes = append(minutes, time.Duration(n)*time.Minute)
	}
	return minutes, len(minutes) > 0
}

// MinuteTable returns the first table of minutes among the sections.
func MinuteTable(sections []Section, src []byte) *extension.Table {
	for _, s := range sections {
		if table := minuteTable(s.Body, src); table != nil {
			return table
		}
	}
	return nil
}

// minuteTable also looks into blocks whose condition is open.
func minuteTable(nodes []ast.Node, src []byte) *extension.Table {
	for _, n := range nodes {
		if table, ok := n.(*extension.Table); ok {
			if _, ok := Minutes(table, src); ok {
				return table
			}
		}
		if block, ok := n.(*Standing); ok {
			var within []ast.Node
			for c := block.FirstChild(); c != nil; c = c.NextSibling() {
				within = append(within, c)
			}
			if table := minuteTable(within, src); table != nil {
				return table
			}
		}
	}
	return nil
}

// sheet checks the headings that the table [sheet] names.
func (r *reader) sheet(l *Lesson) {
	for _, field := range sheetKeys() {
		key := field.Key.(form.Key[[]string])
		for i, anchor := range key.Of(l.Block) {
			if l.Anchors[anchor] || l.gone[anchor] != "" {
				continue
			}
			r.problems.Add(l.Place(key, i), "lesson: %s: the lesson has no heading #%s%s", key, anchor, form.Choice(anchor, slices.Sorted(maps.Keys(l.Anchors))))
		}
	}
	key := SheetMinutes
	sections := l.Sheet(SheetMinutes)
	if len(sections) == 0 {
		return
	}
	table := MinuteTable(sections, l.Source)
	if table == nil {
		r.problems.Add(l.Place(key), "lesson: %s: no table there has whole minutes in its first column", key)
		return
	}
	minutes, _ := Minutes(table, l.Source)
	if !slices.IsSorted(minutes) {
		r.problems.Add(l.Place(key), "lesson: %s: the minutes of the table do not rise", key)
	}
	if length := time.Duration(BlockMinutes.Of(l.Block)) * time.Minute; length > 0 && minutes[len(minutes)-1] >= length {
		r.problems.Warn(l.Place(key), "lesson: %s: the table goes on to minute %d, and the lesson has %d", key, int(minutes[len(minutes)-1].Minutes()), int(length.Minutes()))
	}
}
