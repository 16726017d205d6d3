package plan

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// A hand-drawn picture is in its page, as often as it is shown and with ids of its own each
// time; the class has no byte of one that staff alone sees. A drawing in colours of its own
// is a file as before, and so is one that a link leads to.
func TestPicturesInThePage(t *testing.T) {
	svg := func(body string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50"><title>T</title>` + body + `</svg>`)}
	}
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n![A \\*star\\* & *more*](a.svg \"Named\")\n\n![](a.svg)\n\n![b](b.svg) [c](c.svg)\n\n```staff\n![hush](s.svg)\n```\n")},
		"a.svg":     svg(`<defs><g id="star"><circle class="dot" r="1"/></g></defs><use href="#star"/>`),
		"b.svg":     svg(`<path fill="#123" d="M0 0"/>`),
		"c.svg":     svg(`<path class="ink" d="M0 0"/>`),
		"s.svg":     svg(`<text class="name">SECRET</text>`),
	}, "pictures")
	class, staff := pressings(t, unit, words, unit.Settings)
	page := class["a.html"]
	for _, want := range []string{
		`role="img"><title>Named</title><desc>A *star* &amp; more</desc>`, `aria-hidden="true"><defs>`, `<use href="#nb-p1-star">`, `<use href="#nb-p2-star">`, `<img src="b.svg"`, `href="c.svg"`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("it lacks %s:\n%s", want, page)
		}
	}
	var ids []string
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		ids = append(ids, m[1])
	}
	if slices.Sort(ids); len(slices.Compact(slices.Clone(ids))) != len(ids) {
		t.Errorf("an id is there twice: %v", ids)
	}
	for name, text := range class {
		if strings.Contains(text, "SECRET") {
			t.Errorf("%s shows the class what is for staff", name)
		}
	}
	if !strings.Contains(staff["a.html"], "SECRET") {
		t.Error("staff do not see their picture")
	}
	if class["a.svg"] != "" || class["b.svg"] == "" || class["c.svg"] == "" || staff["s.svg"] != "" {
		t.Error("what is in the page is no file, the others are")
	}
}
