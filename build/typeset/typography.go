package typeset

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"
)

// narrow is the space of French before the marks that stand high, and of both languages
// between the groups of a long number. hard does not break either.
const (
	narrow = "\u202f"
	hard   = "\u00a0"
)

// Typeset gives text the marks and spaces that the language prints where a keyboard has
// only one of each: curved quotes and apostrophes (quotes.go), and spaces that do not
// break between what must stay on one line (joined.go). In French the space before
// ; : ? ! % and inside guillemets becomes a narrow one too. Except inside guillemets that
// it puts for straight quotes it adds no space, since 9:10 and a web address have none.
// What is set already stays as it is.
func (w *Words) Typeset(s string) string { return w.set(s, setter{french: w.Code == "fr"}) }

// typesetWords is Typeset for a line of a words file and for an explanation. These have
// their curved quotes typed: a straight one belongs to a sample of a file, date = "…".
func (w *Words) typesetWords(s string) string {
	return w.set(s, setter{french: w.Code == "fr", samples: true})
}

func (w *Words) set(s string, t setter) string {
	if !strings.ContainsAny(s, " \n\u00a0'\"") {
		return s
	}
	return string(t.append(make([]byte, 0, len(s)+len(narrow)), s, nil))
}

// TypesetMarkup is Typeset for the text of HTML. What is beside a quote or a space is
// looked up across tags such as em, and up to the end of the block. It leaves alone what
// stands in a tag, and what is quoted from a file or a keyboard.
func (w *Words) TypesetMarkup(markup []byte) []byte {
	out := make([]byte, 0, len(markup)+len(markup)/32)
	var text []byte // of the block so far
	var tags []tag
	flush := func() {
		t := setter{french: w.Code == "fr"}
		out = t.append(out, string(text), tags)
		text, tags = text[:0], tags[:0]
	}
	for len(markup) > 0 {
		open := bytes.IndexByte(markup, '<')
		if open < 0 {
			open = len(markup)
		}
		text = append(text, straight(markup[:open])...)
		markup = markup[open:]
		end := bytes.IndexByte(markup, '>') + 1
		if end == 0 {
			end = len(markup)
		}
		name := tagName(markup[:end])
		if len(name) > 0 && markup[1] != '/' && verbatim[string(name)] {
			end = len(markup)
			if closed := bytes.Index(markup, slices.Concat([]byte("</"), name, []byte(">"))); closed >= 0 {
				end = closed + len(name) + len("</>")
			}
		}
		like, inline := inlines[string(name)]
		if !inline && len(tags)+len(text) > 0 {
			flush()
		}
		if inline {
			tags = append(tags, tag{len(text), len(like), markup[:end]})
			text = append(text, like...)
		} else {
			out = append(out, markup[:end]...)
		}
		markup = markup[end:]
	}
	flush()
	return out
}

// A tag is where markup stands in a text, in the place of so many bytes of it.
type tag struct {
	at, width int
	markup    []byte
}

// verbatim are the elements that are left as they are written.
var verbatim = map[string]bool{"code": true, "kbd": true, "pre": true, "samp": true, "script": true, "style": true, "textarea": true}

// thing is what a piece of code or a picture is like for the marks beside it: a word.
const thing = "\ufffc"

// inlines are the elements that do not end a block, with what they are like for the text
// beside them. The others end one.
var inlines = map[string]string{
	"a": "", "abbr": "", "b": "", "cite": "", "data": "", "dfn": "", "em": "", "i": "", "mark": "", "q": "", "s": "", "small": "",
	"span": "", "strong": "", "sub": "", "sup": "", "time": "", "tspan": "", "u": "", "var": "", "wbr": "",
	"br": "\n", "code": thing, "img": thing, "kbd": thing, "samp": thing,
}

// tagName returns the name of the element that a tag opens or closes.
func tagName(tag []byte) []byte {
	name := bytes.TrimPrefix(bytes.TrimPrefix(tag, []byte("<")), []byte("/"))
	end := 0
	for end < len(name) && (letter(name[end]) || name[end] >= '0' && name[end] <= '9') {
		end++
	}
	return name[:end]
}

// straight writes the quotes of HTML text as themselves: goldmark and the templates
// escape them, which text does not need.
func straight(text []byte) []byte {
	if !bytes.Contains(text, []byte("&#3")) && !bytes.Contains(text, []byte("&quot;")) {
		return text
	}
	return []byte(unescapeQuotes.Replace(string(text)))
}

var unescapeQuotes = strings.NewReplacer("&#39;", "'", "&#34;", `"`, "&quot;", `"`)

// A setter goes through the text of one block from its beginning to its end.
type setter struct {
	french  bool
	samples bool     // straight double quotes are left
	closers []string // of the quotes that are open, the last innermost
	singles int      // single quotes that are open
	quoted  int      // where the last quote that was set ends
	quote   rune     // how it was set
}

// append appends a text as it is set, with its tags in their places.
func (t *setter) append(dst []byte, s string, tags []tag) []byte {
	for i := 0; ; {
		for len(tags) > 0 && tags[0].at == i {
			dst = append(dst, tags[0].markup...)
			i += tags[0].width
			tags = tags[1:]
		}
		if i == len(s) {
			return dst
		}
		end := len(s)
		if len(tags) > 0 {
			end = tags[0].at
		}
		plain := i
		for plain < end && !telling[s[plain]] {
			plain++
		}
		dst = append(dst, s[i:plain]...)
		i = plain
		if i == end {
			continue
		}
		set, width := t.at(s, i)
		if width == 0 {
			set, width = s[i:i+1], 1
		}
		dst = append(dst, set...)
		i += width
	}
}

// telling are the bytes with which something begins that is set, or tells how.
var telling = func() (is [256]bool) {
	for _, c := range []byte(" \n'\"\xc2\xe2") { // the last two begin « » “ ” and the space that does not break
		is[c] = true
	}
	return is
}()

// at returns what to print in place of what s has at i, and how many bytes that takes up
// there; 0 where it stays.
func (t *setter) at(s string, i int) (set string, width int) {
	switch rest := s[i:]; {
	case s[i] == ' ' || s[i] == '\n':
		return t.space(s[:i], s[i+1:], 1)
	case strings.HasPrefix(rest, hard):
		return t.space(s[:i], s[i+len(hard):], len(hard))
	case s[i] == '\'':
		set = t.single(s[:i], s[i+1:])
	case s[i] == '"' && !t.samples:
		set = t.double(s[:i], s[i+1:])
	case strings.HasPrefix(rest, "“"):
		t.closers = append(t.closers, "”")
	case strings.HasPrefix(rest, "«"):
		t.closers = append(t.closers, narrow+"»")
	case strings.HasPrefix(rest, "”") || strings.HasPrefix(rest, "»"):
		t.closers = t.closers[:max(0, len(t.closers)-1)]
	}
	if set == "" {
		return "", 0
	}
	t.quoted = i + 1
	t.quote, _ = utf8.DecodeLastRuneInString(set)
	return set, 1
}

// space returns the space to print between two texts.
func (t *setter) space(before, after string, width int) (string, int) {
	next, _ := utf8.DecodeRuneInString(after)
	switch {
	case before == "" || after == "" || betweenWords(before[len(before)-1], after[0]):
	case t.french && (strings.ContainsRune(";:?!%»", next) || strings.HasSuffix(before, "«")):
		return narrow, width
	case group(before, after):
		return narrow, width
	case width == 1 && t.together(before, after):
		return hard, width
	}
	return "", 0
}

// betweenWords reports whether what is between two bytes is between two words, as it mostly
// is, and so may break. A mark of build/plan ends in z, and in r what French writes for 1.
func betweenWords(before, after byte) bool {
	return 'a' <= before && before <= 'z' && before != 'z' && before != 'r' && 'a' <= after|0x20 && after|0x20 <= 'z'
}

// letter reports whether a byte belongs to a word: a letter of ASCII, or a part
// of one beyond.
func letter(c byte) bool { return c >= utf8.RuneSelf || 'a' <= c|0x20 && c|0x20 <= 'z' }

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
	return ok && (len(before) == 0 || !letter(before[len(before)-1]) || bytes.HasSuffix(before, []byte("’"))) // jusqu’à
}
