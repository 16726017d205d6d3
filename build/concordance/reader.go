package concordance

import (
	"strings"

	"noonbook/build/file"
	"noonbook/build/markup"
)

// A Page is what the concordance takes from one page. It depends on nothing but the page's
// bytes.
type Page struct {
	leaf
	places []place // the page itself, then those of the leaf
}

type place struct {
	title string // its heading
	lines []string
}

// A reader takes the places and lines of one page from its main part. Drawings, ways
// round the page and the folded working of computed blocks stay out: their words stand
// beside them too.
type reader struct {
	Page
	inside bool   // the main part
	skip   string // the tag of what is left out
	deep   int    // how many such stand within it
	title  string // the tag of the heading or term that is being read
	noting bool   // the meaning of a term is being read
	also   bool   // its other names are
	head   strings.Builder
	line   strings.Builder
}

// Read takes the places and lines of a page.
func Read(f file.File) Page {
	r := reader{Page: Page{leaf: leaf{File: f.Name, Places: []spot{}}, places: make([]place, 1)}}
	for piece := range markup.Pieces(f.Bytes) {
		switch {
		case piece.Tag == "main":
			r.inside = !piece.End
		case !r.inside:
			if class, _ := piece.Attribute("class"); class == "room" || class == "lesson-sheet" {
				r.After = afterLessons
			}
		case r.skip != "":
			r.skips(piece)
		case piece.Tag == "":
			r.text(piece.Text())
		case piece.End:
			r.closes(piece.Tag)
		default:
			r.opens(piece)
		}
	}
	r.endLine()
	return r.Page
}

// skips goes through what is left out; a drawing may hold another.
func (r *reader) skips(piece markup.Piece) {
	switch {
	case piece.Tag != r.skip || strings.HasSuffix(string(piece.Raw), "/>"):
	case !piece.End:
		r.deep++
	case r.deep > 0:
		r.deep--
	default:
		r.skip = ""
	}
}

func (r *reader) text(s string) {
	if r.also {
		r.Places[len(r.Places)-1].Also += s
	}
	if r.title != "" || r.noting {
		r.head.WriteString(s)
	}
	if r.title == "" {
		r.line.WriteString(s)
	}
}

// breaks are the elements that begin and end a line.
var breaks = map[string]bool{
	"article": true, "aside": true, "blockquote": true, "br": true, "caption": true, "details": true, "div": true, "dl": true,
	"figure": true, "h1": true, "h2": true, "h3": true, "h4": true, "h5": true, "hr": true, "li": true, "ol": true, "p": true, "pre": true,
	"section": true, "summary": true, "table": true, "tbody": true, "thead": true, "tr": true, "ul": true,
}

// between parts the cells of a line.
const between = " · "

func (r *reader) endLine() {
	if text := strings.Trim(strings.Join(strings.Fields(r.line.String()), " "), " ·"); text != "" {
		here := &r.places[len(r.places)-1]
		here.lines = append(here.lines, text)
	}
	r.line.Reset()
}

func (r *reader) opens(piece markup.Piece) {
	if breaks[piece.Tag] || piece.Tag == "dt" { // the end of a term is no end of a line
		r.endLine()
	}
	switch piece.Tag {
	case "section":
		if class, _ := piece.Attribute("class"); class == "for-editing" {
			r.After = afterAll
		}
	case "svg", "script", "figcaption", "nav":
		r.skip = piece.Tag
	case "td", "th", "dd":
		if r.line.Len() > 0 {
			r.line.WriteString(between)
		}
		if piece.Tag == "dd" {
			r.noting = r.atTerm() && r.Places[len(r.Places)-1].Note == ""
			r.head.Reset()
		}
	case "h1":
		r.title = piece.Tag
		r.head.Reset()
	case "h2", "h3", "h4", "dt":
		if id, ok := piece.Attribute("id"); ok {
			r.Places = append(r.Places, spot{Anchor: id})
			r.places = append(r.places, place{})
			r.title = piece.Tag
			r.head.Reset()
		}
	case "b":
		class, _ := piece.Attribute("class")
		if r.also = class == "also" && r.atTerm(); r.also && r.Places[len(r.Places)-1].Also != "" {
			r.Places[len(r.Places)-1].Also += " "
		}
	case "small": // behind the meaning of a term: its other names
		r.endNote()
	case "a": // the lesson that it is from
		if r.endNote(); r.atTerm() {
			r.endLine()
		}
	}
}

// atTerm reports whether the latest place is a term of the glossary.
func (r *reader) atTerm() bool {
	n := len(r.Places)
	return n > 0 && strings.HasPrefix(r.Places[n-1].Anchor, TermAnchor)
}

func (r *reader) endNote() {
	if r.noting {
		r.Places[len(r.Places)-1].Note = r.heading()
		r.noting = false
	}
}

// heading is what was read of a heading, a term or a meaning.
func (r *reader) heading() string { return strings.Join(strings.Fields(r.head.String()), " ") }

func (r *reader) closes(tag string) {
	if breaks[tag] {
		r.endLine()
	}
	switch tag {
	case r.title:
		if tag == "h1" {
			r.Title = r.heading()
		} else {
			r.Places[len(r.Places)-1].Label = r.heading()
		}
		r.places[len(r.places)-1].title = r.heading()
		r.title = ""
	case "b":
		r.also = false
	case "dd":
		r.endNote()
	}
}
