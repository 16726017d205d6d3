package form

import (
	"bytes"
	"strconv"
	"strings"
)

// spots finds where the keys and values of a TOML text stand. The decoder
// checks the text but keeps no places, so this walks a text that is already
// known to be valid and needs to tell apart only what bears on places: keys,
// strings, lists and tables. The names are dotted; items of lists are numbered,
// "kit[0].item".
func spots(src []byte) (keys, values map[string]Place) {
	w := &walker{
		src:    src,
		keys:   map[string]Place{},
		values: map[string]Place{},
		tables: map[string]int{},
	}
	w.document()
	return w.keys, w.values
}

type walker struct {
	src          []byte
	at           int
	counted      int // bytes whose lines are counted
	line, lineAt int // lines before counted, and where the last of them ends
	keys, values map[string]Place
	tables       map[string]int // how many [[name]] were met
}

func (w *walker) document() {
	prefix := ""
	for {
		w.skip(" \t\r\n")
		if w.at >= len(w.src) {
			return
		}
		if w.src[w.at] != '[' {
			w.entry(prefix)
			continue
		}
		start := w.at
		list := bytes.HasPrefix(w.src[w.at:], []byte("[["))
		w.skipBytes("[")
		name := w.resolve(w.key())
		w.skipBytes(" \t]")
		if list {
			n := w.tables[name]
			w.tables[name] = n + 1
			w.record(w.keys, name, start)
			name += "[" + strconv.Itoa(n) + "]"
		}
		w.record(w.keys, name, start)
		w.record(w.values, name, start)
		prefix = name + "."
	}
}

// resolve numbers the lists of tables that a header such as [[kit.part]]
// passes through: the last [[kit]] is meant.
func (w *walker) resolve(parts []string) string {
	name := ""
	for i, part := range parts {
		if i > 0 {
			if n := w.tables[name]; n > 0 {
				name += "[" + strconv.Itoa(n-1) + "]"
			}
			name += "."
		}
		name += part
	}
	return name
}

// entry reads one key = value pair.
func (w *walker) entry(prefix string) {
	start := w.at
	name := prefix + strings.Join(w.key(), ".")
	w.record(w.keys, name, start)
	w.skipBytes(" \t=")
	w.value(name)
}

func (w *walker) key() (parts []string) {
	for w.at < len(w.src) {
		w.skipBytes(" \t")
		switch c := w.src[w.at]; {
		case c == '"' || c == '\'':
			start := w.at
			w.quoted()
			parts = append(parts, unescaped(string(w.src[start+1:max(start+1, w.at-1)]), c))
		default:
			start := w.at
			for w.at < len(w.src) && !strings.ContainsRune(" \t.=]\r\n", rune(w.src[w.at])) {
				w.at++
			}
			parts = append(parts, string(w.src[start:w.at]))
		}
		w.skipBytes(" \t")
		if w.at >= len(w.src) || w.src[w.at] != '.' {
			return parts
		}
		w.at++
	}
	return parts
}

// unescaped returns what a quoted part of a key stands for.
func unescaped(s string, quote byte) string {
	if quote == '\'' || !strings.Contains(s, `\`) {
		return s
	}
	raw, _ := decodeTOML([]byte(`x = "` + s + `"`))
	if x, ok := raw["x"].(string); ok {
		return x
	}
	return s
}

func (w *walker) value(name string) {
	if w.at >= len(w.src) {
		return
	}
	w.record(w.values, name, w.at)
	switch w.src[w.at] {
	case '"', '\'':
		w.quoted()
	case '[':
		w.at++
		for i := 0; w.more(']'); i++ {
			w.value(name + "[" + strconv.Itoa(i) + "]")
		}
	case '{':
		w.at++
		for w.more('}') {
			w.entry(name + ".")
		}
	default:
		for w.at < len(w.src) && !strings.ContainsRune(",]}#\r\n", rune(w.src[w.at])) {
			w.at++
		}
	}
}

// more steps to the next item of a list or table, or over its closing byte.
func (w *walker) more(closing byte) bool {
	w.skip(" \t\r\n,")
	if w.at >= len(w.src) {
		return false
	}
	if w.src[w.at] == closing {
		w.at++
		return false
	}
	return true
}

// quoted steps over a string of any of TOML's four kinds.
func (w *walker) quoted() {
	quote := w.src[w.at]
	if closing := bytes.Repeat([]byte{quote}, 3); bytes.HasPrefix(w.src[w.at:], closing) {
		w.at += 3
		for w.at < len(w.src) && !bytes.HasPrefix(w.src[w.at:], closing) {
			w.step(quote)
		}
		w.at = min(w.at+3, len(w.src))
		for w.at < len(w.src) && w.src[w.at] == quote { // up to two belong to the text
			w.at++
		}
		return
	}
	w.at++
	for w.at < len(w.src) && w.src[w.at] != quote {
		w.step(quote)
	}
	w.at = min(w.at+1, len(w.src))
}

func (w *walker) step(quote byte) {
	if quote == '"' && w.src[w.at] == '\\' {
		w.at++
	}
	w.at = min(w.at+1, len(w.src))
}

// skip steps over the given bytes and over comments.
func (w *walker) skip(bytes string) {
	for {
		w.skipBytes(bytes)
		if w.at >= len(w.src) || w.src[w.at] != '#' {
			return
		}
		for w.at < len(w.src) && w.src[w.at] != '\n' {
			w.at++
		}
	}
}

func (w *walker) skipBytes(bytes string) {
	for w.at < len(w.src) && strings.IndexByte(bytes, w.src[w.at]) >= 0 {
		w.at++
	}
}

func (w *walker) record(in map[string]Place, name string, at int) {
	if _, met := in[name]; met {
		return
	}
	for w.counted < at { // places are recorded in the order of the text
		n := bytes.IndexByte(w.src[w.counted:at], '\n')
		if n < 0 {
			w.counted = at
			break
		}
		w.counted += n + 1
		w.line, w.lineAt = w.line+1, w.counted
	}
	in[name] = Place{w.line + 1, at - w.lineAt + 1}
}
