package form

import (
	"bytes"
	"errors"
	"fmt"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// A text is a TOML text with its lines, and what of it can be read.
type text struct {
	src   []byte
	lines []int // where they begin
}

func newText(src []byte) *text {
	t := &text{src: src, lines: []int{0}}
	for i, c := range src {
		if c == '\n' {
			t.lines = append(t.lines, i+1)
		}
	}
	return t
}

// place returns the line and column of a byte.
func (t *text) place(at int) Place {
	at = max(0, min(at, len(t.src)))
	line := sort.Search(len(t.lines), func(i int) bool { return t.lines[i] > at })
	return Place{line, at - t.lines[line-1] + 1}
}

// decode reads the text. Of a text with mistakes it reads the rest, so that one run
// tells them all: each entry is tried alone, those that fail are diagnosed and
// overwritten with spaces, and what remains is read as a whole.
func (r *reader) decode(f Form, src []byte) (raw map[string]any, rest []byte) {
	r.text = newText(src)
	list := entries(src)
	tame := true
	for _, e := range list {
		tame = tame && e.deep < 0 && e.long < 0
	}
	if tame {
		raw, err := decodeTOML(src)
		if err == nil {
			return raw, src
		}
		if len(list) == 0 { // nothing but white space and comments, and yet wrong
			r.fault(r.text.place(faultyByte(src)), "%s", r.complaint(err))
			return nil, src
		}
	}
	c := &checker{reader: r, form: f, rest: append([]byte(nil), src...), seen: map[string]met{}, count: map[string]int{}, off: make([]bool, len(list)), path: make([]string, len(list)), list: list}
	c.check()
	if r.full() {
		return nil, c.rest
	}
	return c.whole(), c.rest
}

// decodeTOML is toml.Decode without its panics, of which there should be none.
func decodeTOML(src []byte) (raw map[string]any, err error) {
	defer func() {
		if x := recover(); x != nil {
			raw, err = nil, fmt.Errorf("%v", x)
		}
	}()
	_, err = toml.Decode(string(src), &raw)
	return raw, err
}

// A checker goes through the entries of a text that has mistakes.
type checker struct {
	*reader
	form  Form
	list  []entry
	path  []string       // by entry: where it stands, as in reader.places
	off   []bool         // by entry: overwritten
	seen  map[string]met // by path
	count map[string]int // of the [[tables]] of a name
	rest  []byte

	headless bool // the last line that was examined is a [table] without its first bracket
}

// A met is what a text has said of a name before.
type met struct {
	line int
	sort metSort
}

type metSort int

const (
	metValue metSort = iota
	metTable         // [name]
	metList          // [[name]]
	metAbove         // it holds others
)

// check finds what is wrong with each entry, and overwrites it. Below a table
// whose line is faulty nothing can be placed, so that is overwritten too.
func (c *checker) check() {
	prefix, lost := "", false
	for i, e := range c.list {
		if c.full() { // the rest is not looked at
			c.lostAll = true
			return
		}
		c.headless = false
		faulty := c.faulty(i, e, prefix)
		switch {
		case (e.head > 0 || c.headless) && faulty:
			lost, c.lostAll = true, true
			c.blank(i)
			prefix = "" // of what cannot be told, unless only the brackets are wrong
			if key := strings.TrimRight(e.key, "] "); len(key) <= maxKey && bareKey.MatchString(key) {
				prefix = key + "."
				if e.head == 2 {
					prefix = key + "[0]."
				}
			}
		case e.head > 0:
			prefix, lost = c.enter(i, e)
			if lost {
				c.blank(i)
				c.lostAll = c.lostAll || prefix == ""
			}
		case faulty || lost:
			c.lose(i)
		default:
			c.define(i, e)
		}
	}
}

// faulty reports what is wrong with an entry taken alone. It notes the entry's path.
func (c *checker) faulty(i int, e entry, prefix string) bool {
	tame := e.long < 0 && e.deep < 0
	parts, ok := []string(nil), false
	if tame {
		parts, ok = keyParts(e.key)
	}
	if ok && e.head == 0 {
		c.path[i] = prefix + strings.Join(parts, ".")
	}
	switch {
	case e.long >= 0:
		c.fault(c.text.place(e.long), "a key of more than %d letters; no key is so long", maxKey)
		return true
	case e.deep >= 0:
		c.fault(c.text.place(e.deep), "lists and tables within one another, more than %d deep", maxDeep)
		return true
	}
	_, err := decodeTOML(c.text.src[e.start:e.end])
	if err == nil {
		return false
	}
	before := len(c.faults)
	d := &doctor{checker: c, entry: e, prefix: prefix, path: c.path[i]}
	d.examine()
	if len(c.faults) == before {
		c.fault(c.text.place(e.start+faultAt(err)), "%s", c.complaint(err))
	}
	return true
}

// enter notes a [table], and returns what its keys begin with; lost where it
// cannot be opened.
func (c *checker) enter(i int, e entry) (prefix string, lost bool) {
	parts, _ := keyParts(e.key)
	name, line := "", c.text.place(e.start).Line
	for k, part := range parts {
		if name != "" {
			name += "."
		}
		name += part
		was, known := c.seen[name]
		if k < len(parts)-1 {
			switch {
			case known && was.sort == metValue:
				c.fault(c.text.place(e.start), "%s is a value in line %d, so it cannot be a table as well", shown(name), was.line)
				return "", true
			case known && was.sort == metList:
				name += fmt.Sprintf("[%d]", c.count[name]-1)
			case !known:
				c.seen[name] = met{line, metAbove}
			}
			continue
		}
		switch {
		case e.head == 2 && (!known || was.sort == metList):
			c.seen[name] = met{line, metList}
			c.count[name]++
			name += fmt.Sprintf("[%d]", c.count[name]-1)
		case known && was.sort == metTable && e.head == 1:
			c.fault(c.text.place(e.start), "[%s] is there twice; put its keys below the one in line %d", shown(name), was.line)
			c.path[i] = name
			return name + ".", true
		case known && was.sort == metValue:
			c.fault(c.text.place(e.start), "%s is a value in line %d, so it cannot be a table as well", shown(name), was.line)
			return "", true
		case known && was.sort != metAbove:
			c.fault(c.text.place(e.start), "%s is written otherwise in line %d: either once as [%s] or each time as [[%s]]", shown(name), was.line, shown(name), shown(name))
			return "", true
		default:
			c.seen[name] = met{line, metTable}
		}
	}
	c.path[i] = name
	return name + ".", false
}

// define notes a key, and reports one that was there.
func (c *checker) define(i int, e entry) {
	name := c.path[i]
	line := c.text.place(e.start).Line
	if was, known := c.seen[name]; known {
		what := "is there twice; the first is in line %d"
		if was.sort != metValue {
			what = "is a table in line %d, so it cannot be a value as well"
		}
		c.fault(c.text.place(e.start), "%s "+what, shown(name), was.line)
		c.blank(i)
		return
	}
	c.seen[name] = met{line, metValue}
}

// lose overwrites a faulty entry, and notes its name, so that it is not said to
// be missing.
func (c *checker) lose(i int) {
	c.blank(i)
	name := c.path[i]
	if name == "" {
		c.lostAll = true
	}
	for ; name != ""; name = name[:max(0, strings.LastIndexByte(name, '.'))] {
		c.lost[name] = true
	}
}

func (c *checker) blank(i int) {
	c.off[i] = true
	for k := c.list[i].start; k < c.list[i].end; k++ {
		if c.rest[k] != '\n' && c.rest[k] != '\r' {
			c.rest[k] = ' '
		}
	}
}

// whole reads what remains. Entries that are right alone can still contradict one
// another; those are found one by one, up to a bound on the work.
func (c *checker) whole() map[string]any {
	const mostBytes = 4 << 20
	for work := 0; work <= mostBytes; work += len(c.rest) + 1<<15 {
		raw, err := decodeTOML(c.rest)
		if err == nil {
			return raw
		}
		at := faultAt(err)
		i := sort.Search(len(c.list), func(i int) bool { return c.list[i].start > at }) - 1
		for i > 0 && c.off[i] {
			i--
		}
		if i < 0 || c.off[i] || at >= c.list[i].end {
			if !c.betweenEntries(at, err) {
				break
			}
			continue
		}
		c.fault(c.text.place(at), "%s", c.complaint(err))
		if c.list[i].head > 0 { // what follows has no table any more
			c.lostAll = true
			for k := i + 1; k < len(c.list) && c.list[k].head == 0; k++ {
				c.blank(k)
			}
		}
		c.lose(i)
	}
	c.lostAll = true
	if len(c.faults) == 0 { // whatever it is, a text that cannot be read is not sound
		_, err := decodeTOML(c.rest)
		c.fault(c.text.place(faultAt(err)), "%s", c.complaint(err))
	}
	return nil
}

// betweenEntries reports a mistake in a line that is no entry, such as a comment with
// a control character, and overwrites the line; false where it is overwritten already.
func (c *checker) betweenEntries(at int, err error) bool {
	number := c.text.place(at).Line
	from, to := c.text.lines[number-1], len(c.rest)
	if number < len(c.text.lines) {
		to = c.text.lines[number] - 1
	}
	line := c.rest[from:to]
	if len(bytes.TrimSpace(line)) == 0 {
		return false
	}
	complaint := c.complaint(err)
	if i := faultyByte(line); i < len(line) && i >= 0 {
		if r, _ := utf8.DecodeRune(line[i:]); wrongRune(line, i, r) {
			at, complaint = from+i, byteComplaint(line[i:])
		}
	}
	c.fault(c.text.place(at), "%s", complaint)
	for i := range line {
		line[i] = ' '
	}
	return true
}

// complaint says in our words what the library says.
func (r *reader) complaint(err error) string {
	var parse toml.ParseError
	if !errors.As(err, &parse) || parse.Message == "" {
		return "not valid TOML"
	}
	text := strings.TrimSuffix(strings.ToLower(parse.Message[:1])+parse.Message[1:], ".")
	return "not valid TOML: " + shownLong(text)
}

// faultAt is the byte at which the library met a mistake.
func faultAt(err error) int {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return 0
	}
	return max(0, parse.Position.Start)
}

// faultyByte is the first byte that no TOML text may hold.
func faultyByte(src []byte) int {
	for i, r := range string(src) {
		if wrongRune(src, i, r) {
			return i
		}
	}
	return 0
}

func wrongRune(src []byte, at int, r rune) bool {
	if r == utf8.RuneError {
		_, size := utf8.DecodeRune(src[at:])
		return size == 1
	}
	if r == '\r' {
		return at+1 >= len(src) || src[at+1] != '\n'
	}
	return r != '\t' && r != '\n' && (r < ' ' || r == 0x7f)
}

// keyParts splits a dotted key. It reports false for what is no key.
func keyParts(key string) (parts []string, ok bool) {
	w := &walker{src: []byte(key)}
	if key == "" {
		return nil, false
	}
	parts = w.key()
	for _, part := range parts {
		if part == "" && !strings.ContainsAny(key, `"'`) {
			return parts, false
		}
	}
	return parts, w.at >= len(key) && !strings.HasSuffix(strings.TrimSpace(key), ".")
}

// shown returns what an author wrote as a message can show it: one line, of which
// nothing moves the cursor, cut where it is long.
func shown(s string) string { return cut(s, 40) }

func shownLong(s string) string { return cut(s, 120) }

func cut(s string, most int) string {
	n := 0
	var b strings.Builder
	for _, r := range s {
		if n++; n > most {
			b.WriteRune('…')
			break
		}
		if !unicode.IsPrint(r) && !unicode.Is(unicode.Zs, r) {
			r = utf8.RuneError
		}
		b.WriteRune(r)
	}
	return b.String()
}
