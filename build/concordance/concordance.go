// Package concordance lists the words of a handbook with the places where they
// stand, so that a page can look them up without a server.
//
//	js, err := concordance.Of(files, "en")
//
// A place is a page, or a part of it under a heading or a glossary term that
// links can lead to. Words are read off the finished pages of one edition, so
// the class's concordance holds nothing that its pages do not. The file is a
// classic script that sets one variable, because a page opened from a disk may
// run a script beside it but not fetch a file.
package concordance

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"noonbook/build/file"
)

// File is the name of the script in the handbook.
const File = "concordance.js"

// What the page script reads.
type listing struct {
	language
	Common string   `json:"common"` // stems that stand nearly everywhere, and tell nothing
	Pages  []leaf   `json:"pages"`
	Words  []string `json:"words"` // "stem place place …", sorted; places count from the one before, in base 36
}

type leaf struct {
	File   string `json:"file"`
	Title  string `json:"title"`
	Places []spot `json:"places"` // places are numbered through: the page, then these, then the next page
}

type spot struct {
	Anchor string `json:"at"`
	Label  string `json:"label"`
	Note   string `json:"note,omitempty"` // of a glossary term, what it means
}

// Of returns the script. The cover and files that are no HTML are left out.
func Of(files []file.File, code string) ([]byte, error) {
	c := collector{listing: listing{language: languageOf(code)}, found: map[string][]int{}}
	for _, f := range files {
		if strings.HasSuffix(f.Name, ".html") && f.Name != "index.html" {
			r := reader{collector: &c}
			r.page(f)
		}
	}
	c.finish()
	js, err := json.Marshal(c.listing)
	if err != nil {
		return nil, fmt.Errorf("writing the concordance: %w", err)
	}
	return append(append([]byte("var noonbookConcordance="), js...), ";\n"...), nil
}

type collector struct {
	listing
	places int
	found  map[string][]int // stem → places, rising
}

// TermAnchor begins the anchors of glossary terms.
const TermAnchor = "nb-term-"

// words notes the words of a text at the latest place: runs of letters, two or
// more. Numbers are left out: they are looked for on the page, not across pages.
func (c *collector) words(text string) {
	for _, word := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) }) {
		if len([]rune(word)) < 2 {
			continue
		}
		stem := c.stem(word)
		at := c.found[stem]
		if here := c.places - 1; len(at) == 0 || at[len(at)-1] != here {
			c.found[stem] = append(at, here)
		}
	}
}

// A word that stands at more than two places of five tells nobody where to look.
// In a handbook of few places no word is left out.
const (
	fewPlaces   = 50
	commonShare = 0.4
)

func (c *collector) finish() {
	var common []string
	for _, stem := range slices.Sorted(maps.Keys(c.found)) {
		at := c.found[stem]
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
