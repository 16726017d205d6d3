package source

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/compute/classroom"
)

// A Lesson is one Markdown file, parsed.
type Lesson struct {
	File    string // as problems name it
	Number  int    // of a lesson in the unit, from 1; 0 of other pages
	Page    string // file name in the handbook, "shadow-clock.html"
	Block   form.Values
	Glance  []*Inline // the facts of the margin
	Today   []*Inline // those that only staff see there and on the day sheet
	Source  []byte
	Tree    ast.Node        // which other units share; nobody writes into it
	Anchors map[string]bool // of the headings

	name      string // in the content folder
	lines     lines
	places    map[string]form.Place // of the lesson block's values
	rows      map[string][]int      // of its tables that stand, by their number in the file
	blockAt   ast.Node              // the lesson block
	asWritten form.Values           // the lesson block, with the lines that do not stand
	links     []reference
	leads     map[ast.Node]*Lead // where they lead in this unit

	whole      []*Condition      // on which the whole lesson stands
	conditions []*Condition      // of its blocks and lines
	doubtful   bool              // the condition of some block is not understood
	gone       map[string]string // headings that do not stand → why

	follows, changeWith int             // numbers of the lessons that it names
	loose               bool            // what it names in follows is left out
	openings            bool            // it is written in openings
	private             map[string]bool // headings for staff alone
	care                []classroom.Care
	prints              []*Block // that have sheets

	Typed     []TypedDate // dates that the author typed
	day       *form.Day   // of the lesson block, where it is named
	namedDays []namedDay
}

// Part returns which part of the handbook the lesson is.
func (l *Lesson) Part() string { return BlockPart.Of(l.Block) }

// Title returns the lesson's title.
func (l *Lesson) Title() string { return BlockTitle.Of(l.Block) }

// Place returns where a value of the lesson block stands.
func (l *Lesson) Place(key form.AnyKey, item ...int) problem.Place {
	return within(l.lines, l.blockAt, l.places[itemName(key, item)])
}

// RowPlace returns where a value of a table of the lesson block stands, by the number
// of the table among those that stand here.
func (l *Lesson) RowPlace(table form.Key[[]form.Values], row int, key form.AnyKey, item ...int) problem.Place {
	at := itemName(table, l.rows[table.Name()][row:row+1])
	place, ok := l.places[at+"."+itemName(key, item)]
	if !ok {
		place = l.places[at]
	}
	return within(l.lines, l.blockAt, place)
}

// within places a line and column of a fenced block's body in the file.
func within(l lines, block ast.Node, at form.Place) problem.Place {
	body := block.Lines()
	line := max(1, at.Line) - 1
	if line >= body.Len() {
		return l.place(block.Pos())
	}
	segment := body.At(line)
	return l.place(segment.Start - segment.Padding + max(1, at.Column) - 1)
}

// markdown is CommonMark with pipe tables and our own nodes. What it reads leaves
// nothing in it.
var markdown = sync.OnceValue(func() goldmark.Markdown {
	return goldmark.New(
		goldmark.WithExtensions(extension.Table),
		goldmark.WithParserOptions(
			parser.WithAutoHeadingID(),
			// Before goldmark's fenced code (700) and its inline parsers (100 and on).
			parser.WithBlockParsers(util.Prioritized(asideParser{}, 690), util.Prioritized(codeParser{parser.NewFencedCodeBlockParser()}, 695)),
			parser.WithInlineParsers(util.Prioritized(braceParser{}, 90), util.Prioritized(boxParser{extension.NewTaskCheckBoxParser()}, 95)),
		),
	)
})

// boxParser reads [ ] and [x] at the head of an item as a box to tick, unless what
// follows makes a link of it: GitHub Flavored Markdown 0.29, section 5.3, wants white
// space behind a box.
type boxParser struct{ parser.InlineParser }

func (p boxParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	if line, _ := block.PeekLine(); len(line) < 4 || !util.IsSpace(line[3]) {
		return nil
	}
	return p.InlineParser.Parse(parent, block, pc)
}

// lesson reads one file, and nothing that other lessons or the settings say. It returns
// nil after reporting a file that cannot be read as a lesson at all. first is the lesson as
// it was read without answers, nil where it is read so now: its lesson block is the same,
// and what is wrong with its lines was reported.
func (r *reader) lesson(file, name string, src []byte, first *Lesson) (*Lesson, error) {
	l := &Lesson{File: file, name: name, Source: src, Anchors: map[string]bool{}}
	if first != nil {
		l.lines, l.places, l.day, l.asWritten = first.lines, first.places, first.day, first.asWritten
	} else if l.lines = newLines(file, src); !r.sound(l) {
		return nil, nil
	}
	context := parser.NewContext(parser.WithIDs(&anchors{used: l.Anchors, last: map[string]int{}}))
	l.Tree = markdown().Parser().Parse(text.NewReader(src), parser.WithContext(context))
	block, ok := l.Tree.FirstChild().(*ast.FencedCodeBlock)
	if !ok || string(block.Language(src)) != "lesson" {
		r.problems.Add(problem.Place{File: l.File, Line: 1, Column: 1}, "the file does not begin with a ```lesson block, which gives it a title")
		return nil, nil
	}
	v := &visitor{reader: r, lesson: l, blocks: map[string]int{}, fences: fencesOf(context), most: len(r.problems) + maxProblems}
	if v.fences[block].close == 0 {
		v.unclosed(block, "lesson block")
		return nil, nil // all of the lesson stands in it
	}
	l.blockAt = block
	if first == nil {
		r.lessonBlock(l, block)
	}
	l.Block = l.asWritten
	l.Tree.RemoveChild(l.Tree, block)
	v.blockConditions(l)
	v.openings()
	if first == nil {
		inside := v.fencedLines()
		v.nearFences(inside)
		v.nearOpenings(inside)
	}
	v.visit(l.Tree)
	v.tidy()
	l.Glance, l.Today = v.margin(BlockGlance), v.margin(BlockGlanceStaff)
	l.private = privateAnchors(l.Tree)
	l.care, l.prints = l.cares(), printables(l.Tree)
	v.typedInProse()
	r.sharing(l)
	r.otherNames(l)
	r.activities(l)
	if BlockMinutes.In(l.Block) && BlockLessons.Of(l.Block) > 1 {
		r.problems.Add(l.Place(BlockLessons), "lesson: lessons does not go with minutes; leave one of them out")
	}
	r.evening(l)
	if BlockReader.Of(l.Block) == Staff && slices.Contains([]string{PartLesson, PartSafety, PartGlossary}, l.Part()) {
		r.problems.Add(l.Place(BlockReader), "lesson: reader is %q, and part is %q, which is for the class; want part = %q", Staff, l.Part(), PartPage)
	}
	r.sheet(l)
	return l, v.failed
}

// sound reports whether a text can be parsed as a lesson.
func (r *reader) sound(l *Lesson) bool {
	if at := controlIn(l.Source); at >= 0 {
		c, _ := utf8.DecodeRune(l.Source[at:])
		r.problems.Add(l.lines.place(at), "the control character U+%04X, which nobody can see; delete it", c)
	}
	at, what := outOfBounds(l.Source)
	if what != "" {
		r.problems.Add(l.lines.place(at), "%s", what)
	}
	return what == ""
}

// margin reads the facts that a key of the lesson block lists.
func (v *visitor) margin(key form.Key[[]string]) []*Inline {
	var facts []*Inline
	for i, expression := range key.Of(v.lesson.Block) {
		at := v.lesson.Place(key, i)
		at.Column++                                                                                 // past the quote
		if inside, ok := strings.CutPrefix(expression, "{"); ok && strings.HasSuffix(inside, "}") { // as in a sentence
			expression = strings.TrimSuffix(inside, "}")
			at.Column++
		}
		if n := v.expression(expression, at); n != nil {
			facts = append(facts, n)
		}
	}
	return facts
}

// controlIn returns where a text in UTF-8 has a control character that no text needs, or
// −1. Those beyond ASCII are U+0080 to U+009F, whose bytes are C2 and the character's own.
func controlIn(src []byte) int {
	for at, c := range src {
		if c < ' ' && c != '\n' && c != '\t' || c == 0x7f || c == 0xc2 && src[at+1] < 0xa0 {
			return at
		}
	}
	return -1
}

func (r *reader) lessonBlock(l *Lesson, block *ast.FencedCodeBlock) {
	values, faults, places := lessonBlock().Read(body(block, l.Source))
	l.places = places
	for _, f := range faults {
		r.problems.Add(within(l.lines, block, form.Place{Line: f.Line, Column: f.Column}), "lesson: %s", f.Text)
	}
	r.noPlaceholders(l, values)
	if day, ok := values.TakeDay(BlockDate); ok {
		l.day = &day
	}
	l.asWritten = lessonBlock().Complete(values)
}

// noPlaceholders reports braces in the lesson block, which is read before anything is
// computed: in titles, goals, things to have ready, words and their meanings.
func (r *reader) noPlaceholders(l *Lesson, values form.Values) {
	report := func(name, at string) {
		r.problems.Add(within(l.lines, l.blockAt, l.places[at]), "lesson: %s holds a placeholder; placeholders stand in the text of the lesson, and facts for the margin in glance", name)
	}
	for _, name := range slices.Sorted(maps.Keys(values)) {
		switch v := values[name].(type) {
		case string:
			if likePlaceholder.MatchString(v) {
				report(name, name)
			}
		case []string:
			for i, text := range v {
				if name != BlockGlance.Name() && name != BlockGlanceStaff.Name() && likePlaceholder.MatchString(text) {
					report(name, fmt.Sprintf("%s[%d]", name, i))
				}
			}
		case []form.Values:
			for i, row := range v {
				for key, text := range row {
					switch text := text.(type) {
					case string:
						if likePlaceholder.MatchString(text) {
							report(name, fmt.Sprintf("%s[%d].%s", name, i, key))
						}
					case []string:
						if slices.ContainsFunc(text, likePlaceholder.MatchString) {
							report(name, fmt.Sprintf("%s[%d].%s", name, i, key))
						}
					}
				}
			}
		}
	}
}

// likePlaceholder finds what an author means as a placeholder.
var likePlaceholder = regexp.MustCompile(`\{[^{}]*\}`)

// body returns the text of a fenced block.
func body(block ast.Node, src []byte) []byte {
	var b []byte
	for i := range block.Lines().Len() {
		segment := block.Lines().At(i)
		b = append(b, segment.Value(src)...)
	}
	return b
}
