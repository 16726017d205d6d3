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

// overlay writes a faulty copy of the fault's file into a folder of its own, and the
// description of it that the go command takes. The file itself stays as it is.
func (h *House) overlay(f Fault) (description string, err error) {
	name := filepath.Join(h.root, filepath.FromSlash(f.File))
	text, err := os.ReadFile(name)
	if err != nil {
		return "", err
	}
	faulty, err := f.apply(string(text))
	if err != nil {
		return "", fmt.Errorf("%s: %w", f.ID, err)
	}
	dir, err := os.MkdirTemp(h.temp, "fault-")
	if err != nil {
		return "", err
	}
	copied := filepath.Join(dir, "faulty"+path.Ext(f.File))
	if err := os.WriteFile(copied, []byte(faulty), 0o644); err != nil {
		return "", err
	}
	b, err := json.Marshal(map[string]any{"Replace": map[string]string{name: copied}})
	if err != nil {
		return "", err
	}
	description = filepath.Join(dir, "overlay.json")
	return description, os.WriteFile(description, b, 0o644)
}
