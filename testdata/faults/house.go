package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// A House is noonbook as the go command sees it.
type House struct {
	root     string // of the module
	temp     string // for faulty copies
	module   string
	packages map[string]*Package // by import path
}

// A Package is what `go list -json` says of one of noonbook's packages.
type Package struct {
	Dir, ImportPath, Name           string
	Module                          struct{ Path string }
	GoFiles, EmbedFiles             []string
	TestGoFiles, XTestGoFiles       []string
	Deps, TestImports, XTestImports []string

	usual time.Duration // that its tests take
}

func openHouse(ctx context.Context, root string) (*House, error) {
	h := &House{root: root, packages: make(map[string]*Package)}
	list := h.command(ctx, "list", "-json=Dir,ImportPath,Name,Module,GoFiles,EmbedFiles,TestGoFiles,XTestGoFiles,Deps,TestImports,XTestImports", "./...")
	var complaint bytes.Buffer
	list.Stderr = &complaint
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list in %s: %w\n%s", root, err, complaint.Bytes())
	}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		p := new(Package)
		if err := d.Decode(p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		h.packages[p.ImportPath], h.module = p, p.Module.Path
	}
	h.temp, err = os.MkdirTemp("", "noonbook-faults-")
	return h, err
}

func (h *House) close() { os.RemoveAll(h.temp) }

// command is the go command, in noonbook's own module.
func (h *House) command(ctx context.Context, args ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, "go", args...)
	c.Dir = h.root
	c.WaitDelay = 10 * time.Second
	return c
}

// of returns the package that is built from the file, or nil.
func (h *House) of(file string) *Package {
	for _, p := range h.packages {
		rel, err := filepath.Rel(p.Dir, filepath.Join(h.root, filepath.FromSlash(file)))
		if err != nil {
			continue
		}
		if rel = filepath.ToSlash(rel); slices.Contains(p.GoFiles, rel) || slices.Contains(p.EmbedFiles, rel) {
			return p
		}
	}
	return nil
}

// short is the package's path from the root.
func (h *House) short(p *Package) string {
	return strings.TrimPrefix(strings.TrimPrefix(p.ImportPath, h.module), "/")
}

// inProgram reports whether a command is built from p, and not only tests.
func (h *House) inProgram(p *Package) bool {
	for _, main := range h.packages {
		if main.Name == "main" && (main == p || slices.Contains(main.Deps, p.ImportPath)) {
			return true
		}
	}
	return false
}

// testers returns the packages whose tests are built from p, those of p itself
// first, then the quickest first.
func (h *House) testers(p *Package) []*Package {
	var all []*Package
	for _, q := range h.packages {
		if len(q.TestGoFiles)+len(q.XTestGoFiles) > 0 && h.needs(q, p) {
			all = append(all, q)
		}
	}
	slices.SortFunc(all, func(a, b *Package) int {
		switch p {
		case a:
			return -1
		case b:
			return 1
		}
		return cmp.Or(cmp.Compare(a.usual, b.usual), cmp.Compare(a.ImportPath, b.ImportPath))
	})
	return all
}

// needs reports whether the tests of q are built from p.
func (h *House) needs(q, p *Package) bool {
	if q == p || slices.Contains(q.Deps, p.ImportPath) {
		return true
	}
	for _, name := range slices.Concat(q.TestImports, q.XTestImports) {
		if name == p.ImportPath {
			return true
		}
		if tested := h.packages[name]; tested != nil && slices.Contains(tested.Deps, p.ImportPath) {
			return true
		}
	}
	return false
}
