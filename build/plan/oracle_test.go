package plan

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// The oracle of this file knows nothing of our parser, renderer, templates or
// minifier. It puts words in the place of a lesson's placeholders, marks the fences of
// cautions, answers and staff notes with lines of text, has goldmark alone turn
// the result into HTML, and reads that and the pressed page with encoding/xml
// into the same few tokens: what a reader sees, in its order.

// An element of a page, or with no name a stretch of text.
type element struct {
	name     string
	at       map[string]string
	text     string
	children []*element
}

func parsed(t *testing.T, markup []byte) *element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(markup))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &element{}
	open := []*element{root}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return root
		}
		if err != nil {
			t.Fatalf("%v in %s", err, markup)
		}
		last := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, at: map[string]string{}}
			for _, a := range token.Attr {
				e.at[a.Name.Local] = a.Value
			}
			last.children = append(last.children, e)
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			last.children = append(last.children, &element{text: string(token)})
		}
	}
}

func (e *element) find(name string) *element {
	if e.name == name {
		return e
	}
	for _, c := range e.children {
		if found := c.find(name); found != nil {
			return found
		}
	}
	return nil
}

// words are all that is written in an element, in one line.
func (e *element) words() string {
	text := e.text
	for _, c := range e.children {
		text += c.words()
	}
	return text
}

// tokens collects what a reader sees.
type tokens struct {
	list []string
	run  strings.Builder
	slot string // stands for a value where that does not matter
}

var blanks = regexp.MustCompile(`[\s\x{a0}\x{202f}]+`)

var roundBreaks = regexp.MustCompile(` ?<br> ?`)

func line(s string) string {
	return strings.TrimSpace(roundBreaks.ReplaceAllString(blanks.ReplaceAllString(s, " "), "<br>"))
}

func (t *tokens) flush() {
	if text := line(t.run.String()); text != "" {
		t.list = append(t.list, text)
	}
	t.run.Reset()
}

func (t *tokens) add(token string) {
	t.flush()
	t.list = append(t.list, token)
}

func (t *tokens) read(e *element, parent string) {
	around := func(open, closing string) {
		t.add(open)
		for _, c := range e.children {
			t.read(c, e.name)
		}
		t.add(closing)
	}
	within := func() {
		for _, c := range e.children {
			t.read(c, parent)
		}
	}
	switch e.name {
	case "":
		if e.children == nil {
			t.run.WriteString(e.text)
			return
		}
		within()
	case "data", "time", "span":
		if t.slot != "" {
			t.run.WriteString(t.slot)
			return
		}
		within()
	case "em", "strong", "code":
		t.run.WriteString("<" + e.name + ">")
		within()
		t.run.WriteString("</" + e.name + ">")
	case "a":
		t.run.WriteString("<a " + e.at["href"] + " " + e.at["title"] + ">")
		within()
		t.run.WriteString("</a>")
	case "img":
		t.run.WriteString("<img " + e.at["src"] + " " + e.at["alt"] + " " + e.at["title"] + ">")
	case "br":
		t.run.WriteString("<br>")
	case "hr":
		t.add("<hr>")
	case "pre":
		t.add("<pre>" + strings.TrimRight(e.words(), "\n"))
	case "p":
		if parent == "li" { // whether a list is tight is goldmark's affair
			t.flush()
			within()
			t.flush()
			return
		}
		around("<p>", "</p>")
	case "ol":
		start := e.at["start"]
		if start == "" {
			start = "1"
		}
		around("<ol "+start+">", "</ol>")
	case "th", "td":
		side := ""
		for _, value := range e.at { // goldmark writes a style, a page a class
			for _, s := range []string{"right", "center"} {
				if strings.Contains(value, s) {
					side = " " + s
				}
			}
		}
		around("<"+e.name+side+">", "</"+e.name+">")
	case "figure":
		t.add("⟦block⟧")
	case "section":
		t.aside(e, parent)
	case "div":
		if n := ruledLines(e); n > 0 {
			t.add(fmt.Sprintf("⟦ruled %d⟧", n))
			return
		}
		within() // the frame of a table
	default:
		around("<"+e.name+">", "</"+e.name+">")
	}
}

// ruledLines counts the lines of an element that holds nothing but empty lines.
func ruledLines(e *element) int {
	n := 0
	for _, c := range e.children {
		if c.name == "" && strings.TrimSpace(c.text) == "" {
			continue
		}
		if c.name != "div" || len(c.children) > 0 {
			return 0
		}
		n++
	}
	return n
}

// asideNames are what the page writes at the head of an aside, in English: the
// words of the theme, repeated here so that they can not both be wrong.
var asideNames = map[string]string{"Take care": "caution", "Answer": "answer", "For the teacher": "staff"}

func (t *tokens) aside(e *element, parent string) {
	name := ""
	var rest []*element
	for _, c := range e.children {
		switch {
		case name == "" && c.name == "p":
			if name = asideNames[line(c.words())]; name == "" {
				name = "section named " + line(c.words())
			}
		default:
			rest = append(rest, c)
		}
	}
	t.add("⟦" + name + "⟧")
	for _, c := range rest {
		t.read(c, parent)
	}
	t.add("⟦/" + name + "⟧")
}

// seen reads the article of a pressed page without what the shell adds to it: the
// title, the summary, the margin, and what to have ready.
func seen(t *testing.T, page []byte, summary, slot string) []string {
	t.Helper()
	article := parsed(t, page).find("article")
	if article == nil {
		t.Fatalf("no article in %s", page)
	}
	out := tokens{slot: slot}
	title := slices.IndexFunc(article.children, func(e *element) bool { return e.name == "h1" })
	lead := summary != ""
	for _, c := range article.children[title+1:] {
		switch {
		case c.name == "p" && lead:
			lead = false
			if got := line(c.words()); got != line(summary) {
				t.Errorf("the summary is %q, want %q", got, summary)
			}
		case c.name == "aside", c.name == "div" && c.named("nb-goals", "nb-kit", "nb-terms"):
		default:
			out.read(c, "article")
		}
	}
	out.flush()
	return out.list
}

// named reports whether an element holds one of the names.
func (e *element) named(ids ...string) bool {
	return slices.Contains(ids, e.at["id"]) || slices.ContainsFunc(e.children, func(c *element) bool { return c.named(ids...) })
}

// fenced finds a line that opens a fence, in lists and quotes too.
var fenced = regexp.MustCompile("^([ >]*)(`{3,}|~{3,})[ ]*([\\w-]*)[ ]*(.*)$")

// marked writes the fences of a lesson that are noonbook's own as lines of text:
// ⟦caution⟧ and ⟦/caution⟧ round what they hold, ⟦block⟧ for a computed one. The
// lesson block, which comes first, is taken away.
func marked(text string) string {
	type fence struct {
		prefix, mark, word string
	}
	var open []fence
	var out []string
	plain := fence{} // of code or of a computed block
	lesson := false
	for text := range strings.SplitSeq(text, "\n") {
		m := fenced.FindStringSubmatch(text)
		closes := func(f fence) bool {
			rest := strings.TrimLeft(text, " >")
			return f.mark != "" && strings.HasPrefix(rest, f.mark) && strings.Trim(rest, f.mark[:1]) == ""
		}
		switch {
		case plain.mark != "":
			if closes(plain) {
				if plain.word == "" {
					out = append(out, text)
				}
				plain = fence{}
			} else if plain.word == "" {
				out = append(out, text)
			}
		case len(open) > 0 && closes(open[len(open)-1]):
			f := open[len(open)-1]
			open = open[:len(open)-1]
			out = append(out, f.prefix, f.prefix+"⟦/"+f.word+"⟧", f.prefix)
		case m == nil:
			out = append(out, text)
		case m[3] == "caution" || m[3] == "answer" || m[3] == "staff":
			open = append(open, fence{m[1], m[2], m[3]})
			out = append(out, m[1], m[1]+strings.TrimSpace("⟦"+m[3]+" "+strings.TrimPrefix(m[4], "lines="))+"⟧", m[1])
		case m[3] == "lesson" && !lesson:
			lesson = true
			plain = fence{m[1], m[2], m[3]}
		case m[3] == "compute":
			out = append(out, m[1], m[1]+"⟦block⟧", m[1])
			plain = fence{m[1], m[2], m[3]}
		default:
			out = append(out, text)
			plain = fence{m[1], m[2], ""}
		}
	}
	return strings.Join(out, "\n")
}

// written finds placeholders in a text, and escapes, which are passed over.
var written = regexp.MustCompile(`\\.|\{[\w-]+\.[^{}"]*(?:"[^"]*"[^{}"]*)*\}`)

// A stand is a word that no Markdown changes, in the place of a placeholder while
// goldmark reads the text.
var standIn = regexp.MustCompile(`QZ(\d+)ZQ`)

// pageOfLesson is where a link to a lesson leads: the file's name without its
// number.
var pageOfLesson = regexp.MustCompile(`^(?:\d+-)?(.*)\.md(#.*)?$`)

// foreseen are the tokens that a lesson's page should give.
func foreseen(t *testing.T, text string, edition Edition, value func(placeholder string) string) []string {
	t.Helper()
	var html bytes.Buffer
	var found []string
	text = written.ReplaceAllStringFunc(marked(text), func(s string) string {
		if s[0] != '{' {
			return s
		}
		found = append(found, s)
		return fmt.Sprintf("QZ%dZQ", len(found)-1)
	})
	if err := goldmark.New(goldmark.WithExtensions(extension.Table)).Convert([]byte(text), &html); err != nil {
		t.Fatal(err)
	}
	root := parsed(t, html.Bytes())
	var follow func(e *element, code bool)
	follow = func(e *element, code bool) {
		e.text = standIn.ReplaceAllStringFunc(e.text, func(s string) string {
			n, _ := strconv.Atoi(standIn.FindStringSubmatch(s)[1])
			if code { // is printed as it is typed
				return found[n]
			}
			return value(found[n])
		})
		if e.name == "h1" {
			e.name = "h2" // the title of the page is the one above
		}
		if href, ok := e.at["href"]; ok {
			e.at["href"] = pageOfLesson.ReplaceAllString(href, "$1.html$2")
		}
		if src, ok := e.at["src"]; ok {
			e.at["src"] = strings.ReplaceAll(src, "/", "-")
		}
		for _, c := range e.children {
			follow(c, code || e.name == "code")
		}
	}
	follow(root, false)
	out := tokens{}
	out.read(root, "article")
	out.flush()
	return forEdition(t, out.list, edition)
}

var (
	oneMark = regexp.MustCompile(`^⟦(/?)(caution|answer|staff|block)(?: (\d+))?⟧$`)
	// A paragraph of a marker alone, its tags taken away.
	bareTags = map[string]bool{"<p>": true, "</p>": true}
)

// forEdition takes the paragraphs off the markers, and what is for staff out of
// the class edition: of an answer its ruled lines stay.
func forEdition(t *testing.T, list []string, edition Edition) []string {
	t.Helper()
	var out []string
	hidden := 0
	for i, token := range list {
		if bareTags[token] && (i+1 < len(list) && oneMark.MatchString(list[i+1]) && token == "<p>" || i > 0 && oneMark.MatchString(list[i-1]) && token == "</p>") {
			continue
		}
		m := oneMark.FindStringSubmatch(token)
		private := m != nil && (m[2] == "answer" || m[2] == "staff") && edition == Class
		switch {
		case private && m[1] == "/":
			hidden--
			continue
		case private:
			if lines, _ := strconv.Atoi(m[3]); hidden == 0 && m[2] == "answer" && lines > 0 {
				out = append(out, fmt.Sprintf("⟦ruled %d⟧", lines))
			}
			hidden++
			continue
		case m != nil && hidden == 0:
			out = append(out, "⟦"+m[1]+m[2]+"⟧")
			continue
		}
		if hidden == 0 {
			out = append(out, token)
		}
	}
	if hidden != 0 {
		t.Fatalf("%d private parts are not closed", hidden)
	}
	return out
}

// agree compares tokens and shows where they part.
func agree(t *testing.T, what string, got, want []string) {
	t.Helper()
	i := 0
	for i < min(len(got), len(want)) && got[i] == want[i] {
		i++
	}
	if i == len(got) && i == len(want) {
		return
	}
	around := func(list []string) string { return strings.Join(list[max(0, i-4):min(len(list), i+6)], " ") }
	t.Errorf("%s parts from what CommonMark gives at token %d of %d and %d:\n got … %s …\nwant … %s …", what, i, len(got), len(want), around(got), around(want))
}

// slotsEverywhere is a lesson with a slot in everything that can hold one.
const slotsEverywhere = "```lesson\ntitle = \"Slots\"\n```\n\n" + `{class-facts.school} is at {place-facts.latitude}, {place-facts.longitude}.
Its hours run {dial-table.turns}; "{class-facts.school}" ({class-facts.pupils}) has{class-facts.groups}{class-facts.pupils}groups.

# One {class-facts.pupils}

## Two of {class-facts.groups} groups

### Three *of* {class-facts.school}

Six and {class-facts.pupils}
---

###### Deep {class-facts.groups}

*{class-facts.pupils}* and **{class-facts.groups} of** them, ***both {place-facts.latitude}***, *a **{class-facts.pupils}** b*\
after a break {class-facts.groups}

A [link to {class-facts.school}](2-other.md "The other"), [within](#one), [far](https://example.org/a?b=c&d=e), <https://example.org>,
[a heading *{class-facts.pupils}*](2-other.md#hello), ![A leaf & a stalk](art/leaf.svg "A title"), [![leaf](art/leaf.svg)](2-other.md).

Braces \{not.a.slot\} and ` + "`{code.span}`" + ` and \*stars\*; entities &amp; &lt;b&gt; &copy;; a < b > c & d.

| {class-facts.school} | right {class-facts.pupils} | middle |
|:-----|------:|:------:|
| {class-facts.groups} | **{class-facts.pupils}** | a \| b |
| [x](2-other.md) | ![leaf](art/leaf.svg) | |

- tight {class-facts.pupils}
- tight *{class-facts.groups}*
  - nested {class-facts.pupils}
    1. deeper {class-facts.groups}
    2. deepest

7. begins at seven, {class-facts.pupils}

   with a second paragraph {class-facts.groups}

   > quoted in a list {class-facts.school}
   >
   > | a | {class-facts.pupils} |
   > |---|---:|
   > | b | {class-facts.groups} |

8. eight

> quoted {class-facts.pupils}
>
> - a list in a quote {class-facts.groups}
>
>   with more
>
> > twice {class-facts.school}

***

` + "```go\ncode := \"{class-facts.pupils}\" // <b> & c\n```" + `

    indented {class-facts.pupils}

` + "````caution\nNever *look* at the Sun, {class-facts.pupils} of you.\n\n- nor through {class-facts.groups} lenses\n\n## A heading in it\n\n```text\ncode in a caution\n```\n````" + `

The step after the caution.

` + "```compute class-facts\n```" + `

1. An item that asks

   ` + "````answer lines=2\n   It is {class-facts.pupils}.\n\n   ```text\n   {class-facts.pupils}\n   ```\n\n   ```caution\n   A caution for staff {class-facts.groups}\n   ```\n   ````" + `

   and goes on.

2. Another

   ~~~caution
   In a list: {class-facts.school}
   ~~~

> ` + "```staff\n> Quoted for staff, {class-facts.pupils}\n>\n> | a |\n> |---|\n> | {class-facts.groups} |\n> ```" + `
>
> Still quoted.
>
> ` + "```caution\n> In a quote {class-facts.pupils}\n> ```" + `

` + "```answer\nWithout lines {class-facts.pupils}\n```" + `

` + "~~~~staff\nA note, with\n\n~~~answer lines=9\nan answer in it {class-facts.groups}\n~~~\n\n```compute class-facts\nclass.pupils = 5\n```\n\n### Its heading\n~~~~" + `

` + "`````caution\nBefore\n\n````answer lines=3\nan answer in a caution\n````\n\nAfter {class-facts.pupils}\n`````" + `

The last words.
`

const oracleSettings = `[unit]
title = "Oracle"
[school]
name = "S"
latitude = -33.5
longitude = 151.25
time_zone = "Australia/Sydney"
[class]
pupils = 28
group_size = 3
[term]
first_day = 2027-05-03
last_day = 2027-05-28
`

// A pressed lesson says what CommonMark gives for its text, with the values of
// its placeholders written in, everything in its order and in its element; the
// class edition without what is for staff. The values here are those of the
// settings themselves: 28 pupils in threes are one four and eight threes.
func TestPageIsWhatCommonMarkGives(t *testing.T) {
	unit, words := read(t, fstest.MapFS{
		"unit.toml":    {Data: []byte(oracleSettings)},
		"1-slots.md":   {Data: []byte(slotsEverywhere)},
		"2-other.md":   {Data: []byte("```lesson\ntitle = \"Other\"\n```\n\n## Hello\n")},
		"art/leaf.svg": {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`)},
	}, "oracle")
	for _, name := range []string{"Elm School", `Ash & <Elm> *x* _y_ [z](q) ` + "`w`" + ` | "Co" \ &amp; {a.b} #1`} {
		values := map[string]string{
			"{class-facts.school}":    name,
			"{class-facts.pupils}":    "28",
			"{class-facts.groups}":    "9",
			"{place-facts.latitude}":  "33.50° south",
			"{place-facts.longitude}": "151.25° east",
			"{dial-table.turns}":      "anticlockwise",
		}
		class, staff := pressings(t, unit, words, unit.Settings.With(form.Values{"school.name": name}))
		for edition, page := range map[Edition]string{Class: class["slots.html"], Staff: staff["slots.html"]} {
			want := foreseen(t, slotsEverywhere, edition, func(s string) string {
				v, ok := values[s]
				if !ok {
					t.Fatalf("no value for %s", s)
				}
				return v
			})
			agree(t, fmt.Sprintf("%q, edition %d", name, edition), seen(t, []byte(page), "", ""), want)
			if len(want) < 150 {
				t.Errorf("the lesson has only %d tokens", len(want))
			}
		}
	}
}

// Every lesson and page that our units hold is what CommonMark gives for it, in
// both editions; the values, which other tests look at, stand as one sign.
func TestEveryLessonIsWhatCommonMarkGives(t *testing.T) {
	pages := 0
	for _, name := range units {
		t.Run(name, func(t *testing.T) {
			folder := os.DirFS("../../" + name)
			unit, words := read(t, folder, name)
			for _, edition := range []Edition{Class, Staff} {
				for _, page := range bare(t, unit, words, edition) {
					l := lessonOf(unit, page.name)
					if l == nil {
						continue // the cover, sheets and printables
					}
					got := seen(t, page.markup, source.BlockSummary.Of(l.Block), "⟪⟫")
					want := foreseen(t, string(l.Source), edition, func(string) string { return "⟪⟫" })
					if l.Part() != source.PartLesson && l.Part() != source.PartPage {
						got = got[:min(len(got), len(want))] // these gather from other pages behind their own words
					}
					agree(t, fmt.Sprintf("%s, edition %d", l.File, edition), got, want)
					pages++
				}
			}
		})
	}
	if pages < 30 {
		t.Errorf("only %d pages were compared", pages)
	}
}

// A barePage is a page of a plan whose slots hold a sign in place of their value:
// nothing needs to be computed to see where they standIn.
type barePage struct {
	name   string
	markup []byte
}

func bare(t *testing.T, unit *source.Unit, words *typeset.Words, edition Edition) []barePage {
	t.Helper()
	p, err := Make(unit, words, edition, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	var pages []barePage
	for _, page := range p.pages {
		pages = append(pages, barePage{page.name, bytes.Join(page.ready, []byte("<span>⟪⟫</span>"))})
	}
	return pages
}

func lessonOf(unit *source.Unit, page string) *source.Lesson {
	if i := slices.IndexFunc(unit.Lessons, func(l *source.Lesson) bool { return l.Page == page }); i >= 0 {
		return unit.Lessons[i]
	}
	return nil
}
