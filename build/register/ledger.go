package register

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"noonbook/build/form"
)

// A ledger is a CSV file as it is written: each row with its bytes, so that a row that
// nobody changed stays as it is.
type ledger struct {
	field   form.Field
	mark    []byte // a byte order mark, or nothing
	comma   rune
	eol     string
	head    []byte
	columns form.Form // as the file has them
	rows    []entry
	tail    []byte // empty lines at the end
}

// An entry is one row of a ledger.
type entry struct {
	raw   []byte   // with its line end
	cells []string // without spaces at their ends, one for each column
	blank bool     // a row of empty cells, which counts for nothing
}

// newLedger reads a CSV text; nil is one that is not there yet, and gets a head of all
// columns. The faults are those of a text that cannot be changed row by row.
func newLedger(field form.Field, src []byte) (l ledger, faults []form.Fault) {
	l = ledger{field: field, comma: ',', eol: "\r\n"}
	if len(bytes.TrimSpace(src)) == 0 {
		l.columns = field.Fields
		l.head = []byte(strings.Join(field.Fields.Names(), ",") + l.eol)
		return l, nil
	}
	body := bytes.TrimPrefix(src, []byte("\ufeff"))
	l.mark = src[:len(src)-len(body)]
	first, _, _ := strings.Cut(string(body), "\n")
	if strings.Contains(first, ";") && !strings.Contains(first, ",") {
		l.comma = ';' // as form.Field.ReadRecords has it
	}
	if !strings.HasSuffix(first, "\r") {
		l.eol = "\n"
	}
	if err := l.split(body); err != nil {
		_, faults := field.ReadRecords(plain(body))
		return l, faults
	}
	return l, l.headFaults(body)
}

// headFaults are those of the head by itself, since what a row has is told at its row.
func (l ledger) headFaults(body []byte) []form.Fault {
	_, faults := l.field.ReadRecords(plain(l.head))
	return faults
}

func (l *ledger) split(body []byte) error {
	r := csv.NewReader(bytes.NewReader(body))
	r.FieldsPerRecord = -1
	r.Comma = l.comma
	from := int64(0)
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			l.tail = body[from:]
			return nil
		}
		if err != nil {
			return err
		}
		raw := body[from:r.InputOffset()]
		from = r.InputOffset()
		if l.head == nil {
			l.head = raw
			for _, name := range cells {
				column, _ := l.field.Fields.Field(strings.ToLower(strings.TrimSpace(name)))
				l.columns = append(l.columns, column)
			}
			continue
		}
		e := entry{raw: raw, cells: make([]string, max(len(l.columns), len(cells))), blank: true}
		for i, cell := range cells {
			e.cells[i] = strings.TrimSpace(cell)
			e.blank = e.blank && e.cells[i] == ""
		}
		l.rows = append(l.rows, e)
	}
}

// filled are the rows that hold something.
func (l ledger) filled() (rows []entry) {
	for _, e := range l.rows {
		if !e.blank {
			rows = append(rows, e)
		}
	}
	return rows
}

// shown are the columns of the page: those of the file in its order, then those that
// it leaves out.
func (l ledger) shown() form.Form {
	columns := append(form.Form{}, l.columns...)
	for _, f := range l.field.Fields {
		if _, there := l.columns.Field(f.Name()); !there {
			columns = append(columns, f)
		}
	}
	return columns
}

// cell is what a row says in a column of the page.
func (e entry) cell(i int) string {
	if i < len(e.cells) {
		return e.cells[i]
	}
	return ""
}

// A typedRow is one row of the page as it is sent back: the row of the file that it
// was, or −1, and its cells.
type typedRow struct {
	of    int
	cells []string
}

func (t typedRow) empty() bool { return strings.Join(t.cells, "") == "" }

// with writes the ledger with the rows that were typed. It tells for each row of the new
// file, from 0, which of the typed rows it is; −1 for one that counts for nothing.
func (l ledger) with(typed []typedRow) (src []byte, whose []int) {
	kept := l.needed(typed)
	var b bytes.Buffer
	b.Write(l.mark)
	b.Write(l.longer(kept[len(l.columns):]))
	byRow := map[int]int{}
	for i, t := range typed {
		if t.of >= 0 {
			byRow[t.of] = i
		}
	}
	n := 0
	for _, e := range l.rows {
		if e.blank {
			l.line(&b, e.raw)
			whose = append(whose, -1)
			continue
		}
		i, sent := byRow[n]
		n++
		if sent && typed[i].empty() {
			continue
		}
		if !sent || l.same(e, typed[i]) {
			l.line(&b, e.raw)
		} else {
			l.row(&b, kept, typed[i].cells)
		}
		if !sent {
			i = -1
		}
		whose = append(whose, i)
	}
	for i, t := range typed {
		if t.of < 0 && !t.empty() {
			l.row(&b, kept, t.cells)
			whose = append(whose, i)
		}
	}
	b.Write(l.tail)
	return b.Bytes(), whose
}

// needed are the columns that the new file has, by their number on the page: those of
// the file, and those of the others that a row fills in.
func (l ledger) needed(typed []typedRow) (kept []int) {
	for i := range l.shown() {
		if i < len(l.columns) || slices.ContainsFunc(typed, func(t typedRow) bool { return t.cells[i] != "" }) {
			kept = append(kept, i)
		}
	}
	return kept
}

func (l ledger) same(e entry, t typedRow) bool {
	for i, cell := range t.cells {
		if cell != normal(e.cell(i)) {
			return false
		}
	}
	return true
}

// longer is the head with more columns.
func (l ledger) longer(more []int) []byte {
	if len(more) == 0 {
		return l.head
	}
	line := bytes.TrimRight(l.head, "\r\n")
	for _, i := range more {
		line = append(append(bytes.Clone(line), string(l.comma)...), l.shown()[i].Name()...)
	}
	return append(line, l.eol...)
}

// line writes bytes on a line of their own.
func (l ledger) line(b *bytes.Buffer, raw []byte) {
	if n := b.Len(); n > 0 && b.Bytes()[n-1] != '\n' {
		b.WriteString(l.eol)
	}
	b.Write(raw)
}

// row writes a row as the file writes its own: with its separator, and with a decimal
// comma where that is a semicolon. What a person typed otherwise is written as the
// column takes it.
func (l ledger) row(b *bytes.Buffer, kept []int, cells []string) {
	written, columns := make([]string, len(kept)), l.shown()
	for n, i := range kept {
		f, text := columns[i], cells[i]
		if _, complaint := f.Take(text); complaint == "" {
			text = f.Plain(text)
		}
		if l.comma == ';' && f.Kind() == form.Number {
			text = strings.Replace(text, ".", ",", 1)
		}
		written[n] = text
	}
	l.line(b, nil)
	w := csv.NewWriter(b)
	w.Comma = l.comma
	w.UseCRLF = l.eol == "\r\n"
	w.Write(written) // into memory
	w.Flush()
}

// places tells in which row of the file, from 0, and in which of its cells a fault is.
func (l ledger) places(src []byte) map[form.Place][2]int {
	at := map[form.Place][2]int{}
	r := csv.NewReader(bytes.NewReader(plain(src)))
	r.FieldsPerRecord = -1
	r.Comma = l.comma
	for n := -1; ; n++ {
		cells, err := r.Read()
		if err != nil {
			return at
		}
		for i := range cells {
			line, column := r.FieldPos(i)
			at[form.Place{Line: line, Column: column}] = [2]int{n, i}
		}
	}
}
