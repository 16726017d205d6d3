package problem

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Plain returns a text as one line that a terminal can show: a tab as a space, and
// whatever would move the cursor, change colours, reorder the letters of the line
// or is not UTF-8 as a mark of its own. Authors paste from anywhere, and names of
// files are theirs too.
func Plain(s string) string {
	if !strings.ContainsFunc(s, moves) && utf8.ValidString(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case moves(r):
			return utf8.RuneError
		}
		return r
	}, strings.ToValidUTF8(s, string(utf8.RuneError)))
}

// moves reports whether a letter does something to a terminal instead of being
// shown: control characters (C0, DEL and C1), the ends of lines and paragraphs of
// Unicode, and what embeds, overrides or isolates a direction of writing (Unicode
// Standard Annex 9, table of explicit directional formatting characters).
func moves(r rune) bool {
	return unicode.IsControl(r) || r == 0x2028 || r == 0x2029 || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069
}
