package form

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"time"
)

// Rewrite returns the TOML text with the values set in it, and everything else as it
// was: comments, order, blank lines, line ends, a byte order mark, other keys. A value
// that the text has already stays as it is written, also where it is written otherwise.
// A new one takes the place of the old; or of the first commented line of its key in
// its table, "# paper = \"A4\"", which it uncomments; or follows the last key of its
// table; or comes with its table at the end of the text. A list keeps what stands
// between its items. A key whose value is nil is commented out.
//
// A value outside the bounds of its field is an error that names the key, and so is a
// key that the form lacks or that holds tables, and a text that is not valid TOML: it
// is to be mended first. What is returned has been read again and holds the values.
func (f Form) Rewrite(src []byte, v Values) ([]byte, error) {
	body := bytes.TrimPrefix(src, []byte("\ufeff"))
	before, err := f.sound(body)
	if err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(v)) {
		if _, ok := f.Field(name); !ok {
			return nil, fmt.Errorf("%s is not a key%s", name, Meant(name, f.Names()))
		}
	}
	r := &rewriter{src: slices.Clone(body), eol: lineEnd(body)}
	for _, field := range f {
		if x, given := v[field.Name()]; given {
			if err := r.field(field, x); err != nil {
				return nil, fmt.Errorf("%s %w", field.Name(), err)
			}
		}
	}
	if err := f.asWanted(before, r.src, v); err != nil {
		return nil, err
	}
	return append(src[:len(src)-len(body):len(src)-len(body)], r.src...), nil
}

// sound reads a text that is valid TOML.
func (f Form) sound(src []byte) (map[string]any, error) {
	for _, e := range entries(src) {
		if e.deep >= 0 || e.long >= 0 {
			return nil, errors.New("the text is nested too deep, or has a key that is too long")
		}
	}
	raw, err := decodeTOML(src)
	if err == nil {
		return raw, nil
	}
	if _, faults, _ := f.Read(src); len(faults) > 0 {
		return nil, fmt.Errorf("line %d: %s", faults[0].Line, faults[0].Text)
	}
	return nil, err
}

// asWanted compares what the text says now with what it said and what was wanted.
func (f Form) asWanted(before map[string]any, src []byte, v Values) error {
	after, err := decodeTOML(src)
	if err != nil {
		return fmt.Errorf("the text cannot be changed by a program: %w", err)
	}
	for name, x := range v {
		field, _ := f.Field(name)
		if field.Kind() == Tables {
			want, _ := x.([]Values)
			if !field.rowsAsWanted(before, after, want) {
				return fmt.Errorf("%s cannot be set by a program in the place where the text has it", name)
			}
			continue
		}
		raw, there := at(after, name)
		if x == nil && !there {
			continue
		}
		got, complaint := field.value(raw)
		if x == nil || complaint != "" || !equal(got, x) {
			return fmt.Errorf("%s cannot be set by a program in the place where the text has it", name)
		}
	}
	was, is := leaves(before, v), leaves(after, v)
	if !reflect.DeepEqual(was, is) {
		return errors.New("the text cannot be changed by a program without a change of other keys")
	}
	return nil
}

// leaves returns the values of a decoded text by their dotted names, without those of v.
func leaves(raw map[string]any, v Values) map[string]any {
	all := map[string]any{}
	var into func(table map[string]any, prefix string)
	into = func(table map[string]any, prefix string) {
		for key, x := range table {
			name := prefix + key
			if nested, ok := x.(map[string]any); ok {
				into(nested, name+".")
			} else if _, set := v[name]; !set {
				all[name] = fmt.Sprintf("%T %v", x, x)
			}
		}
	}
	into(raw, "")
	return all
}

// at returns what a decoded text has under a dotted name.
func at(raw map[string]any, name string) (any, bool) {
	var x any = raw
	for part := range strings.SplitSeq(name, ".") {
		table, ok := x.(map[string]any)
		if !ok {
			return nil, false
		}
		if x, ok = table[part]; !ok {
			return nil, false
		}
	}
	return x, true
}

// equal compares two values of a field. Zones are the same by their name.
func equal(a, b any) bool {
	za, okA := a.(*time.Location)
	zb, okB := b.(*time.Location)
	if okA && okB {
		return za.String() == zb.String()
	}
	ra, okA := a.(Records)
	rb, okB := b.(Records)
	if okA && okB {
		return ra.File == rb.File
	}
	if reflect.ValueOf(a).Kind() == reflect.Slice && reflect.ValueOf(b).Kind() == reflect.Slice &&
		reflect.ValueOf(a).Len()+reflect.ValueOf(b).Len() == 0 {
		return true
	}
	return reflect.DeepEqual(a, b)
}

// A rewriter changes a TOML text that is valid.
type rewriter struct {
	src []byte
	eol string
}

func lineEnd(src []byte) string {
	if n := bytes.IndexByte(src, '\n'); n > 0 && src[n-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// splice puts text in the place of the bytes from one to before another.
func (r *rewriter) splice(from, to int, text string) {
	r.src = slices.Concat(r.src[:from], []byte(text), r.src[to:])
}

func (r *rewriter) field(field Field, x any) error {
	raw, err := decodeTOML(r.src)
	if err != nil {
		return err
	}
	old, there := at(raw, field.Name())
	if field.Kind() == Tables {
		rows, ok := x.([]Values)
		if !ok && x != nil {
			return errType
		}
		return r.tables(field, old, rows)
	}
	switch old.(type) {
	case map[string]any, []map[string]any:
		return errors.New("is a table in the text")
	}
	if x == nil {
		if there {
			return r.commentOut(field.Name())
		}
		return nil
	}
	text, err := field.checked(x)
	if err != nil {
		return err
	}
	value, complaint := field.value(old)
	switch {
	case there && complaint == "" && equal(value, x):
	case there:
		_, values := spots(r.src)
		r.replaceAt(r.offset(values[field.Name()]), field, value, x, text)
	case r.uncomment(field.Name(), text):
	default:
		r.add(field.Name(), text)
	}
	return nil
}

var errType = errors.New("does not take such a value")

// checked writes a value as TOML that is read as one the field takes.
func (f Field) checked(x any) (string, error) {
	text, ok := f.Literal(x)
	if !ok {
		return "", errType
	}
	again, err := decodeTOML([]byte("x = " + text))
	if err != nil {
		return "", err
	}
	if _, complaint := f.value(again["x"]); complaint != "" {
		return "", errors.New(complaint)
	}
	return text, nil
}

// replaceAt writes the value in the place of the one that begins there; was is that
// one, nil where it has a fault.
func (r *rewriter) replaceAt(from int, field Field, was, x any, text string) {
	to := valueEnd(r.src, from)
	if r.src[from] == '[' && text[0] == '[' && was != nil {
		r.list(from, field.literals(was), field.literals(x))
		return
	}
	r.splice(from, to, text)
}

func (r *rewriter) offset(at Place) int { return newText(r.src).lines[at.Line-1] + at.Column - 1 }

// valueEnd returns where a value ends that begins there.
func valueEnd(src []byte, from int) int {
	w := &walker{src: src, at: from, keys: map[string]Place{}, values: map[string]Place{}, tables: map[string]int{}}
	w.value("x")
	return from + len(bytes.TrimRight(src[from:w.at], " \t"))
}

// A section is what stands below a [table], up to the next one.
type section struct {
	prefix   string // of its keys: "school."; "" above the first table
	from, to int
	head     entry // of no bytes above the first table
	entries  []entry
}

func sections(src []byte) []section {
	all := []section{{to: len(src)}}
	for _, e := range entries(src) {
		last := &all[len(all)-1]
		if e.head == 0 {
			last.entries = append(last.entries, e)
			continue
		}
		last.to = e.start
		parts, _ := keyParts(e.key)
		prefix := strings.Join(parts, ".") + "."
		if e.head == 2 {
			prefix = strings.Join(parts, ".") + "[]."
		}
		all = append(all, section{prefix: prefix, from: e.end, to: len(src), head: e})
	}
	return all
}

func (s section) name(e entry) string {
	parts, _ := keyParts(e.key)
	return s.prefix + strings.Join(parts, ".")
}

func (r *rewriter) commentOut(name string) error {
	for _, s := range sections(r.src) {
		for _, e := range s.entries {
			if s.name(e) != name {
				continue
			}
			r.commentOutEntry(e)
			return nil
		}
	}
	return errors.New("stands in a table on one line; delete it there")
}

func (r *rewriter) commentOutEntry(e entry) {
	from := bytes.LastIndexByte(r.src[:e.start], '\n') + 1
	r.splice(from, e.end, "# "+strings.ReplaceAll(string(r.src[from:e.end]), "\n", "\n# "))
}

var (
	commented     = regexp.MustCompile(`^([ \t]*)#[ \t]?(.*)$`)
	commentedHead = regexp.MustCompile(`^[ \t]*#[# \t]*\[{1,2}[ \t]*[\w."-]+[ \t]*\]{1,2}[ \t]*(?:#.*)?$`)
)

// uncomment finds the first commented line of the key in its table, and makes it one
// that counts. Lines below a table that is commented out belong to that one, up to
// the next empty line.
func (r *rewriter) uncomment(name, text string) bool {
	for _, s := range sections(r.src) {
		if !strings.HasPrefix(name, s.prefix) {
			continue
		}
		below := false
		for from := s.from; from < s.to; {
			to := from + len(firstLine(r.src[from:s.to]))
			line := r.src[from:to]
			e, within := s.holding(from)
			switch {
			case within:
				below, to = false, e.end
			case len(bytes.TrimSpace(line)) == 0:
				below = false
			case commentedHead.Match(bytes.TrimSuffix(line, []byte("\r"))):
				below = true
			case !below:
				if changed, ok := counting(string(line), s.prefix, name, text); ok {
					r.splice(from, to, changed)
					return true
				}
			}
			from = to + 1
		}
	}
	return false
}

// holding returns the entry that reaches into the line that begins there, or begins
// in it.
func (s section) holding(from int) (entry, bool) {
	for _, e := range s.entries {
		if from < e.end && e.start <= from {
			return e, true
		}
	}
	return entry{}, false
}

func firstLine(text []byte) []byte {
	line, _, _ := bytes.Cut(text, []byte("\n"))
	return line
}

// counting returns a commented line with its value changed and its mark taken away,
// where it is one of that key and would be read.
func counting(line, prefix, name, text string) (string, bool) {
	end := line[len(strings.TrimSuffix(line, "\r")):]
	m := commented.FindStringSubmatch(strings.TrimSuffix(line, "\r"))
	if m == nil {
		return "", false
	}
	body := []byte(m[2])
	key, from, ok := onePair(body)
	if !ok || prefix+key != name {
		return "", false
	}
	return m[1] + m[2][:from] + text + m[2][valueEnd(body, from):] + end, true
}

// onePair reads a text that is one key = value: the key, and where the value begins.
func onePair(body []byte) (key string, value int, ok bool) {
	list := entries(body)
	if len(list) != 1 || list[0].head != 0 || list[0].value < 0 || list[0].deep >= 0 || list[0].long >= 0 {
		return "", 0, false
	}
	parts, ok := keyParts(list[0].key)
	if _, err := decodeTOML(body); err != nil || !ok {
		return "", 0, false
	}
	return strings.Join(parts, "."), list[0].value, true
}

// add writes a key that the text does not have.
func (r *rewriter) add(name, text string) {
	cut := strings.LastIndexByte(name, '.') + 1
	prefix, pair := name[:cut], name[cut:]+" = "+text
	all := sections(r.src)
	for _, s := range all {
		if s.prefix == prefix && (s.head.end > 0 || prefix == "") {
			r.addBelow(s, pair)
			return
		}
	}
	if _, values := spots(r.src); prefix != "" {
		if at, ok := values[strings.TrimSuffix(prefix, ".")]; ok && r.src[r.offset(at)] == '{' {
			r.addWithin(r.offset(at), pair)
			return
		}
	}
	var dotted section // the keys of the table that are written above all tables
	for _, e := range all[0].entries {
		if strings.HasPrefix(all[0].name(e), prefix) {
			dotted.entries = append(dotted.entries, e)
		}
	}
	if len(dotted.entries) > 0 {
		r.addBelow(dotted, prefix+pair)
		return
	}
	if n := len(r.src); n > 0 && r.src[n-1] != '\n' {
		r.src = append(r.src, r.eol...)
	}
	if len(r.src) > 0 {
		r.src = append(r.src, r.eol...)
	}
	r.src = append(r.src, "["+strings.TrimSuffix(prefix, ".")+"]"+r.eol+pair+r.eol...)
}

// addBelow writes a pair on a line below the last one of the section.
func (r *rewriter) addBelow(s section, pair string) {
	last := s.head
	if n := len(s.entries); n > 0 {
		last = s.entries[n-1]
		line := r.src[bytes.LastIndexByte(r.src[:last.start], '\n')+1 : last.start]
		pair = string(line) + pair
	}
	if last.end == 0 { // nothing is above
		r.splice(0, 0, pair+r.eol)
		return
	}
	r.splice(last.end, last.end, r.eol+pair)
}

// addWithin writes a pair into a table on one line.
func (r *rewriter) addWithin(from int, pair string) {
	closing := valueEnd(r.src, from) - 1
	inner := r.src[from+1 : closing]
	end := from + 1 + len(bytes.TrimRight(inner, " \t"))
	if len(bytes.TrimSpace(inner)) == 0 {
		r.splice(from+1, closing, " "+pair+" ")
		return
	}
	r.splice(end, end, ", "+pair)
}
