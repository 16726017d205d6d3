package typeset

import (
	"fmt"
	"strings"
	"unicode"
)

// PageFoot returns a style rule by which every printed sheet says at its foot whose it is
// and of which unit, and in the staff edition that it holds answers. Sheets at true size have no
// margin and say it in their heads.
func (w *Words) PageFoot(school, unit string, staff bool) []byte {
	foot := school + " · " + unit
	if staff {
		foot += " · " + w.Say("page.staff_edition")
	}
	return fmt.Appendf(nil, "@page{@bottom-left{content:%s;font:8pt sans-serif}}\n", cssString(foot))
}

// cssString writes a text as a string of CSS. All but letters, digits, spaces and a few signs are
// escaped by number (CSS Syntax 3, section 4.3.7), so that no text ends the string or, in
// the handbook in one file, the element.
func cssString(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		if r == ' ' || unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("·,.:;-–’", r) {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, "\\%x ", r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
