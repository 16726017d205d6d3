package form

import (
	"bytes"
	"regexp"
	"strings"
	"unicode/utf8"
)

// Bounds of a TOML text, far beyond what any form of ours takes. The TOML library
// takes time with the square of the depth, and with the length of a key for every
// value below it.
const (
	maxDeep = 8  // lists and tables within one another, parts of a dotted key
	maxKey  = 80 // bytes of a key, dotted
)

// An entry is one [table] or one key = value of a TOML text, which may be faulty.
type entry struct {
	start, end int    // its bytes; the line end is not among them
	head       int    // 0 for key = value, 1 for [table], 2 for [[table]]
	key        string // as it is written, between the brackets or before the =
	value      int    // where the value begins; −1 where there is no =
	open       int    // where something begins that is never closed, or −1
	deep       int    // where it is nested too deep, or −1
	long       int    // where a key is too long, or −1
}

// entries cuts a TOML text, valid or not, at the lines where a table or a key
// begins. What a text means by its lists and strings over several lines is
// followed as far as can be told.
func entries(src []byte) []entry {
	s := &cutter{src: src}
	var list []entry
	for {
		s.blank()
		if s.at >= len(src) {
			return list
		}
		list = append(list, s.entry())
	}
}

type cutter struct {
	src []byte
	at  int
	far int // how often something was open to the end of the text
}

// farMost is how often the text is searched to its end for what would close a list
// or a text; each such search takes time with the length of the text.
const farMost = 8

func (s *cutter) peek() byte {
	if s.at < len(s.src) {
		return s.src[s.at]
	}
	return '\n'
}

// blank steps over white space and comments between entries.
func (s *cutter) blank() {
	for s.at < len(s.src) {
		switch s.src[s.at] {
		case ' ', '\t', '\r', '\n':
			s.at++
		case '#':
			s.toLineEnd()
		default:
			return
		}
	}
}

func (s *cutter) toLineEnd() {
	if n := bytes.IndexByte(s.src[s.at:], '\n'); n >= 0 {
		s.at += n
	} else {
		s.at = len(s.src)
	}
}

func (s *cutter) entry() entry {
	e := entry{start: s.at, value: -1, open: -1, deep: -1, long: -1}
	if s.peek() == '[' {
		s.header(&e)
	} else {
		s.pair(&e)
	}
	s.toLineEnd()
	e.end = s.at
	if text := s.src[e.start:e.end]; len(text) > 0 && text[len(text)-1] == '\r' {
		e.end--
	}
	return e
}

func (s *cutter) header(e *entry) {
	e.head = 1
	if bytes.HasPrefix(s.src[s.at:], []byte("[[")) {
		e.head = 2
	}
	s.at += e.head
	begin := s.at
	for c := s.peek(); c != '\n' && c != ']' && c != '#'; c = s.peek() {
		s.keyByte()
	}
	e.key = strings.TrimSpace(string(s.src[begin:s.at]))
	e.limit(begin, e.key)
}

// keyByte steps over one byte of a key, or over a quoted part of it.
func (s *cutter) keyByte() {
	switch s.peek() {
	case '"', '\'':
		s.text()
	default:
		s.at++
	}
}

// limit notes where a key is longer or deeper than is taken.
func (e *entry) limit(at int, key string) {
	if len(key) > maxKey && e.long < 0 {
		e.long = at
	}
	if strings.Count(key, ".") >= maxDeep && e.deep < 0 {
		e.deep = at
	}
}

func (s *cutter) pair(e *entry) {
	for c := s.peek(); c != '\n' && c != '=' && c != '#'; c = s.peek() {
		s.keyByte()
	}
	e.key = strings.TrimSpace(string(s.src[e.start:s.at]))
	if s.peek() != '=' {
		return
	}
	e.limit(e.start, e.key)
	s.at++
	for s.peek() == ' ' || s.peek() == '\t' {
		s.at++
	}
	e.value = s.at
	switch c := s.peek(); {
	case c == '[' || c == '{':
		s.nested(e)
	case s.triple():
		s.longText(e)
	}
}

// text steps over a string on one line, to the line end where it is not closed.
func (s *cutter) text() {
	quote := s.peek()
	s.at++
	for c := s.peek(); c != '\n' && c != quote; c = s.peek() {
		if c == '\\' && quote == '"' && s.at+1 < len(s.src) && s.src[s.at+1] != '\n' {
			s.at++
		}
		s.at++
	}
	if s.peek() == quote {
		s.at++
	}
}

func (s *cutter) triple() bool {
	return bytes.HasPrefix(s.src[s.at:], []byte(`"""`)) || bytes.HasPrefix(s.src[s.at:], []byte(`'''`))
}

// longText steps over a string that may have several lines. One that is never
// closed ends before the next line that looks like an entry.
func (s *cutter) longText(e *entry) {
	begin := s.at
	if s.far < farMost {
		w := &walker{src: s.src, at: s.at}
		closing := s.src[s.at : s.at+3]
		w.quoted()
		if w.at-begin >= 6 && bytes.HasSuffix(s.src[:w.at], closing) {
			s.at = w.at
			return
		}
		s.far++
	}
	e.open = begin
	s.toNextEntry()
}

// toNextEntry steps to the end of the line before the next one that looks like an
// entry.
func (s *cutter) toNextEntry() {
	for s.toLineEnd(); s.at < len(s.src); s.toLineEnd() {
		if line := s.src[s.at+1:]; looksLikePair(line) || looksLikeHeader(line) {
			return
		}
		s.at++
	}
}

var (
	pairLike   = regexp.MustCompile(`^[A-Za-z_][\w-]*(?:[ \t]*\.[ \t]*[\w-]+){0,8}[ \t]*=`)
	headerLike = regexp.MustCompile(`^\[{1,2}[ \t]*[A-Za-z_][\w-]*(?:[ \t]*\.[ \t]*[\w-]+){0,8}[ \t]*\]{1,2}[ \t]*(?:#|\r?$)`)
	wordLike   = regexp.MustCompile(`^\[+[ \t]*(?:true|false|inf|nan)\b`)
)

// oneLine returns the line that a text begins with, cut where it is long.
func oneLine(text []byte) []byte {
	text = text[:min(len(text), 400)]
	line, _, _ := bytes.Cut(text, []byte("\n"))
	return line
}

func looksLikePair(text []byte) bool {
	line := bytes.TrimLeft(oneLine(text), " \t")
	return bytes.IndexByte(line, '=') > 0 && pairLike.Match(line)
}

func looksLikeHeader(text []byte) bool {
	line := bytes.TrimLeft(oneLine(text), " \t")
	return len(line) > 0 && line[0] == '[' && headerLike.Match(line) && !wordLike.Match(line)
}

// nested steps over a list or an inline table.
func (s *cutter) nested(e *entry) {
	begin, next := s.at, -1 // next: the first line within that looks like an entry
	if s.far >= farMost {
		e.open = begin
		s.toNextEntry()
		return
	}
	var within []byte
	key := s.at
	for s.at < len(s.src) {
		switch c := s.src[s.at]; c {
		case '[', '{':
			if within = append(within, c); len(within) > maxDeep && e.deep < 0 {
				e.deep = s.at
			}
			s.at++
			key = s.at
		case ']', '}':
			within = within[:len(within)-1]
			s.at++
			if len(within) == 0 {
				return
			}
		case '"', '\'':
			if s.triple() {
				inner := entry{open: -1}
				if s.longText(&inner); inner.open >= 0 {
					e.open = inner.open
					return
				}
				continue
			}
			s.text()
		case '#':
			s.toLineEnd()
		case ',':
			s.at++
			key = s.at
		case '=':
			if within[len(within)-1] == '{' {
				text := strings.TrimSpace(string(s.src[key:min(s.at, key+2*maxKey)]))
				e.limit(key, text)
			}
			s.at++
		case '\n':
			line := s.src[s.at+1:]
			pair := looksLikePair(line)
			if next < 0 && pair {
				next = s.at
			}
			if pair && within[len(within)-1] == '[' || looksLikeHeader(line) {
				e.open = begin
				return
			}
			s.at++
		default:
			s.typographic()
		}
	}
	e.open = begin
	if s.far++; next >= 0 {
		s.at = next
	}
}

// typographic steps over one letter, or over a text in typographic quotes on one
// line, so that brackets within it do not count.
func (s *cutter) typographic() {
	r, size := utf8.DecodeRune(s.src[s.at:])
	s.at += size
	closing := typographicQuotes[r]
	if closing == "" {
		return
	}
	line := oneLine(s.src[s.at:])
	if n := bytes.IndexAny(line, closing); n >= 0 {
		_, size := utf8.DecodeRune(line[n:])
		s.at += n + size
	}
}

// typographicQuotes are the marks that a word processor puts for a quote at the
// beginning of a text, with those that may close it.
var typographicQuotes = map[rune]string{
	'“': "”“\"", '”': "”\"", '„': "“”\"", '‟': "”\"", '«': "»", '»': "«", '‹': "›", '›': "‹",
	'‘': "’'", '’': "’'", '‚': "‘’'", '`': "`´'", '´': "´`'", '″': "″\"", '＂': "＂\"",
}
