package encode

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"noonbook/build/result"
	"noonbook/build/typeset"
)

// CSV writes a result as tables below one another with an empty line between: the
// facts first, where there are any, then its own tables. Each of them is what RFC
// 4180 describes, with a heading row and as many cells in each row; the whole is
// not, since that knows one table a file, so a program divides it at the empty lines.
func CSV(out io.Writer, r result.Result, w *typeset.Words) error {
	c := csv.NewWriter(out)
	c.UseCRLF = true
	if len(r.Facts) > 0 || len(r.Tables) == 0 {
		c.Write([]string{"fact", "value", "unit", "text"})
		for _, f := range r.Facts {
			c.Write([]string{f.Name, plain(bare(f.Value, w)), f.Value.Unit, w.Text(f.Value)})
		}
	}
	for i, t := range r.Tables {
		if i > 0 || len(r.Facts) > 0 {
			c.Flush()
			io.WriteString(out, "\r\n")
		}
		writeTable(c, t, w)
	}
	c.Flush()
	return c.Error()
}

// TableFile writes one table for a spreadsheet: CSV as RFC 4180 has it, behind a
// byte order mark, without which spreadsheets take the letters for those of
// another code.
func TableFile(out io.Writer, t result.Table, w *typeset.Words) error {
	if _, err := io.WriteString(out, "\ufeff"); err != nil {
		return err
	}
	c := csv.NewWriter(out)
	c.UseCRLF = true
	writeTable(c, t, w)
	c.Flush()
	return c.Error()
}

// writeTable writes a heading row and the rows. A failed write shows when the
// writer is flushed.
func writeTable(c *csv.Writer, t result.Table, w *typeset.Words) {
	var heads []string
	for _, column := range t.Columns {
		head := column.Name
		if column.Unit != "" && !strings.HasSuffix(head, "_"+column.Unit) {
			head += "_" + column.Unit
		}
		heads = append(heads, head)
	}
	c.Write(heads)
	for _, row := range t.Rows {
		var cells []string
		for _, cell := range row.Cells {
			cells = append(cells, plain(bare(cell, w)))
		}
		c.Write(cells)
	}
}

func plain(x any) string {
	switch x := x.(type) {
	case nil:
		return ""
	case float64:
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return fmt.Sprint(x)
}
