package plan

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// The contents of the bound handbook list every page of it once, in the order in which it is bound,
// each lesson with its number, its day and the sheets that follow it, and are hidden on
// a screen; day sheets are named to staff alone, and the style sheet says at the foot of the
// staff's paper that it holds answers.
func TestContentsOfTheBoundHandbook(t *testing.T) {
	files := fstest.MapFS{
		"unit.toml":  {Data: smallUnit()["unit.toml"].Data},
		"0-start.md": {Data: []byte("```lesson\ntitle = \"Begin here\"\npart = \"start\"\n```\n")},
		"1-a.md":     {Data: []byte("```lesson\ntitle = \"Shadows\"\n[sheet]\ncard = [\"steps\"]\n```\n\n## Steps\n\n1. Cut.\n\n1. Why?\n\n```answer lines=2\nSo.\n```\n\n```compute dial-face\n```\n")},
		"2-b.md":     {Data: []byte("```lesson\ntitle = \"Planets\"\n```\n\nWords.\n")},
	}
	unit, words := read(t, files, "unit")
	class, staff := pressings(t, unit, words, unit.Settings)
	section := regexp.MustCompile(`(?s)<section class="?bound-contents"? hidden.*?</section>`)
	for edition, c := range map[string]struct {
		pages map[string]string
		want  []string
		not   []string
	}{
		"class": {class, []string{"Begin here", "1Shadows", "Pupils' sheet · Build card", "12 April", "2Planets", "The dial's face", "Shadows"}, []string{"Day sheet"}},
		"staff": {staff, []string{"Begin here", "1Shadows", "Pupils' sheet · Build card · Day sheet", "2Planets", "Day sheet", "The dial's face"}, nil},
	} {
		text := strings.Join(strings.Fields(plainText(section.FindString(c.pages["index.html"]))), " ")
		text = strings.NewReplacer("1 Shadows", "1Shadows", "2 Planets", "2Planets", "’", "'").Replace(text)
		at := 0
		for _, want := range c.want {
			i := strings.Index(text[at:], want)
			if i < 0 {
				t.Errorf("%s: %q is not there, or not in its order, in %q", edition, want, text)
				continue
			}
			at += i
		}
		for _, not := range c.not {
			if strings.Contains(text, not) {
				t.Errorf("%s: %q is in %q", edition, not, text)
			}
		}
	}
	if css := staff["noonbook.css"]; !strings.Contains(css, words.Say("page.staff_edition")) {
		t.Error("the staff's paper does not say that it holds answers")
	}
	if strings.Contains(class["noonbook.css"], words.Say("page.staff_edition")) {
		t.Error("the class's paper says that it holds answers")
	}
}
