package plan

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A manner is how a page writes parts of a lesson.
type manner struct {
	gathered bool             // on another page than the lesson's: headings lose their anchors, links within the lesson lead to its page, blocks are brief
	shift    int              // added to the level of headings
	lines    int              // least ruled lines for an answer
	minutes  *extension.Table // whose rows get their clock times
	forClass bool             // answers and notes for staff are left out in the staff edition too
	margin   *marginal        // what stands beside the text, nil for nothing
}

// A lessonRenderer writes our nodes; everything else is goldmark's. It serves all pages of a
// plan, a part of a lesson at a time.
type lessonRenderer struct {
	all     renderer.Renderer
	out     *bufio.Writer
	tables  tableRenderer
	edition Edition

	manner // of the part at hand, as all below
	draft  *draft
	lesson int
	from   *source.Lesson
}

func newRenderer(p *Plan) *lessonRenderer {
	r := &lessonRenderer{out: bufio.NewWriter(nil), tables: tableRenderer{words: p.words}, edition: p.edition}
	r.all = renderer.NewRenderer(renderer.WithNodeRenderers(
		util.Prioritized(html.NewRenderer(), 1000),
		util.Prioritized(r, 100),
		util.Prioritized(&r.tables, 100),
	))
	return r
}

// render appends parts of the tree as HTML with marks. Words of a list item that are a part
// by themselves are a paragraph.
func (d *draft) render(dst []byte, l *source.Lesson, lesson int, m manner, parts ...ast.Node) ([]byte, error) {
	r := d.plan.renderer
	r.manner, r.draft, r.lesson, r.from = m, d, lesson, l
	r.tables.clock = d.clockColumn(l, m.minutes)
	out := bytes.NewBuffer(dst)
	for _, part := range parts {
		open, closing := "", ""
		if part.Kind() == ast.KindTextBlock {
			open, closing = "<p>", "</p>"
		}
		out.WriteString(open)
		r.out.Reset(out)
		if err := r.all.Render(r.out, l.Source, part); err != nil {
			return nil, fmt.Errorf("rendering %s: %w", l.File, err)
		}
		out.WriteString(closing)
	}
	return out.Bytes(), nil
}

func (r *lessonRenderer) RegisterFuncs(register renderer.NodeRendererFuncRegisterer) {
	register.Register(source.KindBlock(), r.block)
	register.Register(source.KindInline(), r.inline)
	register.Register(source.KindAside(), r.aside)
	register.Register(source.KindOpening(), r.opening)
	register.Register(source.KindStanding(), unsettled)
	register.Register(ast.KindHeading, r.heading)
	register.Register(ast.KindLink, r.link)
	register.Register(ast.KindImage, r.picture)
	register.Register(extension.KindTaskCheckBox, r.box)
	register.Register(ast.KindParagraph, r.paragraph)
	register.Register(ast.KindListItem, r.item)
}

// unsettled refuses to write what stands at some schools only before it is known
// whether it does.
func unsettled(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
	return ast.WalkStop, errors.New("a condition has no answer")
}

// box writes [ ] at the head of an item of a list as a box to tick, and [x] as one
// that is ticked.
func (r *lessonRenderer) box(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	sign := "☐ "
	if node.(*extension.TaskCheckBox).IsChecked {
		sign = "☑ "
	}
	return ast.WalkContinue, write(w, entering, sign, "")
}

func (r *lessonRenderer) block(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*source.Block)
	number := r.draft.plan.ask(n.Ask, r.lesson)
	r.draft.plan.asks[number].block = true
	entry, name, sources, gathered := n.Entry, n.Entry.Name, n.Entry.Sources, r.gathered
	anchor := typeset.WalkAnchor(name, n.Nth)
	mark := r.draft.mark(func(dst []byte, s *pressing) []byte {
		result, cited := s.results[number], sources
		if gathered {
			result, cited = brief(entry, result), nil
		} else {
			result = result.Anchored(anchor)
		}
		result.Cautions = s.untold(result.Cautions)
		return s.words.AppendBlock(dst, name, result, cited)
	})
	print := ""
	if n.Entry.Printable && !r.gathered {
		print = r.draft.printLink(n.Entry, number, r.lesson)
	}
	class := "computed"
	if n.Entry.Plate {
		class += " plate"
	}
	return ast.WalkSkipChildren, write(w, true, `<figure class="`+class+`">`+mark+"</figure>\n"+print, "")
}

func (r *lessonRenderer) inline(w util.BufWriter, src []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*source.Inline)
	_, err := w.WriteString(r.draft.told(n, r.lesson, stopFollows(n, src)))
	return ast.WalkSkipChildren, err
}

// fact returns the mark of one fact.
func (d *draft) fact(n *source.Inline, lesson int) string {
	return d.factOf(d.plan.ask(n.Ask, lesson), n.Fact)
}

func (d *draft) factOf(number int, fact string) string {
	return d.mark(func(dst []byte, s *pressing) []byte {
		value, _ := s.results[number].Fact(fact)
		return s.words.AppendFact(dst, value)
	})
}

func (r *lessonRenderer) aside(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*source.Aside)
	switch {
	case n.Word == source.Caution && n.FirstChild() != nil:
		if !entering {
			return ast.WalkContinue, write(w, true, "</section>\n"+r.ofSection(n), "")
		}
		mark := ""
		if n.Names != nil {
			mark = r.draft.replaced(n)
		}
		return ast.WalkContinue, write(w, true, mark+r.labelled(n), "")
	case n.Word == source.Caution && entering:
		return ast.WalkSkipChildren, write(w, true, r.draft.named(n)+r.ofSection(n), "")
	case n.Word == source.Caution:
		return ast.WalkContinue, nil
	case r.forClass:
		return ast.WalkSkipChildren, nil
	case !r.draft.plan.hides(n):
		return ast.WalkContinue, write(w, entering, r.labelled(n), "</section>\n")
	}
	lines := max(n.Ruled, r.lines)
	if !entering || lines == 0 || n.Word != source.Answer {
		return ast.WalkSkipChildren, nil
	}
	return ast.WalkSkipChildren, write(w, true, ruled(lines), "")
}

// hides reports whether the edition is to be without a node and all within it.
func (p *Plan) hides(n ast.Node) bool { return p.edition == Class && source.Private(n) }

// opening writes a part of the lesson with its name, and for staff whose it is.
func (r *lessonRenderer) opening(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*source.Opening)
	if r.draft.plan.hides(n) {
		return ast.WalkSkipChildren, nil
	}
	open := `<section class="opening">`
	before, ok := n.PreviousSibling().(*source.Opening)
	named := !ok || before.Part != n.Part || r.draft.plan.hides(before)
	if named {
		open += r.draft.openingHead(n.Part)
	}
	if r.margin != nil {
		open += r.openingHour(n, named)
	}
	if r.margin != nil && n == r.margin.goals {
		open += r.draft.here("goals")
	}
	if r.margin != nil && n == r.margin.kit {
		open += r.draft.here("kit")
	}
	if r.margin != nil && n == r.margin.last {
		open += r.draft.here("terms")
	}
	return ast.WalkContinue, write(w, entering, open+"\n", "</section>\n")
}

// labelled opens a section with what it is at its side.
func (r *lessonRenderer) labelled(n *source.Aside) string {
	return `<section class="` + n.Word + `"><p class="side-label">` + r.draft.plan.words.Say("page."+n.Word) + `</p>`
}

func ruled(lines int) string {
	return `<div class="ruled-lines">` + strings.Repeat("<div></div>", lines) + "</div>\n"
}

// link writes a link. One within the lesson leads back to it from other pages.
func (r *lessonRenderer) link(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*ast.Link)
	to := r.from.Link(n)
	if to.Nowhere {
		return ast.WalkContinue, nil
	}
	target := to.Target
	if r.gathered && bytes.HasPrefix(target, []byte("#")) {
		target = append([]byte(r.from.Page), target...)
	}
	open := `<a href="` + string(util.EscapeHTML(util.URLEscape(target, true))) + `"`
	if n.Title != nil {
		var title bytes.Buffer
		buffer := bufio.NewWriter(&title)
		html.DefaultWriter.Write(buffer, n.Title)
		if err := buffer.Flush(); err != nil {
			return ast.WalkStop, err
		}
		open += ` title="` + title.String() + `"`
	}
	if to.Title != "" {
		open += ` data-title="` + string(util.EscapeHTML([]byte(to.Title))) + `"`
	}
	return ast.WalkContinue, write(w, entering, open+">", "</a>")
}

func (r *lessonRenderer) heading(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*ast.Heading)
	shift := r.shift
	if _, ok := n.Parent().(*source.Opening); ok && !r.gathered {
		shift++ // below the name of the part
	}
	level := min(6, max(2, n.Level+shift)) // the page's title is the one heading of level 1
	open := fmt.Sprintf("<h%d>", level)
	if id, ok := n.AttributeString("id"); ok && !r.gathered {
		open = fmt.Sprintf(`<h%d id="%s">`, level, util.EscapeHTML(id.([]byte)))
	}
	closing := fmt.Sprintf("</h%d>\n", level)
	switch {
	case r.margin == nil:
	case !entering:
		closing += r.ofSection(n)
	case n == r.margin.kit:
		open = r.draft.here("kit") + open
	}
	return ast.WalkContinue, write(w, entering, open, closing)
}

func write(w util.BufWriter, entering bool, open, closing string) error {
	s := closing
	if entering {
		s = open
	}
	_, err := w.WriteString(s)
	return err
}
