package build_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// allowed says which packages of the house each may import besides the standard
// library, and which modules. A name that ends in a slash means everything below
// it: as an importer, what has no line of its own. Nothing imports cmd.
var allowed = map[string][]string{
	"compute/quantity":            {},
	"compute/search":              {},
	"compute/place":               {"compute/quantity"},
	"compute/space":               {"compute/quantity"},
	"compute/world":               {"compute/quantity", "compute/space", "compute/place", "compute/almanac"},
	"compute/":                    {"compute/quantity", "compute/search", "compute/space", "compute/place", "compute/almanac", "compute/world"},
	"build/terminal":              {},
	"build/problem":               {"build/terminal"},
	"build/file":                  {},
	"build/crew":                  {},
	"build/recent":                {},
	"build/form":                  {"compute/", "github.com/BurntSushi/toml"},
	"build/say":                   {"compute/"},
	"build/drawing":               {"build/say"},
	"build/result":                {"build/say", "build/drawing"},
	"theme":                       {},
	"build/typeset":               {"build/say", "build/drawing", "build/result", "theme", "github.com/BurntSushi/toml"},
	"build/way":                   {"build/say", "build/drawing", "build/typeset", "compute/"},
	"build/school":                {"build/form", "compute/"},
	"build/placeholder/entry":     {"build/school", "build/form", "build/say", "build/drawing", "build/result", "compute/"},
	"build/placeholder/entrytest": {"build/placeholder/entry", "build/school", "build/form", "build/say", "build/drawing", "build/result", "build/typeset", "compute/"},
	// A topic knows no other topic; only the class, whose days are made of them, does.
	"build/placeholder/": {"build/placeholder/entry", "build/school", "build/form", "build/say", "build/drawing", "build/result", "compute/"},
	"build/placeholder/class": {"build/placeholder/sky", "build/placeholder/stars", "build/placeholder/sun", "build/placeholder/moon",
		"build/placeholder/entry", "build/school", "build/form", "build/say", "build/drawing", "build/result", "compute/"},
	"build/placeholder": {"build/placeholder/"},
	"build/source":      {"build/form", "build/problem", "build/file", "build/crew", "build/placeholder/entry", "build/school", "compute/", "github.com/yuin/goldmark"},
	"build/plan": {"build/form", "build/say", "build/drawing", "build/result", "build/problem", "build/file", "build/school", "build/source",
		"build/placeholder/entry", "build/placeholder/class", "build/placeholder/sky",
		"build/concordance", "build/crew", "build/recent", "build/encode", "build/typeset", "build/way", "compute/", "theme", "github.com/yuin/goldmark", "github.com/tdewolff/minify/v2"},
	"build/starter":     {"build/form", "build/problem", "build/school", "build/source", "compute/"},
	"build/desk":        {"build/file"},
	"build/register":    {"build/form", "build/problem", "build/say", "build/school", "build/source", "build/starter", "build/typeset", "compute/", "theme"},
	"build/markup":      {},
	"build/concordance": {"build/file", "build/markup"},
	"build/encode":      {"build/say", "build/result", "build/terminal", "build/typeset"},
	"build/output":      {"build/crew", "build/file", "build/markup"},
	"build/district": {"build/form", "build/say", "build/drawing", "build/problem", "build/file", "build/school", "build/source", "build/plan", "build/placeholder/entry",
		"build/crew", "build/recent", "build/output", "build/typeset", "compute/"},
	"content":      {},
	"cmd/noonbook": {"build/", "compute/", "content", "theme"},
}

func TestImportsPointOneWay(t *testing.T) {
	seen := 0
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && d.Name() != "..") {
			return fs.SkipDir
		}
		if filepath.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg := path.Dir(filepath.ToSlash(strings.TrimPrefix(name, ".."+string(filepath.Separator))))
		for _, spec := range file.Imports {
			seen++
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if !fits(pkg, imported) {
				t.Errorf("%s: %s may not import %s", name, pkg, imported)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 50 {
		t.Errorf("only %d imports were looked at", seen)
	}
}

func fits(pkg, imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	if first != "noonbook" && !strings.Contains(first, ".") {
		return true // standard library
	}
	imported = strings.TrimPrefix(imported, "noonbook/")
	rules, known := allowed[pkg]
	if !known {
		rules, known = allowed[path.Dir(pkg)+"/"]
	}
	return known && slices.ContainsFunc(rules, func(rule string) bool {
		return imported == rule || strings.HasSuffix(rule, "/") && strings.HasPrefix(imported, rule) ||
			strings.Contains(rule, ".") && strings.HasPrefix(imported, rule+"/")
	})
}
