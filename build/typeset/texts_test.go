package typeset

import (
	"io/fs"
	"maps"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"noonbook/theme"
)

// Every file of words says to the short reader what it says to a reader of all TOML.
func TestTextsAreWhatTOMLSays(t *testing.T) {
	names, err := fs.Glob(theme.Files(), "*/*.toml")
	if err != nil || len(names) < 3 {
		t.Fatalf("%d files of words: %v", len(names), err)
	}
	for _, name := range names {
		src, err := fs.ReadFile(theme.Files(), name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := readTexts(string(src))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if want := allOf(t, string(src)); !maps.Equal(got, want) {
			t.Errorf("%s: %d texts, a reader of all TOML finds %d, or others", name, len(got), len(want))
		}
	}
}

// allOf reads any TOML that holds texts alone.
func allOf(t *testing.T, src string) map[string]string {
	t.Helper()
	var tree map[string]any
	if err := toml.Unmarshal([]byte(src), &tree); err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	var collect func(prefix string, tree map[string]any)
	collect = func(prefix string, tree map[string]any) {
		for key, x := range tree {
			switch x := x.(type) {
			case string:
				all[prefix+key] = x
			case map[string]any:
				collect(prefix+key+".", x)
			default:
				t.Errorf("%s%s is a %T", prefix, key, x)
			}
		}
	}
	collect("", tree)
	return all
}

func TestTextsOfOneKind(t *testing.T) {
	src := "# said\nfirst = \"a \\\"b\\\" c\\u00a0d\" # a comment with a \" in it\n\n[here.below] # another\n  key-1=\"\"\n\"any key = \\\"that\\\"\" = \"# no comment\"\r\n"
	want := map[string]string{"first": "a \"b\" c\u00a0d", "here.below.key-1": "", `here.below.any key = "that"`: "# no comment"}
	got, err := readTexts(src)
	if err != nil {
		t.Fatal(err)
	}
	if !maps.Equal(got, want) || !maps.Equal(allOf(t, src), want) {
		t.Errorf("%q", got)
	}
}

func TestTextsOfAnotherKind(t *testing.T) {
	for src, want := range map[string]string{
		"\na = 3":                 "line 2",
		"a = 'one'":               "key = ",
		"a = \"\"\"one\"\"\"":     "stands behind",
		"a.b = \"one\"":           "key = ",
		"a = \"one":               "no quote",
		"a = \"one\" b":           "stands behind",
		"a = \"\\q\"":             "backslash",
		"\"a = \"one\"":           "key = ",
		"a":                       "key = ",
		"= \"one\"":               "key = ",
		"[a":                      "[section]",
		"[[a]]":                   "[section]",
		"[a] b":                   "[section]",
		"[a]\nb = \"\"\nb = \"\"": "before",
	} {
		_, err := readTexts(src)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want an error with %q", src, err, want)
		}
	}
}
