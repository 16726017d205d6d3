package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// checkAll fails, with every reason, unless each fault applies to its file as it
// stands today, and compiles. With all, each kind and each package must have its
// share.
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
	return h.compile(ctx, faults)
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
