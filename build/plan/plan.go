package plan

import (
	"cmp"
	"html/template"
	"slices"
	"sync"

	"noonbook/build/concordance"
	"noonbook/build/crew"
	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// An Edition says for whom a handbook is.
type Edition int

const (
	Class Edition = iota // safe to host: no answers, no staff notes
	Staff
)

// A Plan is a handbook with the school left open.
type Plan struct {
	// Progress, where it is set, is told before each computation of Press how many
	// are done, of how many.
	Progress func(done, of int)

	unit       *source.Unit
	course     entry.Course                       // of the unit
	printables map[*source.Lesson][]*source.Block // its printables, by lesson
	questions  map[*source.Lesson][]question      // what it asks, by lesson
	words      *typeset.Words
	templates  *template.Template
	renderer   *lessonRenderer
	terms      []typeset.Term
	margins    []*marginal // of the lessons
	edition    Edition
	catalogue  []entry.Entry
	token      string
	asks       []ask
	firsts     []int          // asks, one of each mark (Entry.Mark)
	marks      map[string]int // their number among the firsts
	repeats    int            // of the asks, what only repeats another
	prints     []printable
	pages      []page
	finder     func() *concordance.Index // of the pages; made by who asks first
	uncounted  problem.List              // papers of which nobody knows how many to print
	shared     *entry.Shared             // by the schools that Press is asked for

	settlements *settlements // of a unit that is conditional, whose pages are planned for each school
}

// An ask is one use of a placeholder on the page of a lesson.
type ask struct {
	source.Ask
	lesson int  // whose date stands in for a missing one
	first  int  // the one of its mark, in Plan.firsts
	block  bool // its tables are shown
}

// A page is ready bytes with a slot after each but the last.
type page struct {
	name  string
	shown any // what it was written from
	ready [][]byte
	order []int // of the slots
	slots []slot
}

// A slot appends what stands at its place for one school.
type slot func(dst []byte, s *pressing) []byte

// A pressing is one set of settings, with all that was computed from it.
type pressing struct {
	words    *typeset.Words
	settings form.Values
	keys     form.Form // of the settings
	term     classroom.Term
	course   entry.Course
	lessons  []classroom.Lesson // each with its date where it names a day
	calendar classroom.Calendar
	held     string    // of lessons and calendar (markOf)
	nothings *sync.Map // puts, of all pages
	dates    [][]byte  // of the lessons, written
	groups   []int
	results  []result.Result    // by ask
	files    []file.File        // tables as CSV
	told     map[string]bool    // cautions that the page being filled has told, by name or by their words
	shown    map[factShown]bool // facts that it has shown in a sentence
}

// onPage is the pressing for one page more.
func (s *pressing) onPage() *pressing {
	here := *s
	here.told = map[string]bool{}
	here.shown = map[factShown]bool{}
	return &here
}

// Make plans the pages of one edition. Those of a unit in which something stands only at
// some schools are planned when the first of each kind of school is pressed.
func Make(unit *source.Unit, words *typeset.Words, edition Edition, catalogue []entry.Entry) (*Plan, error) {
	if unit.Conditional() {
		return &Plan{unit: unit, words: words, edition: edition, catalogue: catalogue, shared: &entry.Shared{}, settlements: newSettlements()}, nil
	}
	return makePlan(unit, words, edition, catalogue)
}

func makePlan(unit *source.Unit, words *typeset.Words, edition Edition, catalogue []entry.Entry) (*Plan, error) {
	return (&Plan{words: words, edition: edition, catalogue: catalogue, token: newToken()}).Again(unit, words)
}

// Again plans the unit as it was edited since. If the words are the same, only pages that
// are others now are written out.
func (p *Plan) Again(unit *source.Unit, words *typeset.Words) (*Plan, error) {
	if p.settlements != nil || unit.Conditional() || p.words != words {
		return Make(unit, words, p.edition, p.catalogue)
	}
	next, drafts, err := drafted(unit, words, p.edition, p.catalogue, p.token)
	if err != nil {
		return nil, err
	}
	next.pages = make([]page, len(drafts))
	errs := make([]error, len(drafts))
	crew.Each(len(drafts), nil, func(i int) { next.pages[i], errs[i] = drafts[i].page(p.pages) })
	if err := cmp.Or(errs...); err != nil {
		return nil, err
	}
	var ready []concordance.Ready
	for _, page := range next.pages {
		ready = append(ready, concordance.Ready{Name: page.name, Bytes: page.ready})
	}
	next.finder = sync.OnceValue(func() *concordance.Index { return concordance.New(next.words.Code, ready) })
	next.printed(&next.uncounted)
	return next, nil
}

// drafted drafts every page, cover first, and notes every ask on the way.
func drafted(unit *source.Unit, words *typeset.Words, edition Edition, catalogue []entry.Entry, token string) (*Plan, []*draft, error) {
	templates, err := typeset.Templates(words)
	if err != nil {
		return nil, nil, err
	}
	p := &Plan{
		unit:       unit,
		course:     unit.Course(),
		words:      words,
		templates:  templates,
		edition:    edition,
		catalogue:  catalogue,
		token:      token,
		marks:      map[string]int{},
		printables: map[*source.Lesson][]*source.Block{},
		questions:  map[*source.Lesson][]question{},
		shared:     &entry.Shared{},
	}
	for _, l := range unit.Lessons {
		p.printables[l], p.questions[l] = l.Printables(), questions(l)
	}
	p.renderer, p.terms = newRenderer(p), p.vocabulary()
	p.margins = make([]*marginal, len(unit.Lessons))
	crew.Each(len(unit.Lessons), nil, func(i int) {
		if l := unit.Lessons[i]; p.shows(l) {
			p.margins[i] = p.marginOf(l)
		}
	})
	var drafts []*draft
	for i, l := range unit.Lessons {
		if !p.shows(l) {
			continue
		}
		d, err := p.lesson(i)
		if err != nil {
			return nil, nil, err
		}
		drafts = append(drafts, d)
		sheets, err := p.lessonSheets(i)
		if err != nil {
			return nil, nil, err
		}
		drafts = append(drafts, sheets...)
	}
	for _, print := range p.prints {
		drafts = append(drafts, p.printable(print))
	}
	return p, slices.Insert(drafts, 0, p.cover()), nil // which offers the prints of the lessons
}

// shows reports whether the edition has the page of a lesson file.
func (p *Plan) shows(l *source.Lesson) bool {
	return p.edition == Staff || source.BlockReader.Of(l.Block) != source.Staff
}

// ask notes a use of a placeholder and returns its number.
func (p *Plan) ask(a source.Ask, lesson int) int {
	mark := a.Entry.Mark(a.Given, lesson)
	first, known := p.marks[mark]
	if !known {
		first = len(p.firsts)
		p.firsts, p.marks[mark] = append(p.firsts, len(p.asks)), first
	}
	p.asks = append(p.asks, ask{Ask: a, lesson: lesson, first: first})
	return len(p.asks) - 1
}

// askAgain is ask for a page that repeats what another shows.
func (p *Plan) askAgain(a source.Ask, lesson int) int {
	p.repeats++
	return p.ask(a, lesson)
}

// Asks returns how many uses of placeholders the pages hold, without repetitions. A unit
// in which something stands only at some schools has pages of its own at each, and 0
// here; settle it first (Settled) to know.
func (p *Plan) Asks() int { return len(p.asks) - p.repeats }

func groupsOf(settings form.Values) []int {
	return classroom.Groups(school.ClassPupils.Of(settings), school.ClassGroupSize.Of(settings))
}

// used returns the entries that the unit's pages use, in the catalogue's order.
func (p *Plan) used() []entry.Entry {
	var names []string
	for _, a := range p.asks {
		names = append(names, a.Entry.Name)
	}
	return slices.DeleteFunc(slices.Clone(p.catalogue), func(e entry.Entry) bool {
		return !slices.Contains(names, e.Name)
	})
}
