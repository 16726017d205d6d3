package district

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/school"
)

// The heads that are no key of unit.toml.
const (
	folderHead = "folder" // the name of the handbook's folder
	townHead   = "town"   // where the school is, on the board's page
)

// A List is the list of a district's schools, read.
type List struct {
	File  string    // as problems call it
	keys  form.Form // of unit.toml
	heads []head
	rows  []row
}

// A head is the head of a column.
type head struct {
	name  string // "" where nothing is below it either
	field form.Field
}

// A row is one school as it was written.
type row struct {
	folder string // of its handbook, "" where there is none to be had
	cells  []cell
	wrong  problem.List // what is wrong with the row as a row
	broken bool         // so much that no cell can be trusted
}

// A cell is what stands below a head, without the space round it.
type cell struct {
	text         string
	line, column int32
}

// Len returns how many schools the list has.
func (l *List) Len() int { return len(l.rows) }

// ReadList reads a list: CSV by RFC 4180, with or without a byte order mark, with either
// line end, its cells parted by commas, semicolons or tabs, whichever part its heads.
// Where a problem is a fault there is no list; what is wrong with one row is told when that
// school is checked.
func ReadList(file string, src []byte) (*List, problem.List) {
	r := &listReader{list: &List{File: file, keys: school.Settings()}}
	text, ok := r.plain(src)
	if !ok {
		return nil, r.problems
	}
	r.csv = csv.NewReader(bytes.NewReader(text))
	r.csv.FieldsPerRecord = -1
	first, _, _ := strings.Cut(string(text), "\n")
	r.csv.Comma = r.list.parting(first)
	names, ok := r.next()
	if !ok {
		if len(r.problems) == 0 {
			r.problems.Add(problem.Place{File: file, Line: 1, Column: 1}, "the list is empty; its first line has the names of columns, such as %s, %s and %s", school.Name, school.Latitude, school.Longitude)
		}
		return nil, r.problems
	}
	r.heads(names)
	for cells, ok := r.next(); ok; cells, ok = r.next() {
		r.row(cells)
	}
	if len(r.problems) == 0 && len(r.list.rows) == 0 {
		r.problems.Add(problem.Place{File: file, Line: 1, Column: 1}, "the list has no school; each line below the first is one")
	}
	if r.problems.Faults() > 0 {
		return nil, r.problems
	}
	return r.list, nil
}

type listReader struct {
	list     *List
	csv      *csv.Reader
	problems problem.List
}

// plain is the text as CSV is read: in UTF-8, with line feeds, without a byte order mark.
func (r *listReader) plain(src []byte) ([]byte, bool) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	src = bytes.ReplaceAll(bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	for at, line := 0, 1; at < len(src); line++ {
		end := len(src)
		if n := bytes.IndexByte(src[at:], '\n'); n >= 0 {
			end = at + n + 1
		}
		if text := src[at:end]; !utf8.Valid(text) {
			column := 0
			for utf8.FullRune(text[column:]) {
				c, size := utf8.DecodeRune(text[column:])
				if c == utf8.RuneError && size == 1 {
					break
				}
				column += size
			}
			r.problems.Add(problem.Place{File: r.list.File, Line: line, Column: column + 1}, "byte 0x%02x is not UTF-8; save the list as CSV with the encoding UTF-8", text[column])
			return nil, false
		}
		at = end
	}
	return src, true
}

// parting is the mark between the cells of a line of heads: the one that makes most of
// them known.
func (l *List) parting(heads string) rune {
	best, most := ',', 0
	for _, mark := range ",;\t" {
		known := 0
		for name := range strings.SplitSeq(heads, string(mark)) {
			if name = bare(strings.Trim(name, `"`)); name == folderHead || name == townHead {
				known++
			} else if _, ok := l.keys.Field(name); ok {
				known++
			}
		}
		if known > most {
			best, most = mark, known
		}
	}
	if most == 0 { // none is known; then the one that is there says more
		for _, mark := range ";\t" {
			if strings.Count(heads, string(mark)) > strings.Count(heads, string(best)) {
				best = mark
			}
		}
	}
	return best
}

// bare is a cell without the space round it, also that which a spreadsheet does not show.
func bare(text string) string { return strings.Trim(text, " \t\n\u00a0\u202f\u200b\ufeff") }

// next returns the cells of the next row; false at the end, and where the rest cannot be
// read.
func (r *listReader) next() ([]string, bool) {
	cells, err := r.csv.Read()
	var wrong *csv.ParseError
	switch {
	case errors.Is(err, io.EOF):
		return nil, false
	case errors.As(err, &wrong):
		r.problems.Add(problem.Place{File: r.list.File, Line: wrong.StartLine, Column: 1}, "from here on the list cannot be read: %v in line %d, column %d; a cell that holds a quote is in quotes, and the quote is doubled", wrong.Err, wrong.Line, wrong.Column)
		return nil, false
	case err != nil:
		r.problems.Add(problem.Place{File: r.list.File, Line: 1, Column: 1}, "the list cannot be read: %v", err)
		return nil, false
	}
	return cells, true
}

func (r *listReader) at(cell int) problem.Place {
	line, column := r.csv.FieldPos(cell)
	return problem.Place{File: r.list.File, Line: line, Column: column}
}

// heads reads the names of the columns.
func (r *listReader) heads(names []string) {
	known := append([]string{folderHead, townHead}, r.list.keys.Names()...)
	for i, name := range names {
		h := head{name: bare(name)}
		var ok bool
		h.field, ok = r.list.keys.Field(h.name)
		switch {
		case h.name == "":
		case slices.ContainsFunc(r.list.heads, func(other head) bool { return other.name == h.name }):
			r.problems.Add(r.at(i), "the column %s is there twice", h.name)
		case h.name == folderHead || h.name == townHead:
		case !ok:
			hint := form.Meant(h.name, known)
			if hint == "" {
				hint = "; a head is a key of unit.toml such as " + school.Latitude.Name() + ", or " + folderHead + " or " + townHead
			}
			r.problems.Add(r.at(i), "the head %q is not a key of unit.toml%s", h.name, hint)
		case h.field.Kind() == form.Tables:
			r.problems.Add(r.at(i), "%s is a list of tables, which no cell can hold; write it in unit.toml, for all schools alike", h.name)
		}
		r.list.heads = append(r.list.heads, h)
	}
}

// A spreadsheet's own words for a sum that it could not do, and the sum itself.
var (
	formula  = regexp.MustCompile(`^=`)
	unsummed = regexp.MustCompile(`^#(REF!|NAME\?|VALUE!|DIV/0!|N/A|NULL!|NUM!)$`)
)

// row reads one school. A row without any cell filled is passed over.
func (r *listReader) row(texts []string) {
	if !slices.ContainsFunc(texts, func(text string) bool { return bare(text) != "" }) {
		return
	}
	row := row{cells: make([]cell, len(texts))}
	for i, text := range texts {
		line, column := r.csv.FieldPos(i)
		row.cells[i] = cell{bare(text), int32(line), int32(column)}
		at := problem.Place{File: r.list.File, Line: line, Column: column}
		switch text := row.cells[i].text; {
		case text == "":
		case i >= len(r.list.heads):
			row.wrong.Add(at, "the row has %d cells, and there are %d heads; put a cell that holds %q in quotes", len(texts), len(r.list.heads), string(r.csv.Comma))
		case r.list.heads[i].name == "":
			row.wrong.Add(at, "%q has no head above it", text)
		case formula.MatchString(text):
			row.wrong.Add(at, "%s is the formula %s; let the spreadsheet write what comes of it", r.list.heads[i].name, text)
		case unsummed.MatchString(text):
			row.wrong.Add(at, "%s is %s, a sum that the spreadsheet could not do", r.list.heads[i].name, text)
		}
	}
	if len(texts) < len(r.list.heads) {
		row.wrong.Add(r.at(len(texts)-1), "the row has %d cells, and there are %d heads; leave a cell empty, but do not leave it out", len(texts), len(r.list.heads))
	}
	row.broken = row.wrong.Faults() > 0
	r.list.rows = append(r.list.rows, row)
}

// cell returns what a row has below a head, with its place.
func (l *List) cell(r *row, name string) (text string, at problem.Place, ok bool) {
	for i, h := range l.heads {
		if h.name == name && i < len(r.cells) {
			return r.cells[i].text, l.at(r, i), true
		}
	}
	return "", l.at(r, 0), false
}

func (l *List) at(r *row, i int) problem.Place {
	return problem.Place{File: l.File, Line: int(r.cells[i].line), Column: int(r.cells[i].column)}
}
