package plan

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"
)

// The oracle of this file and of commonmark_test.go knows nothing of our parser,
// renderer, templates or minifier. It puts words in the place of a lesson's
// placeholders, marks the fences of cautions, answers and staff notes with lines of
// text, has goldmark alone turn the result into HTML, and reads that and the pressed
// page with encoding/xml into the same few tokens: what a reader sees, in its order.

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

// with collects the elements that have an attribute of that value.
func (e *element) with(attribute, value string) []*element {
	var list []*element
	if e.at[attribute] == value {
		list = append(list, e)
	}
	for _, c := range e.children {
		list = append(list, c.with(attribute, value)...)
	}
	return list
}

func (e *element) texts(name string) []string {
	var list []string
	for _, c := range e.all(name) {
		list = append(list, line(c.words()))
	}
	return list
}

// tokens collects what a reader sees.
type tokens struct {
	list []string
	run  strings.Builder
	slot string // stands for a value where that does not matter
}

var blanks = regexp.MustCompile(`[\s\x{a0}\x{202f}]+`)

var drawingName = regexp.MustCompile(`^.*\.svg$`)

// typed turns curved quotes, primes and guillemets back into what a keyboard has: which of
// them stands where a straight one was typed is for the tests of typeset to say, that one
// stands there for the oracle. Code is compared as it is.
func typed(s string) string {
	return asTyped.Replace(guillemets.ReplaceAllString(s, `"`))
}

var (
	asTyped    = strings.NewReplacer("“", `"`, "”", `"`, "‘", "'", "’", "'", "′", "'", "″", `"`)
	guillemets = regexp.MustCompile(`«[\s\x{a0}\x{202f}]*|[\s\x{a0}\x{202f}]*»`)
)

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
			t.run.WriteString(typed(e.text))
			return
		}
		within()
	case "data", "time", "span":
		if t.slot != "" {
			t.run.WriteString(t.slot)
			return
		}
		within()
	case "code": // is printed as it is typed, quotes and all
		t.run.WriteString("<code>" + e.words() + "</code>")
	case "em", "strong":
		t.run.WriteString("<" + e.name + ">")
		within()
		t.run.WriteString("</" + e.name + ">")
	case "a":
		t.run.WriteString("<a " + e.at["href"] + " " + e.at["title"] + ">")
		within()
		t.run.WriteString("</a>")
	case "svg": // a picture that is in the page; its file is not named there
		said := e.find("title")
		if d := e.find("desc"); d != nil {
			said = d
		}
		t.run.WriteString("<img .svg " + line(said.words()) + " >")
	case "img":
		t.run.WriteString("<img " + drawingName.ReplaceAllString(e.at["src"], ".svg") + " " + e.at["alt"] + " " + e.at["title"] + ">")
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
// words of the theme, repeated here so that they cannot both be wrong.
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
