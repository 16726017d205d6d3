package concordance

import (
	"slices"
	"sync/atomic"

	"noonbook/build/markup"
)

// A Ready is a page with the school left open: bytes with a slot after each but the last.
// What stands in a slot is whole: it closes what it opens. A slot outside the main part, or
// in what is left out there, holds nothing that is looked for.
type Ready struct {
	Name  string
	Bytes [][]byte
}

// An Index is the concordance of a handbook with the school left open. It may be read by
// several goroutines.
type Index struct {
	lexicon
	byName []int32 // stems
	pages  []planned
	lately atomic.Int64 // stems that were found at places for the school before
}

// A planned page is what it holds whatever its slots give, and the regions round them.
type planned struct {
	leaf         // with its places, those of regions too
	items []item // outside the regions
	round []region
}

// A region is a part of a page that depends on the school: from where nothing is pending
// before a slot to where nothing is pending behind it, such as a paragraph.
type region struct {
	from, to position
	after    int // items of the page that come before it
	first    int // the place at its beginning, an index of the leaf's, -1 for the page
	last     int // the place at its end
}

// A position in a page: which of its ready bytes, and how far in them.
type position struct{ piece, offset int }

func (p position) in(begins []int) int { return begins[p.piece] + p.offset }

// New reads the ready bytes of a handbook's pages; code is its language.
func New(code string, pages []Ready) *Index {
	x := &Index{lexicon: newLexicon(languageOf(code)), pages: make([]planned, len(pages))}
	for i, p := range pages {
		if p.Name == coverFile {
			x.pages[i].File = p.Name
			continue
		}
		x.pages[i] = x.plan(p)
	}
	x.byName = x.inOrder(nil)
	return x
}

// plan reads a page with empty slots, and notes the regions round them.
func (x *Index) plan(page Ready) planned {
	r := x.reader(leaf{File: page.Name, Places: []spot{}})
	var p planned
	here := region{first: -1} // the region that a slot would begin
	open := false
	for n, ready := range page.Bytes {
		open = open || n > 0 && r.listens()
		at := position{n, 0}
		for piece := range markup.PiecesWithoutDrawings(ready) {
			r.read(piece)
			at.offset += len(piece.Raw)
			switch {
			case !r.rests():
				continue
			case open && breaks[piece.Tag]: // text behind a slot goes on with its line
				here.to, here.last, open = at, r.at, false
				p.round = append(p.round, here)
				r.items = r.items[:here.after]
			case open:
				continue
			}
			here = region{from: at, after: len(r.items), first: r.at}
		}
	}
	if open {
		end := len(page.Bytes) - 1
		here.to, here.last = position{end, len(page.Bytes[end])}, r.at
		p.round = append(p.round, here)
		r.items = r.items[:here.after]
	} else {
		r.endLine()
	}
	for i, item := range r.items { // what regions hold is not in the lexicon
		if own := int(item.text) - r.base; item.kind != aPlace && own >= 0 {
			r.items[i].text = x.text(r.own[own])
		}
	}
	p.leaf, p.items = r.leaf, slices.Clip(r.items)
	return p
}

// Read takes what there is from page i as it was filled for a school. The numbers say
// where each of its ready bytes begins. What it returns depends on the page's bytes alone.
func (x *Index) Read(i int, page []byte, begins []int) Page {
	p := &x.pages[i]
	r := x.reader(p.leaf)
	r.Places, r.inside = slices.Clone(p.Places), true
	r.items = make([]item, 0, len(p.items)+8*len(p.round))
	done := 0
	for _, g := range p.round {
		r.items = append(r.items, p.items[done:g.after]...)
		done, r.at = g.after, g.first
		r.readAll(page[g.from.in(begins):g.to.in(begins)])
		if r.at != g.last { // a slot has a place of its own, which none has in a handbook of today
			return x.readWhole(p.File, page)
		}
	}
	r.items = append(r.items, p.items[done:]...)
	return r.Page
}

// readWhole takes all from a page.
func (x *Index) readWhole(name string, page []byte) Page {
	r := x.reader(leaf{File: name, Places: []spot{}})
	r.readAll(page)
	return r.Page
}
