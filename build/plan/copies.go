package plan

import (
	"slices"
	"strings"

	"noonbook/build/form"
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
		papers := papersOf(l)
		from := printedFrom(l)
		for i, print := range from {
			if print != "" && !slices.Contains(papers, print) {
				problems.Warn(l.RowPlace(source.BlockKit, i, source.KitPrint), "lesson: kit: print = %q, and the lesson has no such paper%s", print, paperChoice(print, papers))
			}
		}
		told := map[string]bool{}
		for _, sheets := range l.Printables() {
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
func papersOf(l *source.Lesson) []string {
	var papers []string
	for _, sheets := range l.Printables() {
		if !slices.Contains(papers, sheets.Entry.Name) {
			papers = append(papers, sheets.Entry.Name)
		}
	}
	if len(questions(l)) > 0 {
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
