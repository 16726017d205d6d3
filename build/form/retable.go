package form

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// tables sets a list of tables, whose rows are each below a [[name]] of their own. As
// many rows as can be stay as they are; of others the cells change that differ. New
// rows follow the last one, so one that is wanted between others takes the place of
// another. What cannot be done so is an error that says why.
func (r *rewriter) tables(field Field, old any, want []Values) error {
	if most := field.mostItems(); most > 0 && len(want) > most {
		return fmt.Errorf("has %d tables; up to %d are taken", len(want), most)
	}
	for i, row := range want {
		if err := field.Fields.holds(row); err != nil {
			return fmt.Errorf("row %d: %w", i+1, err)
		}
	}
	was, _ := field.rows(old)
	blocks, inner := r.blocks(field.Name())
	becomes := field.Fields.matched(was, want)
	switch {
	case field.Fields.same(was, want):
		return nil
	case old != nil && len(blocks) == 0:
		return errors.New("is written between brackets; change it there with a text editor")
	case inner || len(blocks) != len(was):
		return errors.New("is written in a way of its own; change it there with a text editor")
	case len(blocks) == 0 && r.onOneLine(field):
		return errors.New("belongs to a table on one line; write it there with a text editor")
	}
	kept := slices.DeleteFunc(slices.Clone(becomes), func(i int) bool { return i < 0 })
	if fresh := want[len(kept):]; len(fresh) > 0 {
		r.append(field, fresh)
	}
	for i := len(was) - 1; i >= 0; i-- { // from behind, so that blocks keep their numbers
		if becomes[i] < 0 {
			r.dropBlock(field, i)
			continue
		}
		for _, cell := range field.Fields {
			if err := r.cell(field.Name(), i, cell, was[i][cell.Name()], want[becomes[i]][cell.Name()]); err != nil {
				return fmt.Errorf("row %d: %s %w", becomes[i]+1, cell.Name(), err)
			}
		}
	}
	return nil
}

// onOneLine reports whether the table of a list is {…}, which TOML lets nothing be added
// to from outside, though our decoder does.
func (r *rewriter) onOneLine(list Field) bool {
	table := list.Name()[:max(strings.LastIndexByte(list.Name(), '.'), 0)]
	_, values := spots(r.src)
	at, ok := values[table]
	return ok && r.src[r.offset(at)] == '{'
}

// holds checks the values of one row as Read checks what is written.
func (f Form) holds(row Values) error {
	for name := range row {
		if _, ok := f.Field(name); !ok {
			return fmt.Errorf("%s is not a key%s", name, Meant(name, f.Names()))
		}
	}
	for _, cell := range f {
		x := row[cell.Name()]
		switch {
		case x == nil && cell.Required:
			return fmt.Errorf("%s is missing: %s", cell.Name(), cell.Allowed())
		case x != nil:
			if _, err := cell.checked(x); err != nil {
				return fmt.Errorf("%s %w", cell.Name(), err)
			}
		}
	}
	return nil
}

// same compares rows as they are read, with defaults where a value is missing.
func (f Form) same(a, b []Values) bool { return slices.EqualFunc(a, b, f.equal) }

func (f Form) equal(a, b Values) bool { return f.differing(a, b) == 0 }

// differing counts the cells in which two rows differ.
func (f Form) differing(a, b Values) (n int) {
	a, b = f.Complete(a), f.Complete(b)
	for _, cell := range f {
		if x, y := a[cell.Name()], b[cell.Name()]; (x == nil) != (y == nil) || x != nil && !equal(x, y) {
			n++
		}
	}
	return n
}

// matched tells for each row that is there which of the wanted rows it becomes, −1
// where it goes, so that as many as can be stay as they are, and then as few cells as
// can be change. The wanted rows that none becomes are the last ones.
func (f Form) matched(was, want []Values) []int {
	goes := len(f) + 1                          // a row that goes or is new costs more than any change of cells
	stays := -goes * (len(was) + len(want)) * 2 // and no other saving is worth a row that stays
	least := make([][]int, len(was)+1)          // by the row that is there and the row that is wanted
	becomes := func(i, j int) int {
		if n := f.differing(was[i], want[j]); n > 0 {
			return n + least[i+1][j+1]
		}
		return stays + least[i+1][j+1]
	}
	for i := len(was); i >= 0; i-- {
		least[i] = make([]int, len(want)+1)
		for j := len(want); j >= 0; j-- {
			switch {
			case i == len(was):
				least[i][j] = (len(want) - j) * goes
			case j == len(want):
				least[i][j] = goes + least[i+1][j]
			default:
				least[i][j] = min(goes+least[i+1][j], becomes(i, j))
			}
		}
	}
	list, j := make([]int, len(was)), 0
	for i := range was {
		list[i] = -1
		if j < len(want) && least[i][j] == becomes(i, j) {
			list[i] = j
			j++
		}
	}
	return list
}

// blocks are the sections of a list of tables, one for each row; inner is whether a row
// has tables of its own.
func (r *rewriter) blocks(name string) (blocks []section, inner bool) {
	for _, s := range sections(r.src) {
		switch {
		case s.prefix == name+"[].":
			blocks = append(blocks, s)
		case strings.HasPrefix(s.prefix, name+"."):
			inner = true
		}
	}
	return blocks, inner
}

// cell sets one value of a row.
func (r *rewriter) cell(list string, row int, field Field, was, x any) error {
	blocks, _ := r.blocks(list)
	s := blocks[row]
	at := slices.IndexFunc(s.entries, func(e entry) bool { return s.name(e) == s.prefix+field.Name() })
	if x == nil {
		if at >= 0 {
			r.commentOutEntry(s.entries[at])
		}
		return nil
	}
	text, err := field.checked(x)
	switch {
	case err != nil:
		return err
	case at >= 0 && was == any(faulty{}):
		r.replaceAt(s.entries[at].value, field, nil, x, text)
	case at >= 0 && !equal(was, x):
		r.replaceAt(s.entries[at].value, field, was, x, text)
	case at < 0 && (field.Default == nil || !equal(field.Default, x)):
		r.addBelow(s, field.Name()+" = "+text)
	}
	return nil
}

// end is where a row ends: behind its last key, and the lines below that one which are
// keys of such a row that are commented out.
func (r *rewriter) end(s section, field Field) int {
	last := s.head
	if n := len(s.entries); n > 0 {
		last = s.entries[n-1]
	}
	end := last.end
	for from := nextLine(r.src, end); from < s.to; from = nextLine(r.src, from) {
		line := strings.TrimSuffix(string(firstLine(r.src[from:s.to])), "\r")
		m := commented.FindStringSubmatch(line)
		if m == nil {
			break
		}
		key, _, ok := onePair([]byte(m[2]))
		if _, known := field.Fields.Field(key); !ok || !known {
			break
		}
		end = from + len(line)
	}
	return end
}

// nextLine is where the line behind that place begins, the end of the text where there
// is none.
func nextLine(src []byte, at int) int {
	if n := bytes.IndexByte(src[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(src)
}

// dropBlock takes a row away with its remarks, and one of the empty lines around it.
// What is above its [[name]] stays.
func (r *rewriter) dropBlock(field Field, row int) {
	blocks, _ := r.blocks(field.Name())
	s := blocks[row]
	from := bytes.LastIndexByte(r.src[:s.head.start], '\n') + 1
	to := nextLine(r.src, r.end(s, field))
	above := bytes.LastIndexByte(r.src[:max(from-1, 0)], '\n') + 1 // the line above
	if len(bytes.TrimSpace(r.src[above:from])) == 0 {
		if to == len(r.src) {
			from = above
		} else if line := firstLine(r.src[to:]); len(bytes.TrimSpace(line)) == 0 {
			to = nextLine(r.src, to)
		}
	}
	r.splice(from, to, "")
}

// append writes new rows behind the last one, as that one is written; the first rows of
// a list follow the other lines of their table, or come at the end of the text.
func (r *rewriter) append(field Field, rows []Values) {
	head, indent, gap := field.Name(), "", r.eol
	at := r.tableEnd(field)
	if blocks, _ := r.blocks(field.Name()); len(blocks) > 0 {
		s := blocks[len(blocks)-1]
		head, at = s.head.key, r.belowRemarks(s, r.end(s, field))
		if len(s.entries) > 0 {
			first := s.entries[0].start
			indent = string(r.src[bytes.LastIndexByte(r.src[:first], '\n')+1 : first])
		}
		if len(blocks) > 1 && !r.apart(s) {
			gap = ""
		}
	}
	var b strings.Builder
	for i, row := range rows {
		if at > 0 || i > 0 {
			b.WriteString(r.eol + gap)
		}
		b.WriteString("[[" + head + "]]")
		for _, cell := range field.Fields {
			if text, err := cell.checked(row[cell.Name()]); err == nil {
				b.WriteString(r.eol + indent + cell.Name() + " = " + text)
			}
		}
	}
	if at == len(r.src) {
		b.WriteString(r.eol)
	}
	r.splice(at, at, b.String())
}

// belowRemarks is where the remarks end that are directly below that place. Those that
// reach down to the next table belong to that one.
func (r *rewriter) belowRemarks(s section, at int) int {
	end := at
	for from := nextLine(r.src, at); from < s.to; from = nextLine(r.src, from) {
		line := bytes.TrimSuffix(firstLine(r.src[from:s.to]), []byte("\r"))
		if !commented.Match(line) {
			return end
		}
		end = from + len(line)
	}
	if s.to < len(r.src) {
		return at
	}
	return end
}

// apart reports whether an empty line is above a row and its remarks.
func (r *rewriter) apart(s section) bool {
	for end := bytes.LastIndexByte(r.src[:s.head.start], '\n'); end > 0; {
		begin := bytes.LastIndexByte(r.src[:end], '\n')
		line := bytes.TrimSpace(r.src[begin+1 : end])
		if len(line) == 0 || line[0] != '#' {
			return len(line) == 0
		}
		end = begin
	}
	return false
}

// tableEnd is where the lines of a list's table end, or those of the text where it has
// no such table. Remarks directly above the next table belong to that one.
func (r *rewriter) tableEnd(field Field) int {
	end := len(r.src)
	table := field.Name()[:strings.LastIndexByte(field.Name(), '.')+1]
	for _, s := range sections(r.src) {
		if table != "" && strings.HasPrefix(s.prefix, table) {
			end = s.to
		}
	}
	for end < len(r.src) {
		above := bytes.LastIndexByte(r.src[:end-1], '\n') + 1
		if above == 0 || !commented.Match(bytes.TrimRight(r.src[above:end], "\r\n")) {
			break
		}
		end = above
	}
	return len(bytes.TrimRight(r.src[:end], " \t\r\n"))
}

// rowsAsWanted compares the rows of a list in the text as it was, as it is now and as
// they were wanted. Keys that a row has besides its cells are as they were.
func (f Field) rowsAsWanted(before, after map[string]any, want []Values) bool {
	rawWas, _ := at(before, f.Name())
	rawIs, _ := at(after, f.Name())
	was, oldOthers := f.rows(rawWas)
	is, others := f.rows(rawIs)
	if !f.Fields.same(is, want) {
		return false
	}
	for i, j := range f.Fields.matched(was, want) {
		if j >= 0 && oldOthers[i] != others[j] {
			return false
		}
	}
	return true
}

// faulty stands for a value of a row that has a fault: it is like no other.
type faulty struct{}

// rows are the tables of a list as they are decoded, and of each what else is in it.
func (f Field) rows(raw any) (rows []Values, others []string) {
	tables, _ := tablesOf(raw)
	for _, table := range tables {
		row, other := Values{}, map[string]any{}
		for key, x := range table {
			cell, known := f.Fields.Field(key)
			if !known {
				other[key] = x
				continue
			}
			v, complaint := cell.value(x)
			if complaint != "" {
				v = faulty{}
			}
			row[key] = v
		}
		rows, others = append(rows, row), append(others, fmt.Sprintf("%T %v", other, other))
	}
	return rows, others
}
