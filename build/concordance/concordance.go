// Package concordance lists the words of a handbook with the places where they
// stand, so that a page can look them up without a server.
//
//	words, lines, err := concordance.Of(pages, "en") // each page read by Read
//
// A place is a page, or a part of it under a heading or a glossary term that
// links can lead to. Words are read off the finished pages of one edition, so
// the class's concordance holds nothing that its pages do not. Each file is a
// classic script that sets one variable, because a page opened from a disk may
// run a script beside it but not fetch a file.
//
// The words are one file and the lines in which they stand another: the handbook
// in one file has its pages at hand, and needs the words alone.
package concordance

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Names of the scripts in the handbook.
const (
	File      = "concordance.js"
	LinesFile = "lines.js"
)

// What the page script reads first.
type listing struct {
	language
	Common string   `json:"common"` // stems that stand nearly everywhere, and tell nothing
	Pages  []leaf   `json:"pages"`
	Words  []string `json:"words"` // "stem place place …", sorted; places count from the one before, in base 36
}

type leaf struct {
	File   string `json:"file"`
	Title  string `json:"title"`
	After  int    `json:"after,omitempty"` // pages of a higher number come behind all others
	Places []spot `json:"places"`          // places are numbered through: the page, then these, then the next page
}

type spot struct {
	Anchor string `json:"at"`
	Label  string `json:"label"`
	Note   string `json:"note,omitempty"` // of a glossary term, what it means
	Also   string `json:"also,omitempty"` // its other names
}

// Pages that come behind the others: those that show a lesson again, and those for
// whoever edits the handbook.
const (
	afterLessons = 1
	afterAll     = 2
)

// What it reads when a line is to be shown. Pages repeat one another, so each line is
// written once.
type lines struct {
	Lines  string   `json:"lines"`  // each ends with a line feed but the last
	Places []string `json:"places"` // of each place the numbers of its lines, from the one before, in base 36
}

// Of returns both scripts. The cover is left out.
func Of(pages []Page, code string) (words, inLines []byte, err error) {
	c := collector{
		listing: listing{language: languageOf(code)},
		numbers: map[string]int{},
		stems:   map[string]*stemmed{},
		words:   map[string]*stemmed{},
	}
	for _, p := range pages {
		if p.File != "index.html" {
			c.add(p)
		}
	}
	c.finish()
	if words, err = script("noonbookConcordance", c.listing); err != nil {
		return nil, nil, err
	}
	inLines, err = script("noonbookLines", lines{Lines: strings.Join(c.lines, "\n"), Places: c.linesAt})
	return words, inLines, err
}

func script(name string, value any) ([]byte, error) {
	js, err := json.Marshal(value)
	if err != nil {
		return nil, fmt.Errorf("writing the concordance: %w", err)
	}
	return slices.Concat([]byte("var "+name+"="), js, []byte(";\n")), nil
}

// A collector numbers what pages hold: places through the handbook, lines by their
// words, stems by the words that share them. A word is brought to its stem once, and a
// line is taken apart once, however often pages repeat it.
type collector struct {
	listing
	places  int
	numbers map[string]int // line → its number
	lines   []string
	within  [][]*stemmed // by the number of a line, its stems
	linesAt []string     // by place, as the page script reads it
	stems   map[string]*stemmed
	words   map[string]*stemmed // in lower case → its stem
}

type stemmed struct {
	at []int // places, rising
}

// TermAnchor begins the anchors of glossary terms.
const TermAnchor = "nb-term-"

func (c *collector) add(p Page) {
	for _, place := range p.places {
		c.note(c.stemsOf(place.title))
		line, before := []byte{}, 0
		for _, text := range place.lines {
			n := c.number(text)
			if n < 0 {
				continue
			}
			c.note(c.within[n])
			if len(line) > 0 {
				line = append(line, ' ')
			}
			line = strconv.AppendInt(line, int64(n-before), 36)
			before = n
		}
		c.linesAt = append(c.linesAt, string(line))
		c.places++
	}
	c.Pages = append(c.Pages, p.leaf)
}

// number returns -1 for a line without a word: nobody asks for numbers alone.
func (c *collector) number(text string) int {
	n, known := c.numbers[text]
	if known {
		return n
	}
	n = -1
	if stems := c.stemsOf(text); len(stems) > 0 {
		n = len(c.lines)
		c.lines = append(c.lines, text)
		c.within = append(c.within, stems)
	}
	c.numbers[text] = n
	return n
}

// note says that the stems stand at the latest place.
func (c *collector) note(stems []*stemmed) {
	for _, s := range stems {
		if here := c.places; len(s.at) == 0 || s.at[len(s.at)-1] != here {
			s.at = append(s.at, here)
		}
	}
}

// stemsOf returns the stems of a text's words: runs of letters, two or more. Numbers are
// left out: they are looked for on the page, not across pages.
func (c *collector) stemsOf(text string) []*stemmed {
	var found []*stemmed
	for word := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) }) {
		s, known := c.words[word]
		if !known {
			s = c.stemOf(word)
			c.words[word] = s
		}
		if s != nil {
			found = append(found, s)
		}
	}
	return found
}

// stemOf returns nil for a word of one letter.
func (c *collector) stemOf(word string) *stemmed {
	if len([]rune(word)) < 2 {
		return nil
	}
	stem := c.stem(word)
	if c.stems[stem] == nil {
		c.stems[stem] = &stemmed{}
	}
	return c.stems[stem]
}

// A word that stands at more than two places of five tells nobody where to look.
// In a handbook of few places no word is left out.
const (
	fewPlaces   = 50
	commonShare = 0.4
)

func (c *collector) finish() {
	var common []string
	for _, stem := range slices.Sorted(maps.Keys(c.stems)) {
		at := c.stems[stem].at
		if c.places >= fewPlaces && float64(len(at)) > commonShare*float64(c.places) {
			common = append(common, stem)
			continue
		}
		line, before := []byte(stem), 0
		for _, place := range at {
			line = append(line, ' ')
			line = strconv.AppendInt(line, int64(place-before), 36)
			before = place
		}
		c.Words = append(c.Words, string(line))
	}
	c.Common = strings.Join(common, " ")
}
