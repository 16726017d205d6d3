package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The French unit presses without a problem, and what noonbook adds to it is
// French: words, clock, dates, numbers, spaces before high marks.
func TestFrenchUnit(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "handbook")
	must(t, "press", "--content", "../../testdata/units/french", "--out", dir, "--staff")
	files, staff := tree(t, dir), tree(t, dir+"-staff")
	for _, c := range []struct{ page, want string }{
		{"/cadran.html", `<html lang="fr">`},
		{"/cadran.html", "mardi 27\u00a0avril, de 9\u00a0h\u00a010 à 10\u00a0h"},
		{"/cadran.html", "7 de 3 et 1 de 2"}, // 23 pupils
		{"/bande.html", "lundi 3\u00a0mai"},
		{"/bande.html", "15,0\u00a0millions de km"},
		{"/bande.html", `class="words">oui</td>`},
		{"/depart.html", "Avant la cloche"},
		{"/depart.html", "qu’il vous faut"}, // typed with a straight apostrophe
		{"/depart.html", "ombre\u202f?"},    // typed with a space
		{"/safety.html", "<title>Sécurité"},
		{"/index.html", "du 26\u00a0avril au 7\u00a0mai 2027"},
	} {
		if !strings.Contains(files[c.page], c.want) {
			t.Errorf("%s lacks %q", c.page, c.want)
		}
	}
	for name, want := range map[string]string{
		"/day-cadran.html": "Minute par minute",
		"/cadran.html":     "Réponse",
	} {
		if !strings.Contains(staff[name], want) {
			t.Errorf("staff edition: %s lacks %q", name, want)
		}
	}
	// Phrases of the English words file in which no French word looks alike.
	english := regexp.MustCompile(`\b(the|and|with|lessons?|shadow|please|Show|Source:)\b`)
	tags := regexp.MustCompile(`(?s)<script.*?</script>|<figcaption>.*?</figcaption>|<[^>]*>`) // a caption holds sources in their own language
	seen := 0
	for name, text := range staff {
		if filepath.Ext(name) != ".html" || name == "/reference.html" || name == "/sources.html" {
			continue
		}
		seen++
		text = tags.ReplaceAllString(text, " ")
		if at := english.FindStringIndex(text); at != nil {
			t.Errorf("%s speaks English: %q", name, text[max(0, at[0]-60):min(len(text), at[1]+60)])
		}
		if strings.Contains(text, "⟦") {
			t.Errorf("%s lacks words", name)
		}
	}
	if seen < 10 {
		t.Errorf("only %d pages were read", seen)
	}
}
