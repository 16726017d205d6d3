package plan

import (
	"html/template"
	"strings"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"noonbook/build/source"
	"noonbook/build/typeset"
)

// tableRenderer writes pipe tables with scopes for screen readers, alignment as
// a class (a strict page allows no style attribute), and a frame that scrolls on
// narrow screens, or as a table of cards (typeset.CardsOpen) what would scroll there.
// Unlike goldmark's own it leaves the tree alone, so that a
// lesson may be rendered more than once.
type tableRenderer struct {
	words *typeset.Words
	clock map[ast.Node]string // a cell that goes before the first one, by row

	cards  []string // names of the columns of the table at hand, nil where it is none of cards
	column int      // of the cell that comes next
}

func (t *tableRenderer) RegisterFuncs(register renderer.NodeRendererFuncRegisterer) {
	register.Register(extension.KindTable, t.table)
	register.Register(extension.KindTableHeader, t.header)
	register.Register(extension.KindTableRow, t.row)
	register.Register(extension.KindTableCell, t.cell)
}

// role says what a part of a table of cards is, which a layout of cards would hide.
func (t *tableRenderer) role(role string) string {
	if t.cards == nil {
		return ""
	}
	return ` role="` + role + `"`
}

// names returns the names of a table's columns if it would scroll sideways on a phone, nil
// if it would not. One with clock times is for a sheet of paper.
func (t *tableRenderer) names(table ast.Node, src []byte) []string {
	if t.clock != nil {
		return nil
	}
	var columns []float64
	var names []string
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		i := 0
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			text := cellText(cell, src)
			if i == len(columns) {
				columns, names = append(columns, 0), append(names, text)
			}
			columns[i] = max(columns[i], typeset.ColumnEms(text))
			i++
		}
	}
	ems := 0.0
	for _, column := range columns {
		ems += column
	}
	if ems <= typeset.PhoneEms {
		return nil
	}
	return names
}

// cellText is the text of a cell, with a word for each value that is not known yet.
func cellText(cell ast.Node, src []byte) string {
	var b strings.Builder
	// The walk has no error: none of its steps has.
	_ = ast.Walk(cell, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch n := n.(type) {
		case *ast.Text:
			if entering {
				b.Write(util.UnescapePunctuations(n.Segment.Value(src)))
			}
		case *ast.String:
			if entering {
				b.Write(n.Value)
			}
		case *source.Inline:
			if entering {
				b.WriteString("1234.5")
			}
			return ast.WalkSkipChildren, nil
		}
		return ast.WalkContinue, nil
	})
	return strings.TrimSpace(b.String())
}

func (t *tableRenderer) table(w util.BufWriter, src []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering && node.LastChild().Kind() == extension.KindTableRow {
		return ast.WalkContinue, write(w, true, "</tbody></table></div>\n", "")
	}
	open := "<table>"
	if entering {
		t.cards = t.names(node, src)
	}
	if t.cards != nil {
		open = typeset.CardsOpen
	}
	open = `<div class="table-frame" role="group" tabindex="0" aria-label="` + template.HTMLEscapeString(t.words.Say("page.table")) + `">` + open
	return ast.WalkContinue, write(w, entering, open, "</table></div>\n")
}

func (t *tableRenderer) header(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	group := t.role("rowgroup")
	closing := "</tr></thead>\n"
	if node.NextSibling() != nil {
		closing += "<tbody" + group + ">\n"
	}
	return ast.WalkContinue, write(w, entering, "<thead"+group+"><tr"+t.role("row")+">"+t.clock[node], closing)
}

func (t *tableRenderer) row(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	t.column = 0
	return ast.WalkContinue, write(w, entering, "<tr"+t.role("row")+">"+t.clock[node], "</tr>\n")
}

func (t *tableRenderer) cell(w util.BufWriter, src []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*extension.TableCell)
	class := ""
	if n.Alignment == extension.AlignRight || n.Alignment == extension.AlignCenter {
		class = ` class="` + n.Alignment.String() + `"`
	}
	if n.Parent().Kind() == extension.KindTableHeader {
		return ast.WalkContinue, write(w, entering, `<th scope="col"`+t.role("columnheader")+class+`>`, "</th>")
	}
	if entering && t.cards != nil {
		class = t.words.CardCell(t.cards[t.column], cellText(n, src), t.column == 0) + class
		t.column++
	}
	return ast.WalkContinue, write(w, entering, "<td"+class+">", "</td>")
}
