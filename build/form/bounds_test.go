package form_test

import (
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
