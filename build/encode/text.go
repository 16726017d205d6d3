package encode

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"noonbook/build/terminal"
	"noonbook/build/typeset"
)

// Text writes one answer for a terminal.
func Text(out io.Writer, a Answer, w *typeset.Words) error {
	w = w.For(a.Result)
	var b strings.Builder
	for _, p := range append(slices.Clone(a.Cautions), a.Warnings...) {
		fmt.Fprintf(&b, "! %s\n", w.Line(p))
	}
	var names []string
	for _, f := range a.Facts {
		names = append(names, f.Name)
	}
	for i, name := range padded(names, false) {
		fmt.Fprintf(&b, "%s  %s\n", name, w.Text(a.Facts[i].Value))
	}
	for _, t := range a.Tables {
		fmt.Fprintf(&b, "\n%s\n", w.Line(t.Title))
		columns := make([][]string, len(t.Columns))
		for i, c := range t.Columns {
			head := w.Say(a.Placeholder + "." + t.Name + "." + c.Name)
			if unit := w.Unit(c.Unit); unit != "" && t.Bare(i) {
				head += " " + unit
			}
			columns[i] = []string{head}
			for _, row := range t.Rows {
				columns[i] = append(columns[i], w.Cell(row.Cells[i], c.Unit))
			}
			columns[i] = padded(columns[i], i > 0 && !t.Worded(i))
		}
		for row := range len(t.Rows) + 1 {
			line := ""
			for i := range columns {
				line += "  " + columns[i][row]
			}
			fmt.Fprintln(&b, strings.TrimRight(line, " "))
		}
	}
	for _, s := range append(phrases(a.Notes, w), w.Working(a.Working)...) {
		fmt.Fprintf(&b, "\n%s\n", s)
	}
	for _, s := range a.Sources {
		fmt.Fprintf(&b, "\n%s %s", w.Say("page.source"), s)
	}
	b.WriteByte('\n')
	_, err := io.WriteString(out, terminal.Text(b.String()))
	return err
}

// padded brings the words to one width, at the left or the right.
func padded(words []string, right bool) []string {
	width := 0
	for _, s := range words {
		width = max(width, utf8.RuneCountInString(s))
	}
	list := make([]string, len(words))
	for i, s := range words {
		space := strings.Repeat(" ", width-utf8.RuneCountInString(s))
		if right {
			list[i] = space + s
		} else {
			list[i] = s + space
		}
	}
	return list
}
