package output

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
)

// What the plan of a bench is called tells how far its press came.
const (
	making = "making" // some parts are not whole
	made   = "made"   // all are; some may be in place
	over   = "over"   // all are in place, or were put back; the rest is to be cleared
)

const planHead = "noonbook press\n"

// planOf writes a plan: a line for each part, and a seal.
func planOf(parts []part) []byte {
	text := []byte(planHead)
	for _, p := range parts {
		kind, sum := "file", "-"
		if p.folder {
			kind = "folder"
		}
		if p.sum != "" {
			sum = p.sum
		}
		text = fmt.Appendf(text, "%s %s %q\n", kind, sum, p.name)
	}
	return append(text, sealOf(text)...)
}

// readPlan reads what planOf wrote; ok is false where anything else stands.
func readPlan(text []byte) (parts []part, ok bool) {
	if !sealed(text) || !bytes.HasPrefix(text, []byte(planHead)) {
		return nil, false
	}
	lines := strings.Split(string(text[len(planHead):]), "\n")
	for _, line := range lines[:len(lines)-1] { // the last is the seal
		var kind, sum, name string
		if _, err := fmt.Sscanf(line, "%s %s %q", &kind, &sum, &name); err != nil || filepath.Base(name) != name {
			return nil, false
		}
		parts = append(parts, part{name: name, folder: kind == "folder", sum: sum})
	}
	return parts, true
}

// torn reports whether a plan was cut off while it was written.
func torn(text []byte) bool {
	return bytes.HasPrefix(text, []byte(planHead)) || strings.HasPrefix(planHead, string(text))
}
