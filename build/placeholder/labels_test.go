package placeholder_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/typeset"
)

// labelDates are a summer's and a winter's day, and one on which much is up.
var labelDates = []string{"2027-01-14", "2027-04-20"}

// Everything that the catalogue draws, at ten schools, in each language and both
// measures, as it stands on a page, on a phone and on paper.
func TestLabelsKeepApart(t *testing.T) {
	look := looker{T: t, seen: map[string]int{}, said: map[string]int{}}
	for _, code := range typeset.Languages() {
		for _, customary := range []bool{false, true} {
			w, err := typeset.Language(code, customary)
			if err != nil {
				t.Fatal(err)
			}
			look.words = append(look.words, w)
		}
	}
	for where := range entrytest.Schools {
		for _, e := range entries() {
			if _, log := entrytest.SampleLogs[e.Name]; log {
				continue
			}
			for _, date := range labelDates {
				look.result(e.Name+" at "+where+", "+date, reckon(t, where, e.Name, date))
			}
			if where == "alder reach" {
				for _, given := range variants[e.Name] {
					look.result(e.Name+", "+strings.Join(given, " "), reckon(t, where, e.Name, labelDates[1], given...))
				}
			}
		}
	}
	for name, text := range entrytest.SampleLogs {
		look.result(name+", a sample log", reckonLog(t, "alder reach", name, text))
	}
	met := map[string]bool{}
	for _, what := range slices.Sorted(maps.Keys(look.said)) {
		known := false
		for beginning := range knownCrossings {
			if strings.HasPrefix(what, beginning) {
				known, met[beginning] = true, true
			}
		}
		if !known {
			t.Errorf("%s, %d times", what, look.said[what])
		}
	}
	for beginning := range knownCrossings {
		if !met[beginning] {
			t.Errorf("no longer: %s", beginning)
		}
	}
	t.Logf("%v", look.seen)
	if look.seen["labels"] < 100000 {
		t.Errorf("only %d labels were looked at", look.seen["labels"])
	}
}

// knownCrossings are lines below words that have no better place, as a fault of that
// beginning tells, with the reason.
var knownCrossings = map[string]string{
	"dial-face on paper: line of hour through label of small": "near a pole a level face has hour lines all round",
	"tubes on phone: line of bore through label of name":      "in a short telescope the name of a lens is wider than the room that its tube leaves",
	"dial-plate on page: line of":                             "the picture is small and leaning; its figures stand on the plate, in shade and light",
	"dial-plate on phone: line of":                            "the same",
}

type looker struct {
	*testing.T
	words []*typeset.Words
	seen  map[string]int
	said  map[string]int // by fault, the first place named
}

func (l *looker) result(where string, r result.Result) {
	for _, d := range r.Drawings {
		l.drawing(where, d, r, typeset.OnPage)
		l.drawing(where, d, r, typeset.OnPhone)
	}
	var last string
	for _, s := range r.Sheets {
		if s.Rows*s.Columns > 1 && last == s.Drawing.Name { // the parts of one drawing
			continue
		}
		last = s.Drawing.Name
		l.drawing(where, s.Drawing, r, typeset.OnPaper)
	}
}

var readingNames = map[typeset.Reading]string{typeset.OnPage: "page", typeset.OnPhone: "phone", typeset.OnPaper: "paper"}

// Tolerances in millimetres: what a reader does not see, and how far letters may
// stick out of a drawing, which is not cut off there.
const (
	unseen = 0.15
	beyond = 0.6
)

func (l *looker) drawing(where string, d drawing.Drawing, r result.Result, on typeset.Reading) {
	l.seen[readingNames[on]]++
	boxes := make([]drawing.Box, len(d.Shapes))
	for i, s := range d.Shapes {
		boxes[i] = boxOf(s)
	}
	for _, w := range l.words {
		w := w.For(r)
		labels := w.Place(&d, on)
		l.seen["labels"] += len(labels)
		fault := func(what string, i int, about string) {
			key := fmt.Sprintf("%s on %s: %s of %s", d.Name, readingNames[on], what, d.Shapes[labels[i].Shape].Role)
			if l.said[key] == 0 {
				l.Logf("%s: %s %q %s (%s)", key, w.Code, strings.Join(labels[i].Lines, " / "), about, where)
			}
			l.said[key]++
		}
		for i, a := range labels {
			box := hullOf(a)
			if out := max(-box.Left, box.Right-d.Width); out > beyond {
				fault("overhang", i, fmt.Sprintf("%.1f mm", out))
			}
			if out := max(-box.Top, box.Bottom-d.Height); on == typeset.OnPaper && out > beyond {
				fault("overhang up or down", i, fmt.Sprintf("%.1f mm", out))
			}
			if least := leastLetters(on, d); a.Size < least-1e-9 {
				fault("small letters", i, fmt.Sprintf("%.2f mm", a.Size))
			}
			if a.Crowded {
				fault("no free place", i, "")
			}
			for n, s := range d.Shapes {
				if s.Anchor == "" && box.Meets(boxes[n]) && !mayCross(s) && cuts(s, a) {
					fault("line of "+s.Role+" through label", i, "")
					break
				}
			}
			for k, b := range labels[i+1:] {
				if overlap(a, b) > unseen {
					fault("overlap with "+d.Shapes[b.Shape].Role, i, fmt.Sprintf("with %q", strings.Join(labels[i+1+k].Lines, " / ")))
				}
				if withinRim(d, a, b) {
					fault("rim over "+d.Shapes[b.Shape].Role, i, fmt.Sprintf("with %q", strings.Join(labels[i+1+k].Lines, " / ")))
				}
			}
		}
	}
}

// withinRim reports whether the paper round one of two level labels, of which one has a
// choice, hides what is above or below it of the other.
func withinRim(d drawing.Drawing, a, b typeset.Label) bool {
	if d.Rim == 0 || a.Turn != 0 || b.Turn != 0 || len(d.Shapes[a.Shape].Places)+len(d.Shapes[b.Shape].Places) == 0 {
		return false
	}
	one, other := hullOf(a), hullOf(b)
	across := min(one.Right, other.Right) - max(one.Left, other.Left)
	apart := max(one.Top, other.Top) - min(one.Bottom, other.Bottom)
	return across > unseen && apart < d.Rim-unseen
}

// leastLetters are 11 px where a drawing is 340 px wide, and 7 points of 1/72 inch.
func leastLetters(on typeset.Reading, d drawing.Drawing) float64 {
	switch on {
	case typeset.OnPhone:
		return 11 * d.Width / 340
	case typeset.OnPaper:
		return 7 * 25.4 / 72
	}
	return 0
}

// boxOf is what a shape reaches over.
func boxOf(s drawing.Shape) drawing.Box {
	b := drawing.Box{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
	for _, p := range s.Points {
		b = drawing.Box{Left: min(b.Left, p.X-s.Radius-0.01), Top: min(b.Top, p.Y-s.Radius-0.01), Right: max(b.Right, p.X+s.Radius+0.01), Bottom: max(b.Bottom, p.Y+s.Radius+0.01)}
	}
	return b
}

// mayCross are the lines that may run below words, which have a rim of paper there: nets
// and traces across the whole drawing, and stars so faint that there are too many.
func mayCross(s drawing.Shape) bool {
	if s.Role == "star" && s.Radius < 0.39 {
		return true
	}
	for _, r := range strings.Fields(s.Role) {
		if slices.Contains([]string{"grid", "height", "figure-line", "equator", "ecliptic", "orbit", "ray", "beam", "leader", "touch-area"}, r) {
			return true
		}
	}
	return false
}

// cuts reports whether a shape's line comes within the letters of a label, by steps of
// half a millimetre along it; what is closer to their edge than unseen does not count.
func cuts(s drawing.Shape, l typeset.Label) bool {
	c := l.Corners()
	sin, cos := math.Sincos(l.Turn * math.Pi / 180)
	turned := func(p drawing.Point) (x, y float64) {
		return (p.X-c[0].X)*cos + (p.Y-c[0].Y)*sin, (p.Y-c[0].Y)*cos - (p.X-c[0].X)*sin
	}
	wide, high := turned(c[2])
	inside := func(p drawing.Point) bool {
		x, y := turned(p)
		return unseen < x && x < wide-unseen && unseen < y && y < high-unseen
	}
	if s.Radius > 0 {
		for i := range 180 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 90)
			if inside(drawing.Point{X: s.Points[0].X + s.Radius*cos, Y: s.Points[0].Y + s.Radius*sin}) {
				return true
			}
		}
		return false
	}
	points := s.Points
	if s.Closed {
		points = append(slices.Clone(points), points[0])
	}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		steps := math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)/0.5) + 1
		for k := 0.0; k <= steps; k++ {
			if inside(drawing.Point{X: a.X + k/steps*(b.X-a.X), Y: a.Y + k/steps*(b.Y-a.Y)}) {
				return true
			}
		}
	}
	return false
}

func hullOf(l typeset.Label) drawing.Box {
	b := drawing.Box{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
	for _, c := range l.Corners() {
		b = drawing.Box{Left: min(b.Left, c.X), Top: min(b.Top, c.Y), Right: max(b.Right, c.X), Bottom: max(b.Bottom, c.Y)}
	}
	return b
}

// overlap is how deep two labels lie in each other: the least over the directions of
// their sides.
func overlap(a, b typeset.Label) float64 {
	least := math.Inf(1)
	for _, turn := range []float64{a.Turn, a.Turn + 90, b.Turn, b.Turn + 90} {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		span := func(l typeset.Label) (low, high float64) {
			low, high = math.Inf(1), math.Inf(-1)
			for _, c := range l.Corners() {
				x := c.X*cos + c.Y*sin
				low, high = min(low, x), max(high, x)
			}
			return low, high
		}
		lowA, highA := span(a)
		lowB, highB := span(b)
		least = min(least, min(highA, highB)-max(lowA, lowB))
	}
	return least
}
