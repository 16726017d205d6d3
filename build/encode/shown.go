package encode

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// shown puts a mark in place of every letter that a terminal would obey instead of
// showing it. Line ends and tabs stay.
func shown(s string) string {
	if !strings.ContainsFunc(s, obeyed) && utf8.ValidString(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if obeyed(r) {
			return utf8.RuneError
		}
		return r
	}, strings.ToValidUTF8(s, string(utf8.RuneError)))
}

// obeyed reports control characters (C0, DEL and C1; ECMA-48 gives them their power)
// and what embeds, overrides or isolates a direction of writing (Unicode Standard
// Annex 9). Package problem keeps such a list too, for one line instead of several.
func obeyed(r rune) bool {
	return r != '\n' && r != '\t' && unicode.IsControl(r) || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069
}

// escaped writes them as JSON does in a string. In JSON they stand nowhere else.
func escaped(json string) string {
	if !strings.ContainsFunc(json, obeyed) {
		return json
	}
	var b strings.Builder
	for _, r := range json {
		if obeyed(r) {
			fmt.Fprintf(&b, "\\u%04x", r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}
