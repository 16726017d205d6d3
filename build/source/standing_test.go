package source

import (
	"fmt"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder"
)

// A lesson that is left out has no number and no page; a link to it leads nowhere, and one
// to another lesson still leads there.
func TestALessonThatDoesNotStandLeavesWords(t *testing.T) {
	r := &reader{folder: fstest.MapFS{
		"1-a.md": {Data: []byte("```lesson\ntitle = \"A\"\n```\n\nSee [the *second* one](2-b.md) or [this](3-c.md#here).\n")},
		"2-b.md": {Data: []byte("```lesson\ntitle = \"B\"\n```\n")},
		"3-c.md": {Data: []byte("```lesson\ntitle = \"C\"\nfollows = \"2-b.md\"\ndays_after = 2\n```\n\n## Here\n")},
	}, root: "u", catalogue: placeholder.Catalogue(), unit: &Unit{root: "u"}, memory: &Memory{now: map[string]written{}}}
	if err := r.lessons(r.folder, r.root, []string{"1-a.md", "2-b.md", "3-c.md"}); err != nil {
		t.Fatal(err)
	}
	r.leave(r.unit.Lessons[1], "it is left out")
	r.pageNames()
	r.number()
	r.ties()
	if err := r.references(); err != nil || len(r.problems) > 0 {
		t.Fatal(err, r.problems)
	}
	a, c := r.unit.Lessons[0], r.unit.Lessons[1]
	if c.Number != 2 || c.follows != 0 {
		t.Errorf("C is lesson %d and follows %d, want 2 and 0", c.Number, c.follows)
	}
	var links []string
	_ = ast.Walk(a.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if l, ok := n.(*ast.Link); ok && entering {
			lead := a.Link(l)
			links = append(links, fmt.Sprint(string(lead.Target), " ", lead.Nowhere))
		}
		return ast.WalkContinue, nil
	})
	if want := []string{"2-b.md true", "c.html#here false"}; !slices.Equal(links, want) {
		t.Errorf("links lead to %q, want %q", links, want)
	}
}
