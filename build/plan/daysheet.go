package plan

import (
	"html/template"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// DayFile and PupilFile name the sheets of a lesson after its page.
func DayFile(l *source.Lesson) string   { return "day-" + l.Page }
func PupilFile(l *source.Lesson) string { return "pupil-" + l.Page }

// blankLines are the ruled lines of a part that the lesson leaves open.
const blankLines = 3

// daySheet drafts the page from which a substitute teaches a lesson: its own
// sections in the order of the day, with clock times, cautions and answers, and
// boxes for what only the school knows. It is of the staff edition alone.
func (p *Plan) daySheet(i int) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: DayFile(l), lesson: i}
	page := typeset.DaySheet{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		When:   d.mark(when(l.Number - 1)),
		Groups: d.mark(groupSizes),
	}
	s := &daySheet{draft: d, lesson: l, at: i, shown: map[ast.Node]bool{}}
	s.note()
	for _, part := range []struct {
		name, title string
		fill        func(*typeset.SheetPart) error
	}{
		{"before", "day-sheet.before", s.before},
		{"care", "day-sheet.care", s.care},
		{"minutes", "day-sheet.minutes", s.sections(source.SheetMinutes)},
		{"board", "day-sheet.board", s.sections(source.SheetBoard)},
		{"steps", "day-sheet.steps", s.sections(source.SheetSteps)},
		{"today", "day-sheet.today", s.today},
		{"answers", "day-sheet.answers", s.answers},
		{"rain", "day-sheet.rain", s.sections(source.SheetRain)},
		{"tidy", "day-sheet.tidy", s.sections(source.SheetTidy)},
	} {
		if part.name == "steps" && len(l.Sheet(source.SheetSteps)) == 0 {
			continue // the minutes say what happens; steps are for what they can not hold
		}
		filled := typeset.SheetPart{Name: part.name, Title: p.words.Say(part.title)}
		if err := part.fill(&filled); err != nil {
			return nil, err
		}
		if filled.Body == "" && len(filled.Numbers) == 0 {
			filled.Blank = make([]struct{}, blankLines)
		}
		page.Parts = append(page.Parts, filled)
	}
	note, err := s.render(source.SheetNote)
	if err != nil {
		return nil, err
	}
	page.Note = template.HTML(note)
	return d, d.write(page)
}

// daySheet is one sheet while it is drafted. What a part has shown is not shown
// again by one that gathers.
type daySheet struct {
	draft  *draft
	lesson *source.Lesson
	at     int
	shown  map[ast.Node]bool
}

// note marks the nodes that sections bring onto the sheet.
func (s *daySheet) note() {
	for _, part := range []form.Key[[]string]{source.SheetBefore, source.SheetMinutes, source.SheetBoard, source.SheetSteps, source.SheetToday, source.SheetRain, source.SheetTidy, source.SheetNote} {
		for _, section := range s.lesson.Sheet(part) {
			for _, n := range section.Body {
				s.shown[n] = true
			}
		}
	}
}

// onSheet reports whether the node stands in a section that is on the sheet.
func (s *daySheet) onSheet(n ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if s.shown[n] {
			return true
		}
	}
	return false
}

func (s *daySheet) sections(key form.Key[[]string]) func(*typeset.SheetPart) error {
	return func(part *typeset.SheetPart) error {
		body, err := s.render(key)
		part.Body = template.HTML(body)
		return err
	}
}

// render writes the sections of a part. One alone goes without its heading,
// since that of the part says the same.
func (s *daySheet) render(part form.Key[[]string]) ([]byte, error) {
	var out []byte
	sections := s.lesson.Sheet(part)
	m := manner{gathered: true}
	if part == source.SheetMinutes {
		m.minutes = source.MinuteTable(sections, s.lesson.Source)
	}
	for _, section := range sections {
		m.shift = 3 - section.Heading.Level
		nodes := section.Body
		if len(sections) > 1 || part == source.SheetSteps {
			nodes = append([]ast.Node{section.Heading}, nodes...)
		}
		for _, n := range nodes {
			one, err := s.draft.render(s.lesson, s.at, n, m)
			if err != nil {
				return nil, err
			}
			out = append(out, one...)
		}
	}
	return out, nil
}

// before is what to do before the bell, with what to have ready and to print.
func (s *daySheet) before(part *typeset.SheetPart) error {
	for _, thing := range source.BlockKit.Of(s.lesson.Block) {
		part.Kit = append(part.Kit, s.draft.mark(kit(thing)))
	}
	part.Prints = s.draft.plan.printsOf(s.at)
	return s.sections(source.SheetBefore)(part)
}

// care gathers the cautions of the lesson that no other part shows in its
// place, with the cautions and warnings of its computed blocks.
func (s *daySheet) care(part *typeset.SheetPart) error {
	var out []byte
	var asks []int
	err := ast.Walk(s.lesson.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch {
		case !entering:
			return ast.WalkContinue, nil
		case s.shown[n]:
			return ast.WalkSkipChildren, nil
		}
		switch n := n.(type) {
		case *source.Block:
			asks = append(asks, s.draft.plan.ask(n.Ask, s.at))
		case *source.Aside:
			if n.Word != source.Caution {
				break
			}
			one, err := s.draft.render(s.lesson, s.at, n, manner{gathered: true, shift: 1})
			out = append(out, one...)
			return ast.WalkSkipChildren, err
		}
		return ast.WalkContinue, nil
	})
	if err != nil {
		return err
	}
	out = append(out, s.draft.mark(func(dst []byte, s *pressing) []byte {
		return s.appendWarnings(s.words.AppendCautions(dst, s.untoldOf(asks)), asks)
	})...)
	none := template.HTMLEscapeString(s.draft.plan.words.Say("day-sheet.care_elsewhere"))
	if link := s.draft.plan.pageOf(source.PartSafety); link != nil {
		none += ` <a href="` + link.Page + `">` + template.HTMLEscapeString(link.Title()) + "</a>"
	}
	part.Body = template.HTML(append(out, "<p>"+none+"</p>"...))
	return nil
}

// appendWarnings appends the warnings of what was asked, each once.
func (s *pressing) appendWarnings(dst []byte, asks []int) []byte {
	told := map[string]bool{}
	for _, n := range asks {
		r := s.results[n]
		for _, w := range r.Warnings {
			if line := s.words.For(r).Line(w); !told[line] {
				told[line] = true
				dst = s.words.AppendBlock(dst, "", result.Result{Warnings: []say.Phrase{w}, Metric: r.Metric}, nil)
			}
		}
	}
	return dst
}

// skyFacts are the numbers of the day that every sheet shows, each with the key
// of its label.
func skyFacts() [][3]string {
	return [][3]string{
		{"sun-day", "rise", "day-sheet.sunrise"},
		{"sun-day", "noon", "day-sheet.noon"},
		{"sun-day", "noon_altitude", "day-sheet.noon_altitude"},
		{"sun-day", "set", "day-sheet.sunset"},
		{"moon-month", "phase", "day-sheet.moon"},
		{"moon-month", "rise", "day-sheet.moonrise"},
		{"moon-month", "set", "day-sheet.moonset"},
		{"place-facts", "compass_for_true_north", "day-sheet.true_north"},
	}
}

// today is today's numbers: those of the lesson's margin, the Sun and the Moon
// of the day, and the sky during the lesson; then what pupils will see.
func (s *daySheet) today(part *typeset.SheetPart) error {
	p := s.draft.plan
	for _, n := range s.lesson.Glance {
		label := p.words.Say(n.Entry.Name + ".fact." + n.Fact)
		part.Numbers = append(part.Numbers, typeset.Labelled{Label: label, Value: s.draft.fact(n, s.at)})
	}
	var asks []int
	for _, name := range skyFacts() {
		if entry, ok := entry.Find(p.catalogue, name[0]); ok {
			number := p.ask(s.ask(entry), s.at)
			asks = append(asks, number)
			part.Numbers = append(part.Numbers, typeset.Labelled{Label: p.words.Say(name[2]), Value: s.draft.factOf(number, name[1])})
		}
	}
	sky := s.draft.mark(func(dst []byte, s *pressing) []byte { return s.appendWarnings(dst, asks) })
	if entry, ok := entry.Find(p.catalogue, "lesson-sky"); ok {
		number := p.ask(s.ask(entry), s.at)
		sky += s.draft.mark(func(dst []byte, school *pressing) []byte {
			return school.words.AppendBlock(dst, entry.Name, brief(entry, school.results[number]), nil)
		})
	}
	err := s.sections(source.SheetToday)(part)
	part.Body = template.HTML(sky) + part.Body
	return err
}

// brief leaves out what another page than the lesson's has no room for. Of a
// printable, which is printed anyway, the cautions stay.
func brief(e entry.Entry, r result.Result) result.Result {
	if e.Printable {
		return guards(r)
	}
	r.Working = nil
	return r
}

// guards is what a result says to keep people from harm and from wrong numbers.
func guards(r result.Result) result.Result {
	return result.Result{Cautions: r.Cautions, Warnings: r.Warnings, Metric: r.Metric}
}

func (s *daySheet) ask(entry entry.Entry) source.Ask {
	return source.Ask{Entry: entry, Given: form.Values{}, At: s.lesson.Place(source.BlockTitle)}
}

// answers repeats each question with its answer.
func (s *daySheet) answers(part *typeset.SheetPart) error {
	var out []byte
	for _, q := range questions(s.lesson) {
		if q.answer == nil || s.onSheet(q.answer) {
			continue
		}
		one, err := s.draft.question(s.lesson, s.at, q)
		if err != nil {
			return err
		}
		out = append(out, one...)
	}
	part.Body = template.HTML(out)
	return nil
}
