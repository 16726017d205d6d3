package markup

import (
	"strings"
	"testing"
)

func TestPieces(t *testing.T) {
	page := `<!doctype html><!-- a > b --><p class="a > b" id='x' hidden>1 &lt; 2<br/><script>if (a < b) "</p>"</script></p>tail<`
	var names, texts []string
	var whole []byte
	for p := range Pieces([]byte(page)) {
		whole = append(whole, p.Raw...)
		name := p.Tag
		if p.End {
			name = "/" + name
		}
		if p.Tag == "" {
			texts = append(texts, p.Text())
			continue
		}
		names = append(names, name)
	}
	if string(whole) != page {
		t.Errorf("the pieces are %q", whole)
	}
	if got := strings.Join(names, " "); got != "! ! p br script /script /p" {
		t.Errorf("tags are %q", got)
	}
	if got := strings.Join(texts, "|"); got != `1 < 2|if (a < b) "</p>"|tail|<` {
		t.Errorf("texts are %q", got)
	}
}

// A drawing with all that it holds is three pieces where that is asked for; one that does
// not end is taken apart.
func TestPiecesWithoutDrawings(t *testing.T) {
	page := `<p>a<svg><g><svg class="b"><text>in</text></svg></g><svg></svg>out</svg>b<svg>c</p>`
	var pieces []string
	for p := range PiecesWithoutDrawings([]byte(page)) {
		pieces = append(pieces, string(p.Raw))
	}
	want := `<p>|a|<svg>|<g><svg class="b"><text>in</text></svg></g><svg></svg>out|</svg>|b|<svg>|c|</p>`
	if got := strings.Join(pieces, "|"); got != want {
		t.Errorf("the pieces are %s, want %s", got, want)
	}
}

func TestAttributes(t *testing.T) {
	p := Piece{Raw: []byte(`<a href="x.html?a=1&amp;b" title='"' rel=next disabled>`), Tag: "a"}
	for name, want := range map[string]string{"href": "x.html?a=1&b", "title": `"`, "rel": "next", "disabled": ""} {
		if got, ok := p.Attribute(name); got != want || !ok {
			t.Errorf("%s is %q, %v", name, got, ok)
		}
	}
	if _, ok := p.Attribute("hre"); ok {
		t.Error("it has an attribute that it has not")
	}
	if got, ok := (Piece{Raw: []byte(`<a b=`), Tag: "a"}).Attribute("c"); ok { // a page that was cut off
		t.Errorf("it has an attribute %q that it has not", got)
	}
	got := string(p.Rewritten(func(name, value string) string {
		if name == "href" {
			return "#x&y"
		}
		return value
	}))
	if want := `<a href="#x&amp;y" title='"' rel=next disabled>`; got != want {
		t.Errorf("rewritten: %s, want %s", got, want)
	}
}

// Each value is replaced where it stands, in quotes or not, and what lies between
// stays.
func TestRewrittenInSeveralPlaces(t *testing.T) {
	p := Piece{Raw: []byte(`<img src='a' hidden alt="" id=c/>`), Tag: "img"}
	got := string(p.Rewritten(func(name, value string) string { return name + ":" + value }))
	if want := `<img src='src:a' hidden alt="alt:" id=id:c/>`; got != want {
		t.Errorf("rewritten: %s, want %s", got, want)
	}
}

// Source: HTML Standard (WHATWG), 13.1.2.3 Attributes: which values may stand without
// quotes, and that a stroke behind such a value is a part of it.
func TestUnquoted(t *testing.T) {
	for tag, want := range map[string]string{
		`<td role="cell" data-label="Time">`:  `<td role=cell data-label=Time>`,
		`<td role="cell" data-label="Day’s">`: `<td role=cell data-label="Day’s">`,
		`<th class="a b" id="x/y">`:           `<th class="a b" id="x/y">`,
		`<data value="-12.5" class="">`:       `<data value=-12.5 class="">`,
		`<path class="a" d="M0 0"/>`:          `<path class=a d="M0 0"/>`,
		`<path d="M0 0" class="b"/>`:          `<path d="M0 0" class="b"/>`,
		`<circle r="2" hidden/>`:              `<circle r=2 hidden/>`,
		`<td title='it' lang=en>`:             `<td title='it' lang=en>`,
		`</td>`:                               `</td>`,
	} {
		for piece := range Pieces([]byte(tag)) {
			if got := string(piece.Unquoted()); got != want {
				t.Errorf("%s without quotes is %s", tag, got)
			}
		}
	}
}
