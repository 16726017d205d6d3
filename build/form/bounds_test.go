package form_test

import (
	"fmt"
	"strings"
	"testing"

	"noonbook/build/form"
)

// What is nested deeper, named longer or repeated oftener than anything that a
// handbook takes is a fault with its place, and says how much is allowed.
func TestReadBounds(t *testing.T) {
	few := form.Form{
		{Key: form.Key[[]string]("words"), Max: 3},
		{Key: form.Key[[]form.Values]("balls"), Max: 2, Fields: form.Form{{Key: form.Key[string]("name")}}},
	}
	for text, want := range map[string]string{
		"words = [[[[[[[[[1]]]]]]]]]":                          "  1:17 lists and tables within one another, more than 8 deep\n",
		"a = 1\nwords = " + strings.Repeat("[", 100000):        "  1:1 a is not a key; want one of words, balls\n  2:17 lists and tables within one another, more than 8 deep\n",
		"words = " + strings.Repeat("{a=", 100000):             "  1:33 lists and tables within one another, more than 8 deep\n",
		"a.a.a.a.a.a.a.a.a = 1":                                "  1:1 lists and tables within one another, more than 8 deep\n",
		"[a.a.a.a.a.a.a.a.a]\nb = 1":                           "  1:2 lists and tables within one another, more than 8 deep\n",
		strings.Repeat("k", 81) + " = 1":                       "  1:1 a key of more than 80 letters; no key is so long\n",
		"words = [\"a\", \"b\", \"c\", \"d\"]":                 "  1:25 words has 4 items; up to 3 are taken\n",
		"words = [\"a\", \"b\", \"c\"]":                        "",
		"[[balls]]\n[[balls]]\n[[balls]]":                      "  3:1 balls has 3 tables; up to 2 are taken\n",
		"[[balls]]\nname = \"a\"\n[[balls]]\nname = \"b\"":     "",
		"balls = [{name = \"a\"}, {name = \"b\"}, {name='c'}]": "  1:38 balls has 3 tables; up to 2 are taken\n",
	} {
		_, faults, _ := few.Read([]byte(text))
		if list(faults) != want {
			t.Errorf("%.60q: got\n%swant\n%s", text, list(faults), want)
		}
	}
	_, faults, _ := few.Read([]byte(strings.Repeat("x = y\n", 5000)))
	if n := len(faults); n != 1001 || faults[n-1].Text != "more than 1000 mistakes; the rest is not looked at" {
		t.Errorf("%d faults, the last %q", n, faults[n-1].Text)
	}
}

// A text that the TOML library refuses is never sound, wherever its mistake stands: in
// a comment, before the first key, behind the last one.
func TestMistakesOutsideOfEntries(t *testing.T) {
	f := form.Form{{Key: form.Key[float64]("a"), Min: 0, Max: 9, Default: 0.0, Doc: "a"}, {Key: form.Key[float64]("b"), Min: 0, Max: 9, Default: 0.0, Doc: "b"}}
	for src, want := range map[string]string{
		"# x\x13y\na = 1\n":            "1:4 a control character, U+0013; delete it",
		"a = 1\n# x\x01\nb = 20\n":     "2:4 a control character, U+0001; delete it; 3:5 b 20 is outside 0 to 9",
		"a = 1 # x\x02\nb = 1\n":       "1:10 a control character, U+0002; delete it",
		"a = 1\nb = 1\n# \x7f\n":       "3:3 a control character, U+007F; delete it",
		"\x01\na = 1\n":                "1:1 a control character, U+0001; delete it",
		"a = 1\n# \xff\n# \x02\nb = 2": "2:3 a letter that is not UTF-8; save the file as UTF-8; 3:3 a control character, U+0002; delete it",
	} {
		_, faults, _ := f.Read([]byte(src))
		var got []string
		for _, one := range faults {
			got = append(got, fmt.Sprintf("%d:%d %s", one.Line, one.Column, one.Text))
		}
		if strings.Join(got, "; ") != want {
			t.Errorf("%q: got %q, want %q", src, got, want)
		}
	}
}

// However long the words are in which something is wrong, its message stays short.
func TestMessagesStayShort(t *testing.T) {
	long := strings.Repeat("k", 3000)
	f := form.Form{{Key: form.Key[float64]("a"), Min: 0, Max: 9, Default: 0.0, Doc: "a"}}
	for _, src := range []string{long + ": 5\n", long + " 5\n", long + "\n", "[" + long + "\n", strings.Repeat("[", 3000) + "a\n", "a = " + long + "\n", "a = \"" + long + "\n", long + " = 5\n", "[" + long + "]\nb = 1\n"} {
		_, faults, _ := f.Read([]byte(src))
		if len(faults) == 0 {
			t.Errorf("%.20q is sound", src)
		}
		for _, one := range faults {
			if len(one.Text) > 200 {
				t.Errorf("%.20q: %d bytes: %.120s…", src, len(one.Text), one.Text)
			}
		}
	}
}
