package result

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
)

// A Walk leads a reader through a drawing of the result, from stop to stop: what can
// be chosen on it, with a card for each.
type Walk struct {
	Drawing string // the name of the drawing
	Stops   []Stop // in the order in which the list has them
}

// A Stop is something of a drawing with a card about it.
type Stop struct {
	Key   string        // in addresses: letters from a to z, digits and hyphens; its own within the walk
	Name  say.Value     // what it is called; the head of its card
	At    drawing.Point // where it is on the drawing, in millimetres
	Reach float64       // mm; how far round it belongs to it
	Says  []say.Phrase  // the lines of its card
}
