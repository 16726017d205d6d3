package source

import (
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const svgHead = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50">`

// What must not be in a page, however it is written: from the list of what SVG can run, load
// or animate (SVG 2, sections 2.2 and 15; the sheet of ways to write a script that browsers
// forgive is from memory). Each stands in a drawing that otherwise is one of the page's, and
// it may neither come through nor be taken for such a drawing.
func TestNothingThatRunsIsInset(t *testing.T) {
	for _, evil := range []string{
		`<script>alert(1)</script>`, `<script xlink:href="data:,alert(1)" xmlns:xlink="http://www.w3.org/1999/xlink"/>`,
		`<g onload="alert(1)"/>`, `<path class="ink" onclick="alert(1)" d="M0 0"/>`, `<path class="ink" ONMOUSEOVER="alert(1)" d="M0 0"/>`,
		`<a href="javascript:alert(1)"><text>x</text></a>`, `<use href="javascript:alert(1)"/>`, `<use href="https://example.org/a.svg#a"/>`, `<use href="data:image/svg+xml,%3Csvg/%3E#a"/>`, `<use href="other.svg#a"/>`, `<use href="#"/>`, `<use href=" #a javascript:"/>`,
		`<foreignObject><b xmlns="http://www.w3.org/1999/xhtml">x</b></foreignObject>`, `<iframe xmlns="http://www.w3.org/1999/xhtml" src="https://example.org"/>`, `<b xmlns="http://www.w3.org/1999/xhtml">x</b>`, `<math xmlns="http://www.w3.org/1998/Math/MathML"/>`,
		`<style>@import "https://example.org/a.css";</style>`, `<style>*{display:none}</style>`, `<path style="fill:url(https://example.org)" d="M0 0"/>`, `<path fill="url(https://example.org/#a)" d="M0 0"/>`, `<path class="ink" style="position:fixed" d="M0 0"/>`,
		`<image href="https://example.org/a.png"/>`, `<image href="data:image/png;base64,AAAA"/>`, `<filter id="f"><feImage href="https://example.org"/></filter>`,
		`<animate attributeName="href" to="javascript:alert(1)"/>`, `<set attributeName="onload" to="alert(1)"/>`, `<animateTransform attributeName="transform"/>`, `<animateMotion path="M0 0"/>`, `<discard begin="0s"/>`,
		`<path clip-path="url(https://example.org/#a)" d="M0 0"/>`, `<path marker-end="url(//example.org#a)" d="M0 0"/>`, `<path marker-end="url(#a) url(https://example.org)" d="M0 0"/>`, `<path clip-path="url('#a')" d="M0 0"/>`,
		`<path id="a&quot; onload=&quot;alert(1)" d="M0 0"/>`, `<path class="ink&quot; onload=&quot;alert(1)" d="M0 0"/>`, `<path d="M0 0&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;"/>`, `<path transform="rotate(1)&quot; onload=&quot;alert(1)" d="M0 0"/>`, `<text x="0&#9;&quot; onload=1">x</text>`,
		`<path class="finder" d="M0 0"/>`, `<g class="caution"/>`, `<text class="skip">x</text>`, // classes of the page, that its style and its script look for
		`<svg><g/></svg>`, `<switch><g/></switch>`, `<view id="v"/>`, `<symbol id="s"/>`, `<metadata/>`, `<cursor/>`, `<handler/>`, `<listener/>`, `<video/>`, `<audio/>`, `<canvas/>`, `<embed/>`, `<object/>`, `<link rel="stylesheet" href="a.css"/>`, `<base href="https://example.org"/>`, `<meta/>`,
		`<ev:listener xmlns:ev="http://www.w3.org/2001/xml-events"/>`, `<n:path xmlns:n="http://example.org" d="M0 0"/>`, `<path xmlns:n="http://example.org" n:d="M0 0"/>`, `<g xml:base="https://example.org"/>`, `<g tabindex="0"/>`, `<g role="button"/>`, `<g aria-label="x"/>`, `<g requiredExtensions="x"/>`, `<g systemLanguage="x"/>`, `<g lang="x"/>`,
		`<text>&evil;</text>`, `<path class="ink" d="M0 0"`, `</svg><svg>`, `<![CDATA[<script>alert(1)</script>]]>`, `words`,
		// What grows with each turn: one that uses one that uses one, and a marker on a marker.
		`<defs><g id="a"><path d="M0 0"/></g><g id="b"><use href="#a"/><use href="#a"/></g></defs><use href="#b"/>`,
		`<g id="a"><path d="M0 0"/></g><g id="b"><use href="#a"/><use href="#a"/></g><use href="#b"/>`, `<g id="a"><use href="#a"/></g>`,
		`<marker id="m"><path marker-mid="url(#m)" d="M0 0"/></marker>`, `<clipPath id="c"><path clip-path="url(#c)" d="M0 0"/></clipPath>`,
		`<path id="a" d="M0 0"/><path id="a" d="M0 0"/>`, `<path d="M0 0" d="M0 0"/>`, `<use href="#gone"/>`,
		strings.Repeat("<g>", maxDepth) + strings.Repeat("</g>", maxDepth), strings.Repeat("<g/>", maxShapes), "<defs>" + strings.Repeat("<g/>", maxReused+1) + "</defs>", `<path d="M` + strings.Repeat("0 ", maxInset) + `"/>`,
	} {
		if inset, _, err := readInset([]byte(svgHead + `<path class="ink" d="M0 0"/>` + evil + `</svg>`)); inset != nil || err == nil {
			t.Errorf("it is in the page: %.80s", evil)
		}
	}
	for _, whole := range []string{
		"", "words", `<svg viewBox="0 0 100 50"><path class="ink" d="M0 0"/></svg>`, `<svg xmlns="http://www.w3.org/1999/xhtml" viewBox="0 0 100 50"><path class="ink"/></svg>`, `<g xmlns="http://www.w3.org/2000/svg" class="ink"/>`,
		strings.Replace(svgHead, ">", ` onload="alert(1)"><path class="ink" d="M0 0"/></svg>`, 1), strings.Replace(svgHead, ">", ` style="x"><path class="ink" d="M0 0"/></svg>`, 1), strings.Replace(svgHead, ">", ` id="x"><path class="ink" d="M0 0"/></svg>`, 1),
		`<!DOCTYPE svg>` + svgHead + `<path class="ink" d="M0 0"/></svg>`, `<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>` + svgHead + `<text class="ink">&b;</text></svg>`,
		`<?xml-stylesheet href="a.css"?>` + svgHead + `<path class="ink" d="M0 0"/></svg>`,
		`<svg xmlns="http://www.w3.org/2000/svg"><path class="ink" d="M0 0"/></svg>`, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 680 350"><path class="ink" d="M0 0"/></svg>`, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100"><path class="ink" d="M0 0"/></svg>`, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 &quot;"><path class="ink" d="M0 0"/></svg>`,
		svgHead + `<path class="ink" d="M0 0"/></svg>` + svgHead + `</svg>`,
	} {
		if inset, _, err := readInset([]byte(whole)); inset != nil || err == nil {
			t.Errorf("it is in the page: %.80s", whole)
		}
	}
}

// All that an inset may hold comes through, in letters that cannot end an element, and with
// ids of its own for each use.
func TestInsetsAreWrittenAnew(t *testing.T) {
	inset, _, err := readInset([]byte(`<?xml version="1.0"?><!-- a note -->
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0,0 100 50" width="10cm" role="img" aria-labelledby="t">
<title id="t">A &lt;title></title><desc>Not for the page</desc>
<defs><g id="star"><circle r="1"/></g><marker id="m" viewBox="0 0 2 2" refX="1" refY="1" markerWidth="2" markerHeight="2" orient="auto"><path class="dot" d="M0 0L2 1L0 2Z"/></marker><clipPath id="c"><rect x="0" y="0" width="5" height="5"/></clipPath></defs>
<g class="thin" text-anchor="middle"><path id="p" d="M0,0L1 1" marker-end="url(#m)"/><text class="name" x="1" y="2">a <tspan dx="1">&lt;b&gt; &amp; c</tspan></text></g>
<use xlink:href="#star" x="3" y="4"/><line x1="0" y1="0" x2="1" y2="1" clip-path="url(#c)"/><ellipse class="lit night" cx="1" cy="1" rx="2" ry="1"/><polyline points="0,0 1,1"/><polygon points="0,0 1,1"/>
</svg>`))
	if err != nil {
		t.Fatal(err)
	}
	got := string(inset.Append(nil, "nb-p7-", "", "What it shows"))
	for _, want := range []string{
		`<svg class="drawing drawn" viewBox="0 0 100 50" role="img"><title>A &lt;title&gt;</title><desc>What it shows</desc><defs>`,
		`id="nb-p7-star"`, `id="nb-p7-m"`, `url(#nb-p7-m)`, `url(#nb-p7-c)`, `<use href="#nb-p7-star"`, `<path class="thin" id="nb-p7-p" d="M0,0L1 1"`, `class="lit night"`,
		`<text class="name" x="1" y="2">a <tspan class="name" dx="1">&lt;b&gt; &amp; c</tspan></text>`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("it lacks %s:\n%s", want, got)
		}
	}
	if strings.Contains(got, "a note") || strings.Contains(got, "Not for") || strings.Contains(got, "xlink") || strings.Contains(got, "10cm") {
		t.Errorf("it has too much:\n%s", got)
	}
	if n := strings.Count(string(inset.Append(nil, "nb-p8-", "", "x")), "nb-p8-"); n != strings.Count(got, "nb-p7-") || n != 7 {
		t.Errorf("%d ids and references begin with the prefix", n)
	}
	for _, c := range []struct{ title, alt, want string }{
		{"", "", ` aria-hidden="true"><defs>`}, {"", `a "b" <c>`, `<title>A &lt;title&gt;</title><desc>a "b" &lt;c&gt;</desc>`}, {"T", "alt", `<title>T</title><desc>alt</desc>`}, {"T", "T", `<title>T</title><defs>`},
	} {
		if got := string(inset.Append(nil, "x", c.title, c.alt)); !strings.Contains(got, c.want) {
			t.Errorf("%q, %q: %.200s", c.title, c.alt, got)
		}
	}
}

// The demo's own drawings are in the page's colours.
func TestDrawingsOfTheDemoAreInset(t *testing.T) {
	names, err := filepath.Glob("../../content/*.svg")
	if err != nil || len(names) < 4 {
		t.Fatal(err, names)
	}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, meant, err := readInset(src); filepath.Base(name) != "crest.svg" && err != nil || filepath.Base(name) == "crest.svg" && meant {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A drawing with colours of its own, as a drawing program writes it, stays a file and nobody
// hears of it; one that has classes of the theme beside something else stays one too, and
// its author hears where.
func TestWhyADrawingIsNotInset(t *testing.T) {
	for text, want := range map[string]hindrance{
		svgHead + "\n<path fill=\"#123456\" d=\"M0 0\"/></svg>":                                            {"", 2, 1},
		svgHead + "\n<g><path class=\"ink\" d=\"M0 0\"/>\n  <path fill=\"#123456\" d=\"M0 0\"/></g></svg>": {"fill= of <path>", 3, 3},
		svgHead + "\n<linearGradient/>\n<path class=\"ink\" d=\"M0 0\"/></svg>":                            {"<linearGradient>", 2, 1},
		svgHead + "\n<path class=\"ink blue\" d=\"M0 0\"/></svg>":                                          {`class "blue"`, 2, 1},
		svgHead + "\n<rect class=\"ink\" x=\"10%\"/></svg>":                                                {`x="10%", want a number without a unit`, 2, 1},
		svgHead + "\n<rect class=\"ink\" x=\"1\"/>\nwords</svg>":                                           {`words outside <text>: "words"`, 2, 26},
	} {
		_, meant, err := readInset([]byte(text))
		var got hindrance
		if !errors.As(err, &got) || meant != (want.what != "") || meant && got != want {
			t.Errorf("%s: %+v, meant %v, want %+v", text, got, meant, want)
		}
	}
}

// Whatever the bytes, what would be in a page holds elements and attributes of the list and
// nothing else. The parser is that of the standard library; the list is written out again.
func FuzzInset(f *testing.F) {
	for _, name := range []string{"seam", "phase-sheet", "view-circles", "crest"} {
		if src, err := os.ReadFile("../../content/" + name + ".svg"); err == nil {
			f.Add(src)
		}
	}
	f.Add([]byte(svgHead + `<defs><g id="a"/></defs><use class="ink" href="#a" x="1"/><text class="name" x="1 2">a<tspan>&lt;</tspan></text></svg>`))
	elements := strings.Fields("svg title desc g defs clipPath path line polyline polygon rect circle ellipse text tspan use marker")
	attributes := strings.Fields("class viewBox role aria-hidden id transform clip-path text-anchor d x y dx dy x1 y1 x2 y2 cx cy r rx ry width height points href marker-start marker-mid marker-end refX refY markerWidth markerHeight orient")
	f.Fuzz(func(t *testing.T, src []byte) {
		inset, _, err := readInset(src)
		if err != nil {
			return
		}
		out := string(inset.Append(nil, "p-", "", "alt"))
		decoder := xml.NewDecoder(strings.NewReader(out))
		for {
			token, err := decoder.Token()
			if errors.Is(err, io.EOF) {
				return
			}
			if err != nil {
				t.Fatalf("%v in %s", err, out)
			}
			start, ok := token.(xml.StartElement)
			if !ok {
				continue
			}
			if !slices.Contains(elements, start.Name.Local) {
				t.Fatalf("<%s> in %s", start.Name.Local, out)
			}
			for _, a := range start.Attr {
				refers := strings.Contains(a.Value, "url") || strings.ContainsAny(a.Value, ":#\"<>")
				if !slices.Contains(attributes, a.Name.Local) || refers && !strings.HasPrefix(a.Value, "url(#p-") && !strings.HasPrefix(a.Value, "#p-") {
					t.Fatalf("%s=%q in %s", a.Name.Local, a.Value, out)
				}
			}
		}
	})
}
