package source_test

import (
	"slices"
	"testing"
)

// A thing is shared by groups or pupils, of whom there are several.
func TestSharedBy(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"for whom a thing is shared", "```lesson\ntitle = \"A\"\n[[kit]]\nitem = \"a\"\neach = \"group\"\nshared_by = 3\n[[kit]]\nitem = \"b\"\neach = \"pupil\"\nshared_by = 2\n[[kit]]\nitem = \"c\"\nshared_by = 3\n```\n",
			[]string{`u/a.md:13:13: lesson: kit: shared_by goes with each = "group" or "pupil"; the class has the thing to itself`}},
		{"by no one", "```lesson\ntitle = \"A\"\n[[kit]]\nitem = \"a\"\neach = \"group\"\nshared_by = 0\n```\n", []string{`u/a.md:6:13: lesson: shared_by 0 is outside 1 to 1000`}},
	} {
		_, problems := unitOf(t, map[string]string{"a.md": c.text})
		var got []string
		for _, p := range problems {
			got = append(got, p.Error())
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got\n%q\nwant\n%q", c.name, got, c.want)
		}
	}
}
