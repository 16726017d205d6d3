package typeset_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/typeset"
	"noonbook/theme"
)

var (
	cssComment = regexp.MustCompile(`(?s)/\*.*?\*/`)
	cssBody    = regexp.MustCompile(`\{[^{}]*\}`)
	cssClass   = regexp.MustCompile(`\.([a-z][a-z-]*)`)
	attribute  = regexp.MustCompile(`class="([^"]*)`)
	className  = regexp.MustCompile(`^[a-z][a-z-]*( [a-z][a-z-]*)*$`)
)

// styled returns the classes that the style sheet names in its selectors.
func styled() map[string]bool {
	css := cssComment.ReplaceAllString(string(typeset.Style())+string(typeset.FormStyle())+string(typeset.DistrictStyle()), "")
	css = cssBody.ReplaceAllString(css, "{}")
	classes := map[string]bool{}
	for _, m := range cssClass.FindAllStringSubmatch(css, -1) {
		classes[m[1]] = true
	}
	return classes
}

// literals calls a function with every string of the house's Go code but tests.
func literals(t *testing.T, use func(string)) {
	t.Helper()
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				if s, err := strconv.Unquote(l.Value); err == nil {
					use(s)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// templates calls a function with the text of every template.
func templates(t *testing.T, use func(string)) {
	t.Helper()
	err := fs.WalkDir(theme.Files(), "templates", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(theme.Files(), path)
		use(string(text))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// No rule of the style sheet is left over: each of its classes is written by a
// template, by the script, or by the code as a class or as the role of a shape.
func TestEveryClassOfTheStyleSheetIsWritten(t *testing.T) {
	written := map[string]bool{}
	write := func(classes string) {
		for _, c := range strings.Fields(classes) {
			written[c] = true
		}
	}
	markup := func(s string) {
		for _, m := range attribute.FindAllStringSubmatch(s, -1) {
			write(m[1])
		}
	}
	templates(t, markup)
	literals(t, func(s string) {
		markup(s)
		if className.MatchString(strings.TrimSpace(s)) { // a role, or the name of a drawing
			write(s)
		}
	})
	write("center right")                                // how goldmark says the alignment of a cell
	write("is-rocky is-giant is-dwarf is-moon is-comet") // roles made of the kind of a world
	for _, m := range regexp.MustCompile(`(?:className = |make\('\w+', )'([^']*)'|classList\.\w+\('([^']*)'`).FindAllStringSubmatch(string(theme.Script())+string(theme.FormScript())+string(theme.RoomScript()), -1) {
		write(m[1] + " " + m[2])
	}
	for class := range styled() {
		if !written[class] {
			t.Errorf("the style sheet has a class %q that nothing writes", class)
		}
	}
}

// Whatever the pages mark with a class has a look of its own; roles of shapes may
// do with the look of all drawings.
func TestEveryClassOfTheMarkupIsStyled(t *testing.T) {
	classes := styled()
	var missing []string
	markup := func(s string) {
		for _, m := range attribute.FindAllStringSubmatch(s, -1) {
			for _, class := range strings.Fields(m[1]) {
				if className.MatchString(class) && !classes[class] && !slices.Contains(missing, class) {
					missing = append(missing, class)
				}
			}
		}
	}
	templates(t, markup)
	literals(t, markup)
	for _, class := range missing {
		t.Errorf("the style sheet has no rule for the class %q", class)
	}
}

// No style sheet takes a caution off a page or off the paper: what names cautions or
// warnings never ends in a rule that hides. The words "Take care" over a list of
// cautions whose heading says so are another thing.
func TestNoStyleHidesACaution(t *testing.T) {
	rule := regexp.MustCompile(`([^{}]*)\{([^{}]*)\}`)
	named := regexp.MustCompile(`\.(caution|warning|cautions|warnings)\b[^ >+~]*$`)
	hides := regexp.MustCompile(`display:\s*none|visibility:\s*hidden|opacity:\s*0[;\s}]|clip|font-size:\s*0[;\s}]`)
	looked := 0
	for _, m := range rule.FindAllStringSubmatch(cssComment.ReplaceAllString(string(typeset.Style()), ""), -1) {
		for selector := range strings.SplitSeq(m[1], ",") {
			if !named.MatchString(strings.TrimSpace(selector)) {
				continue
			}
			looked++
			if hides.MatchString(m[2] + "}") {
				t.Errorf("%s{%s} hides a caution", strings.TrimSpace(selector), m[2])
			}
		}
	}
	if looked < 5 {
		t.Errorf("only %d rules of cautions were looked at", looked)
	}
}
