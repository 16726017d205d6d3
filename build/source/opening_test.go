package source_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/build/source"
)

const parts = "# Prepare: staff\n\n## Early\n\nEarly words.\n\n# Teach: class\n\n## Question\n\n```answer\nyes\n```\n\n# Teach: staff\n\n## Minutes\n\n- one\n- two\n\n# After: class\n\nLast words.\n"

func readLesson(t *testing.T, text string) (*source.Lesson, problem.List) {
	t.Helper()
	unit, problems, err := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"a.md":      {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n" + text)},
	}, "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	return unit.Lessons[0], problems
}

// A lesson in openings is a row of them, each with what is below its heading; none of
// these headings is left, and none of them can be linked to.
func TestOpenings(t *testing.T) {
	l, problems := readLesson(t, parts)
	if len(problems) > 0 || !l.Openings() {
		t.Fatal(problems)
	}
	var got []string
	for n := l.Tree.FirstChild(); n != nil; n = n.NextSibling() {
		o, ok := n.(*source.Opening)
		if !ok {
			t.Fatalf("%T is outside all openings", n)
		}
		got = append(got, fmt.Sprint(o.Part, " ", o.Reader, " ", o.ChildCount(), " ", source.Private(o)))
	}
	if want := "prepare staff 2 true, teach class 2 false, teach staff 2 true, after class 1 false"; strings.Join(got, ", ") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ", "), want)
	}
	if len(l.Anchors) != 3 || !l.Anchors["early"] || !l.Anchors["question"] || !l.Anchors["minutes"] {
		t.Errorf("its headings are %v", l.Anchors)
	}
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if h, ok := n.(*ast.Heading); ok && h.Level == 1 {
			t.Errorf("a heading of the first level is left")
		}
		return ast.WalkContinue, nil
	})
}

// A lesson without openings is what it was.
func TestNoOpenings(t *testing.T) {
	for _, text := range []string{
		"# A title\n\n## Prepare\n\nwords\n\n## After the lesson\n\n## Teach yourself\n\nAfter class, go home.\n\nStaff: all.\n",
		"Teach:\n\n- this\n\n**Before you begin**, read. After that: wait.\n\n## Before the class comes\n\n```text\n# Teach: class\n```\n",
	} {
		if l, problems := readLesson(t, text); len(problems) > 0 || l.Openings() {
			t.Errorf("%q: %v %v", text, l.Openings(), problems)
		}
	}
}

// What is nearly the heading of a part is a problem in every lesson, with or without
// others that are right: one slip would show the class what is for staff.
func TestNearOpenings(t *testing.T) {
	for _, near := range []string{
		"## Prepare: staff", "### Prepare: staff", "# Prepare : staff", "# Prepare staff", "# Prepare (staff)", "# prepare: staff", "# Prepare: Staff",
		"# PREPARE: STAFF", "#Prepare: staff", "# Prepare: staff #", " # Prepare: staff", "# Prepare:staff", "# Prepare:  staff", "#  Prepare: staff",
		"# Prepare – staff", "# Prepare, staff", "# Prepare [staff]", "# **Prepare: staff**", "# Prepare: staff.", "# Prepare: staff, in the morning", "# Prepare",
		"Prepare: staff\n==============", "Prepare: staff\n---", "**Prepare: staff**", "__Prepare: staff__", "*Prepare: staff*", "Prepare: staff", "Prepare (staff)", "\\# Prepare: staff",
		"> # Prepare: staff", "- # Prepare: staff", "1. # Prepare: staff", "```caution\n# Prepare: staff\n```", "```answer\n# Prepare: staff\n```", "```only place-facts.south\n# Prepare: staff\n```",
		"# Prepare: teacher", "# Prepare: teachers", "# Prepare: stuff", "# Prepaer: staff", "# Preparation: staff", "# Prepare for the staff", "# Préparer : personnel", "# Avant : enseignante",
		"    # Prepare: staff\n", "# \u00a0Prepare: staff", "＃ Prepare: staff",
		"# Teach: pupils", "# Understand: teacher", "# After: student", "# Comprendre : classe", "# Teaching: class",
	} {
		for with, text := range map[string]string{"alone": near + "\n\nwords\n", "after a part": "# Teach: class\n\nwords\n\n" + near + "\n\nwords\n"} {
			_, problems := readLesson(t, text)
			if problems.Faults() == 0 {
				t.Errorf("%q %s is no problem", near, with)
				continue
			}
			if said := problems.Error(); !strings.Contains(said, "part of") && !strings.Contains(said, "first part") {
				t.Errorf("%q %s: %s", near, with, said)
			}
		}
	}
}

// What goes with openings and what does not, each with its place.
func TestOpeningsAreChecked(t *testing.T) {
	for name, c := range map[string]struct{ block, text, want string }{
		"early text":      {"", "early\n\n# Teach: class\n\nwords\n", "a.md:5:1: this is before the first part"},
		"another heading": {"", "# Teach: class\n\n# Hours\n", `a.md:7:3: a heading of the first level begins a part of this lesson, and "Hours" is none`},
		"a bare part":     {"", "# Teach: class\n\n## Understand\n", `a.md:7:4: this heading begins no part of the lesson; did you mean "# Understand: staff"?`},
		"order":           {"", "# Teach: class\n\n# Prepare: staff\n", "a.md:7:1: prepare comes before teach"},
		"staff's page":    {"part = \"page\"\nreader = \"staff\"\n", "# Teach: class\n\nwords\n", "a.md:7:1: this page is for staff alone"},
		"staff's lesson":  {"reader = \"staff\"\n", "words\n", `a.md:3:10: lesson: reader is "staff", and part is "lesson", which is for the class; want part = "page"`},
		"link to staff":   {"", "# Teach: class\n\n[there](#early)\n\n# After: staff\n\n## Early\n", "a.md:7:1: u/a.md#early is for staff alone"},
		"link from staff": {"", "# Teach: staff\n\n[there](#early)\n\n# After: staff\n\n## Early\n", ""},
		"from an answer":  {"", "# Teach: class\n\n```answer\n[there](#early)\n```\n\n# After: staff\n\n## Early\n", ""},
		"a staff's card":  {"[sheet]\ncard = [\"early\"]\n", "# After: staff\n\n## Early\n", "a.md:4:9: lesson: sheet.card: #early is for staff"},
		"page for staff":  {"", "[there](b.md)\n", "a.md:5:1: u/b.md is a page for staff alone"},
		"staff to page":   {"", "```staff\n[there](b.md)\n```\n", ""},
		"risk notes":      {"", "# Teach: class\n\n```compute risk-notes\n```\n", "a.md:7:12: risk-notes repeats what is for staff alone"},
		"a map":           {"", "```compute unit-map\n```\n", "a.md:5:12: unit-map repeats what is for staff alone"},
		"for staff":       {"", "# Teach: staff\n\n```compute risk-notes\n```\n", ""},
		"in a note":       {"", "````staff\n```compute unit-map\n```\n````\n", ""},
		"on their page":   {"part = \"page\"\nreader = \"staff\"\n", "```compute risk-notes\n```\n", ""},
	} {
		t.Run(name, func(t *testing.T) {
			files := fstest.MapFS{
				"unit.toml": {Data: []byte(settings)},
				"a.md":      {Data: []byte("```lesson\ntitle = \"A\"\n" + c.block + "```\n\n" + c.text)},
			}
			if strings.Contains(c.text, "b.md") {
				files["b.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"B\"\npart = \"page\"\nreader = \"staff\"\n```\n\nwords\n")}
			}
			_, problems, err := source.Read(files, "u", own(t), placeholder.Catalogue())
			if err != nil {
				t.Fatal(err)
			}
			if c.want == "" && len(problems) > 0 || c.want != "" && !strings.HasPrefix(strings.TrimPrefix(problems.Error(), "u/"), c.want) {
				t.Errorf("got  %v\nwant %s", problems, c.want)
			}
		})
	}
}
