package main

import (
	"fmt"
	"strings"
	"testing"
)

// inAndRoundStanding has answers and notes in only and unless blocks and round them, at
// a school in the south. SECRET stands for words of staff, FALSE for words of what does
// not stand there.
const inAndRoundStanding = "```lesson\ntitle = \"Corners\"\nsummary = \"s\"\nkit = [{ item = \"FALSE0\", only = \"place-facts.north\" }, { item = \"thing\" }]\nvocabulary = [{ term = \"FALSE1\", meaning = \"FALSE2\", unless = \"place-facts.south\" }]\n[sheet]\nback = [\"open\", \"secret0\", \"false3\"]\n```\n\n" +
	"## Open\n\n`````only place-facts.south\n````answer lines=2\nAn answer, SECRET1\n\n```unless place-facts.tropics\nSECRET2\n```\n\n```only place-facts.tropics\nFALSE4\n```\n````\n\n````staff\n## SECRET0\n\n![SECRET3](staff.svg)\n````\n`````\n\n" +
	"`````staff\n````only place-facts.south\n```answer\nSECRET4\n```\n\n| SECRET5 | |\n|---|---|\n| | |\n````\n`````\n\n" +
	"`````only place-facts.north\n## FALSE3\n\nFALSE5 [FALSE6](https://example.org/FALSE7)\n\n![FALSE8](north.svg \"FALSE9\")\n\n```answer lines=3\nFALSE10\n```\n\n```caution\nFALSE11\n```\n\n```compute class-facts\nschool.name = \"FALSE12\"\n```\n\n| FALSE13 | |\n|---|---|\n| | |\n`````\n\n" +
	"1. One\n\n   ````unless place-facts.south\n   FALSE14\n   ````\n\n   ````only place-facts.south\n   ```answer\n   SECRET6\n   ```\n   ````\n\n> ~~~only place-facts.polar\n> FALSE15\n> ~~~\n\n" +
	"[FALSELINK](2-north.md) and [more](#false3)\n\n![south](south.svg)\n"

// What does not stand at a school is in no byte of either edition, whatever it was; and
// what is for staff is for staff in what stands at some schools only, as everywhere.
func TestNothingLeaksFromWhatStands(t *testing.T) {
	text := inAndRoundStanding
	var secrets, gone []string
	for n := 6; n >= 0; n-- {
		word := secret(4000 + n)
		text = strings.ReplaceAll(strings.ReplaceAll(text, fmt.Sprint("SECRET", n), word), fmt.Sprint("secret", n), word)
		secrets = append(secrets, word)
	}
	for n := 15; n >= 0; n-- {
		word := secret(5000 + n)
		text = strings.ReplaceAll(strings.ReplaceAll(text, fmt.Sprint("FALSE", n), word), fmt.Sprint("false", n), word)
		gone = append(gone, word)
	}
	north, inStaff, page := secret(6000), secret(6001), secret(6002)
	gone = append(gone, north, page)
	dir := folder(t, map[string]string{
		"1-corners.md": text,
		"2-north.md":   "```lesson\ntitle = \"" + page + "\"\nonly = \"place-facts.north\"\n```\n\n## " + page + "\n\n![x](north.svg)\n",
		"north.svg":    fmt.Sprintf(drawn, north),
		"staff.svg":    fmt.Sprintf(drawn, inStaff),
		"south.svg":    fmt.Sprintf(drawn, "for the south"),
	})
	class := leaks(t, dir, append(secrets, inStaff))
	if !strings.Contains(class["/south.svg"], "for the south") || class["/north.svg"] != "" || class["/north.html"] != "" {
		t.Error("the class edition should have the picture of what stands, and neither that of the north nor its page")
	}
	if !strings.Contains(class["/corners.html"], "FALSELINK and more") {
		t.Error("links to what does not stand are not their words")
	}
	where := t.TempDir()
	must(t, "press", "--staff", "--single", "--zip", "--content", dir, "--out", where+"/book")
	for name, text := range tree(t, where) {
		for form, bytes := range unpacked(name, []byte(text)) {
			for _, word := range gone {
				if strings.Contains(strings.ToLower(string(bytes)), word[3:10]) {
					t.Errorf("%s of %s holds %s, which does not stand", form, name, word)
				}
			}
		}
	}
	if out := must(t, "proof", dir); !strings.Contains(out, "has no heading #"+strings.Fields(text[strings.Index(text, "and [more](#")+len("and [more](#"):])[0][:8]) || !strings.Contains(out, "(only place-facts.north)") {
		t.Errorf("proof does not warn of the link: %s", out)
	}
}

// proof reads what does not stand too, and reckon counts the lessons that do.
func TestProofReadsWhatDoesNotStand(t *testing.T) {
	lesson := "```lesson\ntitle = \"%s\"\n%s\n```\n\n````only place-facts.north\n%s\n````\n"
	bad := folder(t, map[string]string{"1-a.md": fmt.Sprintf(lesson, "A", "", "{no.such}")})
	if code, _, errs := noonbook(t, "proof", bad); code != 1 || !strings.Contains(errs, `1-a.md:7:2: "no" is not a placeholder`) {
		t.Errorf("proof ends with %d and says %s", code, errs)
	}
	doubtful := folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\n```\n\n```only place-facts.sout\nx\n```\n"})
	if code, _, errs := noonbook(t, "proof", doubtful); code != 1 || strings.Count(errs, "1-a.md") != 1 || strings.Contains(errs, "no answer") {
		t.Errorf("proof of a doubtful condition ends with %d and says %s", code, errs)
	}
	good := folder(t, map[string]string{
		"1-a.md": fmt.Sprintf(lesson, "A", "", "x"), "2-b.md": fmt.Sprintf(lesson, "B", "only = \"place-facts.north\"", "x"),
	})
	for latitude, want := range map[string]string{"-45": "1", "45": "2"} {
		if out := must(t, "reckon", "unit-plan.lessons", "--content", good, "school.latitude="+latitude); strings.TrimSpace(out) != want {
			t.Errorf("at %s° there are %s lessons, want %s", latitude, strings.TrimSpace(out), want)
		}
	}
}
