package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Lines are broken at spaces to the width, and nothing of them is lost.
func TestFold(t *testing.T) {
	for _, c := range []struct {
		name, text string
		width      int
		want       string
	}{
		{"no width is known", "one two three", 0, "one two three"},
		{"it fits", "one two\n", 7, "one two\n"},
		{"one too many", "one two three\n", 12, "one two\n  three\n"},
		{"in three", "aa bb cc dd\n", 6, "aa bb\n  cc\n  dd\n"},
		{"further in", "    aaaa bbbb\n", 12, "    aaaa\n      bbbb\n"},
		{"the rest of a line fills it", "aaaa bbbb cc\n", 9, "aaaa bbbb\n  cc\n"},
		{"a long word", "see http://127.0.0.1:8080/ABCDEF/ there\n", 12, "see\n  http://127.0.0.1:8080/ABCDEF/\n  there\n"},
		{"one long word", "abcdefghijkl\n", 5, "abcdefghijkl\n"},
		{"a hard space", "at 5\u00a0mm now\n", 6, "at\n  5\u00a0mm\n  now\n"},
		{"letters of several bytes", "éé éé éé\n", 5, "éé éé\n  éé\n"},
		{"marks above letters", "e\u0301e\u0301 e\u0301e\u0301\n", 5, "e\u0301e\u0301 e\u0301e\u0301\n"},
		{"colours", bold + "ab" + normal + " cd\n", 5, bold + "ab" + normal + " cd\n"},
		{"two lines", "a b\n\nc d", 3, "a b\n\nc d"},
		{"spaces at the end", "abc   \n", 3, "abc   \n"},
		{"one column", "a b\n", 1, "a\nb\n"},
		{"columns of a table", "  a    bb\n", 20, "  a    bb\n"},
	} {
		got := fold(c.text, c.width)
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if strings.Join(strings.Fields(got), " ") != strings.Join(strings.Fields(c.text), " ") {
			t.Errorf("%s: words were lost: %q", c.name, got)
		}
	}
}

// What is no terminal gets whole lines, whatever COLUMNS says.
func TestPipesAreNotFolded(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if n := columns(file, func(string) string { return "20" }); n != 0 {
		t.Errorf("a file has %d columns", n)
	}
	whole := must(t, "reckon", "--list")
	if t.Setenv("COLUMNS", "20"); must(t, "reckon", "--list") != whole {
		t.Error("with COLUMNS=20 another reader gets other lines")
	}
}
