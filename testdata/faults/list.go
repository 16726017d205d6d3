package main

import (
	"fmt"
	"os"
	"slices"
	"strings"
)

// A Fault is one line of noonbook, and what a tired colleague might make of it.
type Fault struct {
	ID        string
	Kind      string
	File      string // from the root of noonbook, with slashes
	Which, Of int    // the line is the first of one, or the second of three
	Was, Now  string // trimmed; Now is empty where the line is dropped
	Why       string // it matters to somebody; may be empty
	Line      int    // in the list
}

// kinds are the sorts of faults. The list must hold some of each.
func kinds() []string {
	return []string{"sign", "bound", "constant", "formula", "side word", "dropped check", "dropped caution"}
}

// readFaults reads a list of faults, in paragraphs:
//
//	dial-gnomon-height: formula
//	compute/dial/gnomon.go 1/2
//	- the line as it stands
//	+ the faulty line, or nothing where it is dropped
//	Why it matters.
//
// "1/2" says that the line stands twice in the file and the first is meant; without
// it the line stands once. Lines that begin with # are comments.
func readFaults(name string) ([]Fault, error) {
	paragraphs, err := readParagraphs(name)
	if err != nil {
		return nil, err
	}
	var faults []Fault
	seen := make(map[string]int)
	for _, p := range paragraphs {
		f, err := parseFault(p)
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w", name, p.line, err)
		}
		if before := seen[f.ID]; before > 0 {
			return nil, fmt.Errorf("%s:%d: the id %s stands in line %d already", name, p.line, f.ID, before)
		}
		seen[f.ID] = p.line
		faults = append(faults, f)
	}
	return faults, nil
}

func parseFault(p paragraph) (Fault, error) {
	f := Fault{Line: p.line, Which: 1, Of: 1}
	if len(p.text) < 4 {
		return f, fmt.Errorf("a fault has at least four lines: id and kind, file, the line, the faulty line")
	}
	id, kind, ok := strings.Cut(p.text[0], ": ")
	if !ok || strings.ContainsAny(id, " /") {
		return f, fmt.Errorf("%q is not an id and a kind, as in \"dial-gnomon: sign\"", p.text[0])
	}
	if !slices.Contains(kinds(), kind) {
		return f, fmt.Errorf("the kind %q is none of %s", kind, strings.Join(kinds(), ", "))
	}
	f.ID, f.Kind = id, kind
	file, place, placed := strings.Cut(p.text[1], " ")
	if placed {
		if n, err := fmt.Sscanf(place, "%d/%d", &f.Which, &f.Of); n != 2 || err != nil || f.Which < 1 || f.Which > f.Of || f.Of < 2 {
			return f, fmt.Errorf("%q does not say which of how many lines is meant, as 1/2 does", place)
		}
	}
	f.File = file
	was, isWas := strings.CutPrefix(p.text[2], "-")
	now, isNow := strings.CutPrefix(p.text[3], "+")
	if !isWas || !isNow {
		return f, fmt.Errorf("the third line begins with - and the fourth with +")
	}
	f.Was, f.Now = strings.TrimSpace(was), strings.TrimSpace(now)
	if f.Was == "" || f.Was == f.Now {
		return f, fmt.Errorf("the faulty line is the line itself, or there is none")
	}
	f.Why = strings.Join(p.text[4:], " ")
	return f, nil
}

// readSurvivors reads why faults are not caught: the id and a colon, then the
// reason, in paragraphs like those of the faults.
func readSurvivors(name string, faults []Fault) (map[string]string, error) {
	paragraphs, err := readParagraphs(name)
	if err != nil {
		return nil, err
	}
	reasons := make(map[string]string)
	for _, p := range paragraphs {
		id, reason, ok := strings.Cut(strings.Join(p.text, " "), ":")
		if reason = strings.TrimSpace(reason); !ok || reason == "" {
			return nil, fmt.Errorf("%s:%d: want an id, a colon and a reason", name, p.line)
		}
		if !slices.ContainsFunc(faults, func(f Fault) bool { return f.ID == id }) {
			return nil, fmt.Errorf("%s:%d: no fault has the id %q", name, p.line, id)
		}
		reasons[id] = reason
	}
	return reasons, nil
}

// A paragraph is some lines, trimmed, between empty ones; line is the first one's
// number.
type paragraph struct {
	text []string
	line int
}

func readParagraphs(name string) ([]paragraph, error) {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	return splitParagraphs(string(b)), nil
}

func splitParagraphs(text string) []paragraph {
	var all []paragraph
	var p paragraph
	for i, line := range strings.Split(text+"\n", "\n") {
		switch line = strings.TrimSpace(line); {
		case strings.HasPrefix(line, "#"):
		case line == "":
			if len(p.text) > 0 {
				all = append(all, p)
			}
			p = paragraph{}
		default:
			if len(p.text) == 0 {
				p.line = i + 1
			}
			p.text = append(p.text, line)
		}
	}
	return all
}
