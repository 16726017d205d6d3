package source

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/form"
	"noonbook/build/problem"
)

// What of a lesson goes onto paper: the keys of the table [sheet] of its block. All but
// SheetDrawing are headings, in the order in which the paper has them.
const (
	SheetFront   form.Key[[]string] = "sheet.front"
	SheetBack    form.Key[[]string] = "sheet.back"
	SheetDrawing form.Key[string]   = "sheet.drawing"
	SheetCard    form.Key[[]string] = "sheet.card"
)

// sheetKeys are the fields of the table [sheet].
func sheetKeys() form.Form {
	return form.Form{
		{Key: SheetFront, Doc: "Headings of this lesson, written as in a link, whose sections are the front of its day sheet: the quarter of an hour before the bell, the minutes, what to say, the board, what to leave out. One section holds the minutes: a table whose first column has whole minutes from the start, which get their clock times. Left out, the front is a blank to fill in."},
		{Key: SheetBack, Doc: "Headings whose sections are the back of the day sheet: the answers, mistakes, rain, tidying up, the note back. A section with answers is there with the first paragraph of each."},
		{Key: SheetDrawing, Default: "", Doc: "A heading; the first picture or drawing below it is on the front of the day sheet."},
		{Key: SheetCard, Doc: "Headings for the class whose sections are the build card: the steps with their drawings, to copy for the groups."},
	}
}

// A Section is a heading of a lesson with what belongs to it, up to the next
// heading of its level or above.
type Section struct {
	Heading *ast.Heading
	Body    []ast.Node
}

// Sheet returns the sections that are on one of the lesson's papers.
func (l *Lesson) Sheet(part form.Key[[]string]) []Section {
	var sections []Section
	for _, anchor := range part.Of(l.Block) {
		if s, ok := l.Section(anchor); ok {
			sections = append(sections, s)
		}
	}
	return sections
}

// Section returns the section below the heading of that name.
func (l *Lesson) Section(anchor string) (s Section, found bool) {
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		h, ok := n.(*ast.Heading)
		if !ok || !entering {
			if first := n.FirstChild(); first != nil && first.Type() == ast.TypeInline {
				return ast.WalkSkipChildren, nil // no heading is within text
			}
			return ast.WalkContinue, nil
		}
		id, _ := h.AttributeString("id")
		if name, ok := id.([]byte); !ok || string(name) != anchor {
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
	for _, key := range []form.Key[[]string]{SheetFront, SheetBack, SheetCard} {
		for i, anchor := range key.Of(l.Block) {
			r.onPaper(l, key, anchor, l.Place(key, i))
		}
	}
	if SheetDrawing.Of(l.Block) != "" {
		r.onPaper(l, SheetDrawing, SheetDrawing.Of(l.Block), l.Place(SheetDrawing))
	}
	key := SheetFront
	sections := l.Sheet(key)
	if len(sections) == 0 {
		return
	}
	table := MinuteTable(sections, l.Source)
	if table == nil && BlockEvening.Of(l.Block) { // its minutes are computed
		return
	}
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

// onPaper checks a heading that a key of the table [sheet] names.
func (r *reader) onPaper(l *Lesson, key form.AnyKey, anchor string, at problem.Place) {
	switch {
	case !l.Anchors[anchor] && l.gone[anchor] == "":
		r.problems.Add(at, "lesson: %s: the lesson has no heading #%s%s", key, anchor, form.Choice(anchor, slices.Sorted(maps.Keys(l.Anchors))))
	case key == SheetCard && l.private[anchor]:
		r.problems.Add(at, "lesson: %s: #%s is for staff, and the card is for the class", key, anchor)
	}
}
