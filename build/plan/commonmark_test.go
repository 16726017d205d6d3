package plan

import (
	"bytes"
	"fmt"
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
			answers := answersOf(t, unit, unit.Settings)
			unit = here(t, unit, unit.Settings)
			for _, edition := range []Edition{Class, Staff} {
				for _, page := range bare(t, unit, words, edition) {
					l := lessonOf(unit, page.name)
					if l == nil {
						continue // the cover, sheets and printables
					}
					got := namedCautions(seen(t, page.markup, source.BlockSummary.Of(l.Block), "⟪⟫"))
					want := foreseen(t, standing(t, string(l.Source), answers[l.File]), edition, func(string) string { return "⟪⟫" })
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

// namedCautions marks the slots that stand in no paragraph, which are those of cautions
// by their names.
func namedCautions(list []string) []string {
	for i, token := range list {
		if opened := i > 0 && strings.HasPrefix(list[i-1], "<") && !strings.HasPrefix(list[i-1], "</"); token == "⟪⟫" && !opened {
			list[i] = "⟦named⟧"
		}
	}
	return list
}

// A barePage is a page of a plan whose slots hold a sign in place of their value:
// nothing needs to be computed to see where they stand.
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

// seen reads the article of a pressed page without what the shell adds to it: the
// title, the summary, the margin, and what to have ready.
func seen(t *testing.T, page []byte, summary, slot string) []string {
	t.Helper()
	article := parsed(t, page).find("article")
	if article == nil {
		t.Fatalf("no article in %s", page)
	}
	out := tokens{slot: slot}
	article.children = withoutOpenings(withoutTheme(article.children))
	title := slices.IndexFunc(article.children, func(e *element) bool { return e.name == "h1" })
	lead := summary != ""
	for _, c := range article.children[title+1:] {
		switch {
		case c.name == "p" && lead:
			lead = false
			if got := typed(line(c.words())); got != typed(line(summary)) {
				t.Errorf("the summary is %q, want %q", got, summary)
			}
		default:
			out.read(c, "article")
		}
	}
	out.flush()
	return out.list
}

// withoutTheme leaves out what the page has beside, before and after the lesson.
func withoutTheme(children []*element) []*element {
	var list []*element
	for _, c := range children {
		switch class := c.at["class"]; {
		case c.name == "aside", class == "have-ready", class == "new-words", class == "horizon", class == "opening-head", class == "print-link":
			continue
		}
		c.children = withoutTheme(c.children)
		list = append(list, c)
	}
	return list
}

// withoutOpenings puts what the parts of a lesson hold in their place, without their names,
// and with headings of the level that they have where there are no parts.
func withoutOpenings(children []*element) []*element {
	var list []*element
	for _, c := range children {
		if c.name != "section" || c.at["class"] != "opening" {
			list = append(list, c)
			continue
		}
		for _, within := range c.children {
			if regexp.MustCompile(`^h[3-6]$`).MatchString(within.name) {
				within.name = fmt.Sprintf("h%d", within.name[1]-'0'-1)
			}
			list = append(list, within)
		}
	}
	return list
}

// partOfLesson is the text of a heading that begins a part of a lesson.
var partOfLesson = regexp.MustCompile(`^(?:Prepare|Teach|Understand|After): (class|staff)$`)

// ofParts takes away the headings of a lesson's parts, and from the class edition the
// parts for staff.
func ofParts(children []*element, edition Edition) []*element {
	var list []*element
	hidden := false
	for _, c := range children {
		if m := partOfLesson.FindStringSubmatch(line(c.words())); c.name == "h1" && m != nil {
			hidden = m[1] == "staff" && edition == Class
			continue
		}
		if !hidden {
			list = append(list, c)
		}
	}
	return list
}

// fenced finds a line that opens a fence, in lists and quotes too.
var fenced = regexp.MustCompile("^([ >]*)(`{3,}|~{3,})[ ]*([\\w-]*)[ ]*(.*)$")

// marked writes the fences of a lesson that are noonbook's own as lines of text:
// ⟦caution⟧ and ⟦/caution⟧ round what they hold, ⟦named⟧ for the names of cautions,
// ⟦block⟧ for a computed one. The
// lesson block, which comes first, is taken away.
func marked(text string) string {
	type fence struct {
		prefix, mark, word string
		named              bool // a caution by its name, with no words so far
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
			if !f.named {
				out = append(out, f.prefix, f.prefix+"⟦/"+f.word+"⟧", f.prefix)
			}
		case len(open) > 0 && open[len(open)-1].named:
			f := &open[len(open)-1]
			f.named = false
			out = append(out, f.prefix+"⟦caution⟧", f.prefix, text)
		case m == nil:
			out = append(out, text)
		case m[3] == "caution" && m[4] != "":
			open = append(open, fence{m[1], m[2], m[3], true})
			out = append(out, m[1], m[1]+"⟦named⟧", m[1])
		case m[3] == "caution" || m[3] == "answer" || m[3] == "staff":
			open = append(open, fence{m[1], m[2], m[3], false})
			out = append(out, m[1], m[1]+strings.TrimSpace("⟦"+m[3]+" "+strings.TrimPrefix(m[4], "lines="))+"⟧", m[1])
		case m[3] == "lesson" && !lesson:
			lesson = true
			plain = fence{m[1], m[2], m[3], false}
		case m[3] == "compute":
			out = append(out, m[1], m[1]+"⟦block⟧", m[1])
			plain = fence{m[1], m[2], m[3], false}
		default:
			out = append(out, text)
			plain = fence{m[1], m[2], "", false}
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
	if body := root.find("body"); body != nil {
		body.children = ofParts(body.children, edition)
	} else {
		root.children = ofParts(root.children, edition)
	}
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
	oneMark = regexp.MustCompile(`^⟦(/?)(caution|named|answer|staff|block)(?: (\d+))?⟧$`)
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
