// Package concordance lists the words of a handbook with the places where they
// stand, so that a page can look them up without a server.
//
//	index := concordance.New("en", pages)        // ready bytes with slots: what all schools have is read once
//	page := index.Read(i, finished, begins)      // for one school: what its slots give
//	words, lines, err := index.Of(pages)
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
	"slices"
	"strconv"
	"strings"
)

// Names of the scripts in the handbook.
const (
	File      = "concordance.js"
	LinesFile = "lines.js"
)

// What the page script reads first. Its last key is "words", a list of "stem place place …",
// sorted; places count from the one before, in base 36.
type listing struct {
	language
	Common string `json:"common"` // stems that stand nearly everywhere, and tell nothing
	Pages  []leaf `json:"pages"`
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

// TermAnchor begins the anchors of glossary terms.
const TermAnchor = "nb-term-"

// Of returns both scripts of the pages that were read for one school. The cover is left
// out. Several schools may be at it at once.
func (x *Index) Of(pages []Page) (words, inLines []byte, err error) {
	c := collector{lexicon: x.over(), numbers: make([]int32, len(x.texts)), latest: make([]int32, len(x.names)), found: make([]found, 0, x.lately.Load())}
	l := listing{language: x.language, Pages: make([]leaf, 0, len(pages))}
	for i := range pages {
		if pages[i].File != coverFile {
			c.add(&pages[i])
			l.Pages = append(l.Pages, pages[i].leaf)
		}
	}
	x.lately.Store(int64(len(c.found)))
	list, common := c.list(x.byName)
	l.Common = strings.Join(common, " ")
	head, err := json.Marshal(l)
	if err != nil {
		return nil, nil, fmt.Errorf("writing the concordance: %w", err)
	}
	head = head[:len(head)-1] // up to its brace
	words = slices.Concat([]byte("var noonbookConcordance="), head, []byte(`,"words":[`), list, []byte("]};\n"))
	// When a line is to be shown the page script reads the lines, each once, since pages
	// repeat one another, and of each place the numbers of its lines, from the one before,
	// in base 36.
	inLines = slices.Concat([]byte(`var noonbookLines={"lines":"`), c.lines(), []byte(`","places":[`), c.within, []byte("]};\n"))
	return words, inLines, nil
}

const coverFile = "index.html"

// A collector numbers what the pages of a school hold: places through the handbook, lines
// by their words, stems by the words that share them.
type collector struct {
	*lexicon
	places  int
	numbers []int32 // by text, of lines: one more than the line's number
	order   []int32 // lines by number
	latest  []int32 // by stem: one more than the latest place
	found   []found // places rising
	within  []byte  // of each place the numbers of its lines, in quotes
}

// A found is a stem at a place.
type found struct{ stem, place int32 }

func (c *collector) add(p *Page) {
	before := c.open()
	for _, i := range p.items {
		if i.kind == aPlace {
			c.close()
			before = c.open()
			continue
		}
		text := i.text
		if own := int(text) - c.base; own >= 0 {
			text = c.text(p.own[own])
		}
		if i.kind == aHeading {
			c.note(text)
			continue
		}
		n := c.number(text)
		if before >= 0 {
			c.within = append(c.within, ' ')
		}
		c.within = strconv.AppendInt(c.within, int64(n-max(0, before)), 36)
		before = n
	}
	c.close()
}

// open begins the list of a place's lines, and returns what stands for the line before the
// first.
func (c *collector) open() int32 {
	if c.places > 0 {
		c.within = append(c.within, ',')
	}
	c.within = append(c.within, '"')
	return -1
}

func (c *collector) close() {
	c.within = append(c.within, '"')
	c.places++
}

// number notes the stems of a line and returns its number.
func (c *collector) number(text int32) int32 {
	c.note(text)
	for int(text) >= len(c.numbers) {
		c.numbers = append(c.numbers, 0)
	}
	if c.numbers[text] == 0 {
		c.order = append(c.order, text)
		c.numbers[text] = int32(len(c.order))
	}
	return c.numbers[text] - 1
}

// note says that the stems of a text stand at this place.
func (c *collector) note(text int32) {
	for _, s := range c.stemsOf(text) {
		for int(s) >= len(c.latest) {
			c.latest = append(c.latest, 0)
		}
		if c.latest[s] != int32(c.places)+1 {
			c.latest[s] = int32(c.places) + 1
			c.found = append(c.found, found{s, int32(c.places)})
		}
	}
}

// A word that stands at more than two places of five tells nobody where to look.
// In a handbook of few places no word is left out.
const (
	fewPlaces   = 50
	commonShare = 0.4
)

// list lists the stems with their places, and those that are common apart.
func (c *collector) list(byName []int32) (list []byte, common []string) {
	// Sorted by counting: of each stem the places stand together.
	ends := make([]int, c.stemCount()+1)
	for _, f := range c.found {
		ends[f.stem+1]++
	}
	for i := range ends[1:] {
		ends[i+1] += ends[i]
	}
	places, next := make([]int32, len(c.found)), slices.Clone(ends)
	for _, f := range c.found {
		places[next[f.stem]] = f.place
		next[f.stem]++
	}
	list = make([]byte, 0, 4*len(places))
	for _, stem := range c.inOrder(byName) {
		at := places[ends[stem]:ends[stem+1]]
		if c.places >= fewPlaces && float64(len(at)) > commonShare*float64(c.places) {
			common = append(common, c.name(stem))
			continue
		}
		if len(list) > 0 {
			list = append(list, ',')
		}
		list = append(list, '"')
		list = append(list, c.name(stem)...) // letters alone
		before := int32(0)
		for _, place := range at {
			list = append(list, ' ')
			list = strconv.AppendInt(list, int64(place-before), 36)
			before = place
		}
		list = append(list, '"')
	}
	return list, common
}

// lines joins the lines in the order of their numbers.
func (c *collector) lines() []byte {
	letters := 0
	for _, text := range c.order {
		letters += len(c.inScript(text)) + len(`\n`)
	}
	all := make([]byte, 0, letters)
	for n, text := range c.order {
		if n > 0 {
			all = append(all, `\n`...)
		}
		all = append(all, c.inScript(text)...)
	}
	return all
}
