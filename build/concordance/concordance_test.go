package concordance

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/file"
)

// A whole listing is what the page script reads first.
type wholeListing struct {
	listing
	Words []string
}

// read takes the script apart again: for each stem the places where it stands.
func read(t *testing.T, js []byte) (wholeListing, map[string][]string) {
	t.Helper()
	text, ok := strings.CutPrefix(string(js), "var noonbookConcordance=")
	if !ok {
		t.Fatalf("the script begins %.40q", js)
	}
	var l wholeListing
	if err := json.Unmarshal([]byte(strings.TrimSuffix(text, ";\n")), &l); err != nil {
		t.Fatal(err)
	}
	var places []string
	for _, p := range l.Pages {
		places = append(places, p.File)
		for _, s := range p.Places {
			places = append(places, p.File+"#"+s.Anchor)
		}
	}
	words := map[string][]string{}
	for _, line := range l.Words {
		fields, at := strings.Fields(line), 0
		for _, f := range fields[1:] {
			n, err := strconv.ParseInt(f, 36, 32)
			if err != nil {
				t.Fatal(err)
			}
			at += int(n)
			words[fields[0]] = append(words[fields[0]], places[at])
		}
	}
	return l, words
}

// of lists finished pages.
func of(files []file.File, code string) (words, inLines []byte, err error) {
	var ready []Ready
	for _, f := range files {
		ready = append(ready, Ready{f.Name, [][]byte{f.Bytes}})
	}
	index := New(code, ready)
	var pages []Page
	for i, f := range files {
		pages = append(pages, index.Read(i, f.Bytes, []int{0}))
	}
	return index.Of(pages)
}

func TestConcordance(t *testing.T) {
	js, _, err := of([]file.File{
		{Name: "index.html", Bytes: []byte(`<main><h1>Cover</h1>Planets</main>`)},
		{Name: "unit.html", Bytes: []byte(`<body><p>outside</p><main><h1>The &amp; unit</h1><p>Planets, 46.1° north</p></main><footer>below</footer>`)},
		{Name: "clock.html", Bytes: []byte(`<main><article><h1><span>1</span> Clock</h1><p>Shadows <svg><text>drawn</text></svg>fall</p><h2 id="why">Why the <em>Sun</em> moves</h2><p>a planet's shadow<script>x</script></p><figcaption><p>arctangent</p></figcaption></article></main>`)},
		{Name: "glossary.html", Bytes: []byte(`<main><h1>Glossary</h1><dl><div><dt id="nb-term-style">style</dt><dd>The <b>sloping</b> edge. <a href="clock.html">Clock</a></dd></div></dl></main>`)},
	}, "en")
	if err != nil {
		t.Fatal(err)
	}
	l, words := read(t, js)
	for stem, want := range map[string]string{
		"planet": "unit.html clock.html#why", "shadow": "clock.html clock.html#why", "sun": "clock.html#why",
		"slop": "glossary.html#nb-term-style", "outside": "", "below": "", "drawn": "", "arctangent": "", "x": "", "body": "",
	} {
		if got := strings.Join(words[stem], " "); got != want {
			t.Errorf("%s stands at %q, want %q", stem, got, want)
		}
	}
	got := fmt.Sprint(l.Pages)
	want := "[{unit.html The & unit 0 []} {clock.html 1 Clock 0 [{why Why the Sun moves  }]} {glossary.html Glossary 0 [{nb-term-style style The sloping edge. }]}]"
	if got != want {
		t.Errorf("places are %s\nwant %s", got, want)
	}
	if !slices.IsSorted(l.Words) {
		t.Error("the words are not sorted")
	}
}

// In a large handbook the words that stand nearly everywhere are listed apart.
func TestCommonWords(t *testing.T) {
	page := file.File{Name: "a.html"}
	for i := range 100 {
		page.Bytes = fmt.Appendf(page.Bytes, `<main><h2 id="h%d">the part</h2><p>sun%s</p></main>`, i, strings.Repeat("q", i%7))
	}
	js, _, err := of([]file.File{page}, "en")
	if err != nil {
		t.Fatal(err)
	}
	l, words := read(t, js)
	if l.Common != "part the" || words["the"] != nil || len(words["sun"]) != 15 {
		t.Errorf("common are %q, sun stands at %d places", l.Common, len(words["sun"]))
	}
}

// Words that a reader may ask for in one form meet the page's other form. The
// forms are those of the languages' own grammar.
func TestStems(t *testing.T) {
	for code, groups := range map[string][]string{
		"en": {"shadow shadows", "measure measured measuring measures", "box boxes", "glass glasses", "study studies studied", "lens lenses", "launch launches launched launching",
			"cutting", "even evenly", "réticule reticule", "axis", "planet planets"},
		"fr": {"ombre ombres", "mesure mesurer mesuré mesurée mesurées mesurez mesurent", "cheval chevaux", "tableau tableaux", "planète planetes", "cœur coeur", "bon bonne bonnes", "rayon rayons", "noël noel"},
		"de": {"straße strasse"},
	} {
		l := languageOf(code)
		seen := map[string]string{}
		for _, group := range groups {
			words := strings.Fields(group)
			want := l.stem(words[0])
			if other := seen[want]; other != "" {
				t.Errorf("%s: %s and %s share the stem %s", code, other, group, want)
			}
			seen[want] = group
			for _, w := range words[1:] {
				if got := l.stem(w); got != want {
					t.Errorf("%s: %s becomes %s, %s becomes %s", code, words[0], want, w, got)
				}
			}
		}
	}
}
