package source

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
)

// An Opening is a part of a lesson for one reader: what is written below a heading such as
// "# Teach: class", up to the next of them.
type Opening struct {
	ast.BaseBlock
	Part   string // one of the parts of a lesson
	Reader string // "class" or "staff"
}

// The parts of a lesson, in their order.
const (
	Prepare    = "prepare"
	Teach      = "teach"
	Understand = "understand"
	After      = "after"
)

// ForClass is the reader of what both editions show; Staff is that of the rest.
const ForClass = "class"

func openingParts() []string   { return []string{Prepare, Teach, Understand, After} }
func openingReaders() []string { return []string{ForClass, Staff} }

var kindOpening = ast.NewNodeKind("Opening")

// KindOpening is the kind that a renderer handles.
func KindOpening() ast.NodeKind { return kindOpening }

func (n *Opening) Kind() ast.NodeKind         { return kindOpening }
func (n *Opening) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }

// Openings reports whether the lesson is written in openings.
func (l *Lesson) Openings() bool { return l.openings }

// Private reports whether a node and all within it are for staff alone: an answer, a staff
// note, or an opening for staff.
func Private(n ast.Node) bool {
	switch n := n.(type) {
	case *Aside:
		return n.Word != Caution
	case *Opening:
		return n.Reader == Staff
	}
	return false
}

// forStaff reports whether a node is within something for staff alone.
func forStaff(n ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if Private(n) {
			return true
		}
	}
	return false
}

// privateAnchors returns the headings of a lesson that only staff see.
func privateAnchors(tree ast.Node) map[string]bool {
	private := map[string]bool{}
	_ = ast.Walk(tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if h, ok := n.(*ast.Heading); ok && entering && forStaff(h) {
			id, _ := h.AttributeString("id")
			private[fmt.Sprintf("%s", id)] = true
		}
		return ast.WalkContinue, nil
	})
	return private
}

// openingLine is a heading that opens a part, exactly as it has to be written.
var openingLine = regexp.MustCompile(`^# (Prepare|Teach|Understand|After): (class|staff)$`)

const howToOpen = `a part of a lesson begins with a line such as "# Teach: class", on the left and outside all blocks; the part is Prepare, Teach, Understand or After, the reader class or staff`

// openings puts what is below each heading that opens a part into an Opening.
func (v *visitor) openings() {
	l := v.lesson
	var within *Opening
	var early ast.Node // what no opening holds
	for n := l.Tree.FirstChild(); n != nil; {
		next := n.NextSibling()
		if opened := v.opens(n); opened != nil {
			if within != nil && slices.Index(openingParts(), opened.Part) < slices.Index(openingParts(), within.Part) {
				v.problems.Add(v.at(opened.Pos()), "%s comes before %s; the parts of a lesson follow each other as prepare, teach, understand, after", opened.Part, within.Part)
			}
			if opened.Reader == ForClass && BlockReader.Of(l.Block) == Staff {
				v.problems.Add(v.at(opened.Pos()), `this page is for staff alone, as its reader says, and so has no part for the class`)
			}
			id, _ := n.AttributeString("id")
			delete(l.Anchors, fmt.Sprintf("%s", id))
			l.Tree.ReplaceChild(l.Tree, n, opened)
			within, l.openings = opened, true
		} else if within != nil {
			l.Tree.RemoveChild(l.Tree, n)
			within.AppendChild(within, n)
		} else if early == nil {
			early = n
		}
		n = next
	}
	if l.openings && early != nil {
		v.problems.Add(v.at(early.Pos()), "this is before the first part of the lesson; %s", howToOpen)
	}
}

// opens returns the opening that a heading of the lesson's own level begins, nil for none.
func (v *visitor) opens(n ast.Node) *Opening {
	h, ok := n.(*ast.Heading)
	if !ok || h.Level != 1 {
		return nil
	}
	m := openingLine.FindStringSubmatch(v.lineOf(h))
	if m == nil {
		return nil
	}
	opened := &Opening{Part: strings.ToLower(m[1]), Reader: m[2]}
	opened.SetPos(h.Pos())
	return opened
}

// lineOf returns the line of the source on which a heading's words begin.
func (v *visitor) lineOf(h *ast.Heading) string {
	if h.Lines().Len() == 0 {
		return ""
	}
	start := bytes.LastIndexByte(v.lesson.Source[:h.Lines().At(0).Start], '\n') + 1
	line, _, _ := bytes.Cut(v.lesson.Source[start:], []byte("\n"))
	return strings.TrimRight(string(line), " \t")
}

// nearOpenings reports lines that look like the beginning of a part and are none: one slip
// would show the class what is for staff. inside are the lines of fences.
func (v *visitor) nearOpenings(inside map[int]*fence) {
	told := map[int]bool{}
	_ = ast.Walk(v.lesson.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		h, ok := n.(*ast.Heading)
		if !ok || !entering || h.Lines().Len() == 0 {
			return ast.WalkContinue, nil
		}
		at := v.at(h.Lines().At(0).Start)
		words := strings.TrimSpace(string(h.Lines().Value(v.lesson.Source)))
		switch meant := meantOpening(words, h.Level == 1 || v.lesson.openings); {
		case meant != "":
			v.problems.Add(at, "this heading begins no part of the lesson; did you mean %q? %s", meant, howToOpen)
		case v.lesson.openings && h.Level == 1:
			v.problems.Add(at, "a heading of the first level begins a part of this lesson, and %q is none; give the heading one # more, or: %s", words, howToOpen)
		default:
			return ast.WalkContinue, nil
		}
		told[at.Line] = true
		return ast.WalkContinue, nil
	})
	for i, start := range v.lesson.lines.starts {
		if _, fenced := inside[i+1]; fenced || told[i+1] || len(v.problems) >= v.most {
			continue
		}
		line, _, _ := bytes.Cut(v.lesson.Source[start:], []byte("\n"))
		if openingLine.Match(bytes.TrimRight(line, " \t")) {
			continue
		}
		if line = line[led(line):]; !mayOpen(line) {
			continue
		}
		if meant := meantOpening(string(line), false); meant != "" && likeOpening.Match(line) {
			v.problems.Add(v.at(start), "this line begins no part of the lesson; did you mean %q? %s", meant, howToOpen)
		}
	}
}

// likeOpening is a line that marks itself as a heading in some way, or has its two words
// parted as ours has.
var likeOpening = regexp.MustCompile(`^\s*(\\?[#＃]|[*_]{1,3}\S.*[*_]{1,3}\s*$|\pL+\s*[:：(\[–—-]\s*\pL+\s*[)\]]?\s*:?\s*$)`)

// mayOpen reports whether a line can be like an opening at all: it begins with a sign of
// likeOpening, or such a sign follows its first word.
func mayOpen(line []byte) bool {
	line = bytes.TrimLeft(line, spaces)
	rest := bytes.TrimLeftFunc(line, unicode.IsLetter)
	if len(rest) == len(line) {
		first, _ := utf8.DecodeRune(line)
		last := bytes.TrimRight(line, spaces)
		return strings.ContainsRune(`\#＃`, first) || strings.ContainsRune("*_", first) && strings.IndexByte("*_", last[len(last)-1]) >= 0
	}
	next, _ := utf8.DecodeRune(bytes.TrimLeft(rest, spaces))
	return strings.ContainsRune(":：([–—-", next)
}

// meantParts and meantReaders are words that people write for ours.
var (
	meantParts = map[string]string{
		"preparation": Prepare, "preparing": Prepare, "before": Prepare, "préparer": Prepare, "preparer": Prepare, "préparation": Prepare, "avant": Prepare,
		"teaching": Teach, "lesson": Teach, "enseigner": Teach, "enseignement": Teach,
		"understanding": Understand, "background": Understand, "comprendre": Understand,
		"afterwards": After, "afterward": After, "après": After, "apres": After,
	}
	meantReaders = map[string]string{
		"pupil": ForClass, "pupils": ForClass, "student": ForClass, "students": ForClass, "children": ForClass, "classe": ForClass, "élèves": ForClass, "eleves": ForClass, "élève": ForClass, "everyone": ForClass, "all": ForClass,
		"teacher": Staff, "teachers": Staff, "adult": Staff, "adults": Staff, "personnel": Staff, "enseignant": Staff, "enseignante": Staff, "enseignants": Staff, "prof": Staff, "substitute": Staff,
	}
	fillers = []string{"the", "for", "a", "la", "le", "les", "pour", "l", "to", "of", "part", "only"}
)

// meantOpening returns the heading that an author means by a line, or "". alone says that
// the name of a part is enough, and that more words may follow.
func meantOpening(line string, alone bool) string {
	words := strings.FieldsFunc(strings.ToLower(line), func(c rune) bool { return !unicode.IsLetter(c) })
	words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(fillers, w) })
	if alone && len(words) > 2 && slices.Contains(openingParts(), words[0]) {
		if i := slices.IndexFunc(words, func(w string) bool { return slices.Contains(openingReaders(), w) }); i > 0 {
			words = []string{words[0], words[i]} // "Prepare: staff, in the morning"
		}
	}
	if len(words) == 0 || len(words) > 2 {
		return ""
	}
	part := meantWord(words[0], openingParts(), meantParts)
	if part == "" {
		return ""
	}
	reader := Staff // the safe guess
	if len(words) == 2 {
		if reader = meantWord(words[1], openingReaders(), meantReaders); reader == "" {
			return ""
		}
	} else if !alone || !slices.Contains(openingParts(), words[0]) {
		return ""
	}
	return "# " + strings.ToUpper(part[:1]) + part[1:] + ": " + reader
}

func meantWord(word string, ours []string, meant map[string]string) string {
	if slices.Contains(ours, word) {
		return word
	}
	if w, ok := meant[word]; ok {
		return w
	}
	return form.Nearest(word, ours)
}
