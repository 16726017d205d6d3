package placeholder_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// No number depends on the day of pressing: below compute and build nothing asks the
// machine what time it is, but for the lock of the output folder, which waits, and the
// desk, whose pages are not kept.
func TestNothingAsksTheMachineForTheDay(t *testing.T) {
	files, asked := 0, map[string]bool{}
	for _, root := range []string{"../../compute", "../../build"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			files++
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" && (s.Sel.Name == "Now" || s.Sel.Name == "Since" || s.Sel.Name == "Until" || s.Sel.Name == "Local") {
						asked[filepath.ToSlash(path)] = true
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
	for path := range asked {
		if path != "../../build/output/lock.go" && !strings.HasPrefix(path, "../../build/desk/") {
			t.Errorf("%s asks the machine for the time", path)
		}
	}
	if files < 200 || !asked["../../build/output/lock.go"] {
		t.Errorf("%d files were read, and asking was found in %v", files, asked)
	}
}
