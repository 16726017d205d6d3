package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// compile fails, with every reason, where the compiler sees a fault: that is no work for
// a test. Only the fault's own package is read with the fault in it, and what it imports
// comes from the build cache as it is.
func (h *House) compile(ctx context.Context, faults []Fault) error {
	exports, err := h.exports(ctx)
	if err != nil {
		return err
	}
	byPackage := make(map[*Package][]Fault)
	for _, f := range faults {
		if p := h.of(f.File); path.Ext(f.File) == ".go" {
			byPackage[p] = append(byPackage[p], f)
		}
	}
	next := make(chan *Package)
	found := make(chan error)
	var all sync.WaitGroup
	for range abreast {
		all.Go(func() {
			c := newCompiler(exports)
			for p := range next {
				for _, err := range c.try(p, byPackage[p]) {
					found <- err
				}
			}
		})
	}
	go func() {
		for p := range byPackage {
			next <- p
		}
		close(next)
		all.Wait()
		close(found)
	}()
	var broken []error
	for err := range found {
		broken = append(broken, err)
	}
	slices.SortFunc(broken, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) })
	return errors.Join(broken...)
}

// exports gives the file with the types of each package that anything here imports.
func (h *House) exports(ctx context.Context) (map[string]string, error) {
	out, err := h.command(ctx, "list", "-export", "-deps", "-json=ImportPath,Export", "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list -export: %w", err)
	}
	files := make(map[string]string)
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct{ ImportPath, Export string }
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return files, nil
		} else if err != nil {
			return nil, err
		}
		files[p.ImportPath] = p.Export
	}
}

// A compiler reads packages as the compiler does, as far as their types.
type compiler struct {
	files  *token.FileSet
	config types.Config
	first  error // what it found first
}

func newCompiler(exports map[string]string) *compiler {
	c := &compiler{files: token.NewFileSet()}
	c.config = types.Config{
		Importer: importer.ForCompiler(c.files, "gc", func(name string) (io.ReadCloser, error) {
			if exports[name] == "" {
				return nil, fmt.Errorf("nothing is known of %s", name)
			}
			return os.Open(exports[name])
		}),
		Sizes: types.SizesFor("gc", runtime.GOARCH),
		Error: func(err error) {
			if c.first == nil {
				c.first = err
			}
		},
	}
	return c
}

// try compiles a package without any fault, which must succeed, and with each.
func (c *compiler) try(p *Package, faults []Fault) []error {
	texts, parsed := make(map[string]string), make(map[string]*ast.File)
	for _, name := range p.GoFiles {
		text, err := os.ReadFile(filepath.Join(p.Dir, name))
		if err != nil {
			return []error{err}
		}
		file, err := c.parse(name, string(text))
		if err != nil {
			return []error{fmt.Errorf("%s: %w", p.ImportPath, err)}
		}
		texts[name], parsed[name] = string(text), file
	}
	if err := c.check(p, parsed); err != nil {
		return []error{fmt.Errorf("without any fault %s does not compile: %w", p.ImportPath, err)}
	}
	var broken []error
	for _, f := range faults {
		name := path.Base(f.File)
		whole := parsed[name]
		if err := func() error {
			text, err := f.apply(texts[name])
			if err != nil {
				return err
			}
			if parsed[name], err = c.parse(name, text); err != nil {
				return err
			}
			return c.check(p, parsed)
		}(); err != nil {
			broken = append(broken, fmt.Errorf("faults.txt:%d: %s does not compile: %w", f.Line, f.ID, err))
		}
		parsed[name] = whole
	}
	return broken
}

func (c *compiler) parse(name, text string) (*ast.File, error) {
	return parser.ParseFile(c.files, name, text, parser.SkipObjectResolution)
}

func (c *compiler) check(p *Package, parsed map[string]*ast.File) error {
	var files []*ast.File
	for _, name := range p.GoFiles {
		files = append(files, parsed[name])
	}
	c.first = nil
	if _, err := c.config.Check(p.ImportPath, c.files, files, nil); err != nil {
		return c.first
	}
	return nil
}
