package plan

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"noonbook/build/source"
)

// lessonRenderer writes our nodes; everything else is goldmark's.
type lessonRenderer struct {
	draft   *draft
	asides  bool // on a page that gathers cautions, headings lose their anchors
	lesson  int
	edition Edition
}

// render writes the tree, or a part of it, as HTML with marks.
func (d *draft) render(l *source.Lesson, lesson int, root ast.Node, gathered bool) ([]byte, error) {
	md := goldmark.New(goldmark.WithRenderer(renderer.NewRenderer(renderer.WithNodeRenderers(
		util.Prioritized(html.NewRenderer(), 1000),
		util.Prioritized(lessonRenderer{d, gathered, lesson, d.plan.edition}, 100),
		util.Prioritized(tableRenderer{d.plan.words.Say("page.table")}, 100),
	))))
	var out bytes.Buffer
	if err := md.Renderer().Render(&out, l.Source, root); err != nil {
		return nil, fmt.Errorf("rendering %s: %w", l.File, err)
	}
	return out.Bytes(), nil
}

func (r lessonRenderer) RegisterFuncs(register renderer.NodeRendererFuncRegisterer) {
	register.Register(source.KindBlock(), r.block)
	register.Register(source.KindInline(), r.inline)
	register.Register(source.KindAside(), r.aside)
	register.Register(ast.KindHeading, r.heading)
}

func (r lessonRenderer) block(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*source.Block)
	number := r.draft.plan.ask(n.Ask, r.lesson)
	name, sources := n.Entry.Name, n.Entry.Sources
	mark := r.draft.mark(func(dst []byte, s *school) []byte {
		return s.words.AppendBlock(dst, name, s.results[number], sources)
	})
	if n.Entry.Printable && !r.asides {
		mark = r.draft.printLink(n.Entry.Name, number, r.lesson) + mark
	}
	return ast.WalkSkipChildren, write(w, true, `<figure class="reckoned">`+mark+"</figure>\n", "")
}

func (r lessonRenderer) inline(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	_, err := w.WriteString(r.draft.fact(node.(*source.Inline), r.lesson))
	return ast.WalkSkipChildren, err
}

// fact returns the mark of one fact.
func (d *draft) fact(n *source.Inline, lesson int) string {
	number := d.plan.ask(n.Ask, lesson)
	fact := n.Fact
	return d.mark(func(dst []byte, s *school) []byte {
		value, _ := s.results[number].Fact(fact)
		return s.words.AppendFact(dst, value)
	})
}

func (r lessonRenderer) aside(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*source.Aside)
	if n.Word == source.Caution {
		return ast.WalkContinue, write(w, entering, `<section class="care"><p class="cry">`+r.draft.plan.words.Say("page.caution")+`</p>`, "</section>\n")
	}
	if r.edition == Staff {
		word := r.draft.plan.words.Say("page." + n.Word)
		return ast.WalkContinue, write(w, entering, `<section class="`+n.Word+`"><p class="cry">`+word+`</p>`, "</section>\n")
	}
	if !entering || n.Ruled == 0 || n.Word != source.Answer {
		return ast.WalkSkipChildren, nil
	}
	ruled := `<div class="ruled">` + string(bytes.Repeat([]byte("<div></div>"), n.Ruled)) + "</div>\n"
	return ast.WalkSkipChildren, write(w, true, ruled, "")
}

func (r lessonRenderer) heading(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*ast.Heading)
	level := max(2, n.Level) // the page's title is the one heading of level 1
	open := fmt.Sprintf("<h%d>", level)
	if id, ok := n.AttributeString("id"); ok && !r.asides {
		open = fmt.Sprintf(`<h%d id="%s">`, level, util.EscapeHTML(id.([]byte)))
	}
	return ast.WalkContinue, write(w, entering, open, fmt.Sprintf("</h%d>\n", level))
}

func write(w util.BufWriter, entering bool, open, closing string) error {
	s := closing
	if entering {
		s = open
	}
	_, err := w.WriteString(s)
	return err
}
