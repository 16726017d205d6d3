package plan

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
)

// Long pages have a row of links at their head, each of which leads to what it names.
func TestIndexOfLongPages(t *testing.T) {
	unit := smallUnit()
	for i, term := range []string{"élan", "Ecliptic", "zenith", "écart"} {
		unit[string(rune('m'+i))+".md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"L\"\n[[vocabulary]]\nterm = \"" + term + "\"\nmeaning = \"m\"\nalso = [\"other <" + term + ">\", \"third\"]\n```\n")}
	}
	read, words := read(t, unit, "unit")
	p, err := Make(read, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	files, problems := p.Press(read.Settings)
	if problems.Faults() > 0 {
		t.Fatal(problems)
	}
	pages := map[string]*element{}
	for _, f := range files {
		if f.Name == "reference.html" || f.Name == "glossary.html" {
			pages[f.Name] = parsed(t, f.Bytes)
		}
	}
	for name, page := range pages {
		rows := page.with("class", "index-row")
		if len(rows) != 1 {
			t.Fatalf("%s has %d rows of links", name, len(rows))
		}
		for _, a := range rows[0].all("a") {
			to := page.with("id", strings.TrimPrefix(a.at["href"], "#"))
			if len(to) != 1 {
				t.Errorf("%s: %s leads to %d things", name, a.at["href"], len(to))
			}
		}
	}
	// É is put in order with E, whatever its case.
	glossary := pages["glossary.html"]
	if got, want := glossary.with("class", "index-row")[0].texts("a"), strings.Fields("E G P S Z"); !slices.Equal(got, want) {
		t.Errorf("the letters are %q, want %q", got, want)
	}
	if got, want := glossary.texts("dt"), strings.Fields("écart Ecliptic élan gnomon Plate style style zenith"); !slices.Equal(got, want) {
		t.Errorf("the terms are %q, want %q", got, want)
	}
	// E has three words, G, P and Z have one, S has two.
	odd := []string{}
	for _, word := range glossary.with("class", "odd-word") {
		odd = append(odd, word.texts("dt")...)
	}
	if want := strings.Fields("élan gnomon Plate zenith"); !slices.Equal(odd, want) {
		t.Errorf("without a word beside it are %q, want %q", odd, want)
	}
	if text := line(glossary.find("dd").words()); text != "m Also called: other <écart>, third L" {
		t.Errorf("the first term means %q", text)
	}
}

// Each placeholder of the catalogue is below its topic on the page of keys, folded under
// its name, and each key of unit.toml in the group of its table.
func TestGroupsOfTheReference(t *testing.T) {
	pages, texts := smallPages(t, Staff, nil)
	page := pages["reference.html"]
	for _, e := range placeholder.Catalogue() {
		at := strings.Index(texts["reference.html"], `id="nb-`+e.Name+`"`)
		topic := strings.Index(texts["reference.html"], `id="nb-topic-`+e.Topic+`"`)
		if e.Topic == "" || topic < 0 || at < topic || strings.Contains(texts["reference.html"][topic+5:at], `id="nb-topic-`) {
			t.Errorf("%s is not below its topic %q", e.Name, e.Topic)
		}
	}
	folded := 0
	for _, details := range page.find("article").all("details") {
		folded++
		head := details.find("summary").find("h3")
		if head == nil || !strings.HasPrefix(head.at["id"], "nb-") || strings.HasPrefix(head.at["id"], "nb-lesson-") {
			continue
		}
		for _, key := range details.texts("dt") {
			if table, _, _ := strings.Cut(key, "."); table != line(head.words()) {
				t.Errorf("%s is folded under %s", key, line(head.words()))
			}
		}
	}
	if folded <= len(placeholder.Catalogue()) {
		t.Errorf("%d things are folded", folded)
	}
}
