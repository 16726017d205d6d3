package source

import (
	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// An Ask is one use of a placeholder, as written.
type Ask struct {
	Entry entry.Entry
	Given form.Values // the keys that the author wrote
	At    problem.Place
}

// A Block is a compute block.
type Block struct {
	ast.BaseBlock
	Ask
	Nth int // among the blocks of its placeholder in the lesson, from 1; the same in both editions
}

// An Inline is one fact in a sentence.
type Inline struct {
	ast.BaseInline
	Ask
	Fact string
}

// An Aside is a caution, answer or staff block; its children are the blocks
// within.
type Aside struct {
	ast.BaseBlock
	Word  string   // "caution", "answer" or "staff"
	Ruled int      // of an answer: ruled lines in the class edition
	Names []string // of a caution: the cautions of placeholders that it replaces, or prints where it is empty

	holding
}

var (
	kindBlock  = ast.NewNodeKind("Block")
	kindInline = ast.NewNodeKind("Inline")
	kindAside  = ast.NewNodeKind("Aside")
)

// KindBlock, KindInline and KindAside are the kinds that a renderer handles.
func KindBlock() ast.NodeKind  { return kindBlock }
func KindInline() ast.NodeKind { return kindInline }
func KindAside() ast.NodeKind  { return kindAside }

func (n *Block) Kind() ast.NodeKind  { return kindBlock }
func (n *Inline) Kind() ast.NodeKind { return kindInline }
func (n *Aside) Kind() ast.NodeKind  { return kindAside }

func (n *Block) Dump(src []byte, level int)  { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Inline) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Aside) Dump(src []byte, level int)  { ast.DumpHelper(n, src, level, nil, nil) }
