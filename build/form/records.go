package form

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
)

// Records are the rows of a CSV file that an author keeps beside the lessons.
// A field of that kind is written as the file's name; its Fields are the
// columns, and Max bounds the rows.
type Records struct {
	File string
	Rows []Values
	Line []int // of each row in the file, from 1
}

// ReadRecords checks a CSV text (RFC 4180) against the columns of the field:
// a head of their names in any order, then a row a line. Words may be in capital or
// small letters, and a number may have the unit of its column behind it. A text whose head is
// parted by semicolons, as spreadsheets write it where the decimal mark is a
// comma, is read so throughout. A number may have a decimal comma, in a comma
// file within quotes. Rows without any cell filled are passed over.
func (f Field) ReadRecords(src []byte) (Records, []Fault) {
	r := &recordReader{field: f}
	head, _, _ := strings.Cut(string(src), "\n")
	r.csv = csv.NewReader(bytes.NewReader(src))
	r.csv.FieldsPerRecord = -1
	if strings.Contains(head, ";") && !strings.Contains(head, ",") {
		r.csv.Comma = ';'
	}
	names, ok := r.next()
	if !ok {
		if len(r.faults) == 0 {
			r.fault(Place{1, 1}, "the file is empty; its first line names the columns: %s", strings.Join(f.Fields.Names(), ", "))
		}
		return Records{}, r.faults
	}
	r.head(names)
	if len(r.faults) > 0 {
		return Records{}, r.faults
	}
	for {
		cells, ok := r.next()
		if !ok || r.full() {
			return r.records, r.faults
		}
		r.row(cells)
	}
}

type recordReader struct {
	field   Field
	csv     *csv.Reader
	columns []Field
	records Records
	faults  []Fault
}

func (r *recordReader) fault(at Place, format string, args ...any) {
	if r.full() {
		return
	}
	if len(r.faults) == mostFaults {
		format, args = "more than %d mistakes; the rest is not looked at", []any{mostFaults}
	}
	r.faults = append(r.faults, Fault{at.Line, at.Column, fmt.Sprintf(format, args...)})
}

func (r *recordReader) full() bool { return len(r.faults) > mostFaults }

// at is where a cell of the last row stands.
func (r *recordReader) at(cell int) Place {
	line, column := r.csv.FieldPos(cell)
	return Place{line, column}
}

// next returns the next row; false at the end, after a fault that makes the
// rest unreadable, and after more rows than are taken.
func (r *recordReader) next() ([]string, bool) {
	cells, err := r.csv.Read()
	var wrong *csv.ParseError
	switch {
	case errors.Is(err, io.EOF):
		return nil, false
	case errors.As(err, &wrong):
		r.fault(Place{wrong.Line, wrong.Column}, "not valid CSV: %v", wrong.Err)
		return nil, false
	case err != nil:
		r.fault(Place{1, 1}, "not valid CSV: %v", err)
		return nil, false
	}
	if most := int(r.field.Max); most > 0 && len(r.records.Rows) >= most {
		r.fault(r.at(0), "more than %d rows; %s takes no more", most, r.field.Name())
		return nil, false
	}
	return cells, true
}

// head reads the names of the columns, in capital or small letters.
func (r *recordReader) head(names []string) {
	columns, there := map[string]Field{}, map[string]bool{}
	for _, f := range r.field.Fields {
		columns[strings.ToLower(f.Name())] = f
	}
	for i, name := range names {
		if r.full() {
			return
		}
		name = strings.TrimSpace(name)
		column, known := columns[strings.ToLower(name)]
		switch {
		case !known && len(r.faults) >= mostHints:
			r.fault(r.at(i), "%q is not a column", shortened(name))
		case !known:
			r.fault(r.at(i), "%q is not a column%s", shortened(name), Choice(name, r.field.Fields.Names()))
		case there[column.Name()]:
			r.fault(r.at(i), "the column %s is there twice", column.Name())
		default:
			there[column.Name()] = true
		}
		r.columns = append(r.columns, column)
	}
	for _, f := range r.field.Fields {
		if f.Required && !there[f.Name()] {
			r.fault(Place{1, 1}, "the column %s is missing: %s", f.Name(), f.Allowed())
		}
	}
}

func (r *recordReader) row(cells []string) {
	if !slices.ContainsFunc(cells, func(c string) bool { return strings.TrimSpace(c) != "" }) {
		return
	}
	if len(cells) > len(r.columns) {
		r.fault(r.at(len(r.columns)), "the row has %d cells under %d columns%s", len(cells), len(r.columns), r.commaHint())
		return
	}
	values := Values{}
	for i, column := range r.columns {
		cell := ""
		if i < len(cells) {
			cell = strings.TrimSpace(cells[i])
		}
		if cell == "" {
			if column.Required {
				r.fault(r.at(min(i, len(cells)-1)), "%s is missing: %s", column.Name(), column.Allowed())
			}
			continue
		}
		v, complaint := column.ParseText(asWritten(column, cell))
		if complaint != "" {
			r.fault(r.at(i), "%s %s", column.Name(), complaint)
			continue
		}
		values[column.Name()] = v
	}
	line, _ := r.csv.FieldPos(0)
	r.records.Rows = append(r.records.Rows, r.field.Fields.Complete(values))
	r.records.Line = append(r.records.Line, line)
}

// commaHint says what a row with too many cells most likely is.
func (r *recordReader) commaHint() string {
	if r.csv.Comma == ',' {
		return "; write a number with a decimal comma in quotes, or with a point"
	}
	return ""
}

var decimalComma = regexp.MustCompile(`^[-−+]?\d+,\d+$`)

// asWritten brings a cell into the form that the column takes where only the
// writing differs: words in any case, yes for true, a decimal comma, the unit of
// the column behind a number.
func asWritten(f Field, cell string) string {
	switch f.Kind() {
	case Number, Whole:
		for _, unit := range unitNames[f.Unit] {
			if n := len(cell) - len(unit); n > 0 && strings.EqualFold(cell[n:], unit) {
				if bare := strings.TrimRight(cell[:n], " \u00a0\u202f"); anyNumber.MatchString(bare) {
					cell = bare
					break
				}
			}
		}
		if f.Kind() == Number && decimalComma.MatchString(cell) {
			return strings.Replace(cell, ",", ".", 1)
		}
	case Flag:
		switch strings.ToLower(cell) {
		case "yes", "true", "y", "1", "oui", "vrai":
			return "true"
		case "no", "false", "n", "0", "non", "faux":
			return "false"
		}
	default:
		for _, word := range f.Choices {
			if strings.EqualFold(cell, word) {
				return word
			}
		}
	}
	return cell
}

var anyNumber = regexp.MustCompile(`^[-−+]?\d+(?:[.,]\d+)?$`)
