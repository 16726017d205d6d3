// Package terminal says what a terminal would obey instead of showing it, and puts a
// mark in its place.
//
//	terminal.Line(name) // on one line
//	terminal.Text(page) // with its line ends and tabs
//
// Partial: letters that join, such as accents without a letter, and letters that look
// alike are shown as they are.
package terminal

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Obeys reports whether a letter does something to a terminal instead of being shown:
// control characters (C0, DEL and C1; ECMA-48 gives them their power), line ends and
// tabs among them, and what embeds, overrides or isolates a direction of writing
// (Unicode Standard Annex 9, table of explicit directional formatting characters).
func Obeys(r rune) bool {
	return unicode.IsControl(r) || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069
}

// Text returns a text of several lines with a mark in place of what a terminal would
// obey and of what is not UTF-8. Line ends and tabs stay.
func Text(s string) string {
	return marked(s, func(r rune) rune {
		if r != '\n' && r != '\t' && Obeys(r) {
			return utf8.RuneError
		}
		return r
	})
}

// Line returns a text as one line: as Text does, with a tab as a space, and line ends
// and the ends of lines and paragraphs of Unicode marked too.
func Line(s string) string {
	return marked(s, func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case Obeys(r) || EndsLine(r):
			return utf8.RuneError
		}
		return r
	})
}

// EndsLine reports the ends of lines and paragraphs of Unicode, which some programs
// take for line ends and a terminal shows as nothing.
func EndsLine(r rune) bool { return r == 0x2028 || r == 0x2029 }

func marked(s string, mark func(rune) rune) string {
	return strings.Map(mark, strings.ToValidUTF8(s, string(utf8.RuneError)))
}
