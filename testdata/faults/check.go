package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// checkAll fails, with every reason, unless each fault applies to its file as it
// stands today and go vet, which compiles, has nothing against it: a fault that the
// compiler sees is no work for a test. With all, each kind and each package must
// have its share.
func (h *House) checkAll(ctx context.Context, faults []Fault, all bool) error {
	var broken []error
	for _, f := range faults {
		if err := h.applies(f); err != nil {
			broken = append(broken, fmt.Errorf("faults.txt:%d: %s: %w", f.Line, f.ID, err))
		}
	}
	if all {
		broken = append(broken, h.missing(faults)...)
	}
	if len(broken) > 0 {
		return errors.Join(broken...)
	}
	for _, round := range rounds(faults) {
		for len(round) > 0 {
			complaints, err := h.vet(ctx, round)
			if err != nil {
				return err
			}
			if len(complaints) == 0 {
				break
			}
			// Without those that it complains of, in case there are more.
			var rest []Fault
			for _, f := range round {
				if lines := complaints[f.ID]; lines != "" {
					broken = append(broken, fmt.Errorf("faults.txt:%d: %s does not compile:\n%s", f.Line, f.ID, lines))
				} else {
					rest = append(rest, f)
				}
			}
			round = rest
		}
	}
	return errors.Join(broken...)
}

// applies fails where the fault has no line to change any more.
func (h *House) applies(f Fault) error {
	text, err := os.ReadFile(filepath.Join(h.root, filepath.FromSlash(f.File)))
	if errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("%s is no longer there%s", f.File, h.seek(f))
	}
	if err != nil {
		return err
	}
	if _, err := f.apply(string(text)); err != nil {
		return fmt.Errorf("%w%s", err, h.seek(f))
	}
	if h.of(f.File) == nil {
		return fmt.Errorf("%s is neither compiled nor embedded here", f.File)
	}
	return nil
}

// seek says where the fault's line stands now, as a help after files have moved.
func (h *House) seek(f Fault) string {
	var found []string
	for _, p := range h.packages {
		for _, name := range slices.Concat(p.GoFiles, p.EmbedFiles) {
			file := filepath.Join(p.Dir, filepath.FromSlash(name))
			text, err := os.ReadFile(file)
			if err != nil {
				continue
			}
			if _, err := f.apply(string(text)); err == nil {
				rel, _ := filepath.Rel(h.root, file)
				found = append(found, filepath.ToSlash(rel))
			}
		}
	}
	if len(found) == 0 {
		return ""
	}
	slices.Sort(found)
	return " (it stands in " + strings.Join(found, " and in ") + ")"
}

// missing returns what no fault is about.
func (h *House) missing(faults []Fault) []error {
	kindHas, packageHas := make(map[string]bool), make(map[*Package]bool)
	for _, f := range faults {
		kindHas[f.Kind], packageHas[h.of(f.File)] = true, true
	}
	var lacks []string
	for _, kind := range kinds() {
		if !kindHas[kind] {
			lacks = append(lacks, "kind "+kind)
		}
	}
	for _, p := range h.packages {
		if !packageHas[p] && h.inProgram(p) {
			lacks = append(lacks, "package "+h.short(p))
		}
	}
	slices.Sort(lacks)
	var all []error
	for _, what := range lacks {
		all = append(all, fmt.Errorf("faults.txt: no fault for the %s", what))
	}
	return all
}

// rounds deals the faults in Go out so that each round has one a file at most: the
// first of every file, then the second of every file. Nothing else is compiled.
func rounds(faults []Fault) [][]Fault {
	var all [][]Fault
	had := make(map[string]int)
	for _, f := range faults {
		if path.Ext(f.File) != ".go" {
			continue
		}
		n := had[f.File]
		if had[f.File]++; n == len(all) {
			all = append(all, nil)
		}
		all[n] = append(all[n], f)
	}
	return all
}

// vet compiles the faults' own packages and their tests with the faults in them,
// and returns what the go command says against each, by id.
func (h *House) vet(ctx context.Context, faults []Fault) (map[string]string, error) {
	overlay, err := h.overlay(faults...)
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(filepath.Dir(overlay))
	args := []string{"vet", "-overlay", overlay}
	for _, f := range faults {
		if name := h.of(f.File).ImportPath; !slices.Contains(args, name) {
			args = append(args, name)
		}
	}
	out, err := h.command(ctx, args...).CombinedOutput()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err == nil {
		return nil, nil
	}
	complaints := make(map[string]string)
	for line := range strings.Lines(string(out)) {
		for i, f := range faults {
			if strings.Contains(line, filepath.Join(filepath.Base(filepath.Dir(overlay)), copyName(i, f))+":") {
				complaints[f.ID] += line
			}
		}
	}
	if len(complaints) == 0 {
		return nil, fmt.Errorf("go vet: %w, though about no fault:\n%s", err, out)
	}
	return complaints, nil
}
