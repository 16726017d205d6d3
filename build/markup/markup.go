// Package markup takes finished pages apart: tags and the text between them.
//
//	for piece := range markup.Pieces(page) {
//		if href, ok := piece.Attribute("href"); ok { … }
//	}
//
// Partial: it reads what noonbook itself writes (lower-case names, quoted
// attributes, matching tags), not whatever HTML there is in the world. Pieces put
// together again are the page, byte for byte.
package markup

import (
	"bytes"
	"html"
	"iter"
	"strings"
)

// A Piece is a tag, a comment or the text up to the next one.
type Piece struct {
	Raw []byte
	Tag string // lower-case name; "!" of a comment or doctype, "" of text
	End bool   // an end tag
}

// Text returns the text of a piece that is no tag, with character references
// read.
func (p Piece) Text() string { return html.UnescapeString(string(p.Raw)) }

// Pieces goes through a page. What stands within a script or style is one piece
// of text.
func Pieces(page []byte) iter.Seq[Piece] { return pieces(page, false) }

// PiecesWithoutDrawings is Pieces that takes what stands within a drawing, and drawings in
// it, for one piece of text too.
func PiecesWithoutDrawings(page []byte) iter.Seq[Piece] { return pieces(page, true) }

func pieces(page []byte, whole bool) iter.Seq[Piece] {
	return func(yield func(Piece) bool) {
		for len(page) > 0 {
			p, rest := next(page)
			if !yield(p) {
				return
			}
			end := 0
			switch {
			case p.End:
			case p.Tag == "script" || p.Tag == "style":
				if end = bytes.Index(rest, []byte("</"+p.Tag)); end < 0 {
					end = len(rest)
				}
			case whole && p.Tag == "svg":
				end = drawingEnd(rest)
			}
			if end > 0 && !yield(Piece{Raw: rest[:end]}) {
				return
			}
			page = rest[end:]
		}
	}
}

// drawingEnd returns where the end tag of a drawing is whose start tag was read, 0 where
// there is none. No attribute in a drawing holds a tag.
func drawingEnd(page []byte) int {
	end := 0
	for opened := 1; opened > 0; opened-- {
		length := bytes.Index(page[end:], []byte("</svg>"))
		if length < 0 {
			return 0
		}
		opened += bytes.Count(page[end:end+length], []byte("<svg"))
		if end += length; opened > 1 {
			end += len("</svg>")
		}
	}
	return end
}

func next(page []byte) (Piece, []byte) {
	if page[0] != '<' {
		end := bytes.IndexByte(page, '<')
		if end < 0 {
			end = len(page)
		}
		return Piece{Raw: page[:end]}, page[end:]
	}
	if bytes.HasPrefix(page, []byte("<!")) {
		closing := ">"
		if bytes.HasPrefix(page, []byte("<!--")) {
			closing = "-->"
		}
		_, rest, _ := bytes.Cut(page, []byte(closing))
		return Piece{Raw: page[:len(page)-len(rest)], Tag: "!"}, rest
	}
	end, quote := 1, byte(0)
	for ; end < len(page) && (quote != 0 || page[end] != '>'); end++ {
		switch c := page[end]; {
		case quote == 0 && (c == '"' || c == '\''):
			quote = c
		case c == quote:
			quote = 0
		}
	}
	end = min(end+1, len(page))
	p := Piece{Raw: page[:end], End: end > 1 && page[1] == '/'}
	from := 1
	if p.End {
		from = 2
	}
	to := from
	for to < end && !endsName(page[to]) {
		to++
	}
	p.Tag = nameOf(page[from:to])
	return p, page[end:]
}

func endsName(c byte) bool { return c == '>' || c == ' ' || c == '/' || c == '\t' || c == '\n' }

// usual are the names of most tags of a page.
var usual = func() map[string]string {
	names := map[string]string{}
	for name := range strings.FieldsSeq("a b circle data dd div dl dt em figcaption figure g h2 h3 header li nav ol p path section small span strong summary svg table tbody td text th time title tr ul") {
		names[name] = name
	}
	return names
}()

func nameOf(b []byte) string {
	if name, ok := usual[string(b)]; ok {
		return name
	}
	return string(b)
}

// Attribute returns the value of an attribute of a tag, with character
// references read, and whether the tag has it.
func (p Piece) Attribute(name string) (value string, ok bool) {
	for a := range p.attributes() {
		if a.name == name {
			return p.value(a), true
		}
	}
	return "", false
}

// Rewritten returns the tag with each attribute's value as change answers it.
// Attributes without a value stay as they are.
func (p Piece) Rewritten(change func(name, value string) string) []byte {
	var out []byte
	kept := 0 // up to here the tag is in out
	for a := range p.attributes() {
		if !a.valued {
			continue
		}
		old := p.value(a)
		fresh := change(a.name, old)
		if fresh == old {
			continue
		}
		out = append(out, p.Raw[kept:a.from]...)
		out = append(out, html.EscapeString(fresh)...)
		kept = a.to
	}
	return append(out, p.Raw[kept:]...)
}

// Unquoted returns the tag without quotes round values of one plain word, which need none:
// HTML Standard (WHATWG), 13.1.2.3 Attributes. The last value of a tag that ends itself
// keeps its own, since the stroke would be taken for a part of it.
func (p Piece) Unquoted() []byte {
	var out []byte
	kept := 0
	for a := range p.attributes() {
		if !a.valued || a.from == a.to || a.to+1 >= len(p.Raw) || p.Raw[a.from-1] != '"' || p.Raw[a.to+1] == '/' || !isWord(p.Raw[a.from:a.to]) {
			continue
		}
		out = append(out, p.Raw[kept:a.from-1]...)
		out = append(out, p.Raw[a.from:a.to]...)
		kept = a.to + 1
	}
	return append(out, p.Raw[kept:]...)
}

func isWord(value []byte) bool {
	for _, c := range value {
		if (c < 'a' || 'z' < c) && (c < 'A' || 'Z' < c) && (c < '0' || '9' < c) && c != '-' && c != '.' {
			return false
		}
	}
	return true
}

// An attribute of a tag has its value, without quotes, at Raw[from:to].
type attribute struct {
	name     string
	valued   bool
	from, to int
}

func (p Piece) value(a attribute) string { return html.UnescapeString(string(p.Raw[a.from:a.to])) }

// attributes goes through the attributes of a tag.
func (p Piece) attributes() iter.Seq[attribute] {
	return func(yield func(attribute) bool) {
		if p.Tag == "" || p.Tag == "!" || p.End {
			return
		}
		at := 1 + len(p.Tag)
		for {
			for at < len(p.Raw) && strings.IndexByte(" \t\n/>", p.Raw[at]) >= 0 {
				at++
			}
			if at == len(p.Raw) {
				return
			}
			a := attribute{name: string(p.Raw[at:p.until(at, "= \t\n/>")])}
			at += len(a.name)
			if at < len(p.Raw) && p.Raw[at] == '=' {
				a.valued = true
				a.from, a.to, at = p.valueAt(at + 1)
			}
			if !yield(a) {
				return
			}
		}
	}
}

// until returns where the first of the characters is, or the end of the tag.
func (p Piece) until(at int, any string) int {
	if n := bytes.IndexAny(p.Raw[at:], any); n >= 0 {
		return at + n
	}
	return len(p.Raw)
}

// valueAt returns where a value that begins here, perhaps with a quote, has its
// first character and its end, and where the tag goes on.
func (p Piece) valueAt(at int) (from, to, next int) {
	if at == len(p.Raw) || p.Raw[at] != '"' && p.Raw[at] != '\'' {
		to = p.until(at, " \t\n>")
		return at, to, to
	}
	to = p.until(at+1, string(p.Raw[at]))
	return at + 1, to, min(to+1, len(p.Raw))
}
