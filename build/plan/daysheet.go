package plan

import (
	"fmt"
	"html/template"
	"slices"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// DayFile, PupilFile and CardFile name the papers of a lesson after its page.
func DayFile(l *source.Lesson) string   { return "day-" + l.Page }
func PupilFile(l *source.Lesson) string { return "pupil-" + l.Page }
func CardFile(l *source.Lesson) string  { return "card-" + l.Page }

// blankLines are the ruled lines of a side that the lesson leaves open.
const blankLines = 12

// daySheet drafts the page from which a substitute teaches a lesson, one sheet of paper:
// in front what the lesson puts there, with the numbers of the day, its cautions and one
// drawing; on the back the rest, and boxes for what only the school knows. It is of the
// staff edition alone.
func (p *Plan) daySheet(i int) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: DayFile(l), lesson: i}
	page := typeset.DaySheet{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		When:   d.mark(when(l.Number - 1)),
		Groups: d.mark(groupSizes),
	}
	s := &daySheet{draft: d, lesson: l, at: i, front: l.Sheet(source.SheetFront), back: l.Sheet(source.SheetBack), shown: map[ast.Node]bool{}, given: map[*source.Aside]bool{}}
	s.note()
	for _, side := range []struct {
		parts *[]typeset.SheetPart
		fill  func() ([]typeset.SheetPart, error)
	}{{&page.Front, s.frontParts}, {&page.Back, s.backParts}} {
		var err error
		if *side.parts, err = side.fill(); err != nil {
			return nil, err
		}
	}
	return d.of(page), nil
}

// daySheet is one sheet while it is drafted. What a part has shown is not shown
// again by one that gathers.
type daySheet struct {
	draft       *draft
	lesson      *source.Lesson
	at          int
	front, back []source.Section
	shown       map[ast.Node]bool
	given       map[*source.Aside]bool // answers that are on the sheet
}

// note marks the nodes that sections bring onto the sheet. Of a section with answers
// these alone are there.
func (s *daySheet) note() {
	for _, section := range slices.Concat(s.front, s.back) {
		if len(s.answersIn(section)) > 0 {
			continue
		}
		for _, n := range section.Body {
			s.shown[n] = true
		}
	}
}

// frontParts are what is to be done and known before the class and with it.
func (s *daySheet) frontParts() ([]typeset.SheetPart, error) {
	parts, err := s.sections(s.front)
	if err != nil {
		return nil, err
	}
	today := typeset.SheetPart{Name: "today", Title: s.draft.plan.words.Say("day-sheet.today")}
	s.today(&today)
	care, err := s.care()
	if err != nil {
		return nil, err
	}
	drawing, err := s.drawing()
	if err != nil {
		return nil, err
	}
	between := []typeset.SheetPart{today, care}
	if drawing.Body != "" {
		between = append(between, drawing)
	}
	return slices.Insert(parts, min(1, len(parts)), between...), nil
}

// backParts are what is to be looked up: the answers, whatever the sections say, and the
// things.
func (s *daySheet) backParts() ([]typeset.SheetPart, error) {
	parts, err := s.sections(s.back)
	if err != nil {
		return nil, err
	}
	answers, err := s.answers()
	if err != nil {
		return nil, err
	}
	if answers.Body != "" {
		parts = append(parts, answers)
	}
	if away := source.BlockAbsent.Of(s.lesson.Block); away != "" { // else the class has its own way
		body := template.HTML("<p>" + template.HTMLEscapeString(away) + "</p>")
		parts = append(parts, typeset.SheetPart{Name: "absent", Title: s.draft.plan.words.Say("day-sheet.absent"), Body: body})
	}
	things := typeset.SheetPart{Name: "things", Title: s.draft.plan.words.Say("page.kit"), Prints: s.draft.plan.printsOf(s.draft, s.at)}
	for _, thing := range source.BlockKit.Of(s.lesson.Block) {
		things.Kit = append(things.Kit, s.draft.mark(total(thing)))
	}
	if len(things.Kit)+len(things.Prints) > 0 {
		parts = append(parts, things)
	}
	return parts, nil
}

// sections writes one side's sections, each under its own heading; a blank where there
// are none.
func (s *daySheet) sections(sections []source.Section) ([]typeset.SheetPart, error) {
	if len(sections) == 0 {
		return []typeset.SheetPart{{Name: "blank", Blank: make([]struct{}, blankLines)}}, nil
	}
	minutes := source.MinuteTable(s.front, s.lesson.Source)
	var parts []typeset.SheetPart
	for _, section := range sections {
		m := manner{gathered: true, shift: 2 - section.Heading.Level, minutes: minutes}
		body, err := s.draft.render(nil, s.lesson, s.at, m, section.Heading)
		if err != nil {
			return nil, err
		}
		if asked := s.answersIn(section); len(asked) > 0 {
			body, err = s.shortAnswers(body, asked)
		} else {
			body, err = s.draft.render(body, s.lesson, s.at, m, section.Body...)
		}
		if err != nil {
			return nil, err
		}
		parts = append(parts, typeset.SheetPart{Body: template.HTML(body)})
	}
	return parts, nil
}

// answersIn returns the questions of a section that have an answer.
func (s *daySheet) answersIn(section source.Section) []question {
	within := func(n ast.Node) bool {
		for ; n != nil; n = n.Parent() {
			if slices.Contains(section.Body, n) {
				return true
			}
		}
		return false
	}
	return slices.DeleteFunc(slices.Clone(s.draft.plan.questions[s.lesson]), func(q question) bool { return q.answer == nil || !within(q.answer) })
}

// shortAnswers writes the first paragraph of each answer under the number of its question.
func (s *daySheet) shortAnswers(dst []byte, asked []question) ([]byte, error) {
	for _, q := range asked {
		first := q.answer.FirstChild()
		if first == nil {
			continue
		}
		dst = append(dst, `<section class="short-answer">`...)
		if n := max(q.number(), q.listed()); n > 0 {
			dst = fmt.Appendf(dst, `<p class="question-number">%d.</p>`, n)
		}
		var err error
		if dst, err = s.draft.render(dst, s.lesson, s.at, manner{gathered: true, shift: 1}, first); err != nil {
			return nil, err
		}
		dst = append(dst, "</section>"...)
		s.given[q.answer] = true
	}
	return dst, nil
}

// care gathers the cautions of the lesson that no other part shows in its place, with the
// cautions and warnings of its computed blocks. Those of what is done before the day stay
// in the guide.
func (s *daySheet) care() (typeset.SheetPart, error) {
	part := typeset.SheetPart{Name: "care", Title: s.draft.plan.words.Say("day-sheet.care")}
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
		case *source.Opening:
			if n.Part == source.Prepare {
				return ast.WalkSkipChildren, nil
			}
		case *source.Block:
			asks = append(asks, s.draft.plan.ask(n.Ask, s.at))
		case *source.Aside:
			if n.Word != source.Caution {
				break
			}
			var err error
			out, err = s.draft.render(out, s.lesson, s.at, manner{gathered: true, shift: 1}, n)
			return ast.WalkSkipChildren, err
		}
		return ast.WalkContinue, nil
	})
	if err != nil {
		return part, err
	}
	out = append(out, s.draft.mark(func(dst []byte, s *pressing) []byte {
		return s.appendWarnings(s.words.AppendCautions(dst, s.untoldOf(asks)), asks)
	})...)
	none := template.HTMLEscapeString(s.draft.plan.words.Say("day-sheet.care_elsewhere"))
	if link := s.draft.plan.pageOf(source.PartSafety); link != nil {
		none += ` <a href="` + link.Page + `">` + template.HTMLEscapeString(link.Title()) + "</a>"
	}
	part.Body = template.HTML(append(out, "<p>"+none+"</p>"...))
	return part, nil
}

// drawing is the one drawing that matters, under the heading that the lesson names.
func (s *daySheet) drawing() (part typeset.SheetPart, err error) {
	section, ok := s.lesson.Section(source.SheetDrawing.Of(s.lesson.Block))
	if !ok {
		return part, nil
	}
	part.Name = "drawing"
	for _, top := range section.Body {
		err = ast.Walk(top, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			switch n := n.(type) {
			case *ast.Image:
				if entering {
					one, err := s.draft.render(nil, s.lesson, s.at, manner{gathered: true}, n)
					part.Body = template.HTML(one)
					return ast.WalkStop, err
				}
			case *source.Block:
				if entering {
					part.Body = template.HTML(s.drawn(n))
					return ast.WalkStop, nil
				}
			}
			return ast.WalkContinue, nil
		})
		if err != nil || part.Body != "" {
			return part, err
		}
	}
	return part, nil
}

// drawn is the mark of a computed block's first drawing, or of its first sheet, small.
func (s *daySheet) drawn(n *source.Block) string {
	number := s.draft.plan.askAgain(n.Ask, s.at)
	name := n.Entry.Name
	return s.draft.mark(func(dst []byte, school *pressing) []byte {
		r := school.results[number]
		switch {
		case len(r.Drawings) > 0:
			return school.words.AppendBlock(dst, name, result.Result{Drawings: r.Drawings[:1], Metric: r.Metric}, nil)
		case len(r.Sheets) > 0:
			return school.words.AppendSheet(dst, &r.Sheets[0], typeset.SheetHead{})
		}
		return dst
	})
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

// today is today's numbers: those that the lesson names for staff, or else those of its
// margin, the Sun and the Moon of the day, and the sky during the lesson.
func (s *daySheet) today(part *typeset.SheetPart) {
	p := s.draft.plan
	facts := s.lesson.Today
	if facts == nil {
		facts = s.lesson.Glance
	}
	for _, n := range facts {
		label := p.words.Say(n.Entry.Name + ".fact." + n.Fact)
		part.Numbers = append(part.Numbers, typeset.Labelled{Label: label, Value: s.draft.fact(n, s.at)})
	}
	if s.lesson.Today != nil {
		return
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
	part.Body = template.HTML(sky)
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

// answers repeats each question whose answer no section of the sheet has, with its answer.
func (s *daySheet) answers() (typeset.SheetPart, error) {
	part := typeset.SheetPart{Name: "answers", Title: s.draft.plan.words.Say("day-sheet.answers")}
	if s.lesson.Openings() && len(s.given) > 0 {
		return part, nil // the lesson says which of its answers a substitute needs
	}
	var out []byte
	for _, q := range s.draft.plan.questions[s.lesson] {
		if q.answer == nil || s.given[q.answer] || s.onSheet(q.answer) {
			continue
		}
		one, err := s.draft.question(s.lesson, s.at, q)
		if err != nil {
			return part, err
		}
		out = append(out, one...)
	}
	part.Body = template.HTML(out)
	return part, nil
}

// onSheet reports whether the node is in a section that is on the sheet.
func (s *daySheet) onSheet(n ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if s.shown[n] {
			return true
		}
	}
	return false
}
