package form

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// A Fault is one thing wrong with a TOML text, with its 1-based line and byte
// column.
type Fault struct {
	Line, Column int
	Text         string
}

// A Place is a 1-based line and byte column in a TOML text.
type Place struct{ Line, Column int }

// Read checks a TOML text against the form. It returns the values that were
// written, without defaults and without those that have a fault; every fault
// in the order of the text, mistakes of TOML itself among them as far as can be
// told; and where each value stands, items of lists under "name[0]".
func (f Form) Read(src []byte) (Values, []Fault, map[string]Place) { return f.read(src, false) }

// ReadPart is Read of a text that need not hold what is required: the rest comes from
// elsewhere.
func (f Form) ReadPart(src []byte) (Values, []Fault, map[string]Place) { return f.read(src, true) }

func (f Form) read(src []byte, part bool) (Values, []Fault, map[string]Place) {
	r := &reader{values: Values{}, lost: map[string]bool{}, part: part}
	raw, rest := r.decode(f, src)
	if raw != nil {
		r.keys, r.places = spots(rest)
		r.table(f, raw, "", "", r.values)
	}
	slices.SortStableFunc(r.faults, func(a, b Fault) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return r.values, r.faults, r.places
}

type reader struct {
	keys, places map[string]Place
	values       Values
	faults       []Fault
	text         *text
	lost         map[string]bool // what cannot be read, by path, and what holds it
	lostAll      bool            // so much cannot be read that nothing is missing for sure
	part         bool            // what is required may come from elsewhere, save in lists of tables
}

// Nobody reads hundreds of problems of one text, and each takes its time: after
// mostHints of them near names are not looked for, after mostFaults nothing is.
const (
	mostHints  = 100
	mostFaults = 1000
)

func (r *reader) many() bool { return len(r.faults) >= mostHints }
func (r *reader) full() bool { return len(r.faults) > mostFaults }

// table checks the keys of one table. Fields are named below prefix in the
// form; path is where the table stands in the text.
func (r *reader) table(f Form, raw map[string]any, prefix, path string, into Values) {
	for _, key := range slices.Sorted(maps.Keys(raw)) {
		if r.full() {
			return
		}
		name, at := prefix+key, path+key
		if c, bad := control(key); bad || strings.ContainsAny(key, "\t\r\n") {
			if !bad {
				c = rune(key[strings.IndexAny(key, "\t\r\n")])
			}
			r.fault(r.keys[at], "a key holds the control character U+%04X; it has letters, digits, _ and - only", c)
			continue
		}
		field, known := f.Field(name)
		nested, isTable := raw[key].(map[string]any)
		switch {
		case known && field.Kind() == Tables:
			r.tables(field, raw[key], at, into)
		case known:
			v, complaint := field.value(raw[key])
			if complaint != "" {
				if i, ok := field.wrongItem(raw[key]); ok {
					at += "[" + strconv.Itoa(i) + "]"
				}
				r.fault(r.places[at], "%s %s", name, complaint)
				continue
			}
			into[name] = v
		case f.hasTable(name) && isTable:
			r.table(f, nested, name+".", at+".", into)
		case f.hasTable(name):
			r.fault(r.places[at], "%s is %s, want a table with the keys %s", name, found(raw[key]), strings.Join(f.below(name), ", "))
		default:
			r.unknown(f, prefix, key, at)
		}
	}
	r.missing(f, raw, prefix, path)
}

func (r *reader) tables(field Field, raw any, at string, into Values) {
	items, ok := tablesOf(raw)
	if !ok {
		r.fault(r.places[at], "%s %s", field.Name(), field.mismatch(raw))
		return
	}
	if most := field.mostItems(); most > 0 && len(items) > most {
		r.fault(r.places[at+"["+strconv.Itoa(most)+"]"], "%s has %d tables; up to %d are taken", field.Name(), len(items), most)
		return
	}
	var rows []Values
	for i, item := range items {
		if r.full() {
			return
		}
		row := Values{}
		r.table(field.Fields, item, "", at+"["+strconv.Itoa(i)+"].", row)
		rows = append(rows, field.Fields.Complete(row))
	}
	into[field.Name()] = rows
}

// tablesOf returns the tables of a list as it is decoded, and whether it holds nothing
// else.
func tablesOf(raw any) ([]map[string]any, bool) {
	items, ok := raw.([]map[string]any)
	if ok {
		return items, true
	}
	list, ok := raw.([]any)
	for _, x := range list {
		t, isTable := x.(map[string]any)
		ok = ok && isTable
		items = append(items, t)
	}
	return items, ok
}

func (r *reader) unknown(f Form, prefix, key, at string) {
	here := f.below(strings.TrimSuffix(prefix, "."))
	for i := range here {
		here[i] = prefix + here[i]
	}
	hint := ""
	if !r.many() {
		hint = Meant(prefix+key, here)
	}
	if hint == "" && !r.many() {
		for _, name := range f.Names() { // the right key in the wrong table
			if strings.HasSuffix(name, "."+key) {
				hint = `; it belongs in the table [` + strings.TrimSuffix(name, "."+key) + `]`
			}
		}
	}
	switch {
	case hint != "":
	case len(here) == 0:
		hint = "; none is allowed here"
	default:
		hint = "; want one of " + strings.Join(here, ", ")
	}
	r.fault(r.keys[at], "%s is not a key%s", shown(prefix+key), hint)
}

// missing reports required fields that the table lacks, at the table's head,
// or once for a whole nested table that is not there.
func (r *reader) missing(f Form, raw map[string]any, prefix, path string) {
	for _, field := range f {
		key, ok := strings.CutPrefix(field.Name(), prefix)
		if !ok || !field.Required {
			continue
		}
		first, _, nested := strings.Cut(key, ".")
		if _, there := raw[first]; there || r.lostAll || r.lost[path+first] || r.part && !strings.Contains(path, "[") {
			continue
		}
		at := Place{1, 1}
		if s, ok := r.places[strings.TrimSuffix(path, ".")]; ok {
			at = s
		}
		if nested {
			r.fault(at, "[%s] is missing: %s, %s", first, field.Name(), field.Allowed())
			continue
		}
		r.fault(at, "%s is missing: %s", field.Name(), field.Allowed())
	}
}

func (r *reader) fault(at Place, format string, args ...any) {
	if at.Line == 0 {
		at = Place{1, 1}
	}
	if r.full() {
		return
	}
	if len(r.faults) == mostFaults {
		format, args = "more than %d mistakes; the rest is not looked at", []any{mostFaults}
	}
	r.faults = append(r.faults, Fault{at.Line, at.Column, cut(fmt.Sprintf(format, args...), longestFault)})
}

// longestFault is what a message has room for, in letters: the longest of ours, which
// lists the keys of a table, has some 400.
const longestFault = 1000

// hasTable reports whether some field's name goes on below name.
func (f Form) hasTable(name string) bool { return len(f.below(name)) > 0 && name != "" }

// below returns the keys that may stand in the table of that name, "" for the
// top.
func (f Form) below(table string) []string {
	prefix := table + "."
	if table == "" {
		prefix = ""
	}
	var keys []string
	for _, name := range f.Names() {
		if rest, ok := strings.CutPrefix(name, prefix); ok {
			key, _, _ := strings.Cut(rest, ".")
			if !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	return keys
}
