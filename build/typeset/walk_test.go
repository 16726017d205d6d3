package typeset_test

import (
	"regexp"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// walked is a result with a drawing and a walk of three stops through it.
func walked() result.Result {
	d := drawing.Drawing{Name: "map", Width: 100, Height: 80, Title: say.Line("sky-map.name")}
	d.Label("name", drawing.Point{X: 50, Y: -2}, drawing.Middle, say.Text("above"))
	stop := func(key, name string, x float64) result.Stop {
		return result.Stop{Key: key, Name: say.Text(name), At: drawing.Point{X: x, Y: 40}, Reach: 5, Says: []say.Phrase{say.Line("walk.next", say.Text(name))}}
	}
	return result.Result{
		Drawings: []drawing.Drawing{d},
		Walks:    []result.Walk{{Drawing: "map", Stops: []result.Stop{stop("one", "First & <b>", 20), stop("two", "Second", 50), stop("67p", "Third", 80)}}},
	}
}

var (
	idPattern   = regexp.MustCompile(` id="([^"]*)"`)
	hrefPattern = regexp.MustCompile(`<a href="#([^"]*)"`)
	boxPattern  = regexp.MustCompile(`viewBox="([^"]*)"`)
)

// Every link of a walk leads to one of its anchors, of which each is on the page once, also
// where the page has the same walk again and a result two walks. The layer of links shows the
// same part of the drawing, whose label sticks out above it.
func TestWalksLeadToTheirCards(t *testing.T) {
	w := words(t, false)
	r := walked()
	r.Drawings = append(r.Drawings, r.Drawings[0])
	r.Drawings[1].Name = "back"
	r.Walks = append(r.Walks, r.Walks[0])
	r.Walks[1].Drawing = "back"
	var page []byte
	for nth := range 3 {
		page = w.AppendBlock(page, "sky-map", r.Anchored(typeset.WalkAnchor("sky-map", nth+1)), nil)
	}
	ids := map[string]bool{}
	for _, m := range idPattern.FindAllSubmatch(page, -1) {
		if ids[string(m[1])] {
			t.Errorf("two of %s", m[1])
		}
		ids[string(m[1])] = true
	}
	if len(ids) != 3*2*(3+1) || !ids["nb-sky-map.67p"] || !ids["nb-sky-map-2.two"] || !ids["nb-sky-map-3.2.one"] || !ids["nb-sky-map"] {
		t.Errorf("anchors: %v", ids)
	}
	links := hrefPattern.FindAllSubmatch(page, -1)
	for _, m := range links {
		if !ids[string(m[1])] {
			t.Errorf("a link to %s leads nowhere", m[1])
		}
	}
	// From the layer, the name, those before and after, and back to the drawing.
	if want := 3 * 2 * (3 + 3 + 2 + 2 + 3); len(links) != want {
		t.Errorf("%d links, want %d", len(links), want)
	}
	boxes := boxPattern.FindAllSubmatch(page, -1)
	if len(boxes) != 12 || string(boxes[0][1]) != string(boxes[1][1]) || strings.HasPrefix(string(boxes[0][1]), "0 0 ") {
		t.Errorf("boxes: %s", boxes)
	}
	if !strings.Contains(string(page), `<title>First & &lt;b></title>`) || !strings.Contains(string(page), `rel="next">next: Second</a>`) {
		t.Errorf("%s", page)
	}
}

// A page that was not given an anchor shows the drawing alone: in the room, on sheets.
func TestWithoutAnAnchorThereIsNoWalk(t *testing.T) {
	w := words(t, false).Remembering()
	r := walked()
	plain := string(w.AppendBlock(nil, "sky-map", r, nil))
	if strings.Contains(plain, "<a ") || strings.Contains(plain, "walk") {
		t.Errorf("%s", plain)
	}
	if again := string(w.AppendBlock(nil, "sky-map", r.Anchored("nb-map"), nil)); !strings.Contains(again, strings.TrimSuffix(plain, "</svg>")) {
		t.Errorf("the drawing is another one in a walk:\n%s", again)
	}
	if r.Walks[0].Anchor != "" {
		t.Error("the result was written into")
	}
}
