package source_test

import (
	"strings"
	"testing"
)

// The bounds, each with its place, and what lies within them.
func TestBoundsOfALesson(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"a hundred brackets":       {strings.Repeat("[a] ", 400) + "\n", ""},
		"one bracket more":         {"x\n\n" + strings.Repeat("[a] ", 401) + "\n", "u/a.md:6:1: more than 400 [ in one paragraph"},
		"brackets of code":         {"```json\n" + strings.Repeat("[a] ", 1000) + "\n```\n", ""},
		"stars":                    {strings.Repeat("*a* ", 501) + "\n", "u/a.md:4:1: more than 1000 * and _ in one paragraph"},
		"braces":                   {strings.Repeat(`{ `, 401) + "\n", "u/a.md:4:1: more than 400 { in one paragraph"},
		"a long paragraph":         {"x\n\n" + strings.Repeat("some words\n", 6000), "u/a.md:6:1: a paragraph of more than 64 kB; leave an empty line where the next one begins"},
		"long paragraphs":          {strings.Repeat(strings.Repeat("some words\n", 5000)+"\n", 3), ""},
		"a hundred columns":        {strings.Repeat("|a", 100) + "|\n" + strings.Repeat("|-", 100) + "|\n", ""},
		"a hundred and one":        {"x\n\n" + strings.Repeat("|a", 101) + "|\n" + strings.Repeat("|-", 101) + "|\n", "u/a.md:6:1: a line with 101 columns; a table may have up to 100"},
		"a bell":                   {"x\n\nab\u0007c\n", "u/a.md:6:3: the control character U+0007, which nobody can see; delete it"},
		"a control of C1":          {"\u009b31m\n", "u/a.md:4:1: the control character U+009B, which nobody can see; delete it"},
		"twenty blocks":            {blocks(20), ""},
		"one block more":           {blocks(21), "u/a.md:24:5: blocks within one another, more than 20 deep"},
		"lists within one another": {strings.Repeat("- ", 101) + "x\n", "u/a.md:4:1: quotes and lists within one another, more than 100 deep"},
	} {
		_, problems := unitOf(t, map[string]string{"a.md": head + c.text})
		if c.want == "" && len(problems) > 0 || c.want != "" && (len(problems) == 0 || problems[0].Error() != c.want) {
			t.Errorf("%s: got %.300v, want %s", name, problems, c.want)
		}
	}
	// Behind a thousand problems of a lesson no more are looked for.
	if _, problems := unitOf(t, map[string]string{"a.md": head + strings.Repeat("{x}\n\n", 3000)}); len(problems) != 1000 {
		t.Errorf("%d problems", len(problems))
	}
}

// blocks returns so many blocks within one another.
func blocks(n int) string {
	var open, end strings.Builder
	for i := range n {
		open.WriteString(strings.Repeat("`", n+3-i) + "caution\n")
		end.WriteString(strings.Repeat("`", i+4) + "\n")
	}
	return open.String() + "x\n" + end.String()
}
