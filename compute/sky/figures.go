package sky

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"

	"noonbook/compute/space"
)

// A Figure is a pattern of stars joined by lines, of our own drawing.
type Figure struct {
	Name  string // its key, "orion", "southern_cross"; words files have the name
	Paths [][]Star

	centre Direction
}

// Figures returns the figures, from the north celestial pole southwards by and
// large. The stars are shared; do not change them.
func Figures() []Figure { return figures() }

//go:embed figures.txt
var figuresText string

// figures reads the embedded table once. TestTablesAreWhole holds that it can be read.
var figures = sync.OnceValue(func() []Figure {
	list, err := parseFigures(figuresText)
	if err != nil {
		return nil
	}
	return list
})

// InFigure reports whether a figure has the star.
func InFigure(s Star) bool { return inFigures()[s.Designation] }

var inFigures = sync.OnceValue(func() map[string]bool {
	in := map[string]bool{}
	for _, f := range figures() {
		for _, path := range f.Paths {
			for _, s := range path {
				in[s.Designation] = true
			}
		}
	}
	return in
})

// parseFigures reads lines such as "orion Ori: α λ γ; δ β".
func parseFigures(text string) ([]Figure, error) {
	var list []Figure
	for line := range strings.Lines(text) {
		head, body, ok := strings.Cut(strings.TrimSpace(line), ": ")
		name, constellation, named := strings.Cut(head, " ")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if !ok || !named {
			return nil, fmt.Errorf("no key, constellation and paths in %q", line)
		}
		f := Figure{Name: name}
		for path := range strings.SplitSeq(body, ";") {
			var through []Star
			for letter := range strings.FieldsSeq(path) {
				star, ok := Find(designation(letter, constellation))
				if !ok {
					return nil, fmt.Errorf("%s: no star %s", name, letter)
				}
				through = append(through, star)
			}
			f.Paths = append(f.Paths, through)
		}
		f.centre = f.middle()
		list = append(list, f)
	}
	return list, nil
}

// designation joins a letter, or a star of another constellation such as Tau-β.
func designation(letter, constellation string) string {
	if other, own, ok := strings.Cut(letter, "-"); ok {
		return own + " " + other
	}
	return letter + " " + constellation
}

// Centre returns the direction of the middle of the figure, at J2000.
func (f Figure) Centre() Direction { return f.centre }

func (f Figure) middle() Direction {
	var sum space.Vector
	seen := map[string]bool{}
	for _, path := range f.Paths {
		for _, s := range path {
			if !seen[s.Designation] {
				seen[s.Designation] = true
				sum = sum.Plus(s.place)
			}
		}
	}
	return directionOf(sum)
}
