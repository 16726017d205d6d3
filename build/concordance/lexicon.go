package concordance

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A lexicon numbers texts (lines and headings) and stems. That of a school lies over that
// of its plan and goes on counting where the plan ends: a word is brought to its stem
// once, and a line is taken apart once, however often pages and schools repeat it.
type lexicon struct {
	language
	below *lexicon // of the plan, which several schools read; nil where this is the plan's
	base  int      // texts below
	first int      // stems below

	numbers map[string]int32 // of texts
	texts   []text
	words   map[string]int32 // as it is written → its stem; noStem of a single letter
	stems   map[string]int32
	names   []string // of stems
}

// A text is a line or heading of a page.
type text struct {
	script string  // as a script has it between quotes
	stems  []int32 // of its words
}

const noStem = -1

func newLexicon(l language) lexicon {
	return lexicon{language: l, numbers: map[string]int32{}, words: map[string]int32{}, stems: map[string]int32{}}
}

// over returns an empty lexicon over x.
func (x *lexicon) over() *lexicon {
	o := newLexicon(x.language)
	o.below, o.base, o.first = x, len(x.texts), len(x.names)
	return &o
}

// find returns the number of a text that is in the lexicon.
func (x *lexicon) find(s []byte) (int32, bool) {
	n, known := x.numbers[string(s)]
	return n, known
}

// text returns the number of a text that is not below; it is in the lexicon from then on.
func (x *lexicon) text(s string) int32 {
	if n, known := x.numbers[s]; known {
		return n
	}
	n := int32(x.base + len(x.texts))
	x.numbers[s] = n
	x.texts = append(x.texts, text{escaped(s), x.stemsIn(s)})
	return n
}

func (x *lexicon) of(number int32) *text {
	if n := int(number) - x.base; n >= 0 {
		return &x.texts[n]
	}
	return x.below.of(number)
}

func (x *lexicon) stemsOf(number int32) []int32 { return x.of(number).stems }

func (x *lexicon) inScript(number int32) string { return x.of(number).script }

// stemsIn returns the stems of a text's words: runs of letters, two or more. Numbers are
// left out: they are looked for on the page, not across pages.
func (x *lexicon) stemsIn(s string) []int32 {
	found := make([]int32, 0, len(s)/5) // of a word and a space
	for word := range strings.FieldsFuncSeq(s, betweenWords) {
		if stem := x.stemOf(word); stem != noStem {
			found = append(found, stem)
		}
	}
	return found
}

func betweenWords(r rune) bool {
	if r < utf8.RuneSelf {
		return (r|0x20) < 'a' || 'z' < (r|0x20)
	}
	return !unicode.IsLetter(r) && !unicode.IsMark(r)
}

// hasWord reports whether stemsIn would find a stem.
func hasWord(text []byte) bool {
	letters := 0
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		if letters++; betweenWords(r) {
			letters = 0
		}
		if letters == 2 {
			return true
		}
		text = text[size:]
	}
	return false
}

// stemOf returns noStem for a word of one letter.
func (x *lexicon) stemOf(word string) int32 {
	if x.below != nil {
		if stem, known := x.below.words[word]; known {
			return stem
		}
	}
	stem, known := x.words[word]
	if !known {
		stem = noStem
		if utf8.RuneCountInString(word) > 1 {
			stem = x.numbered(x.stem(strings.ToLower(word)))
		}
		x.words[word] = stem
	}
	return stem
}

// numbered returns the number of a stem.
func (x *lexicon) numbered(name string) int32 {
	if x.below != nil {
		if n, known := x.below.stems[name]; known {
			return n
		}
	}
	n, known := x.stems[name]
	if !known {
		n = int32(x.stemCount())
		x.stems[name] = n
		x.names = append(x.names, name)
	}
	return n
}

func (x *lexicon) stemCount() int { return x.first + len(x.names) }

func (x *lexicon) name(stem int32) string {
	if n := int(stem) - x.first; n >= 0 {
		return x.names[n]
	}
	return x.below.name(stem)
}

// inOrder returns the numbers of all stems by their names; byName are those below.
func (x *lexicon) inOrder(byName []int32) []int32 {
	all := make([]int32, 0, x.stemCount())
	for _, name := range slices.Sorted(maps.Keys(x.stems)) {
		for len(byName) > 0 && x.name(byName[0]) < name {
			all, byName = append(all, byName[0]), byName[1:]
		}
		all = append(all, x.stems[name])
	}
	return append(all, byName...)
}

// escaped is a text as JSON has it between quotes.
func escaped(s string) string {
	for _, r := range s {
		if r < ' ' || r == '"' || r == '\\' || r == '<' || r == '>' || r == '&' || r == '\u2028' || r == '\u2029' || r == utf8.RuneError {
			js, err := json.Marshal(s)
			if err != nil { // there is no such string
				return ""
			}
			return string(js[1 : len(js)-1])
		}
	}
	return s
}
