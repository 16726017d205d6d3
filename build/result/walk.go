package result

import (
	"strconv"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// A Walk leads a reader through a drawing of the result, from stop to stop: what can
// be chosen on it, with a card for each.
type Walk struct {
	Drawing string // the name of the drawing
	Stops   []Stop // in the order in which the list has them
	Anchor  string // what the anchors of the page begin with; "" where a page shows the drawing alone; set by the plan
}

// A Stop is something of a drawing with a card about it.
type Stop struct {
	Key   string        // in addresses: letters from a to z, digits and hyphens; its own within the walk
	Name  say.Value     // what it is called; the head of its card
	At    drawing.Point // where it is on the drawing, in millimetres
	Reach float64       // mm; how far round it belongs to it
	Says  []say.Phrase  // the lines of its card
}

// Anchored returns r with walks that a page shows: the first has that anchor, and further
// ones have it with their number. Without it a page shows the drawings alone.
func (r Result) Anchored(anchor string) Result {
	walks := make([]Walk, len(r.Walks))
	for i, walk := range r.Walks {
		walk.Anchor = anchor
		if i > 0 {
			walk.Anchor += "." + strconv.Itoa(i+1)
		}
		walks[i] = walk
	}
	r.Walks = walks
	return r
}

// WalkOf returns the walk through the drawing of that name, if the page shows one.
func (r Result) WalkOf(drawing string) (Walk, bool) {
	for _, walk := range r.Walks {
		if walk.Drawing == drawing && walk.Anchor != "" && len(walk.Stops) > 0 {
			return walk, true
		}
	}
	return Walk{}, false
}
