package source

import (
	"fmt"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// The words that open a block which stands only at some schools. They are keys of the
// lesson block too, and of its tables kit, activity and vocabulary.
const (
	Only   = "only"
	Unless = "unless"
)

// A Condition is a fact that is yes or no, and which of the two is wanted. It is known
// by its place (At), which no other condition has.
type Condition struct {
	*Inline
	Words string // as written: "only place-facts.tropics"

	unless bool
	within *Condition // of the block that it stands in
}

// Wants reports whether what the condition holds stands when the fact is so.
func (c *Condition) Wants(fact bool) bool { return fact != c.unless }

// Within returns the condition of the innermost block that this one stands in, nil for
// none. Where that does not stand this one is not asked.
func (c *Condition) Within() *Condition { return c.within }

// A Standing is an only or unless block; its children are the blocks within. A unit
// that was settled has none.
type Standing struct {
	ast.BaseBlock
	Word      string // "only" or "unless"
	Condition *Condition

	holding
}

var kindStanding = ast.NewNodeKind("Standing")

// KindStanding is the kind of only and unless blocks.
func KindStanding() ast.NodeKind { return kindStanding }

func (n *Standing) Kind() ast.NodeKind         { return kindStanding }
func (n *Standing) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }

// standing reads the condition of a block, and where it is answered settles the block.
func (v *visitor) standing(n *Standing) {
	line := firstLine(v.lesson.Source[n.Pos():])
	_, rest := firstWord(strings.TrimLeft(line, string(n.fence.char)))
	at := v.at(n.Pos())
	at.Column += len(line) - len(rest)
	v.unclosed(n, n.Word+" block")
	if n.FirstChild() == nil {
		v.problems.Add(v.at(n.Pos()), "%s: the block is empty; write in it what stands where the fact is %s", n.Word, map[string]string{Only: "true", Unless: "false"}[n.Word])
	}
	n.Condition = v.condition(n.Word, rest, at)
	if c := n.Condition; c != nil {
		outer := v.within
		c.within, v.within = outer, c
		defer func() { v.within = outer }()
	}
	stands, known := v.stands(n.Condition)
	switch {
	case n.Condition == nil: // a fault, and nothing is pressed; proof goes on without it
		v.lesson.doubtful = v.lesson.doubtful || v.answers == nil
	case !known:
		v.lesson.conditions = append(v.lesson.conditions, n.Condition)
	}
	if known && !stands {
		v.take(n)
		return
	}
	v.visitWithin(n)
	if known {
		v.unwrap(n)
	}
}

// condition reads what follows only or unless: placeholder.fact with arguments as in a
// sentence. It returns nil after reporting a problem.
func (v *visitor) condition(word, text string, at problem.Place) *Condition {
	name, _, whole := splitExpression(text)
	if complaint := v.noCondition(name); complaint != "" {
		v.problems.Add(at, "%s%s", word, complaint)
		return nil
	}
	if !whole {
		v.problems.Add(at, `%s: %q is not understood; after the fact stand its arguments, each as key=value`, word, text)
		return nil
	}
	placeholder, fact, _ := factName(name)
	e, ok := v.entry(placeholder, at)
	if !ok {
		return nil
	}
	if complaint := v.noTruth(e, fact); complaint != "" {
		at.Column += len(placeholder) + 1
		v.problems.Add(at, "%s: %s", word, complaint)
		return nil
	}
	found := len(v.problems)
	n := v.expression(text, at)
	if n == nil || len(v.problems) > found {
		return nil
	}
	return &Condition{Inline: n, Words: word + " " + text, unless: word == Unless}
}

// noTruth says why a fact of a placeholder is no yes or no; "" where it is one.
func (v *visitor) noTruth(e entry.Entry, fact string) string {
	truths := e.Truths()
	switch {
	case slices.Contains(truths, fact):
		return ""
	case len(truths) == 0:
		var having []string
		for _, e := range v.catalogue {
			if len(e.Truths()) > 0 {
				having = append(having, e.Name)
			}
		}
		return fmt.Sprintf("%s has no fact that is yes or no; want one of %s", e.Name, strings.Join(having, ", "))
	case slices.Contains(e.FactNames(), fact):
		return fmt.Sprintf("%s.%s is no yes or no%s", e.Name, fact, form.Choice(fact, truths))
	}
	return fmt.Sprintf("%s has no fact %q%s", e.Name, fact, form.Choice(fact, truths))
}

// noCondition says what is wrong with the name of a fact before its placeholder is
// looked for; "" for nothing.
func (v *visitor) noCondition(name string) string {
	example := ` needs a fact that is yes or no, such as "place-facts.south"`
	if name == "" {
		return example
	}
	if e, ok := entry.Find(v.catalogue, name); ok {
		if truths := e.Truths(); len(truths) > 0 {
			example = fmt.Sprintf(" needs a fact of %s; want one of %s", name, strings.Join(truths, ", "))
		}
		return example
	}
	if _, _, ok := factName(name); !ok {
		return fmt.Sprintf(": %q is not understood; it%s", name, example)
	}
	return ""
}

// stands reports whether what a condition holds stands, and whether that is known. What
// has no condition for want of sense stands nowhere.
func (r *reader) stands(c *Condition) (stands, known bool) {
	if c == nil {
		return false, r.answers != nil
	}
	stands, known = r.answers[c.At]
	return stands, known
}

// blockConditions reads the conditions of the lesson block: of the whole lesson, of
// things to have ready, of activities, and of words. Where they are answered, lines that do not stand
// are taken away.
func (v *visitor) blockConditions(l *Lesson) {
	l.whole = v.keyConditions(l.Block, "")
	for _, c := range l.whole {
		switch {
		case slices.Contains(gathering, l.Part()):
			v.problems.Add(c.At, "%s: every handbook has the page of %s; write the condition round its text", c.Words, l.Part())
		case c.Entry.Lessons:
			v.problems.Add(c.At, "%s: %s reads the calendar, which cannot be made before it is known which lessons stand", c.Words, c.Entry.Name)
		}
	}
	l.rows = map[string][]int{}
	for _, key := range []form.Key[[]form.Values]{BlockVocabulary, BlockKit, BlockActivity} {
		var rows []form.Values
		for i, row := range key.Of(l.Block) {
			stay := true
			for _, c := range v.keyConditions(row, itemName(key, []int{i})+".") {
				stands, known := v.stands(c)
				if !known {
					l.conditions = append(l.conditions, c)
				}
				stay = stay && (stands || !known)
			}
			if stay {
				rows = append(rows, row)
				l.rows[key.Name()] = append(l.rows[key.Name()], i)
			}
		}
		if key.In(l.Block) {
			l.Block = l.Block.With(key.Is(rows))
		}
	}
}

// keyConditions reads the keys only and unless of a table of the lesson block, whose
// places begin with the prefix.
func (v *visitor) keyConditions(table form.Values, prefix string) []*Condition {
	var list []*Condition
	for _, key := range []form.Key[string]{BlockOnly, BlockUnless} {
		if !key.In(table) {
			continue
		}
		at := within(v.lesson.lines, v.lesson.blockAt, v.lesson.places[prefix+key.Name()])
		at.Column++ // past the quote
		if c := v.condition(key.Name(), strings.TrimSpace(key.Of(table)), at); c != nil {
			list = append(list, c)
		}
	}
	return list
}

// standingKeys are the two keys of a table of the lesson block.
func standingKeys(what string) form.Form {
	return form.Form{
		{Key: BlockOnly, Assumed: "everywhere", Doc: "A fact that is yes or no, such as place-facts.south, with arguments as in a sentence; " + what + " stands only where it is yes."},
		{Key: BlockUnless, Assumed: "everywhere", Doc: "A fact that is yes or no; " + what + " stands only where it is no."},
	}
}
