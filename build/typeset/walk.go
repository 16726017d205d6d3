package typeset

import (
	"bytes"
	"strconv"

	"noonbook/build/drawing"
	"noonbook/build/result"
)

// WalkAnchor is what the anchors of a walk begin with on a page: nth is which it is among the
// blocks of its placeholder in the lesson. No heading has such an anchor.
func WalkAnchor(placeholder string, nth int) string {
	anchor := "nb-" + placeholder
	if nth > 1 {
		anchor += "-" + strconv.Itoa(nth)
	}
	return anchor
}

// appendWalk appends a drawing through which a reader can walk: over it a layer of links, one
// for each stop, and beside it the cards to which they lead, as a list. All of it works
// without a script; theme/script/page/walk.js makes the layer one thing with keys of its own.
func (w *Words) appendWalk(dst []byte, d *drawing.Drawing, walk *result.Walk) []byte {
	dst = append(dst, `<div class="walk`...)
	if d.Height > upright*d.Width {
		dst = append(dst, ` upright`...)
	}
	dst = appendAttribute(append(dst, `" id="`...), walk.Anchor)
	dst = append(dst, `"><p class="walk-how">`...)
	dst = AppendText(dst, w.Say("walk.how"))
	dst = append(dst, ` <span class="walk-keys">`...)
	dst = AppendText(dst, w.Say("walk.keys"))
	dst = append(dst, `</span></p><div class="walk-drawing">`...)
	begin := len(dst)
	dst = w.appendDrawingOnce(dst, d)
	dst = w.appendStops(dst, viewBox(dst[begin:]), d, walk)
	dst = w.appendFinding(dst, d.Finding)
	dst = append(dst, `</div><div class="walk-cards"><ol>`...)
	for i := range walk.Stops {
		dst = w.appendCard(dst, walk, i)
	}
	return append(dst, `</ol></div></div>`...)
}

// upright is the height of a drawing in its widths from which on its cards are beside it.
const upright = 0.6

// viewBox is what the drawing shows, which its labels may have changed. The layer over it
// shows the same.
func viewBox(svg []byte) string {
	_, after, _ := bytes.Cut(svg, []byte(`viewBox="`))
	box, _, _ := bytes.Cut(after, []byte(`"`))
	return string(box)
}

// appendStops appends the layer of links. The list has the same for the keyboard, as long as
// no script gives one of them a place in its order.
func (w *Words) appendStops(dst []byte, box string, d *drawing.Drawing, walk *result.Walk) []byte {
	dst = append(dst, `<svg class="stops" viewBox="`...)
	dst = append(dst, box...)
	dst = append(dst, `" role="group" aria-label="`...)
	dst = appendAttribute(dst, w.Say("walk.stops"))
	dst = append(dst, `">`...)
	for i, cell := range cellsOf(walk.Stops, d.Width/fingers) {
		stop := &walk.Stops[i]
		dst = appendStopLink(dst, walk, i)
		dst = append(dst, ` tabindex="-1"><title>`...)
		dst = AppendText(dst, w.Text(stop.Name))
		dst = append(dst, `</title>`...)
		if len(cell) > 2 {
			dst = appendOnward(append(dst, `<path d="`...), cell)
			dst = append(dst, `Z"/>`...)
		}
		dst = appendLength(append(dst, `<circle cx="`...), stop.At.X)
		dst = appendLength(append(dst, `" cy="`...), stop.At.Y)
		dst = appendLength(append(dst, `" r="`...), stop.Reach)
		dst = append(dst, `"/></a>`...)
	}
	return append(dst, `</svg>`...)
}

// fingers is how many circles that a finger can hit lie round half a drawing's width: on a
// screen of 360 px a drawing is 328 px wide, and each is 24 px across (WCAG 2.2, 2.5.8).
const fingers = 328 / 12

// appendStopLink opens a link to the card of a stop.
func appendStopLink(dst []byte, walk *result.Walk, i int) []byte {
	dst = append(dst, `<a href="#`...)
	return append(appendStopAnchor(dst, walk, i), '"')
}

func appendStopAnchor(dst []byte, walk *result.Walk, i int) []byte {
	dst = appendAttribute(dst, walk.Anchor)
	dst = append(dst, '.')
	return appendAttribute(dst, walk.Stops[i].Key)
}

// appendCard appends the card of a stop: its name, what it says, and where to go on.
func (w *Words) appendCard(dst []byte, walk *result.Walk, i int) []byte {
	stop := &walk.Stops[i]
	dst = appendStopAnchor(append(dst, `<li id="`...), walk, i)
	dst = append(dst, `"><p class="stop-name">`...)
	dst = append(appendStopLink(dst, walk, i), '>')
	dst = AppendText(dst, w.Text(stop.Name))
	dst = append(dst, `</a></p>`...)
	for _, line := range stop.Says {
		dst = AppendText(append(dst, `<p>`...), w.Line(line))
		dst = append(dst, `</p>`...)
	}
	dst = append(dst, `<p class="walk-on">`...)
	onto := func(i int, rel, key string) {
		dst = appendStopLink(dst, walk, i)
		dst = append(dst, ` rel="`...)
		dst = append(dst, rel...)
		dst = AppendText(append(dst, `">`...), w.Say(key, walk.Stops[i].Name))
		dst = append(dst, `</a> `...)
	}
	if i > 0 {
		onto(i-1, "prev", "walk.previous")
	}
	if i+1 < len(walk.Stops) {
		onto(i+1, "next", "walk.next")
	}
	dst = appendAttribute(append(dst, `<a href="#`...), walk.Anchor)
	dst = AppendText(append(dst, `">`...), w.Say("walk.back"))
	return append(dst, `</a></p></li>`...)
}
