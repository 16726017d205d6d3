package source_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder"
	"noonbook/build/source"
	"noonbook/content"
)

// remembered reads a folder by a memory and afresh, and wants the same of both.
func remembered(t *testing.T, m *source.Memory, folder fstest.MapFS) *source.Unit {
	t.Helper()
	unit, problems, err := m.Read(folder, "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	fresh, want, err := source.Read(folder, "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	if problems.Error() != want.Error() {
		t.Errorf("the problems are\n%v\nwant\n%v", problems, want)
	}
	same(t, unit, fresh)
	return unit
}

// same wants two units to hold the same.
func same(t *testing.T, got, want *source.Unit) {
	t.Helper()
	if len(got.Lessons) != len(want.Lessons) {
		t.Fatalf("%d lessons, want %d", len(got.Lessons), len(want.Lessons))
	}
	for i, l := range got.Lessons {
		is, should := strings.Split(told(l), "\n"), strings.Split(told(want.Lessons[i]), "\n")
		for k := range max(len(is), len(should)) {
			if k >= len(is) || k >= len(should) || is[k] != should[k] {
				t.Errorf("%s: from line %d on it is %q, want %q", l.File, k, is[min(k, len(is)):], should[min(k, len(should)):])
				break
			}
		}
	}
	if !reflect.DeepEqual(got.Taught(), want.Taught()) || !reflect.DeepEqual(got.Course(), want.Course()) || !reflect.DeepEqual(got.Files, want.Files) || !reflect.DeepEqual(got.Gone, want.Gone) {
		t.Error("what is taught, carried along or left out differs")
	}
}

// told writes what is known of a lesson, and its tree.
func told(l *source.Lesson) string {
	var b strings.Builder
	fmt.Fprintln(&b, l.File, l.Number, l.Page, l.Block, l.Anchors, len(l.Glance), len(l.Today), l.Typed, len(l.Whole()), len(l.Conditions()))
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		fmt.Fprint(&b, n.Kind(), entering)
		switch n := n.(type) {
		case *ast.Text:
			fmt.Fprintf(&b, " %q", n.Segment.Value(l.Source))
		case *ast.Link:
			lead := l.Link(n)
			fmt.Fprintf(&b, " %s %v %q", lead.Target, lead.Nowhere, lead.Title)
		case *ast.Image:
			lead := l.Picture(n)
			fmt.Fprintf(&b, " %s %d %d %v", lead.Target, lead.Width, lead.Height, lead.Inset != nil)
		case *source.Inline:
			given, err := json.Marshal(n.Given)
			fmt.Fprintf(&b, " %s %s %s %v %v", n.Entry.Name, n.Fact, given, n.At, err)
		case *source.Block:
			given, err := json.Marshal(n.Given)
			fmt.Fprintf(&b, " %s %s %v %v", n.Entry.Name, given, n.At, err)
		}
		fmt.Fprintln(&b)
		return ast.WalkContinue, nil
	})
	return b.String()
}

// lessonOf is the lesson with that title.
func lessonOf(t *testing.T, u *source.Unit, title string) *source.Lesson {
	t.Helper()
	for _, l := range u.Lessons {
		if l.Title() == title {
			return l
		}
	}
	t.Fatalf("no lesson %s", title)
	return nil
}

// A folder that is read again, after one file or another was saved, is as though nobody
// remembered anything; and the lessons that were not saved are not read again.
func TestMemoryTellsNothingElse(t *testing.T) {
	lesson := func(title, text string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("```lesson\ntitle = \"" + title + "\"\n```\n" + text)}
	}
	folder := fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"1-a.md":    lesson("A", "See [it](2-b.md#here) and [this](3-c.md). ![A leaf](leaf.svg)\n"),
		"2-b.md":    lesson("B", "## Here\n\n{sun-day.nonsense}\n"),
		"3-c.md":    lesson("C", "```compute dial-marks\nrecords.dial_marks = \"marks.csv\"\n```\n"),
		"leaf.svg":  {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`)},
		"marks.csv": {Data: []byte("date,time,angle_deg\n2027-04-20,9:00,-50\n")},
	}
	m := &source.Memory{}
	first := remembered(t, m, folder)
	save := func(name string, f *fstest.MapFile) *source.Unit { folder[name] = f; return remembered(t, m, folder) }

	second := save("2-b.md", lesson("B", "## There\n\n{sun-day.noon}\n"))
	if a := lessonOf(t, first, "A"); a.Tree != lessonOf(t, second, "A").Tree || lessonOf(t, first, "B").Tree == lessonOf(t, second, "B").Tree {
		t.Error("another lesson than the saved one was read")
	}
	left := save("unit.toml", &fstest.MapFile{Data: []byte(strings.Replace(settings, "[school]", "unit.leave_out = [\"2-b\"]\n[school]", 1))})
	save("leaf.svg", &fstest.MapFile{Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 1"/>`)})
	save("marks.csv", &fstest.MapFile{Data: []byte("date,time,angle_deg\n2027-04-21,9:00,-51\n")})
	save("marks.csv", &fstest.MapFile{Data: []byte("nonsense\n")})
	delete(folder, "3-c.md")
	remembered(t, m, folder)
	save("3-c.md", lesson("C again", ""))
	for unit, want := range map[*source.Unit]bool{second: false, left: true} {
		a, links := lessonOf(t, unit, "A"), 0
		_ = ast.Walk(a.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			if link, ok := n.(*ast.Link); ok && entering {
				if links++; links == 1 && a.Link(link).Nowhere != want {
					t.Errorf("of one tree the first link leads nowhere in another unit, or somewhere where it should not (%v)", want)
				}
			}
			return ast.WalkContinue, nil
		})
	}
}

// Settling shares the lessons to which the answers make no difference, and nothing else;
// each answer has a lesson of its own.
func TestSettlingSharesLessons(t *testing.T) {
	m := &source.Memory{}
	folder := fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"1-a.md":    {Data: []byte(head + "Words, and [a link](2-b.md#south).\n")},
		"2-b.md":    {Data: []byte(strings.Replace(head, `"A"`, `"B"`, 1) + "```only place-facts.south\n## South\n```\n\n```unless place-facts.south\n## North\n```\n")},
		"3-c.md":    {Data: []byte(strings.Replace(head, `"A"`, "\"C\"\nonly = \"place-facts.south\"", 1))},
	}
	unit := remembered(t, m, folder)
	fresh, _, err := source.Read(folder, "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	settled := map[bool]*source.Unit{}
	for _, south := range []bool{true, false} {
		answers := source.Answers{}
		for _, l := range unit.Lessons {
			for _, c := range append(l.Whole(), l.Conditions()...) {
				answers[c.At] = c.Wants(south)
			}
		}
		here, problems, err := unit.Settled(answers)
		if err != nil {
			t.Fatal(err)
		}
		plain, want, err := fresh.Settled(answers)
		if err != nil || problems.Error() != want.Error() {
			t.Errorf("problems %v, want %v; %v", problems, want, err)
		}
		same(t, here, plain)
		settled[south] = here
	}
	if lessonOf(t, unit, "A").Tree != lessonOf(t, settled[true], "A").Tree {
		t.Error("a lesson without conditions was read again")
	}
	north, south := lessonOf(t, settled[false], "B"), lessonOf(t, settled[true], "B")
	if north.Tree == south.Tree || !north.Anchors["north"] || north.Anchors["south"] || !south.Anchors["south"] || south.Anchors["north"] {
		t.Errorf("B has the headings %v and %v", north.Anchors, south.Anchors)
	}
	if len(settled[true].Lessons) != len(settled[false].Lessons)+1 {
		t.Error("a lesson that does not stand is there")
	}
}

// The demo, with any of its lessons saved anew, is as though it were read afresh.
func TestMemoryOfTheDemo(t *testing.T) {
	folder := fstest.MapFS{}
	files := content.Files()
	names, err := files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range names {
		src, err := files.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		folder[f.Name()] = &fstest.MapFile{Data: src}
	}
	m := &source.Memory{}
	remembered(t, m, folder)
	for _, name := range []string{"1-shadow-clock.md", "9-rocket-day.md", "unit.toml"} {
		folder[name] = &fstest.MapFile{Data: append([]byte(nil), append(folder[name].Data, "\n"...)...)}
		remembered(t, m, folder)
	}
}
