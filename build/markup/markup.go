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
func Pieces(page []byte) iter.Seq[Piece] {
	return func(yield func(Piece) bool) {
		for len(page) > 0 {
			p, rest := next(page)
			if !yield(p) {
				return
			}
			if raw := p.Tag == "script" || p.Tag == "style"; raw && !p.End {
				end := bytes.Index(rest, []byte("</"+p.Tag))
				if end < 0 {
					end = len(rest)
				}
				if end > 0 && !yield(Piece{Raw: rest[:end]}) {
					return
				}
				rest = rest[end:]
			}
			page = rest
		}
	}
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
	name := bytes.TrimLeft(p.Raw, "</")
	if stop := bytes.IndexAny(name, " \t\n/>"); stop >= 0 {
		name = name[:stop]
	}
	p.Tag = string(name)
	return p, page[end:]
}

// Attribute returns the value of an attribute of a tag, with character
// references read, and whether the tag has it.
func (p Piece) Attribute(name string) (value string, ok bool) {
	p.attributes(func(n, v []byte) bool {
		if string(n) == name {
			value, ok = html.UnescapeString(string(v)), true
		}
		return !ok
	})
	return value, ok
}

// Rewritten returns the tag with each attribute's value as change answers it.
func (p Piece) Rewritten(change func(name, value string) string) []byte {
	var out []byte
	from := 0
	p.attributes(func(n, v []byte) bool {
		if v == nil {
			return true
		}
		old := html.UnescapeString(string(v))
		fresh := change(string(n), old)
		if fresh == old {
			return true
		}
		at := cap(p.Raw) - cap(v) // v is a part of Raw
		out = append(out, p.Raw[from:at]...)
		out = append(out, html.EscapeString(fresh)...)
		from = at + len(v)
		return true
	})
	return append(out, p.Raw[from:]...)
}

// attributes goes through the attributes of a tag until do answers false. The
// value of one without a value is nil.
func (p Piece) attributes(do func(name, value []byte) bool) {
	if p.Tag == "" || p.Tag == "!" || p.End {
		return
	}
	rest := p.Raw[1+len(p.Tag):]
	for {
		rest = bytes.TrimLeft(rest, " \t\n/>")
		if len(rest) == 0 {
			return
		}
		stop := bytes.IndexAny(rest, "= \t\n/>")
		if stop < 0 {
			stop = len(rest)
		}
		name := rest[:stop]
		rest = rest[stop:]
		var value []byte
		if len(rest) > 1 && rest[0] == '=' {
			value, rest = attributeValue(rest[1:])
		}
		if !do(name, value) {
			return
		}
	}
}

func attributeValue(rest []byte) (value, after []byte) {
	quote := rest[0]
	if quote != '"' && quote != '\'' {
		stop := bytes.IndexAny(rest, " \t\n>")
		if stop < 0 {
			stop = len(rest)
		}
		return rest[:stop], rest[stop:]
	}
	stop := bytes.IndexByte(rest[1:], quote)
	if stop < 0 {
		return rest[1:], nil
	}
	return rest[1 : 1+stop], rest[2+stop:]
}
