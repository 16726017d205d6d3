package plan

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// What a typist leaves and a printer does not: straight quotes, and a space that breaks
// between a number and the sign of its unit, its half of the day, or its month. Written
// out here, so that the lists of typeset cannot hide what they lack. Primes after numbers,
// 50′, are no quotes.
var (
	straightQuote = regexp.MustCompile(`.{0,30}["'].{0,20}`)
	parted        = regexp.MustCompile(`.{0,20}(?:\d (?:mm|cm|m|km|g|kg|s|min|h|ft|lb|°C|°F|%|V|D)(?:[ .,;:)/]|$)|\d [ap]\.m\.|\d (?:January|February|March|April|May|June|July|August|September|October|November|December|janvier|février|mars|avril|mai|juin|juillet|août|septembre|octobre|novembre|décembre)\b|\b[Ll]esson \d|\bGrade \d|\b[Ll]eçon \d|\d° (?:north|south|east|west|nord|sud|est|ouest)\b|\b\d{1,3} \d{3}\b).{0,20}`)
	// In French au is a word, and English sources stand on French pages.
	partedUnits = regexp.MustCompile(`.{0,20}\d au\b.{0,20}`)
)

// apart are the elements that a text does not run through.
var withinText = []string{"em", "strong", "a", "b", "span", "data", "time", "small", "sub", "sup"}

// blocksOf collects the texts of a page, a block each, without what is quoted from files.
func blocksOf(e *element) []string {
	texts := []string{""}
	var read func(*element)
	read = func(e *element) {
		apart := e.name != "" && !slices.Contains(withinText, e.name)
		switch e.name {
		case "code", "kbd":
			texts[len(texts)-1] += "·"
			return
		case "pre", "script", "style":
			return
		}
		if apart {
			texts = append(texts, "")
		}
		texts[len(texts)-1] += e.text
		for _, c := range e.children {
			read(c)
		}
		if apart {
			texts = append(texts, "")
		}
	}
	read(e)
	return texts
}

// Every page of the demo and of the French unit is set, in both languages and editions.
func TestPagesAreSet(t *testing.T) {
	for _, c := range []struct {
		folder, language string
		apostrophe       string // a word that must be there, set
	}{
		{"content", "en", "Sun’s"},
		{"content", "fr", "l’heure"},
		{"testdata/units/french", "fr", "l’ombre"},
	} {
		unit, problems := readWith(t, os.DirFS("../../"+c.folder), c.folder, placeholder.Catalogue())
		if problems.Faults() > 0 {
			t.Fatal(problems)
		}
		words, err := typeset.Language(c.language, false)
		if err != nil {
			t.Fatal(err)
		}
		words = words.In(typeset.Manner{TwelveHour: c.language == "en", MonthFirst: c.language == "en"})
		settings := unit.Settings.With(school.Language.Is(c.language))
		class, staff := pressings(t, here(t, unit, settings), words, settings)
		told, found := map[string]bool{}, 0
		for _, pages := range []map[string]string{class, staff} {
			for name, page := range pages {
				if !strings.HasSuffix(name, ".html") {
					continue
				}
				for _, text := range blocksOf(parsed(t, []byte(page))) {
					found += strings.Count(text, c.apostrophe)
					text = strings.Join(strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \n\t", r) }), " ")
					patterns := []*regexp.Regexp{straightQuote, parted}
					if c.language == "en" {
						patterns = append(patterns, partedUnits)
					}
					for _, pattern := range patterns {
						for _, bad := range pattern.FindAllString(text, -1) {
							if !told[bad] {
								told[bad] = true
								t.Errorf("%s in %s, %s: %q", c.folder, c.language, name, bad)
							}
						}
					}
				}
			}
		}
		if found < 5 {
			t.Errorf("%s in %s has %q %d times", c.folder, c.language, c.apostrophe, found)
		}
	}
}
