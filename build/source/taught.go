package source

import (
	"cmp"
	"path"
	"slices"
	"time"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/compute/classroom"
	"noonbook/compute/quantity"
)

// number counts the lessons among the pages.
func (r *reader) number() {
	n := 0
	for _, l := range r.unit.Lessons {
		if l.Part() == PartLesson {
			n++
			l.Number = n
		}
	}
}

// Taught returns what the calendar and the lists know of the unit's lessons, in
// order. The lesson of number n stands at n−1.
func (u *Unit) Taught() []classroom.Lesson {
	var lessons []classroom.Lesson
	for _, l := range u.Lessons {
		if l.Number > 0 {
			lessons = append(lessons, l.taught())
		}
	}
	return lessons
}

func (l *Lesson) taught() classroom.Lesson {
	b := l.Block
	lesson := classroom.Lesson{
		Title:  l.Title(),
		Page:   l.Page,
		Date:   BlockDate.Of(b),
		Start:  classroom.AnyTime,
		Length: time.Duration(BlockMinutes.Of(b)) * time.Minute,
		Times:  BlockLessons.Of(b),
		Visits: BlockVisits.Of(b),
		Needs:  l.needs(),
		After:  classroom.Gap{Lesson: l.follows, Least: BlockDaysAfter.Of(b), Most: BlockDaysWithin.Of(b), Clock: BlockSameClock.Of(b)},
		Wet:    wets[BlockIfWet.Of(b)],
		With:   l.changeWith,
		Core:   BlockCore.Of(b),

		Evening: BlockEvening.Of(b),

		Question: cmp.Or(BlockQuestion.Of(b), BlockSummary.Of(b)),
		Goals:    BlockGoals.Of(b),
		Evidence: BlockEvidence.Of(b),
		Codes:    BlockCodes.Of(b),
		Absent:   BlockAbsent.Of(b),
		Care:     l.care,
	}
	if l.loose {
		lesson.After = classroom.Gap{}
	}
	if BlockStart.In(b) {
		lesson.Start = BlockStart.Of(b)
	}
	for _, line := range BlockKit.Of(b) {
		lesson.Kit = append(lesson.Kit, Thing(line))
	}
	for _, sheets := range l.Printables() {
		if name := sheets.Entry.Name; !slices.Contains(lesson.Prints, name) {
			lesson.Prints = append(lesson.Prints, name)
		}
	}
	if len(l.Sheet(SheetCard)) > 0 {
		lesson.Prints = append(lesson.Prints, classroom.BuildCard)
	}
	return lesson
}

// Printables returns the blocks of the lesson that have sheets to print, in its order.
func (l *Lesson) Printables() []*Block { return l.prints }

func printables(tree ast.Node) []*Block {
	var list []*Block
	_ = ast.Walk(tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if b, ok := n.(*Block); ok && entering && b.Entry.Printable {
			list = append(list, b)
		}
		return ast.WalkContinue, nil
	})
	return list
}

func (l *Lesson) needs() []classroom.Need {
	b := l.Block
	height := classroom.SunLeast
	if BlockSunHeightDeg.In(b) {
		height = quantity.Degrees(BlockSunHeightDeg.Of(b))
	}
	outside := time.Duration(BlockOutsideMinutes.Of(b)) * time.Minute
	var needs []classroom.Need
	for _, word := range BlockNeeds.Of(b) {
		switch word {
		case "dry":
			needs = append(needs, classroom.Need{Kind: classroom.Dry})
		case "sun":
			needs = append(needs, classroom.Need{Kind: classroom.SunUp, Height: height, Window: outside})
		case "moon":
			needs = append(needs, classroom.Need{Kind: classroom.MoonUp, Height: classroom.MoonLeast, Window: outside})
		case "dark":
			needs = append(needs, classroom.Need{Kind: classroom.Dark})
		}
	}
	if BlockDarkBy.In(b) {
		needs = append(needs, classroom.Need{Kind: classroom.DarkBy, By: BlockDarkBy.Of(b)})
	}
	if BlockHourlyMarks.In(b) {
		needs = append(needs, classroom.Need{Kind: classroom.HourMarks, Height: height, Marks: classroom.Span(BlockHourlyMarks.Of(b))})
	}
	return needs
}

var (
	wets    = map[string]classroom.Wet{"later": classroom.Later, "keep": classroom.Kept, "change": classroom.Changed, "inside": classroom.Inside}
	shares  = map[string]classroom.Share{"pupil": classroom.PerPupil, "group": classroom.PerGroup, "class": classroom.PerClass}
	origins = map[string]classroom.Source{"school": classroom.AtSchool, "buy": classroom.ToBuy, "home": classroom.FromHome}
)

// Thing reads one line of a lesson's kit.
func Thing(line form.Values) classroom.Thing {
	return classroom.Thing{
		Item:   KitItem.Of(line),
		Count:  KitCount.Of(line),
		Share:  shares[KitEach.Of(line)],
		Shared: KitSharedBy.Of(line),
		Spare:  KitSpare.Of(line),
		Source: origins[KitSource.Of(line)],
		UsedUp: KitUsedUp.Of(line),
		Price:  KitPrice.Of(line),
		Pack:   KitPack.Of(line),
		Print:  KitPrint.Of(line),
	}
}

// ties finds the lessons that lessons name in follows and change_with.
func (r *reader) ties() {
	for _, l := range r.unit.Lessons {
		for key, number := range map[form.Key[string]]*int{BlockFollows: &l.follows, BlockChangeWith: &l.changeWith} {
			if !key.In(l.Block) {
				continue
			}
			other := r.tied(l, key)
			switch {
			case other == nil:
			case l.Number == 0 || other.Number == 0:
				r.problems.Add(l.Place(key), "lesson: %s ties lessons, and a page is none; want part = %q in both", key, PartLesson)
			case BlockEvening.Of(other.Block):
				r.problems.Add(l.Place(key), "lesson: %s wants a lesson that is held in school, and %q is an evening", key, other.Title())
			case key == BlockFollows && other.Number >= l.Number:
				r.problems.Add(l.Place(key), "lesson: follows wants a lesson before this one, and %q is not", other.Title())
			case key == BlockChangeWith && other.Number <= l.Number:
				r.problems.Add(l.Place(key), "lesson: change_with wants a lesson after this one, and %q is not", other.Title())
			default:
				*number = other.Number
			}
		}
	}
}

func (r *reader) tied(l *Lesson, key form.Key[string]) *Lesson {
	file := key.Of(l.Block)
	var names []string
	for _, other := range r.unit.Lessons {
		if other.name == path.Join(path.Dir(l.name), file) {
			return other
		}
		names = append(names, path.Base(other.name))
	}
	if gone, ok := r.left(path.Join(path.Dir(l.name), file)); ok {
		if key == BlockFollows {
			r.untie(l, gone)
		}
		return nil
	}
	r.problems.Add(l.Place(key), "lesson: %s %q is no lesson of the unit%s", key, file, form.Meant(file, names))
	return nil
}
