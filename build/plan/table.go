package plan

import (
	"html/template"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// tableRenderer writes pipe tables with scopes for screen readers, alignment as
// a class (a strict page allows no style attribute), and a frame that scrolls on
// narrow screens. Unlike goldmark's own it leaves the tree alone, so that a
// lesson may be rendered more than once.
type tableRenderer struct {
	label string
	clock map[ast.Node]string // a cell that goes before the first one, by row
}

func (t tableRenderer) RegisterFuncs(register renderer.NodeRendererFuncRegisterer) {
	register.Register(extension.KindTable, t.table)
	register.Register(extension.KindTableHeader, t.header)
	register.Register(extension.KindTableRow, t.row)
	register.Register(extension.KindTableCell, t.cell)
}

func (t tableRenderer) table(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering && node.LastChild().Kind() == extension.KindTableRow {
		return ast.WalkContinue, write(w, true, "</tbody></table></div>\n", "")
	}
	open := `<div class="table-frame" role="group" tabindex="0" aria-label="` + template.HTMLEscapeString(t.label) + `"><table>`
	return ast.WalkContinue, write(w, entering, open, "</table></div>\n")
}

func (t tableRenderer) header(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	closing := "</tr></thead>\n"
	if node.NextSibling() != nil {
		closing += "<tbody>\n"
	}
	return ast.WalkContinue, write(w, entering, "<thead><tr>"+t.clock[node], closing)
}

func (t tableRenderer) row(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	return ast.WalkContinue, write(w, entering, "<tr>"+t.clock[node], "</tr>\n")
}

func (tableRenderer) cell(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*extension.TableCell)
	class := ""
	if n.Alignment == extension.AlignRight || n.Alignment == extension.AlignCenter {
		class = ` class="` + n.Alignment.String() + `"`
	}
	if n.Parent().Kind() == extension.KindTableHeader {
		return ast.WalkContinue, write(w, entering, `<th scope="col"`+class+`>`, "</th>")
	}
	return ast.WalkContinue, write(w, entering, "<td"+class+">", "</td>")
}
