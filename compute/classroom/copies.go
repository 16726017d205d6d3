package classroom

import "slices"

// The papers of a lesson that copies can be made of, besides the sheets of placeholders.
const (
	PupilSheet = "pupil-sheet" // the questions of the lesson
	BuildCard  = "card"        // its steps, for the groups
)

// Papers are copies that a class needs of one paper of a lesson. Two things can be printed
// from one paper, such as the first sheet of a template for each and the second for few.
type Papers struct {
	Print   string // a placeholder, PupilSheet or BuildCard
	Item    string // of the kit, that is printed; "" where nobody knows how many copies
	Copies  int    // sheets, or sets of them
	OnSheet int    // how many of the thing are on each; 1 or more
	Several bool   // other things are printed from the same paper
}

// Counted reports whether the kit of the lesson says how many copies it needs.
func (p Papers) Counted() bool { return p.Item != "" }

// TrueSize reports whether the paper is wrong when it is printed at another size.
func (p Papers) TrueSize() bool { return p.Print != PupilSheet && p.Print != BuildCard }

// Papers returns what is printed for a lesson: the things of its kit that are printed
// from a paper of the lesson, in their order, and then what it has to print and nothing
// is printed from.
func (l Lesson) Papers(pupils int, groups []int) []Papers {
	var list []Papers
	count := map[string]int{}
	for _, t := range l.Kit {
		p := Papers{Print: t.Print, Item: t.Item, OnSheet: max(1, l.OnSheet[t.Print])}
		p.Copies = over(t.Need(pupils, groups), p.OnSheet)
		if t.Print == "" || t.Print != PupilSheet && !slices.Contains(l.Prints, t.Print) {
			continue
		}
		list = append(list, p)
		count[t.Print]++
	}
	for i := range list {
		list[i].Several = count[list[i].Print] > 1
	}
	for _, name := range l.Prints {
		if count[name] == 0 {
			list = append(list, Papers{Print: name, OnSheet: max(1, l.OnSheet[name])})
		}
	}
	return list
}
