package placeholder_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/typeset"
)

// sheetWays are the ways to ask for sheets that look different.
var sheetWays = map[string][][]string{
	"dial-gnomon": {{}, {"pieces=single"}, {"kind=level", "pieces=single"}, {"kind=equatorial"}, {"kind=polar", "pieces=single"}},
	"dial-face":   {{}, {"kind=equatorial"}, {"kind=polar"}},
	"rocket-wrap": {{}, {"size=long"}},
	"strip-cards": {{}, {"card=A6"}},
}

// eachSheet calls with every sheet of the catalogue, on both papers, at all schools.
func eachSheet(t *testing.T, with func(what string, s drawing.Sheet, name string)) {
	t.Helper()
	n := 0
	for where := range entrytest.Schools {
		for _, e := range placeholder.Catalogue() {
			if !e.Printable {
				continue
			}
			ways := sheetWays[e.Name]
			if ways == nil {
				ways = [][]string{{}}
			}
			for _, given := range ways {
				for _, paper := range []string{"Letter", "A4"} {
					r := reckon(t, where, e.Name, "2027-04-20", append([]string{"school.paper=" + paper}, given...)...)
					for i, s := range r.Sheets {
						n++
						what := strings.Join(append([]string{where, e.Name, paper}, given...), " ")
						if i > 0 {
							what += ", not the first"
						}
						with(what, s, e.Name)
					}
				}
			}
		}
	}
	if n < 400 {
		t.Errorf("%d sheets", n)
	}
}

// No sheet is four-fifths empty: what is drawn on it takes a fifth of the paper at least, by
// the rectangle round it. The last of several may end sooner.
func TestSheetsAreNotEmpty(t *testing.T) {
	least, where := math.Inf(1), ""
	eachSheet(t, func(what string, s drawing.Sheet, _ string) {
		width, height, _ := s.Area()
		left, top, right, bottom := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, shape := range s.Drawing.Shapes {
			for _, p := range shape.Points {
				left, right = min(left, p.X-shape.Radius), max(right, p.X+shape.Radius)
				top, bottom = min(top, p.Y-shape.Radius), max(bottom, p.Y+shape.Radius)
			}
		}
		left, right = max(left, s.Left), min(right, s.Left+width)
		top, bottom = max(top, s.Top), min(bottom, s.Top+height)
		if s.Rows*s.Columns > 1 && s.Row == s.Rows && s.Column == s.Columns {
			return // the corner of something larger than the paper
		}
		share := (right - left) * (bottom - top) / (s.Paper.Width * s.Paper.Height)
		if share < least {
			least, where = share, what
		}
		if share < 0.2 {
			t.Errorf("%s: %.0f %% of the paper is used", what, 100*share)
		}
	})
	t.Logf("the emptiest sheet uses %.0f %%: %s", 100*least, where)
}

// Every sheet says whose it is, what it is, for which lesson and how often to print it, and has
// a key of the lines that it uses and of no others. The kinds are counted here by hand, from
// the names of the shapes alone.
func TestEverySheetHasItsHeadAndKey(t *testing.T) {
	kinds := []string{"cut", "style-edge", "fold", "glue", "choice"}
	words := map[string]map[string]string{
		"en": {"cut": "cut", "style-edge": "style: never trim", "fold": "fold", "glue": "glue", "choice": "cut if told to"},
		"fr": {"cut": "couper", "style-edge": "style : ne pas retailler", "fold": "plier", "glue": "coller", "choice": "couper si indiqué"},
	}
	label := regexp.MustCompile(`<text class="([a-z -]+)"[^>]*>([^<]*)</text>`)
	languages := map[string]*typeset.Words{}
	for code := range words {
		w, err := typeset.Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		languages[code] = w
	}
	seen := map[string]bool{}
	eachSheet(t, func(what string, s drawing.Sheet, name string) {
		width, height, _ := s.Area()
		used := map[string]bool{}
		for _, shape := range s.Drawing.Shapes {
			first, _, _ := strings.Cut(shape.Role, " ")
			if shape.Anchor != "" || !slices.Contains(kinds, first) {
				continue
			}
			if s.Rows*s.Columns == 1 || inWindow(shape, s.Left, s.Top, s.Left+width, s.Top+height) {
				used[first], seen[first] = true, true
			}
		}
		for code, w := range languages {
			head := typeset.SheetHead{School: "École du Marais & Cie", Lesson: "12 Worlds to find out about", Name: w.Say(name + ".name"), Copies: w.Say("sheet.copies_unknown")}
			said, key := map[string]string{}, []string{}
			for _, m := range label.FindAllStringSubmatch(string(w.AppendSheet(nil, &s, head)), -1) {
				text := strings.NewReplacer("\u00a0", " ", "\u202f", " ", "&amp;", "&").Replace(m[2])
				if role, _, _ := strings.Cut(m[1], " "); role == "sheet-key" {
					key = append(key, text)
				} else {
					said[role] += text
				}
			}
			var want []string
			for _, kind := range kinds {
				if used[kind] {
					want = append(want, words[code][kind])
				}
			}
			if !slices.Equal(key, want) {
				t.Errorf("%s, %s: the key has %q, want %q", what, code, key, want)
			}
			plain := strings.NewReplacer("\u00a0", " ", "\u202f", " ")
			if !strings.HasPrefix(said["sheet-name"], plain.Replace(head.Name)) || said["sheet-copies"] != plain.Replace(head.Copies) {
				t.Errorf("%s, %s: the head says %v", what, code, said)
			}
			if !strings.Contains(said["sheet-school"]+said["sheet-lesson"], head.School) || !strings.Contains(said["sheet-lesson"], head.Lesson) {
				t.Errorf("%s, %s: the head lacks school or lesson: %v", what, code, said)
			}
		}
	})
	if len(seen) != len(kinds)-1 { // the demo's wrap alone has a line of choice
		t.Errorf("met %v", seen)
	}
}

// inWindow reports whether a point of the shape's strokes, a tenth of a millimetre apart, is
// in the rectangle.
func inWindow(s drawing.Shape, left, top, right, bottom float64) bool {
	points := s.Points
	if s.Closed {
		points = append(slices.Clone(points), points[0])
	}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		n := int(10*math.Hypot(b.X-a.X, b.Y-a.Y)) + 1
		for k := range n + 1 {
			f := float64(k) / float64(n)
			if x, y := a.X+f*(b.X-a.X), a.Y+f*(b.Y-a.Y); x >= left && x <= right && y >= top && y <= bottom {
				return true
			}
		}
	}
	return false
}
