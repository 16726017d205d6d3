package plan

import (
	"slices"
	"strings"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// copies says how many copies of a paper of the lesson the class needs; "" where its kit
// does not say so.
func (s *pressing) copies(l *source.Lesson, print string) string {
	if l.Number == 0 {
		return ""
	}
	var told []string
	for _, p := range s.lessons[l.Number-1].Papers(school.ClassPupils.Of(s.settings), s.groups) {
		switch {
		case p.Print != print || !p.Counted():
		case p.Several:
			told = append(told, s.words.Say("sheet.copies_of", say.Text(p.Item), say.Count(p.Copies)))
		default:
			told = append(told, s.words.Say("sheet.copies", say.Count(p.Copies)))
		}
	}
	return strings.Join(told, "; ")
}

// toPrint is what the head of a sheet says of its copies: what the lesson's kit counts, or
// what such a sheet is for, or room to write how many. Where several things of the kit are
// printed from it, as many as it has sheets, each is the sheet in its place, and each is told
// its own; from one sheet all of them are.
func (s *pressing) toPrint(l *source.Lesson, e entry.Entry, given form.Values, sheets int) (copies string, each []string) {
	pupils := school.ClassPupils.Of(s.settings)
	var counted []classroom.Papers
	if l.Number > 0 {
		for _, p := range s.lessons[l.Number-1].Papers(pupils, s.groups) {
			if p.Print == e.Name && p.Counted() {
				counted = append(counted, p)
			}
		}
	}
	on := onSheet(e, e.Complete(s.settings, given, school.TermFirstDay.Of(s.settings)), s.keys)
	switch {
	case len(counted) == 0:
		return s.toPrintFor(e.For, on), nil
	case len(counted) == 1 || sheets == 1:
		all := 0
		for _, p := range counted {
			all += p.Copies
		}
		return s.printing(all, counted[0].OnSheet), nil
	}
	var several []say.Value
	for _, p := range counted {
		several = append(several, say.Count(p.Copies))
		each = append(each, s.printing(p.Copies, p.OnSheet))
	}
	return s.words.Say("sheet.print_several", entry.Listed(several)), each
}

// toPrintFor is toPrint where the kit counts nothing.
func (s *pressing) toPrintFor(whom entry.Reader, on int) string {
	pupils := school.ClassPupils.Of(s.settings)
	switch {
	case whom == entry.OneClass:
		return s.printing(1, on)
	case whom == entry.EachGroup && len(s.groups) > 0:
		return s.printing((len(s.groups)+on-1)/on, on)
	case whom == entry.EachPupil && pupils > 0:
		return s.printing((pupils+on-1)/on, on)
	}
	return s.words.Say("sheet.copies_unknown")
}

func (s *pressing) printing(copies, onSheet int) string {
	if onSheet > 1 {
		return s.words.Say("sheet.print_shared", say.Count(copies), say.Count(onSheet))
	}
	return s.words.Say("sheet.print_copies", say.Count(copies))
}

// printablesOf are the lesson's printables, which a plan for many schools knows.
func (p *Plan) printablesOf(l *source.Lesson) []*source.Block {
	if known, ok := p.printables[l]; ok {
		return known
	}
	return l.Printables()
}

// withSheets returns the lessons with how many things a sheet of each of their printables
// holds at the school.
func (p *Plan) withSheets(settings form.Values, lessons []classroom.Lesson) []classroom.Lesson {
	lessons = slices.Clone(lessons)
	for i, l := range p.taught() {
		if i == len(lessons) {
			break
		}
		if !slices.ContainsFunc(lessons[i].Prints, p.holdsSeveral) {
			continue // without a walk through its tree
		}
		held := map[string]int{}
		for _, b := range p.printablesOf(l) {
			if b.Entry.OnSheet == nil {
				continue
			}
			n := onSheet(b.Entry, b.Entry.Complete(settings, b.Given, school.TermFirstDay.Of(settings)), school.Settings())
			if least, known := held[b.Entry.Name]; n > 1 && (!known || n < least) {
				held[b.Entry.Name] = n
			}
		}
		if len(held) > 0 {
			lessons[i].OnSheet = held
		}
	}
	return lessons
}

// holdsSeveral reports whether a sheet of the entry of that name may hold several things.
func (p *Plan) holdsSeveral(name string) bool {
	e, ok := entry.Find(p.catalogue, name)
	return ok && e.OnSheet != nil
}

// onSheet is how many things a sheet of the entry holds: one where it does not say, or where
// the values lack something.
func onSheet(e entry.Entry, values form.Values, keys form.Form) int {
	if e.OnSheet == nil || lacking(values, keys.Pick(e.Settings...)) {
		return 1
	}
	return max(1, e.OnSheet(values))
}

// copiesOf is the mark of the copies of a paper, "" where the kit does not count them.
func (d *draft) copiesOf(l *source.Lesson, print string) string {
	if !slices.Contains(printedFrom(l), print) {
		return ""
	}
	return d.mark(func(dst []byte, s *pressing) []byte { return typeset.AppendText(dst, s.copies(l, print)) })
}

// printedFrom returns what the things of a lesson's kit are printed from, "" for what is
// not printed.
func printedFrom(l *source.Lesson) []string {
	var list []string
	for _, thing := range source.BlockKit.Of(l.Block) {
		list = append(list, source.KitPrint.Of(thing))
	}
	return list
}

// printed warns of things that are printed from what their lesson does not have, and of
// sheets and cards of which nobody knows how many to print. A unit in which nothing is said to be
// printed counts its copies by hand.
func (p *Plan) printed(problems *problem.List) {
	said := slices.ContainsFunc(p.unit.Lessons, func(l *source.Lesson) bool {
		return slices.ContainsFunc(printedFrom(l), func(print string) bool { return print != "" })
	})
	for _, l := range p.unit.Lessons {
		if l.Number == 0 || !said {
			continue
		}
		papers := p.papersOf(l)
		from := printedFrom(l)
		for i, print := range from {
			if print != "" && !slices.Contains(papers, print) {
				problems.Warn(l.RowPlace(source.BlockKit, i, source.KitPrint), "lesson: kit: print = %q, and the lesson has no such paper%s", print, paperChoice(print, papers))
			}
		}
		told := map[string]bool{}
		for _, sheets := range p.printablesOf(l) {
			if name := sheets.Entry.Name; !slices.Contains(from, name) && !told[name] {
				told[name] = true
				problems.Warn(sheets.At, "%s: "+fromNothing, name, name)
			}
		}
		if hasCard(l) && !slices.Contains(from, classroom.BuildCard) {
			problems.Warn(l.Place(source.SheetCard), "lesson: %s: "+fromNothing, source.SheetCard, classroom.BuildCard)
		}
	}
}

const fromNothing = "nothing in the lesson's kit is printed from it; write print = %q for the thing that is, so that its copies are counted"

// papersOf returns the papers that a lesson has, by the names that the key print takes.
func (p *Plan) papersOf(l *source.Lesson) []string {
	var papers []string
	for _, sheets := range p.printablesOf(l) {
		if !slices.Contains(papers, sheets.Entry.Name) {
			papers = append(papers, sheets.Entry.Name)
		}
	}
	if len(p.questions[l]) > 0 {
		papers = append(papers, classroom.PupilSheet)
	}
	if hasCard(l) {
		papers = append(papers, classroom.BuildCard)
	}
	return papers
}

func paperChoice(print string, papers []string) string {
	if len(papers) == 0 {
		return "; it has none to print"
	}
	return form.Choice(print, papers)
}
