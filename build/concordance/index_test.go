package concordance

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"noonbook/build/file"
)

// parts are what pages are made of; what stands between ⟦ and ⟧ may be a slot, with one of
// its choices for each school.
var parts = []string{
	`<p>Mark the tip at ⟦9:10|<data value="9">9:20</data>|noon⟧ by the clock.</p>`,
	`<p>⟦Early|Late|⟧</p>`,
	`<p><b>⟦9:10|noon⟧</b> is late</p>`,
	`<p>⟦Early|<b>Late</b>|⟧ words⟦ follow| &amp;|⟧</p>`,
	`loose ⟦words|one <br>two|⟧`,
	`<h2 id="a1">Part ⟦one|two|&lt;three⟧</h2>`,
	`<h2>Nameless ⟦one|two⟧</h2>`,
	`<h3 id="a2">Part of all</h3>`,
	`<ul><li>Cut ⟦paper|card⟧<ul><li>along it</li></ul></li><li>⟦fold|glue⟧</li></ul>`,
	`<figure>⟦<p class="note">A note</p><svg><svg><text>drawn</text></svg><text>too</text></svg><table><tr><th>Hour<td>9<td>late</tr></table><figcaption><p>Working</p></figcaption>|<p>None</p>|⟧</figure>`,
	`<table><tr><th>Hour</th><td>⟦noon|9:10⟧</td><td>angle</td></tr><tr><th>⟦3 p.m.|4 p.m.⟧</th></tr></table>`,
	`<dl><div><dt>latitude</dt><dd>How far ⟦north|south⟧. <small>a number</small></dd></div></dl>`,
	`<dl><dt id="nb-term-1">gnomon</dt><dd>It casts ⟦a shadow|<small>no</small> shadow|⟧. <small>Also: <b class="also">⟦pointer|stick⟧</b>, <b class="also">post</b></small> <a href="a.html">Lesson ⟦1|2⟧</a></dd></dl>`,
	`<dl><dt id="nb-term-2">⟦style|edge⟧</dt><dd></dd><dd>Another meaning</dd></dl>`,
	`<nav>Ways ⟦here|there⟧</nav>`,
	`<ol>⟦<li id="nb-map.a"><p>A card</p><p class="walk-on"><a href="#nb-map.b">next: another</a></p></li>|⟧</ol>`,
	`<script type="application/ld+json">⟦{"a":"script"}|{}⟧</script>`,
	`<section class="for-editing"><p>⟦keys|words⟧</p></section>`,
	`<div class="paper-sheet">⟦<h2 id="made">A place</h2><p>of a slot</p>|<p>none</p>⟧</div>`,
	`<div>⟦<p>closed</p>|⟧ behind it</div>`,
}

// draw makes a page of parts chosen by chance, some of their slots filled before, and what
// two schools make of it: the finished pages, and where the ready bytes begin in each.
func draw(chance *rand.Rand, name string) (ready Ready, pages [2][]byte, begins [2][]int) {
	markup := "<body><p>⟦School|Other⟧</p><main><h1>A page ⟦here|there|⟧</h1>"
	for range 12 {
		markup += parts[chance.IntN(len(parts))]
	}
	markup += "</main><p>by ⟦School|Other⟧</p></body>"
	ready.Name = name
	fixed := ""
	begin := func() {
		for i := range pages {
			begins[i] = append(begins[i], len(pages[i]))
			pages[i] = append(pages[i], fixed...)
		}
		ready.Bytes = append(ready.Bytes, []byte(fixed))
		fixed = ""
	}
	for markup != "" {
		before, rest, open := strings.Cut(markup, "⟦")
		fixed += before
		if markup = rest; !open {
			break
		}
		slot, rest, _ := strings.Cut(rest, "⟧")
		markup = rest
		choices := strings.Split(slot, "|")
		if chance.IntN(3) == 0 {
			fixed += choices[0]
			continue
		}
		begin()
		for i := range pages {
			pages[i] = append(pages[i], choices[chance.IntN(len(choices))]...)
		}
	}
	begin()
	return ready, pages, begins
}

// What is read at the plan and in the slots is what finished pages give, for two schools
// that are read at once.
func TestSlotsAreReadAsFinishedPages(t *testing.T) {
	for seed := range uint64(400) {
		chance := rand.New(rand.NewPCG(seed, 17))
		var ready []Ready
		var files [2][]file.File
		var begins [2][][]int
		for n := range 3 {
			r, pages, at := draw(chance, fmt.Sprintf("page-%d.html", n))
			ready = append(ready, r)
			for i := range pages {
				files[i] = append(files[i], file.File{Name: r.Name, Bytes: pages[i]})
				begins[i] = append(begins[i], at[i])
			}
		}
		index := New("en", ready)
		var wait sync.WaitGroup
		for i := range files {
			wait.Go(func() {
				var read []Page
				for n, f := range files[i] {
					read = append(read, index.Read(n, f.Bytes, begins[i][n]))
				}
				words, inLines, err := index.Of(read)
				plainWords, plainLines, plainErr := of(files[i], "en")
				if err != nil || plainErr != nil {
					t.Error(err, plainErr)
				}
				if !bytes.Equal(words, plainWords) || !bytes.Equal(inLines, plainLines) {
					t.Errorf("seed %d, school %d:\n%s%s\nwant\n%s%s\nof %s", seed, i, words, inLines, plainWords, plainLines, files[i])
				}
			})
		}
		wait.Wait()
		if t.Failed() {
			return
		}
	}
}

// All words of a handbook may stand in its slots.
func TestAllStandsInSlots(t *testing.T) {
	const before, behind = `<main><h2 id="b">`, `</h2></main>`
	index := New("en", []Ready{{"a.html", [][]byte{[]byte(before), []byte(behind)}}})
	for slot, want := range map[string]string{"Noon": `"words":["noon 1"]};`, "9": `"words":[]};`} {
		page := index.Read(0, []byte(before+slot+behind), []int{0, len(before + slot)})
		words, _, err := index.Of([]Page{page})
		if err != nil || !strings.HasSuffix(string(words), want+"\n") {
			t.Errorf("%s: %s, %v", slot, words, err)
		}
	}
	if words, _, err := New("en", nil).Of(nil); err != nil || !bytes.HasSuffix(words, []byte(`"pages":[],"words":[]};`+"\n")) {
		t.Errorf("of no page: %s, %v", words, err)
	}
}

// A line is in the script as JSON has it.
func TestLinesAreEscaped(t *testing.T) {
	for _, s := range []string{"", "plain", "élan — 9°", `"so" \ <b> & it's`, "tab\tline\nnull\x00 \x7f", "\u2028\u2029", "bad \xff\xc3", "\ufffd"} {
		js, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := `"` + escaped(s) + `"`; got != string(js) {
			t.Errorf("%q is %s, want %s", s, got, js)
		}
	}
}
