package source_test

import (
	"strings"
	"testing"
)

// Text that is pasted from elsewhere and does not become what it looks like is
// reported with what to type. The text begins on line 4.
func TestPastedText(t *testing.T) {
	for text, want := range map[string]string{
		"##\u00a0The Sun\n":                        "u/a.md:4:1: the space after ## is one that does not break, so this is no heading; type a plain space",
		"#\u202fThe Sun\n":                         "u/a.md:4:1: the space after # is one that does not break",
		"##The Sun\n":                              "u/a.md:4:1: no space stands after ##, so this is no heading; type one",
		"-\u00a0card\n-\u00a0glue\n":               "u/a.md:4:1: the space after - is one that does not break, so this is no list; type a plain space",
		"1.\u00a0Cut\n2.\u00a0Fold\n":              "u/a.md:4:1: the space after 1. is one that does not break, so this is no list",
		"> 2)\u2009Cut\n":                          "u/a.md:4:3: the space after 2) is one that does not break",
		"•\tcard\n•\tglue\n":                       "u/a.md:4:1: • begins no list; type a hyphen and a space, or a number, a point and a space",
		"To have ready:\n• card\n":                 "u/a.md:5:1: • begins no list",
		"–\tcard\n":                                "u/a.md:4:1: – and a tab begin no list; type a hyphen and a space",
		"o\tcard\n":                                "u/a.md:4:1: o and a tab begin no list",
		"a|b\n—|—\n1|2\n":                          "u/a.md:5:1: this line makes no table, for its dashes or spaces are long ones or do not break; type hyphens and plain spaces: |---|---|",
		"|a|b|\n|\u00a0---|---|\n|1|2|\n":          "u/a.md:5:1: this line makes no table, for its dashes or spaces are long ones",
		"|a|b|c|\n|---|---|\n|1|2|3|\n":            "u/a.md:5:1: this line makes no table, for it has 2 columns and the heads above it 3",
		"Planet\tkm\nMars\t6779\nVenus\t12104\n":   "u/a.md:4:1: lines with tabs make no table; write | between the cells, and below the heads a line of |---|---|",
		"Pluto[^1] is small.\n\n[^1]: So it is.\n": "u/a.md:4:6: [^1] is no footnote here; write the note into the text, in brackets",
		"See www.example.org/a for more.\n":        "u/a.md:4:5: warning: www.example.org/a is not a link; write <https://www.example.org/a> to make it one",
		"(https://example.org)\n":                  "u/a.md:4:2: warning: https://example.org is not a link; write <https://example.org> to make it one",
		"x {place-facts} y\n":                      "u/a.md:4:4: {place-facts} needs the name of a fact, as in {place-facts.latitude}; its tables and drawings stand where a block ```compute place-facts is",
		"x {stock.style_mm} y\n":                   "u/a.md:4:4: stock.style_mm is a key of unit.toml, and braces hold a fact that is computed with it; noonbook reckon --list ",
	} {
		_, problems := unitOf(t, map[string]string{"a.md": head + text})
		if len(problems) == 0 || !strings.HasPrefix(problems[0].Error(), want) {
			t.Errorf("%q: got %v, want %s", text, problems, want)
		}
	}
	for _, text := range []string{
		"## The Sun\n\n-\tcard\n- glue\n\n1.\tCut\n\n#5 is alive\n\n#hashtag\n", "a – b — c\n\n– a dash\n", "|a|b|\n|---|:-:|\n|1|2|\n", "a | b\n\n- | -\n", "One\ttab\n\nand one\tmore\n",
		"<https://example.org> `www.example.org` [https://example.org](https://example.org)\n", "[x][^1]\n\n[^1 ]: https://example.org\n", "- [ ] card\n- [x] glue\n- [x](b.csv)\n", "    •\tcode\n", "```text\n• card\n```\n",
	} {
		if _, problems := unitOf(t, map[string]string{"a.md": head + text, "b.csv": "1"}); len(problems) > 0 && text[0] != '[' {
			t.Errorf("%q: got %v", text, problems)
		}
	}
}

// Braces in the lesson block: facts for the margin may have them, and elsewhere they
// are a problem, since they would be printed as they stand.
func TestBracesInTheLessonBlock(t *testing.T) {
	block := func(line string) string { return "```lesson\ntitle = \"A\"\n" + line + "\n```\n" }
	unit, problems := unitOf(t, map[string]string{"a.md": block(`glance = ["{place-facts.latitude}", "sun-day.noon"]`)})
	if len(problems) > 0 || len(unit.Lessons[0].Glance) != 2 || unit.Lessons[0].Glance[0].Fact != "latitude" {
		t.Errorf("got %v", problems)
	}
	for line, want := range map[string]string{
		`glance = ["{place-facts.latitud}"]`:                                        `u/a.md:3:25: place-facts has no fact "latitud"`,
		`goals = ["say it", "read {sun-day.noon}"]`:                                 "u/a.md:3:20: lesson: goals holds a placeholder",
		`kit = [{ item = "cards, {class-facts.groups}" }]`:                          "u/a.md:3:17: lesson: kit holds a placeholder",
		`vocabulary = [{ term = "noon", meaning = "at {place-facts.local_noon}" }]`: "u/a.md:3:42: lesson: vocabulary holds a placeholder",
		`summary = "At {sun-day.noon}"`:                                             "u/a.md:3:11: lesson: summary holds a placeholder",
	} {
		_, problems := unitOf(t, map[string]string{"a.md": block(line)})
		if len(problems) != 1 || !strings.HasPrefix(problems[0].Error(), want) {
			t.Errorf("%s: got %v, want %s", line, problems, want)
		}
	}
}
