package source

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// A fence is where a fenced block was opened and closed. goldmark's tree does not
// say, and without it nothing tells a block that its author never closed from one
// that stands as it was meant.
type fence struct {
	char   byte
	length int
	open   int // offset of the fence that opens the block
	close  int // of the line that closes it; 0 where none does
}

// fences are those of one lesson, as the parsers of blocks note them.
type fences map[ast.Node]*fence

var fencesKey = parser.NewContextKey()

func fencesOf(pc parser.Context) fences {
	f, ok := pc.Get(fencesKey).(fences)
	if !ok {
		f = fences{}
		pc.Set(fencesKey, f)
	}
	return f
}

// opened notes a block whose fence begins at the parser's block offset.
func (f fences) opened(node ast.Node, reader text.Reader, pc parser.Context) *fence {
	line, segment := reader.PeekLine()
	at := pc.BlockOffset()
	f[node] = &fence{
		char:   line[at],
		length: len(line) - at - len(bytes.TrimLeft(line[at:], string(line[at]))),
		open:   segment.Start - segment.Padding + at,
	}
	return f[node]
}

// codeParser is goldmark's parser of fenced code, which also notes the fences.
type codeParser struct{ parser.BlockParser }

func (p codeParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	node, state := p.BlockParser.Open(parent, reader, pc)
	if node != nil {
		fencesOf(pc).opened(node, reader, pc)
	}
	return node, state
}

func (p codeParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	_, segment := reader.PeekLine()
	state := p.BlockParser.Continue(node, reader, pc)
	if state == parser.Close {
		fencesOf(pc)[node].close = segment.Start
	}
	return state
}
