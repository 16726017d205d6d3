package problem

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"noonbook/build/terminal"
)

// wide is how many columns of a line an excerpt shows at most, and lead how many
// of them stand before the column that it points at where the line is longer.
const (
	wide = 76
	lead = 40
)

// An Excerpt is the line of a file in which a problem stands.
type Excerpt struct {
	Line  string // as much of it as is shown, tabs as spaces
	Caret int    // how many columns lie before the place
}

// Find returns the line of the text at a place, cut to a width that fits on a
// terminal round the column. It reports false where the place speaks of the whole
// file or the text has no such line, as when it was changed meanwhile.
func Find(text []byte, at Place) (Excerpt, bool) {
	if at.Line < 1 {
		return Excerpt{}, false
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	for range at.Line - 1 {
		_, rest, ok := bytes.Cut(text, []byte("\n"))
		if !ok {
			return Excerpt{}, false
		}
		text = rest
	}
	line, _, _ := bytes.Cut(text, []byte("\n"))
	line = bytes.TrimSuffix(line, []byte("\r"))
	column := min(max(0, at.Column-1), len(line))
	before, after, far := near(line, column)
	e := Excerpt{string(before) + string(after), columns(before)}
	if !far && columns([]rune(e.Line)) <= wide {
		return e, strings.TrimSpace(e.Line) != ""
	}
	if far || e.Caret > lead {
		before = append([]rune("…"), last(before, lead-1)...)
	}
	after = first(after, wide-1-columns(before))
	return Excerpt{string(before) + string(after) + "…", columns(before)}, true
}

// near returns what stands before and behind a column, as a terminal shows it. Of a
// very long line it looks at the neighbourhood only, for a line may be the whole
// file; far is set where what stands before is cut.
func near(line []byte, column int) (before, after []rune, far bool) {
	const most = 1000 // bytes, several times what is shown
	from, to := max(0, column-most), min(len(line), column+most)
	for from > 0 && from < column && !utf8.RuneStart(line[from]) {
		from++
	}
	return plain(line[from:column]), plain(line[column:to]), from > 0
}

// String writes the line and a caret below its place, both indented.
func (e Excerpt) String() string {
	return "    " + e.Line + "\n    " + strings.Repeat(" ", e.Caret) + "^\n"
}

// plain returns text as a terminal can show it: a tab as four spaces, and what
// would move the cursor or is not UTF-8 as a mark of its own.
func plain(text []byte) []rune {
	var runes []rune
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		text = text[size:]
		switch {
		case r == '\t':
			runes = append(runes, []rune("    ")...)
		case terminal.Obeys(r) || terminal.EndsLine(r) || unicode.Is(unicode.Cf, r):
			runes = append(runes, utf8.RuneError)
		default:
			runes = append(runes, r)
		}
	}
	return runes
}

// columns returns how many columns of a terminal the runes take: none for a
// combining mark, two for the broad letters of East Asia and for most pictures
// (Unicode Standard Annex 11), one for all others.
func columns(runes []rune) int {
	n := 0
	for _, r := range runes {
		n += columnsOf(r)
	}
	return n
}

func columnsOf(r rune) int {
	switch {
	case unicode.Is(unicode.Mn, r):
		return 0
	case unicode.Is(broad, r):
		return 2
	}
	return 1
}

func first(runes []rune, most int) []rune {
	n := 0
	for i, r := range runes {
		if n += columnsOf(r); n > most {
			return runes[:i]
		}
	}
	return runes
}

func last(runes []rune, most int) []rune {
	n := 0
	for i := len(runes) - 1; i >= 0; i-- {
		if n += columnsOf(runes[i]); n > most {
			return runes[i+1:]
		}
	}
	return runes
}
