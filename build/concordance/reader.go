package concordance

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"noonbook/build/markup"
)

// A Page is what the concordance takes from one page of a school.
type Page struct {
	leaf
	items []item
	own   []string // texts that the index does not know; items count them behind its own
}

// An item is something on a page, in the order in which it stands there.
type item struct {
	kind itemKind
	text int32 // its number; of a place, none
}

type itemKind uint8

const (
	aLine itemKind = iota
	aHeading
	aPlace // one begins
)

// A reader takes the places and lines of one page from its main part. Drawings, ways
// round the page and from card to card and the folded working of computed blocks stay out:
// their words stand beside them too.
type reader struct {
	Page
	lexicon *lexicon
	base    int    // texts in it
	at      int    // the latest place, an index of the leaf's; -1 for the page itself
	inside  bool   // the main part
	skip    string // the tag of what is left out
	title   string // the tag of the heading or term that is being read
	noting  bool   // the meaning of a term is being read
	also    bool   // its other names are
	head    []byte
	line    []byte
	spare   []byte // for a text without its spare white space
}

func (x *Index) reader(of leaf) *reader {
	return &reader{Page: Page{leaf: of}, lexicon: &x.lexicon, base: len(x.texts), at: -1}
}

// readAll reads what begins and ends where nothing is pending.
func (r *reader) readAll(page []byte) {
	for piece := range markup.PiecesWithoutDrawings(page) {
		r.read(piece)
	}
	r.endLine()
}

func (r *reader) read(piece markup.Piece) {
	switch {
	case piece.Tag == "main":
		r.inside = !piece.End
	case !r.inside:
		if class, _ := piece.Attribute("class"); class == "room" || class == "lesson-sheet" {
			r.After = afterLessons
		}
	case r.skip != "":
		if piece.End && piece.Tag == r.skip {
			r.skip = ""
		}
	case piece.Tag == "":
		r.text(piece)
	case piece.End:
		r.closes(piece.Tag)
	default:
		r.opens(piece)
	}
}

// listens reports whether text that stood here would be taken.
func (r *reader) listens() bool { return r.inside && r.skip == "" }

// rests reports whether nothing is pending: what comes could be read by itself. In a term
// something is, since its meaning and other names belong to it.
func (r *reader) rests() bool {
	return r.listens() && len(r.line) == 0 && r.title == "" && !r.atTerm()
}

func (r *reader) text(piece markup.Piece) {
	text := piece.Raw
	if bytes.IndexByte(text, '&') >= 0 {
		text = []byte(piece.Text())
	}
	if r.also {
		r.Places[r.at].Also += string(text)
	}
	if r.title != "" || r.noting {
		r.head = append(r.head, text...)
	}
	if r.title == "" {
		r.line = append(r.line, text...)
	}
}

// breaks are the elements that begin and end a line.
var breaks = map[string]bool{
	"article": true, "aside": true, "blockquote": true, "br": true, "caption": true, "details": true, "div": true, "dl": true,
	"figure": true, "h1": true, "h2": true, "h3": true, "h4": true, "h5": true, "hr": true, "li": true, "ol": true, "p": true, "pre": true,
	"section": true, "summary": true, "table": true, "tbody": true, "thead": true, "tr": true, "ul": true,
}

// wayOn is the class of the links from one card of a walk to the next, which say names of
// other cards.
const wayOn = "walk-on"

// between parts the cells of a line.
const between = " · "

func (r *reader) endLine() {
	if len(r.line) == 0 {
		return
	}
	r.spare = squeezed(r.spare[:0], r.line)
	r.line = r.line[:0]
	r.add(aLine, bytes.Trim(r.spare, " ·"))
}

// add leaves out a text without a word: nobody asks for numbers alone.
func (r *reader) add(kind itemKind, text []byte) {
	if !hasWord(text) {
		return
	}
	number, known := r.lexicon.find(text)
	if !known {
		number = int32(r.base + len(r.own))
		r.own = append(r.own, string(text))
	}
	r.items = append(r.items, item{kind, number})
}

// place begins a place, which a region of a planned page has already.
func (r *reader) place(anchor string) {
	if r.at++; r.at == len(r.Places) {
		r.Places = append(r.Places, spot{})
	}
	r.Places[r.at] = spot{Anchor: anchor}
	r.items = append(r.items, item{kind: aPlace})
}

// squeezed appends a text with one space for each stretch of white space in it, and none
// round it.
func squeezed(dst, text []byte) []byte {
	begun, space := len(dst), false
	for len(text) > 0 {
		size := 0 // a stretch of ASCII without white space is taken at once
		for size < len(text) && ' ' < text[size] && text[size] < utf8.RuneSelf {
			size++
		}
		if size == 0 {
			var c rune
			if c, size = utf8.DecodeRune(text); unicode.IsSpace(c) {
				text, space = text[size:], len(dst) > begun
				continue
			}
		}
		if space {
			dst, space = append(dst, ' '), false
		}
		dst, text = append(dst, text[:size]...), text[size:]
	}
	return dst
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
	case "p":
		if class, _ := piece.Attribute("class"); class == wayOn {
			r.skip = piece.Tag
		}
	case "td", "th", "dd":
		if len(r.line) > 0 {
			r.line = append(r.line, between...)
		}
		if piece.Tag == "dd" {
			r.noting = r.atTerm() && r.Places[r.at].Note == ""
			r.head = r.head[:0]
		}
	case "h1":
		r.title = piece.Tag
		r.head = r.head[:0]
	case "h2", "h3", "h4", "dt":
		if id, ok := piece.Attribute("id"); ok {
			r.place(id)
			r.title = piece.Tag
			r.head = r.head[:0]
		}
	case "b":
		class, _ := piece.Attribute("class")
		if r.also = class == "also" && r.atTerm(); r.also && r.Places[r.at].Also != "" {
			r.Places[r.at].Also += " "
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
	return r.at >= 0 && strings.HasPrefix(r.Places[r.at].Anchor, TermAnchor)
}

func (r *reader) endNote() {
	if r.noting {
		r.Places[r.at].Note = r.heading()
		r.noting = false
	}
}

// heading is what was read of a heading, a term or a meaning.
func (r *reader) heading() string {
	r.spare = squeezed(r.spare[:0], r.head)
	return string(r.spare)
}

func (r *reader) closes(tag string) {
	if breaks[tag] {
		r.endLine()
	}
	switch tag {
	case r.title:
		heading := r.heading()
		if tag == "h1" {
			r.Title = heading
		} else {
			r.Places[r.at].Label = heading
		}
		r.add(aHeading, r.spare)
		r.title = ""
	case "b":
		r.also = false
	case "dd":
		r.endNote()
	}
}
