package typeset

import (
	"math"
	"slices"
	"strings"

	"noonbook/build/drawing"
)

// A Reading is where a drawing is read.
type Reading int

const (
	OnPage  Reading = iota // in the column of a page, and on its print
	OnPhone                // there letters grow, and all labels may give way a little
	OnPaper                // on a printable at true size
)

// What a narrow screen has: its smallest letters and the least width of drawings there,
// both in CSS pixels: within a block for staff, on a phone 390 px wide, and in the margin of
// a window of 1280 (common practice, no source). A lesson on a wide page draws nothing
// higher than PageHeight, which is max-height in lesson.css, unless it is tall.
const (
	NarrowLetters = 11.0
	NarrowWidth   = 340.0
	PageHeight    = 352.0
)

// least is the size of the smallest letters in a reading, in mm of the drawing.
func (r Reading) least(d *drawing.Drawing) float64 {
	if r == OnPhone {
		return NarrowLetters / NarrowWidth * d.Width
	}
	return 0
}

// A Label is a label in its place, as it is drawn.
type Label struct {
	Shape   int      // of the drawing
	Lines   []string // of its text
	At      drawing.Point
	Anchor  drawing.Anchor
	Leading float64 // mm
	Turn    float64 // degrees clockwise
	Size    float64 // mm, of its letters
	Grown   float64 // how many times larger the letters are than the style sheet has them
	Leader  []drawing.Point
	Crowded bool // there was no free place

	lettering lettering
	text      string  // that was broken into the lines
	broken    float64 // mm that they were given, 0 for one line
	wide      float64 // mm, of the longest
	tailed    bool    // the last has letters that reach below its foot
	patch     patch
	led       drawing.Box // round the leader
}

// Measures of letters in sizes of them, from the fonts of widths.go: a capital with an
// accent rises higher than rise, and seldom meets anything there.
const (
	letterRise = 0.74 // above the foot
	letterFall = 0.22 // below it, of those that have a tail
	letterSide = 0.15 // kept free at both sides
	lineStep   = 1.2  // from line to line
)

// Corners returns the corners of what a label covers.
func (l Label) Corners() [4]drawing.Point { return l.patch.corners() }

// tries is how often a drawing is begun anew with those labels first for which there was
// no place.
const tries = 4

// Place finds the places of a drawing's labels for a reading, in the order of its shapes.
// Labels without a choice stand where they are drawn; on a narrow screen, where letters
// grow, they may move by their own height. Those of the lowest rank always stand
// somewhere, crowded if need be; others are left out where no place is free.
func (w *Words) Place(d *drawing.Drawing, r Reading) []Label { return w.placing(d).labels(r) }

// placing begins to place the labels of a drawing, for several readings.
func (w *Words) placing(d *drawing.Drawing) *placing {
	p := &placing{words: w, drawing: d}
	for i := range d.Shapes {
		if s := &d.Shapes[i]; s.Anchor != "" && len(s.Points) > 0 {
			p.told = append(p.told, told{i, w.Text(s.Text)})
		}
	}
	return p
}

func (p *placing) labels(r Reading) []Label {
	d := p.drawing
	p.hand, p.reading, p.least = handOf(d, r == OnPaper), r, r.least(d)
	order := slices.Clone(p.told)
	fixed := func(t told) bool {
		s := &d.Shapes[t.shape]
		return len(s.Places) == 0 && (r != OnPhone || s.Wide > 0)
	}
	slices.SortStableFunc(order, func(i, j told) int {
		switch {
		case fixed(i) != fixed(j):
			if fixed(i) {
				return -1
			}
			return 1
		default:
			return d.Shapes[i.shape].Rank - d.Shapes[j.shape].Rank
		}
	})
	fewest, best, spare := len(order)+1, []Label(nil), make([]Label, 0, len(order))
	for range tries {
		p.taken, p.below = spare[:0], 0
		var crowded []told
		for _, t := range order {
			if fixed(t) {
				if l := p.fixed(t); len(l.Lines) > 0 {
					p.take(l)
				}
				continue
			}
			p.look()
			l, ok := p.choose(t)
			if ok {
				p.take(l)
			}
			if l.Crowded {
				crowded = append(crowded, t)
			}
		}
		spare = p.taken
		if len(crowded) < fewest {
			fewest, best, spare = len(crowded), p.taken, best
		}
		if len(crowded) == 0 {
			break
		}
		slices.SortStableFunc(order, func(i, j told) int { return first(i, fixed, crowded) - first(j, fixed, crowded) })
	}
	slices.SortFunc(best, func(a, b Label) int { return a.Shape - b.Shape })
	return best
}

// first sorts labels that stand fast before those that found no place, and these before
// all others.
func first(t told, fixed func(told) bool, crowded []told) int {
	switch {
	case fixed(t):
		return 0
	case slices.Contains(crowded, t):
		return 1
	}
	return 2
}

// A placing is a drawing whose labels find their places.
type placing struct {
	words   *Words
	drawing *drawing.Drawing
	told    []told // by shape
	hand    hand
	reading Reading
	least   float64
	taken   []Label
	marks   *marks          // what is drawn besides labels; made when the first label has a choice
	below   float64         // where the next line of the paragraph before would stand
	ways    []drawing.Place // of the label that gives way
}

// A told is a label with its text in the language.
type told struct {
	shape int
	text  string
}

func (p *placing) take(l Label) { p.taken = append(p.taken, l) }

func (p *placing) look() {
	if p.marks == nil {
		p.marks = marksOf(p.drawing)
	}
}

// start is a label with its letters, before it has a place.
func (p *placing) start(i int) Label {
	s := &p.drawing.Shapes[i]
	l := Label{Shape: i, Anchor: s.Anchor, Turn: s.Turn, Grown: 1, lettering: p.hand.of(s.Role)}
	l.Size = l.lettering.size
	if l.Size < p.least {
		l.Grown, l.Size = p.least/l.Size, p.least
	}
	l.Leading = lineStep * l.Size
	return l
}

// fixed is a label where it is drawn.
func (p *placing) fixed(t told) Label {
	s, l := &p.drawing.Shapes[t.shape], p.start(t.shape)
	l.At = s.Points[0]
	if s.Wide == 0 {
		l.Lines = []string{t.text}
	} else {
		l.Leading = s.Leading * l.Grown
		if s.After {
			l.At.Y = max(l.At.Y, p.below)
		}
		l.Lines = cutOff(linesOf(t.text, s.Wide/l.Size, l.lettering.face), s.Most)
		p.below = l.At.Y + float64(len(l.Lines))*l.Leading
		for n := len(l.Lines); s.Floor > 0 && n > 0 && l.At.Y+float64(n-1)*l.Leading >= s.Floor; n-- {
			l.Lines = l.Lines[:n-1]
		}
	}
	if len(l.Lines) > 0 {
		l.measure()
		l.cover()
	}
	return l
}

// cutOff leaves so many lines, the last with a sign that more was said.
func cutOff(lines []string, most int) []string {
	if most <= 0 || len(lines) <= most {
		return lines
	}
	lines = slices.Clone(lines[:most])
	lines[most-1] += " …"
	return lines
}

// at puts a label to one of its places.
func (l *Label) at(c *drawing.Place, text string) {
	if len(l.Lines) == 0 || text != l.text || c.Wide != l.broken {
		l.text, l.broken = text, c.Wide
		if c.Wide > 0 {
			l.Lines = linesOf(text, c.Wide/l.Size, l.lettering.face)
		} else {
			l.Lines = []string{text}
		}
		l.measure()
	}
	l.Anchor, l.Leader = c.Anchor, c.Leader
	if n := len(c.Leader); n > 0 && c.Lift != 0 {
		l.Leader = slices.Clone(c.Leader)
		l.Leader[n-1].Y -= c.Lift * l.Size
	}
	if len(l.Leader) > 1 {
		l.led = boxRound(l.Leader)
	}
	rows := float64(len(l.Lines)-1) * l.Leading
	down := -c.Lift * l.Size
	switch c.Sits {
	case drawing.OnFoot:
		down -= rows
	case drawing.Centred:
		down += (letterRise-letterFall)/2*l.Size - rows/2
	case drawing.Hanging:
		down += letterRise * l.Size
	}
	l.At = drawing.Point{X: c.At.X, Y: c.At.Y + down}
	if l.Turn != 0 {
		sin, cos := math.Sincos(l.Turn * math.Pi / 180)
		l.At = drawing.Point{X: c.At.X - down*sin, Y: c.At.Y + down*cos}
	}
	l.cover()
}

// measure finds how wide the lines are.
func (l *Label) measure() {
	l.wide = 0
	for _, line := range l.Lines {
		l.wide = max(l.wide, widthOf(line, l.lettering.face)*l.Size)
	}
	l.tailed = strings.ContainsAny(l.Lines[len(l.Lines)-1], tailed)
}

// cover reckons what a label covers.
func (l *Label) cover() {
	left := 0.0
	switch l.Anchor {
	case drawing.Middle:
		left = -l.wide / 2
	case drawing.End:
		left = -l.wide
	}
	fall := 0.0
	if l.tailed {
		fall = letterFall * l.Size
	}
	l.patch = patchAt(l.At, l.Turn, drawing.Box{
		Left: left, Right: left + l.wide,
		Top: -letterRise * l.Size, Bottom: fall + float64(len(l.Lines)-1)*l.Leading,
	})
}

// tailed are letters that reach below the foot of the others.
const tailed = "gjpqyçQÇ,;()[]{}|/_@$§µ"

// What a place costs: how many are passed over for it, at most costPassed, which is less
// than a line, and what runs below the label there.
const (
	costPassed = 10
	costQuiet  = 2.5 // a line of a net, which may run below words
	costLine   = 12.0
	costMark   = 200.0 // a mark that the label would hide
)

// choose finds the cheapest free place. ok is false where there is none and the label
// may be left out. One that may not is then also pushed sideways into the drawing.
func (p *placing) choose(t told) (best Label, ok bool) {
	s, l := &p.drawing.Shapes[t.shape], p.start(t.shape)
	places, pushed := s.Places, p.reading == OnPhone && len(s.Places) == 0
	if len(places) == 0 {
		places = p.near(t, &l)
	}
	best, ok = p.cheapest(s, l, t.text, places, pushed)
	if !pushed && (best.Crowded || !ok && s.Rank == drawing.Keep) {
		if free, found := p.cheapest(s, l, t.text, places, true); found && !free.Crowded {
			return free, true
		}
	}
	return best, ok
}

func (p *placing) cheapest(s *drawing.Shape, l Label, text string, places []drawing.Place, pushed bool) (best Label, ok bool) {
	cost, crowd := math.Inf(1), math.Inf(1)
	var crowded Label
	for n := range places {
		c := &places[n]
		passed := costPassed * float64(n) / float64(n+costPassed)
		if passed >= cost {
			break
		}
		if c.Text != nil {
			l.at(c, p.words.Text(*c.Text))
		} else {
			l.at(c, text)
		}
		if pushed {
			p.pushIn(&l)
		}
		blocked := p.blocked(&l, s)
		if wide := l.patch.box.Right - l.patch.box.Left; c.Fits > 0 && wide > c.Fits {
			blocked += (wide - c.Fits) * l.Size
		}
		if blocked > 0 {
			if s.Rank == drawing.Keep && blocked < crowd {
				crowded, crowd = l, blocked
			}
			continue
		}
		below := p.marks.below(&l.patch)
		if s.Rank != drawing.Keep && below >= costLine {
			continue
		}
		if passed+below < cost {
			best, cost, ok = l, passed+below, true
		}
	}
	if !ok && !math.IsInf(crowd, 1) {
		best, ok = crowded, true
		best.Crowded = true
	}
	return best, ok
}

// blocked says how much of a label lies where none may: on other labels and their
// leaders, outside the drawing or its circle, in what is kept free. 0 is a free place. Of a
// label that may be left out it says no more than whether some of it does.
func (p *placing) blocked(l *Label, s *drawing.Shape) float64 {
	const slack = 0.01 // mm
	over := 0.0
	h := &l.patch.hull
	out := max(0, -h.Left) + max(0, h.Right-p.drawing.Width)
	if p.reading == OnPaper { // on a page a drawing grows up and down
		out += max(0, -h.Top) + max(0, h.Bottom-p.drawing.Height)
	}
	if out > slack {
		over += out * l.Size
	}
	if within := s.Within; within.Radius > 0 {
		for _, c := range l.patch.corners() {
			over += l.Size * max(0, math.Hypot(c.X-within.Centre.X, c.Y-within.Centre.Y)-within.Radius)
		}
	}
	for i := range p.drawing.Blocked {
		if b := &p.drawing.Blocked[i]; h.Meets(*b) {
			over += common(h, b)
		}
	}
	wider := l.patch.widened(letterSide*l.Size, p.drawing.Rim)
	for i := range p.taken {
		if over > 0 && s.Rank != drawing.Keep {
			return over
		}
		t := &p.taken[i]
		if wider.meets(&t.patch) {
			over += max(0.01, common(&wider.hull, &t.patch.hull))
		}
		if len(t.Leader) > 1 && wider.reaches(t.led) && wider.crossed(t.Leader) {
			over += l.Size
		}
		if len(l.Leader) > 1 && t.patch.reaches(l.led) && t.patch.crossed(l.Leader) {
			over += l.Size
		}
	}
	return over
}

// near returns the places that a label without a choice may give way to where letters
// grow: its foot, its middle or its head stays, or it moves up or down by half its
// height; what is wider than the drawing is broken into lines.
func (p *placing) near(t told, l *Label) []drawing.Place {
	s := &p.drawing.Shapes[t.shape]
	if l.Grown == 1 || l.Turn != 0 {
		return []drawing.Place{{At: s.Points[0], Anchor: s.Anchor}}
	}
	size, foot := l.Size/l.Grown, s.Points[0]
	head := drawing.Point{X: foot.X, Y: foot.Y - letterRise*size}
	middle := drawing.Point{X: foot.X, Y: foot.Y - (letterRise-letterFall)/2*size}
	wide := 0.0
	if widthOf(t.text, l.lettering.face)*l.Size > p.drawing.Width {
		wide = p.drawing.Width - 1
	}
	places := append(p.ways[:0],
		drawing.Place{At: middle, Anchor: s.Anchor, Sits: drawing.Centred, Wide: wide},
		drawing.Place{At: foot, Anchor: s.Anchor, Wide: wide},
		drawing.Place{At: head, Anchor: s.Anchor, Sits: drawing.Hanging, Wide: wide})
	for _, lift := range [...]float64{0.5, -0.5, 1, -1, 1.5, -1.5, 2, -2} {
		for _, shift := range [...]float64{0, 1, -1} {
			places = append(places, drawing.Place{At: drawing.Point{X: middle.X + shift*l.Size, Y: middle.Y}, Lift: lift, Anchor: s.Anchor, Sits: drawing.Centred, Wide: wide})
		}
	}
	p.ways = places
	return places
}

// pushIn moves a label sideways into the drawing.
func (p *placing) pushIn(l *Label) {
	h := l.patch.hull
	by := max(0, -h.Left) - max(0, h.Right-p.drawing.Width)
	if by != 0 && h.Right-h.Left <= p.drawing.Width {
		l.At.X += by
		l.cover()
	}
}
