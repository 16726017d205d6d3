package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"noonbook/content"
)

// A handbook of the demo without its telescope and with the explorers as a draft has
// neither page, nor a link, a line of the finder, a file, a thing or a day that only
// they brought; the numbers of the others close up, and press says what went.
func TestPressWithoutLessons(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, content.Files()); err != nil {
		t.Fatal(err)
	}
	change := func(name, from, to string) {
		t.Helper()
		src, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(src), from) {
			t.Fatalf("%s has no %q", name, from)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(strings.Replace(string(src), from, to, 1)), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	change("unit.toml", "[unit]\n", "[unit]\nleave_out = [\"telescope\"]\n")
	change("12-explorers.md", "```lesson\n", "```lesson\ndraft = true\n")
	target := filepath.Join(t.TempDir(), "handbook")
	said := must(t, "press", "--staff", "--content", dir, "--out", target)
	if !strings.Contains(said, "left out: 6-telescope (leave_out), 12-explorers (draft)\n") {
		t.Errorf("press says %q", said)
	}
	links := regexp.MustCompile(`href="([^"#]*)`)
	numbers := regexp.MustCompile(`Lesson (\d+): `)
	for _, book := range []string{target, target + "-staff"} {
		files := tree(t, book)
		for name, text := range files {
			if strings.Contains(name, "telescope") || strings.Contains(name, "explorers") {
				t.Errorf("%s is there", name)
			}
			for _, m := range links.FindAllStringSubmatch(text, -1) {
				if strings.Contains(m[1], "telescope") || strings.Contains(m[1], "explorers") {
					t.Errorf("%s links to %s", name, m[1])
				}
			}
		}
		last := ""
		for _, m := range numbers.FindAllStringSubmatch(strings.ReplaceAll(files["/unit.ics"], "\r\n ", ""), -1) {
			last = m[1]
		}
		if last != "13" {
			t.Errorf("the last of the thirteen lessons has number %s", last)
		}
		if strings.Contains(files["/index.html"], "A telescope from two lenses") {
			t.Error("the cover still names the telescope")
		}
	}
}

// Press also says which lessons do not stand at this school, and why.
func TestPressTellsWhatDoesNotStand(t *testing.T) {
	unraced(t)
	dir := filepath.Join(t.TempDir(), "unit")
	must(t, "starter", dir, "school.name=S", "school.latitude=78.22", "school.longitude=15.65", "school.time_zone=Arctic/Longyearbyen", "term.first_day=2027-11-01", "term.last_day=2027-12-10")
	said := must(t, "press", "--content", dir, "--out", filepath.Join(dir, "..", "handbook"))
	if want := "left out: 2-read-the-dial (unless sun-day.stays_down), 7-back-to-the-dial (unless sun-day.stays_down)\n"; !strings.Contains(said, want) {
		t.Errorf("press says %q, want %q in it", said, want)
	}
}

// Any lesson of the demo can be left out: nothing that names it or its day breaks, and
// each sentence that spoke of its day is warned of.
func TestAnyLessonCanBeLeftOut(t *testing.T) {
	unraced(t)
	names, err := filepath.Glob("../../content/*.md")
	if err != nil || len(names) < 20 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		name := strings.TrimSuffix(filepath.Base(name), ".md")
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS("../../content")); err != nil {
				t.Fatal(err)
			}
			settings, err := os.ReadFile(filepath.Join(dir, "unit.toml"))
			if err != nil {
				t.Fatal(err)
			}
			settings = bytes.Replace(settings, []byte("[unit]\n"), []byte("[unit]\nleave_out = [\""+name+"\"]\n"), 1)
			if err := os.WriteFile(filepath.Join(dir, "unit.toml"), settings, 0o666); err != nil {
				t.Fatal(err)
			}
			said := must(t, "proof", dir)
			if !strings.HasPrefix(said, "left out: "+name+" (leave_out)") {
				t.Errorf("proof says %.200q", said)
			}
			for line := range strings.Lines(said) {
				if strings.Contains(line, ": warning: ") && !strings.Contains(line, " is left out; the day of this page stands in for its day") && !strings.Contains(line, "mission-plans: ") {
					t.Errorf("%s", line)
				}
			}
		})
	}
}
