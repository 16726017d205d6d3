package encode

import (
	"encoding/csv"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/terminal"
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
			c.Write([]string{f.Name, value(f.Value, w), f.Value.Unit, inert(text(f.Value, w))})
		}
	}
	for i, t := range r.Tables {
		if i > 0 || len(r.Facts) > 0 {
			c.Flush()
			io.WriteString(out, "\r\n")
		}
		writeTable(c, t, w, value)
	}
	c.Flush()
	return c.Error()
}

// TableFile writes one table for a spreadsheet: CSV as RFC 4180 has it, behind a
// byte order mark, without which spreadsheets take the letters for those of
// another code. Its numbers are rounded as say.Value.Kept says, so that the file of a
// pressing is the same whatever the last bits were.
func TableFile(out io.Writer, t result.Table, w *typeset.Words) error {
	if _, err := io.WriteString(out, "\ufeff"); err != nil {
		return err
	}
	c := csv.NewWriter(out)
	c.UseCRLF = true
	writeTable(c, t, w, kept)
	c.Flush()
	return c.Error()
}

// writeTable writes a heading row and the rows, each cell as the function says. A
// failed write shows when the writer is flushed.
func writeTable(c *csv.Writer, t result.Table, w *typeset.Words, cell func(say.Value, *typeset.Words) string) {
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
		for _, v := range row.Cells {
			cells = append(cells, cell(v, w))
		}
		c.Write(cells)
	}
}

// value writes what a cell holds: numbers, dates and truths as they are, texts so
// that a spreadsheet does not run them.
func value(v say.Value, w *typeset.Words) string {
	return written(bare(v, w))
}

// kept is value with the number rounded.
func kept(v say.Value, w *typeset.Words) string {
	if v.Kind == say.Quantity || v.Kind == say.Lasting {
		v.Number = v.Kept()
		also := v.Also
		v.Also = nil
		for _, one := range also {
			one.Number = one.Kept()
			v.Also = append(v.Also, one)
		}
	}
	return value(v, w)
}

func written(bare any) string {
	switch x := bare.(type) {
	case []any: // two sunsets of a day
		var all []string
		for _, one := range x {
			all = append(all, written(one))
		}
		return strings.Join(all, " ")
	case nil:
		return ""
	case float64:
		return strconv.FormatFloat(x, 'g', -1, 64)
	case string:
		return inert(x)
	default:
		return fmt.Sprint(x)
	}
}

// runs finds what a spreadsheet takes for the beginning of a formula: at the start
// of a cell, and behind what another spreadsheet may take for the end of one, since
// it follows its own country's separator.
var runs = regexp.MustCompile(`(^|[;\t\r\n|])(\s*)([=+\-@＝＋－＠])`)

// plain reports whether runs can find nothing: there is no separator, and the cell does not
// begin with what begins a formula. So are nearly all cells, and it is told quickly.
func plain(s string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " \f"))
	return !strings.ContainsAny(s, ";\t\r\n|") && !strings.ContainsRune("=+-@＝＋－＠", first)
}

// aNumber is what stays a number although it begins with a sign.
var aNumber = regexp.MustCompile(`^[-+−]?\d+(?:[.,]\d+)?(?:[eE][-+]?\d+)?$`)

// inert puts an apostrophe before what a spreadsheet would run, and a mark in place
// of control characters. Which letters are dangerous, separators within a cell, and
// the apostrophe: OWASP, CSV Injection (owasp.org/www-community/attacks/CSV_Injection,
// as it stood in 2024, from memory).
func inert(s string) string {
	if plain(s) {
		return terminal.Text(s)
	}
	if aNumber.MatchString(s) {
		return s
	}
	if s != "" && (s[0] == '\t' || s[0] == '\r') {
		s = "'" + s
	}
	return terminal.Text(runs.ReplaceAllString(s, "$1$2'$3"))
}
