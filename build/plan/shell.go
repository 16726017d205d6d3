package plan

import (
	"fmt"
	"html/template"
	"math"
	"net/url"
	"slices"
	"strconv"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/build/way"
	"noonbook/compute/classroom"
)

// lesson drafts the page of one lesson.
func (p *Plan) lesson(i int) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: l.Page, lesson: i}
	page := typeset.LessonPage{
		Shell:    p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Contents: p.contents(d, i),
		Goals:    source.BlockGoals.Of(l.Block),
		Parted:   l.Openings(),
	}
	stand(&page)
	page.Arc = template.HTML(p.words.AppendDrawing(nil, way.Arc(page.Lessons)))
	beside := p.margins[i]
	for _, term := range source.BlockVocabulary.Of(l.Block) {
		if beside.explained(source.VocabularyTerm.Of(term)) {
			continue
		}
		page.Terms = append(page.Terms, typeset.Labelled{Label: source.VocabularyTerm.Of(term), Value: source.VocabularyMeaning.Of(term)})
	}
	for _, thing := range source.BlockKit.Of(l.Block) {
		if p.edition == Class && l.Openings() {
			page.Kit = append(page.Kit, d.mark(share(thing)))
			continue
		}
		page.Kit = append(page.Kit, d.mark(kit(thing)))
	}
	margin := l.Glance
	if p.edition == Staff {
		margin = slices.Concat(margin, l.Today)
	}
	page.Openings = p.openings(l)
	for _, n := range margin {
		label := p.words.Say(n.Entry.Name + ".fact." + n.Fact)
		page.Glance = append(page.Glance, typeset.Labelled{Label: label, Value: d.fact(n, i)})
	}
	if l.Part() == source.PartLesson {
		page.When = d.mark(when(l.Number - 1))
		page.Groups = d.mark(groupSizes)
		page.Room = RoomFile(l)
	}
	body, err := d.render(nil, l, i, manner{margin: beside}, l.Tree)
	if err != nil {
		return nil, err
	}
	page.Prints = append(p.sheetsOf(d, l), p.printsOf(d, i)...)
	head, body := cutAt(body, d.here("goals"))
	before, body := cutAt(body, d.here("kit"))
	body, last := cutAt(body, d.here("terms"))
	if body == nil { // a page without parts has them at its end
		body, last = last, nil
	}
	page.Head, page.Before, page.Body, page.Last = template.HTML(head), template.HTML(before), template.HTML(body), template.HTML(last)
	page.Resource = p.resource(d, page.Shell, l)
	whole, err := p.gathered(d, l, page)
	if err != nil {
		return nil, err
	}
	return d.of(whole), nil
}

// openings names the parts of a lesson that the edition has, for the map of its page.
func (p *Plan) openings(l *source.Lesson) []typeset.Labelled {
	var parts []typeset.Labelled
	for n := l.Tree.FirstChild(); n != nil; n = n.NextSibling() {
		o, ok := n.(*source.Opening)
		if !ok || p.hides(n) {
			continue
		}
		part := typeset.Labelled{Label: p.words.Say(p.openingKey("", o.Part)), Value: o.Part}
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	return parts
}

// shell fills in what every page carries.
func (p *Plan) shell(d *draft, title, summary string) typeset.Shell {
	return typeset.Shell{
		Words:   p.words,
		Title:   title,
		Summary: summary,
		School:  d.mark(setting(school.Name)),
		Staff:   p.edition == Staff,
		Unit:    d.mark(setting(school.UnitTitle)),
		Crest:   template.HTML(d.mark(p.crest)),
	}
}

// contents lists the pages for one of them, which is -1 for the cover.
func (p *Plan) contents(d *draft, at int) typeset.Contents {
	var c typeset.Contents
	number := 0
	for i, l := range p.unit.Lessons {
		if p.crowded(at, l) {
			number++
			continue
		}
		if !p.shows(l) {
			continue
		}
		link := typeset.Link{Title: l.Title(), File: l.Page, Summary: source.BlockSummary.Of(l.Block), Here: i == at}
		switch l.Part() {
		case source.PartStart:
			c.Lessons = append(c.Lessons, link)
		case source.PartLesson:
			number++
			link.Number = strconv.Itoa(number)
			link.Note = d.mark(lessonDate(l.Number - 1))
			if p.edition == Staff {
				link.Day = DayFile(l)
			}
			c.Lessons = append(c.Lessons, link)
		default:
			c.Others = append(c.Others, link)
		}
	}
	if len(c.Lessons) < number {
		c.All = p.words.Say("page.all_lessons", say.Number(float64(number), "", 0))
	}
	return c
}

// crowded reports whether the page of one lesson leaves another out of its list: in a unit
// of more lessons than anybody looks through, it has those around it and a link to the rest.
func (p *Plan) crowded(at int, other *source.Lesson) bool {
	const most, around = 60, 12
	if len(p.course.Lessons) <= most || at < 0 || p.unit.Lessons[at].Part() != source.PartLesson || other.Part() != source.PartLesson {
		return false
	}
	away := other.Number - p.unit.Lessons[at].Number
	return away < -around || away > around
}

// stand fills in where a page stands among the lessons, if it is one of them.
func stand(page *typeset.LessonPage) {
	for i, link := range page.Lessons {
		if !link.Here {
			continue
		}
		page.Number = link.Number
		if i > 0 {
			page.Previous = &page.Lessons[i-1]
		}
		if i+1 < len(page.Lessons) {
			next := page.Lessons[i+1]
			if next.Day != "" { // of staff, who have the room beside it
				next.Room = "room-" + next.File
			}
			page.Next = &next
		}
	}
}

// The slots of the shell.

func setting(key form.Key[string]) slot {
	return func(dst []byte, s *pressing) []byte {
		return typeset.AppendText(dst, s.words.Typeset(key.Of(s.settings)))
	}
}

// lessonDate is in the contents of every page, for each lesson.
func lessonDate(lesson int) slot {
	return func(dst []byte, s *pressing) []byte { return append(dst, s.dates[lesson]...) }
}

// writtenDates are the days of the lessons, and that one of them is held in the evening.
// That one has its night from the sky and stands in its place in the unit, so that its day
// may come before those of the lessons above it.
func (s *pressing) writtenDates() [][]byte {
	dates := make([][]byte, len(s.calendar.Held))
	for i, h := range s.calendar.Held {
		dst := fmt.Appendf(nil, `<time datetime="%s">`, h.Date)
		dst = typeset.AppendText(dst, s.words.DayMonth(h.Date.UTC()))
		dst = append(dst, "</time>"...)
		if day := s.term.CycleDay(h.Date); day > 0 {
			dst = append(dst, ' ')
			dst = typeset.AppendText(dst, s.words.Say("page.in_cycle", say.Count(day)))
		}
		if s.lessons[i].Evening {
			dst = append(dst, ", "...)
			dst = typeset.AppendText(dst, s.words.Say("page.in_evening"))
		}
		dates[i] = dst
	}
	return dates
}

// crest is the school's mark beside its name, which says what it is.
func (p *Plan) crest(dst []byte, _ *pressing) []byte {
	c := p.unit.Crest
	if c.Name == "" {
		return dst
	}
	return fmt.Appendf(dst, `<img class="crest" src="%s" alt width="%d" height="%d"> `, typeset.AppendAttribute(nil, (&url.URL{Path: c.Name}).EscapedPath()), c.Width, c.Height)
}

func when(lesson int) slot {
	return func(dst []byte, s *pressing) []byte {
		h := s.calendar.Held[lesson]
		midnight := h.Date.UTC()
		from := say.Clock(midnight.Add(h.From))
		to := say.Clock(midnight.Add(h.To))
		date := say.Text(s.words.Weekday(midnight))
		if day := s.term.CycleDay(h.Date); day > 0 {
			date = say.Words("page.cycle_day", date, say.Count(day))
		}
		return typeset.AppendText(dst, s.words.Say("page.lesson_time", date, from, to))
	}
}

// groupSizes says how the class divides: "9 of 3", "1 of 4 and 8 of 3".
func groupSizes(dst []byte, s *pressing) []byte {
	if len(s.groups) == 0 {
		return typeset.AppendText(dst, s.words.Say("page.no_groups"))
	}
	large := 0
	for _, n := range s.groups {
		if n == s.groups[0] {
			large++
		}
	}
	some := say.Words("page.groups_of", say.Count(large), say.Count(s.groups[0]))
	if large < len(s.groups) {
		rest := say.Words("page.groups_of", say.Count(len(s.groups)-large), say.Count(s.groups[0]-1))
		some = say.Words("page.groups_and", some, rest)
	}
	return typeset.AppendText(dst, s.words.Text(some))
}

// kit says how many of a thing the class needs and how they are shared out.
func kit(line form.Values) slot {
	thing := source.Thing(line)
	return func(dst []byte, s *pressing) []byte {
		total := thing.Need(school.ClassPupils.Of(s.settings), s.groups)
		key := "kit." + sharing(line)
		if thing.Spare > 0 && total > 0 {
			key += "_spare"
		}
		return typeset.AppendText(dst, s.words.Say(key, say.Count(total), say.Text(thing.Item), each(thing), say.Count(thing.Spare), say.Count(thing.Shared)))
	}
}

// total says how many of a thing the class needs, spares included.
func total(line form.Values) slot {
	thing := source.Thing(line)
	return func(dst []byte, s *pressing) []byte {
		need := thing.Need(school.ClassPupils.Of(s.settings), s.groups)
		return typeset.AppendText(dst, s.words.Say("kit.class", say.Count(need), say.Text(thing.Item)))
	}
}

// share says to pupils what each of them, or each group, has of a thing.
func share(line form.Values) slot {
	thing := source.Thing(line)
	return func(dst []byte, s *pressing) []byte {
		return typeset.AppendText(dst, s.words.Say("share."+sharing(line), say.Text(thing.Item), each(thing), say.Count(thing.Shared)))
	}
}

// sharing names how a thing is shared out: "pupil", "group_shared".
func sharing(line form.Values) string {
	if source.Thing(line).Shared > 1 {
		return source.KitEach.Of(line) + "_shared"
	}
	return source.KitEach.Of(line)
}

// each is how many of a thing one share has; of a part one decimal is shown.
func each(thing classroom.Thing) say.Value {
	count := say.Number(thing.Count, "", 0)
	if thing.Count != math.Trunc(thing.Count) {
		count.Decimals = 1
	}
	return count
}
