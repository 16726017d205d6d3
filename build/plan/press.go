package plan

import (
	"bytes"
	"errors"
	"slices"
	"sync"

	"noonbook/build/concordance"
	"noonbook/build/crew"
	"noonbook/build/drawing"
	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// Press fills the slots of every page for one school, and returns all files of the
// handbook, the pages first. It returns none when a problem is a fault, or when the
// settings lack something that has no default, which source reports; warnings come
// with the files.
func (p *Plan) Press(settings form.Values) ([]file.File, problem.List) {
	return p.PressKnowing(settings, p.shared.Known())
}

// PressKnowing is Press that does not evaluate again what is known, and knows more then.
func (p *Plan) PressKnowing(settings form.Values, known *entry.Known) ([]file.File, problem.List) {
	if p.settlements == nil {
		return p.press(settings, known)
	}
	settled, problems := p.settled(settings, known)
	if settled == nil {
		return nil, problems.Sorted()
	}
	here := *settled // which others press too
	here.Progress = p.Progress
	files, found := here.press(settings, known)
	return files, append(problems, found...).Sorted()
}

// press is Press for a plan of which all stands.
func (p *Plan) press(settings form.Values, known *entry.Known) ([]file.File, problem.List) {
	var beside sync.WaitGroup
	var finder *concordance.Index
	beside.Go(func() { finder = p.finder() })
	s, problems := p.reckon(settings, known)
	beside.Wait()
	if problems.Faults() > 0 || lacking(settings, school.Settings()) {
		return nil, problems.Sorted()
	}
	colour := p.colour(settings, &problems)
	s.nothings = &sync.Map{}
	files := make([]file.File, len(p.pages), len(p.pages)+6+len(s.files)+len(p.unit.Files))
	read := make([]concordance.Page, len(p.pages))
	rooms := sync.Pool{New: func() any { room := make([]byte, 0, usualPage); return &room }}
	crew.Each(len(p.pages), nil, func(i int) {
		room := rooms.Get().(*[]byte)
		page, begins := p.pages[i].fill((*room)[:0], s)
		files[i] = file.File{Name: p.pages[i].name, Bytes: bytes.Clone(page)}
		read[i] = finder.Read(i, page, begins)
		*room = page
		rooms.Put(room)
	})
	p.typedOutside(settings, &problems)
	p.queues(s, &problems)
	problems = append(problems, p.uncounted...)
	p.boughtLate(s, &problems)
	s.nothingsPut(&problems)
	words, inLines, err := finder.Of(read)
	if err != nil { // a fault of the program; the pages are whole without it
		problems.Warn(problem.Place{}, "%v", err)
	}
	files = append(files,
		file.File{Name: typeset.StyleFile, Bytes: slices.Concat(smallStyle(),
			typeset.SchoolStyle(drawing.PaperOf(school.Paper.Of(settings)), colour),
			p.words.PageFoot(school.Name.Of(settings), school.UnitTitle.Of(settings), p.edition == Staff))},
		file.File{Name: typeset.ScriptFile, Bytes: smallScript()},
		file.File{Name: typeset.RoomScriptFile, Bytes: smallRoomScript()},
		file.File{Name: concordance.File, Bytes: words},
		file.File{Name: concordance.LinesFile, Bytes: inLines},
		p.agenda(s))
	files = append(files, s.files...)
	for _, f := range p.unit.Files {
		if !f.Staff || p.edition == Staff {
			files = append(files, f.File)
		}
	}
	if twice := p.oneNameEach(files); len(twice) > 0 {
		return nil, append(problems, twice...).Sorted()
	}
	return files, problems.Sorted()
}

// usualPage is more than nearly all pages have, in bytes; one that has more grows.
const usualPage = 200_000

// colour reads the school's colour, which source has checked, and warns where
// words need another shade of it.
func (p *Plan) colour(settings form.Values, problems *problem.List) typeset.Colour {
	given := school.Colour.Of(settings)
	if given == "" {
		return typeset.Colour{}
	}
	c, err := typeset.ColourOf(given)
	if err != nil {
		return typeset.Colour{}
	}
	if contrast := c.OnPaperContrast(); contrast < typeset.Legible {
		problems.Warn(p.unit.SettingPlace(school.Colour), "school.colour %s is too pale for words on paper (%.1f to 1, and %.1f are needed); they are set in %s, and %s stays for what holds no words",
			given, contrast, typeset.Legible, c.OnPaper, given)
	}
	return c
}

// reckon evaluates each distinct placeholder once, unless it is known.
func (p *Plan) reckon(settings form.Values, known *entry.Known) (*pressing, problem.List) {
	lessons, calendar, problems := p.arranged(settings)
	s := &pressing{
		words:    p.words.Remembering(),
		settings: settings,
		keys:     school.Settings(),
		term:     school.Term(settings),
		course:   p.course,
		lessons:  p.withSheets(settings, lessons),
		calendar: calendar,
		groups:   groupsOf(settings),
		results:  make([]result.Result, len(p.asks)),
	}
	s.held = markOf(s.lessons, s.calendar)
	if problems.Faults() == 0 { // each lesson has a day
		s.dates = s.writtenDates()
	}
	evaluations, errs := make([]*entry.Evaluated, len(p.firsts)), make([]error, len(p.firsts))
	crew.Each(len(p.firsts), p.Progress, func(i int) {
		a := &p.asks[p.firsts[i]]
		evaluations[i], errs[i] = p.evaluate(a.Ask, a.lesson, s, known)
	})
	warned := map[*entry.Evaluated]bool{}
	for i, a := range p.asks {
		if err := errs[a.first]; err != nil && !errors.Is(err, entry.ErrNoDay) { // what is wrong with a day was reported
			problems.Add(a.At, "%s: %v", a.Entry.Name, err)
		}
		e := evaluations[a.first]
		if e == nil {
			continue
		}
		if !warned[e] {
			warned[e] = true
			for _, w := range e.Result.ForProof() {
				problems.Warn(a.At, "%s: %s", a.Entry.Name, p.words.For(e.Result).Line(w))
			}
		}
		s.results[i] = e.Result
	}
	s.files = p.tableFiles(s, &problems)
	return s, problems
}

// ready reports whether the values hold everything that has no default.
func ready(e entry.Entry, values form.Values, keys form.Form) bool {
	if lacking(values, keys.Pick(e.Settings...)) {
		return false
	}
	_, dated := e.Arguments.Field("date")
	return !dated || !entry.Date.Of(values).IsZero()
}

// lacking reports whether the values lack something that has no default.
func lacking(values form.Values, f form.Form) bool {
	return slices.ContainsFunc(f, func(field form.Field) bool { return field.Required && !field.Key.In(values) })
}
