package typeset

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// narrow is the space of French before the marks that stand high.
const narrow = "\u202f"

// Typeset gives text the spaces and apostrophes that the language prints where
// a keyboard has only one of each. In every language a number and its unit stay on
// one line; English is left as it is typed otherwise. In French a
// space before ; : ? ! % and inside guillemets becomes a narrow one that does not
// break, and a straight apostrophe between letters a curved one. No space is
// added where none was typed, since 9:10 and a web address have none.
func (w *Words) Typeset(s string) string {
	s = together(s)
	if w.Code != "fr" || !strings.ContainsAny(s, " '\u00a0") {
		return s
	}
	var b strings.Builder
	last := 0
	for i := 0; i < len(s); i++ {
		set, width := french(s, i)
		if set == "" {
			continue
		}
		b.WriteString(s[last:i])
		b.WriteString(set)
		i += width - 1
		last = i + 1
	}
	if last == 0 {
		return s
	}
	b.WriteString(s[last:])
	return b.String()
}

// units are what may follow a number as its unit, in both languages. "in" is a word
// too, and is left out.
var units = map[string]bool{"mm": true, "cm": true, "m": true, "km": true, "g": true, "kg": true, "s": true, "min": true, "h": true, "ft": true, "mi": true, "D": true, "V": true, "W": true, "kPa": true, "km/s": true, "m/s": true}

// together puts a space that does not break between a number and its unit.
func together(s string) string {
	if !strings.ContainsAny(s, "0123456789") {
		return s
	}
	var b strings.Builder
	last := 0
	for i := 1; i < len(s); i++ {
		if s[i] != ' ' || s[i-1] < '0' || s[i-1] > '9' {
			continue
		}
		end := i + 1
		for end < len(s) && (letter(s[end]) || s[end] == '/') {
			end++
		}
		if units[s[i+1:end]] {
			b.WriteString(s[last:i])
			b.WriteString("\u00a0")
			last = i + 1
		}
	}
	if last == 0 {
		return s
	}
	b.WriteString(s[last:])
	return b.String()
}

// french returns what to print in place of the space or apostrophe at s[i],
// and how many bytes it takes up; "" where the character stays.
func french(s string, i int) (set string, width int) {
	switch {
	case s[i] == ' ':
		width = 1
	case strings.HasPrefix(s[i:], "\u00a0"):
		width = len("\u00a0")
	case s[i] == '\'' && i > 0 && i+1 < len(s) && letter(s[i-1]) && (letter(s[i+1]) || s[i+1] == '{'):
		return "’", 1
	default:
		return "", 0
	}
	after, _ := utf8.DecodeRuneInString(s[i+width:])
	if strings.ContainsRune(";:?!%»", after) || strings.HasSuffix(s[:i], "«") {
		return narrow, width
	}
	return "", 0
}

// letter reports whether a byte belongs to a word: a letter of ASCII, or a part
// of one beyond.
func letter(c byte) bool { return c >= utf8.RuneSelf || 'a' <= c|0x20 && c|0x20 <= 'z' }

// TypesetMarkup is Typeset for the text of HTML: it leaves alone what stands in
// a tag, and what is quoted from a file or a keyboard.
func (w *Words) TypesetMarkup(markup []byte) []byte {
	out := make([]byte, 0, len(markup)+len(markup)/64)
	verbatim := ""
	for len(markup) > 0 {
		open := bytes.IndexByte(markup, '<')
		if open < 0 {
			open = len(markup)
		}
		if text := string(markup[:open]); verbatim == "" {
			if w.Code == "fr" { // the templates escape an apostrophe, which text does not need
				text = strings.ReplaceAll(text, "&#39;", "'")
			}
			out = append(out, w.Typeset(text)...)
		} else {
			out = append(out, text...)
		}
		markup = markup[open:]
		end := bytes.IndexByte(markup, '>') + 1
		if end == 0 {
			end = len(markup)
		}
		verbatim = afterTag(string(markup[:end]), verbatim)
		out = append(out, markup[:end]...)
		markup = markup[end:]
	}
	return out
}

// afterTag returns the element that is quoted as it is written behind a tag, ""
// for none.
func afterTag(tag, within string) string {
	if within != "" {
		if tag == "</"+within+">" {
			return ""
		}
		return within
	}
	for _, name := range []string{"code", "pre", "script", "style"} {
		if strings.HasPrefix(tag, "<"+name) && len(tag) > len(name)+1 && !letter(tag[len(name)+1]) {
			return name
		}
	}
	return ""
}

// join appends a value to a line that is being written. In French "de" and "à"
// melt with an article that the value begins with, and "de" and "que" lose their
// vowel before another: de + le Soleil is du Soleil, de + Uranus is d’Uranus.
func (w *Words) join(dst []byte, next string) []byte {
	if w.Code != "fr" {
		return append(dst, next...)
	}
	for _, melt := range melted {
		if rest, ok := strings.CutPrefix(next, melt.article); ok && endsInWord(dst, melt.before) {
			dst = append(dst[:len(dst)-len(melt.before)], melt.both...)
			return append(dst, rest...)
		}
	}
	first, _ := utf8.DecodeRuneInString(next)
	if strings.ContainsRune("aeiouAEIOUâàéèêîôûÂÀÉÈÊÎÔÛ", first) && (endsInWord(dst, "de ") || endsInWord(dst, "que ")) {
		dst = append(dst[:len(dst)-2], "’"...)
	}
	return append(dst, next...)
}

var melted = []struct{ before, article, both string }{
	{"de ", "le ", "du "},
	{"de ", "les ", "des "},
	{"De ", "le ", "Du "},
	{"De ", "les ", "Des "},
	{"à ", "le ", "au "},
	{"à ", "les ", "aux "},
}

// endsInWord reports whether a line ends in the word, and not in one that only
// ends like it.
func endsInWord(dst []byte, word string) bool {
	before, ok := bytes.CutSuffix(dst, []byte(word))
	return ok && (len(before) == 0 || !letter(before[len(before)-1]))
}
