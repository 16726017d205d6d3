package source

import (
	"bytes"
	"slices"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// The words that open an aside.
const (
	Caution = "caution"
	Answer  = "answer"
	Staff   = "staff"
)

// asideParser reads caution, answer, staff, only and unless blocks: fences as CommonMark
// section 4.5 has them, but with Markdown within instead of code, so that lists,
// tables and further fences in them are ordinary nodes of the one tree.
type asideParser struct{}

func (asideParser) Trigger() []byte                             { return []byte{'`', '~'} }
func (asideParser) CanInterruptParagraph() bool                 { return true }
func (asideParser) CanAcceptIndentedLine() bool                 { return false }
func (asideParser) Close(ast.Node, text.Reader, parser.Context) {}

func (asideParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, _ := reader.PeekLine()
	indent := pc.BlockOffset()
	if indent < 0 {
		return nil, parser.NoChildren
	}
	rest := bytes.TrimLeft(line[indent:], string(line[indent]))
	word, _ := firstWord(string(rest))
	if len(line)-indent-len(rest) < 3 || !slices.Contains(asides, word) {
		return nil, parser.NoChildren
	}
	if line[indent] == '`' && bytes.IndexByte(rest, '`') >= 0 || deepIn(parent) {
		return nil, parser.NoChildren
	}
	n := newAside(word)
	*n.held() = holding{fencesOf(pc).opened(n, reader, pc), indent}
	reader.AdvanceToEOL()
	return n, parser.HasChildren
}

// asides are the words that open a block with Markdown within.
var asides = []string{Caution, Answer, Staff, Only, Unless}

// A holder is a block of ours with blocks within.
type holder interface {
	ast.Node
	held() *holding
}

// A holding is where a holder began.
type holding struct {
	fence  *fence
	indent int
}

func (h *holding) held() *holding { return h }

func newAside(word string) holder {
	if word == Only || word == Unless {
		return &Standing{Word: word}
	}
	return &Aside{Word: word}
}

func (asideParser) Continue(node ast.Node, reader text.Reader, _ parser.Context) parser.State {
	n := node.(holder).held()
	line, segment := reader.PeekLine()
	width, at := util.IndentWidth(line, reader.LineOffset())
	if width < 4 {
		rest := bytes.TrimLeft(line[at:], string(n.fence.char))
		if len(line)-at-len(rest) >= n.fence.length && util.IsBlank(rest) {
			n.fence.close = segment.Start
			reader.AdvanceToEOL()
			return parser.Close
		}
	}
	if n.indent > 0 && width > 0 {
		reader.Advance(min(n.indent, at))
	}
	return parser.Continue | parser.HasChildren
}

// deepIn reports whether a block would stand in more blocks of ours than are read; it
// is code then, and of an unknown kind.
func deepIn(parent ast.Node) bool {
	deep := 0
	for ; parent != nil; parent = parent.Parent() {
		if _, ok := parent.(holder); ok {
			deep++
		}
	}
	return deep >= maxAsides
}

// firstWord splits an info string after its first word.
func firstWord(info string) (word, rest string) {
	info = strings.TrimSpace(info)
	end := strings.IndexFunc(info, unicode.IsSpace)
	if end < 0 {
		return info, ""
	}
	return info[:end], strings.TrimSpace(info[end:])
}
