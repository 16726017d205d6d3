package output

import (
	"crypto/sha256"
	"encoding/base64"
	"html"
	"regexp"
	"strings"
	"testing"

	"noonbook/build/file"
)

func pages() []file.File {
	shell := func(class, inside string) []byte {
		return []byte(`<!doctype html><html lang="en"><head><meta http-equiv="Content-Security-Policy" content="script-src \'self\'"><meta name="description" content="d"><title>T</title>` +
			`<link rel="expect" href="#nb-end" blocking="render"><link rel="stylesheet" href="noonbook.css"><script src="noonbook.js" defer></script><script type="application/ld+json">{"a":"<"}</script></head><body` + class + `>` + inside + `</body></html>`)
	}
	way := `<nav class="navigation"><details class="finder" data-words="concordance.js"><summary>Find</summary><input id="nb-finder"></details><p class="all-pages"><a href="#nb-pages">All pages</a></p></nav>`
	list := `<footer><nav class="page-list" id="nb-pages"><ol><li><a href="a.html">Listed</a></li></ol></nav></footer>`
	return []file.File{
		{Name: "index.html", Bytes: shell(` class="cover"`, `<main class="page-width"><h1>U</h1><a href="unit.ics">Dates</a><a href="a.html">A</a><img src="crest.png" alt="">`+way+`</main>`)},
		{Name: "a.html", Bytes: shell("", `<a class="skip" href="#nb-text">Skip</a><header>`+way+`</header><main id="nb-text"><h1 id="x">A</h1><p class="room-link"><a href="room-a.html">Wall</a></p><p class="print-link"><a href="b.html"><span class="preview"><svg><path d="M0 0"/></svg></span>Print</a></p><a href="b.html#y">B</a><a href="https://example.org/a.html">out</a><a href="list.csv">list</a><a href="unit.ics">Dates</a><svg><a href="index.html">i</a></svg><svg><i id="nb-p1-u"/><g id="nb-p1-g" clip-path="url(#nb-p1-c)" marker-end="url(#nb-p1-m)"><use href="#nb-p1-u"/></g></svg></main>`+list)},
		{Name: "b.html", Bytes: shell(` class="printable"`, `<main><h1>B</h1><p id="y" aria-labelledby="y z">&lt;b&gt;</p><i id="z"></i><a href="a.html">A</a><a href="#y">y</a></main>`)},
		{Name: "room-a.html", Bytes: shell(` class="room"`, `<main><h1>Wall</h1></main><script src="room.js" defer></script>`)},
		{Name: "noonbook.css", Bytes: []byte("p{}")}, {Name: "noonbook.js", Bytes: []byte("go()")}, {Name: "concordance.js", Bytes: []byte("var noonbookConcordance={}")},
		{Name: "crest.png", Bytes: []byte("png")}, {Name: "list.csv", Bytes: []byte("a,b")}, {Name: "unit.ics", Bytes: []byte("BEGIN:VCALENDAR")},
	}
}

func TestSingle(t *testing.T) {
	bytes, err := Single(pages())
	if err != nil {
		t.Fatal(err)
	}
	page := string(bytes)
	for _, want := range []string{
		`<section class="page cover" id="index">`, `<section class="page" id="a">`, `<section class="page printable" id="b">`,
		`href="#a/nb-text"`, `<div id="a/nb-text">`, `href="#b/y"`, `id="b/y" aria-labelledby="b/y b/z"`, `<svg><a href="#index">i</a></svg>`,
		`<g id="a/nb-p1-g" clip-path="url(#a/nb-p1-c)" marker-end="url(#a/nb-p1-m)"><use href="#a/nb-p1-u"/></g>`,
		`<a href="https://example.org/a.html">out</a>`, `<a download="list.csv" href="data:text/csv;base64,YSxi">list</a>`,
		`<img src="data:image/png;base64,cG5n" alt="">`, `<p class="all-pages"><a href="#index">All pages</a></p>`, `&lt;b&gt;`,
		`<title>T</title><style>p{}</style>`, `<script>go()</script>`, `<script type="application/ld+json">{"a":"<"}</script></head>`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("it lacks %s", want)
		}
	}
	// The one file loads nothing but what is in it (Content Security Policy Level 3).
	policy := regexp.MustCompile(`http-equiv="Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(page)
	if policy == nil {
		t.Fatal("it has no policy")
	}
	for directive := range strings.SplitSeq(html.UnescapeString(policy[1]), ";") {
		words := strings.Fields(directive)
		for _, source := range words[1:] {
			if source != "'none'" && source != "data:" && !strings.HasPrefix(source, "'sha256-") {
				t.Errorf("the policy of %s lets in %s", words[0], source)
			}
		}
	}
	for _, directive := range []string{"default-src 'none'", "base-uri 'none'", "form-action 'none'"} {
		if !strings.Contains(html.UnescapeString(policy[1]), directive) {
			t.Errorf("the policy lacks %s", directive)
		}
	}
	if n := strings.Count(page, `class="finder"`); n != 1 {
		t.Errorf("the finder stands %d times", n)
	}
	if strings.Contains(page, "Wall") || strings.Contains(page, "room") {
		t.Error("it holds a page for a projector, or a link to one")
	}
	if strings.Contains(page, "Listed") {
		t.Error("it holds the list of all pages of a page, which is on the cover")
	}
	if strings.Contains(page, "preview") {
		t.Error("it holds the small picture of a sheet beside the sheet")
	}
	if n := strings.Count(page, "data:text/calendar"); n != 1 || !strings.Contains(page, `<a href="#index">Dates</a>`) {
		t.Errorf("it holds the calendar %d times, or another page does not lead to it", n)
	}
	if strings.Contains(page, "<ol>") || strings.Count(page, "<main") != 1 {
		t.Errorf("lists of all pages or main parts are left:\n%s", page)
	}
	oneFile(t, page)
}

// oneFile wants names that are unique, links that lead to them, and a policy that
// names every inline text.
func oneFile(t *testing.T, page string) {
	t.Helper()
	names := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if names[m[1]] {
			t.Errorf("two elements are named %s", m[1])
		}
		names[m[1]] = true
	}
	for _, m := range regexp.MustCompile(` (?:href|src)="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if place, ok := strings.CutPrefix(m[1], "#"); ok && !names[place] || !ok && !strings.HasPrefix(m[1], "data:") && !strings.HasPrefix(m[1], "https:") {
			t.Errorf("%s leads nowhere", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`(?s)<(?:style|script)>(.*?)</(?:style|script)>`).FindAllStringSubmatch(page, -1) {
		sum := sha256.Sum256([]byte(m[1]))
		if hash := "sha256-" + base64.StdEncoding.EncodeToString(sum[:]); !strings.Contains(page, strings.ReplaceAll(hash, "+", "&#43;")) && !strings.Contains(page, hash) {
			t.Errorf("the policy does not name %.40s", m[1])
		}
	}
}

func TestSingleRefuses(t *testing.T) {
	for name, change := range map[string]func([]file.File) []file.File{
		"no cover":  func(f []file.File) []file.File { return f[1:] },
		"no script": func(f []file.File) []file.File { f[5].Name = "x.js"; return f },
		"an end":    func(f []file.File) []file.File { f[4].Bytes = []byte("</style>"); return f },
	} {
		if _, err := Single(change(pages())); err == nil {
			t.Errorf("%s: it is bound", name)
		}
	}
}
