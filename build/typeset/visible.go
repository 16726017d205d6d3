package typeset

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Visible turns each control character of a page, which an author can write as &#27; and
// which HTML does not allow, into the sign for what cannot be shown.
func Visible(markup []byte) []byte {
	if !mayHide(markup) {
		return markup
	}
	return bytes.Map(func(c rune) rune {
		if unicode.IsControl(c) && !strings.ContainsRune("\t\n\f\r", c) {
			return utf8.RuneError
		}
		return c
	}, markup)
}

// mayHide reports whether there may be something for Visible to change, which is rare. In
// UTF-8 the control characters beyond ASCII begin with 0xC2.
func mayHide(markup []byte) bool {
	for i, c := range markup {
		if c < ' ' && c != '\n' && c != '\t' || c == 0x7f || c == 0xc2 && i+1 < len(markup) && markup[i+1] < 0xa0 {
			return true
		}
	}
	return !utf8.Valid(markup)
}
