package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// apply returns the text of the fault's file with the fault in it. It fails where
// the line does not stand there as often as the list says.
func (f Fault) apply(text string) (string, error) {
	lines := strings.Split(text, "\n")
	at, found := 0, 0
	for i, line := range lines {
		if strings.TrimSpace(line) == f.Was {
			if found++; found == f.Which {
				at = i
			}
		}
	}
	if found != f.Of {
		return "", fmt.Errorf("%s: the line stands there %s, not %s: %s", f.File, times(found), times(f.Of), f.Was)
	}
	// The faulty line takes the old one's place and indentation, so that the lines
	// below keep their numbers.
	indent, _, _ := strings.Cut(lines[at], f.Was)
	if f.Now == "" {
		indent = ""
	}
	lines[at] = indent + f.Now
	return strings.Join(lines, "\n"), nil
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// copyName is the name of the faulty copy of the i-th fault of an overlay.
func copyName(i int, f Fault) string { return fmt.Sprint(i) + path.Ext(f.File) }

// overlay writes faulty copies of the faults' files into a folder of its own, and
// the description of them that the go command takes. The files themselves stay as
// they are. No two of the faults are of one file.
func (h *House) overlay(faults ...Fault) (description string, err error) {
	dir, err := os.MkdirTemp(h.temp, "fault-")
	if err != nil {
		return "", err
	}
	replace := make(map[string]string)
	for i, f := range faults {
		name := filepath.Join(h.root, filepath.FromSlash(f.File))
		text, err := os.ReadFile(name)
		if err != nil {
			return "", err
		}
		faulty, err := f.apply(string(text))
		if err != nil {
			return "", fmt.Errorf("%s: %w", f.ID, err)
		}
		copied := filepath.Join(dir, copyName(i, f))
		if err := os.WriteFile(copied, []byte(faulty), 0o644); err != nil {
			return "", err
		}
		replace[name] = copied
	}
	b, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	description = filepath.Join(dir, "overlay.json")
	return description, os.WriteFile(description, b, 0o644)
}
