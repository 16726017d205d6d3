package source

import (
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// brace is what stands between { and } in a sentence, not yet understood. The
// reader of the lesson turns it into an Inline or a problem.
type brace struct {
	ast.BaseInline
	text   string
	offset int  // of the opening brace
	open   bool // the closing brace is missing
}

var kindBrace = ast.NewNodeKind("Brace")

func (n *brace) Kind() ast.NodeKind         { return kindBrace }
func (n *brace) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }

// braceParser reads {name.fact key=value}. Backslash escapes and code spans
// never reach it: goldmark has dealt with them before.
type braceParser struct{}

func (braceParser) Trigger() []byte { return []byte{'{'} }

func (braceParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	n := &brace{offset: segment.Start}
	end := closingBrace(line)
	if end < 0 {
		n.open = true
		block.Advance(1)
		return n
	}
	n.text = string(line[1:end])
	block.Advance(end + 1)
	return n
}

// maxExpression bounds what may stand in braces.
const maxExpression = 500

// closingBrace returns where the brace that line begins with is closed, not
// counting braces in quotes, or −1.
func closingBrace(line []byte) int {
	quoted := false
	for i := 1; i < min(len(line), maxExpression); i++ {
		switch line[i] {
		case '"':
			quoted = !quoted
		case '}':
			if !quoted {
				return i
			}
		case '\n':
			return -1
		}
	}
	return -1
}

// A pair is one key=value of an expression.
type pair struct {
	key, value string
	offset     int // of the key, from the start of the expression
}

// splitExpression takes "name.fact key=value key=\"two words\"" apart.
func splitExpression(s string) (name string, pairs []pair, ok bool) {
	at := 0
	word := func() string {
		for at < len(s) && s[at] == ' ' {
			at++
		}
		start, quoted := at, false
		for at < len(s) && (s[at] != ' ' || quoted) {
			if s[at] == '"' {
				quoted = !quoted
			}
			at++
		}
		return s[start:at]
	}
	name = word()
	for at < len(s) {
		w := word()
		if w == "" {
			break
		}
		key, value, found := strings.Cut(w, "=")
		if !found || key == "" {
			return name, nil, false
		}
		pairs = append(pairs, pair{key, strings.Trim(value, `"`), at - len(w)})
	}
	return name, pairs, name != ""
}
