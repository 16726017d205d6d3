package concordance

import (
	"fmt"
	"strings"
	"testing"

	"noonbook/build/file"
)

// A word that stands at more than two places of five is common, from fifty places
// on; one that stands at two of five exactly is not.
func TestCommonAtItsBound(t *testing.T) {
	for _, c := range []struct {
		places, at int
		common     bool
	}{
		{50, 20, false}, {50, 21, true}, {49, 49, false}, {100, 40, false}, {100, 41, true},
	} {
		page := file.File{Name: "a.html"}
		for i := range c.places - 1 { // the page itself is a place, without words
			word := ""
			if i < c.at {
				word = "gnomon"
			}
			page.Bytes = fmt.Appendf(page.Bytes, `<main><h2 id="h%d">w%s</h2><p>%s</p></main>`, i, strings.Repeat("z", i), word)
		}
		if c.at == c.places { // everywhere
			page.Bytes = append([]byte("<main>gnomon</main>"), page.Bytes...)
		}
		js, _, err := of([]file.File{page}, "en")
		if err != nil {
			t.Fatal(err)
		}
		l, words := read(t, js)
		if common := strings.Contains(" "+l.Common+" ", " gnomon "); common != c.common || common == (words["gnomon"] != nil) {
			t.Errorf("at %d of %d places: common is %v, and it is listed at %d", c.at, c.places, common, len(words["gnomon"]))
		}
	}
}

// What is a word: two letters or more, in any script, with marks; numbers, single
// letters and what a page hides are none. A word is listed once for each place.
func TestWordsOfAPage(t *testing.T) {
	js, _, err := of([]file.File{
		{Name: "a.html", Bytes: []byte(`<main><h1>Up</h1><p>It's 46° N, x2y; naïve naïve Élan</p><h3 id="low">Low noon</h3><p>noon <span>noon</span></p><h2>Unnamed dusk</h2><dl><dt id="nb-term-1">toe</dt><dd>first meaning <a href="b.html">Lesson</a> after</dd></dl></main>`)},
		{Name: "b.html", Bytes: []byte(`<main><h1>Back</h1>noon<details><summary>Working</summary>kept</details></main>`)},
	}, "en")
	if err != nil {
		t.Fatal(err)
	}
	l, words := read(t, js)
	for stem, want := range map[string]string{
		"up": "a.html", "it": "a.html", "naiv": "a.html", "elan": "a.html", "noon": "a.html#low b.html", "dusk": "a.html#low", "toe": "a.html#nb-term-1",
		"mean": "a.html#nb-term-1", "back": "b.html", "kept": "b.html", "n": "", "x": "", "46": "", "s": "", "y": "",
	} {
		if got := strings.Join(words[stem], " "); got != want {
			t.Errorf("%s stands at %q, want %q", stem, got, want)
		}
	}
	last := l.Pages[0].Places[len(l.Pages[0].Places)-1]
	if last.Label != "toe" || last.Note != "first meaning" {
		t.Errorf("the term is %+v", last)
	}
	if len(l.Pages) != 2 || l.Pages[1].Title != "Back" || len(l.Pages[1].Places) != 0 {
		t.Errorf("pages are %+v", l.Pages)
	}
}
