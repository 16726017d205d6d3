package form

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A doctor finds what is wrong with one entry that the TOML library refuses, and
// says what to write instead.
type doctor struct {
	*checker
	entry  entry
	prefix string // of the paths in the entry's table
	path   string // of the key, as in reader.places; "" where it cannot be told
	at     int    // next byte
}

func (d *doctor) say(at int, format string, args ...any) {
	d.fault(d.text.place(at), format, args...)
}

func (d *doctor) examine() {
	src, e := d.text.src, d.entry
	if n := d.wrongByte(); n >= 0 {
		d.say(n, "%s", byteComplaint(src[n:]))
		return
	}
	switch {
	case e.head > 0:
		d.header()
	case e.value < 0:
		d.noValue()
	case d.key():
		d.at = e.value
		if e.open >= 0 {
			if d.notClosed(e.open); src[e.open] != '[' && src[e.open] != '{' {
				return
			}
		}
		d.value(d.path, 0)
	}
}

// wrongByte finds a control character, or what is not UTF-8.
func (d *doctor) wrongByte() int {
	text := d.text.src[d.entry.start:d.entry.end]
	for i, r := range string(text) {
		if wrongRune(text, i, r) && r != '\r' {
			return d.entry.start + i
		}
	}
	return -1
}

func byteComplaint(src []byte) string {
	if r, _ := utf8.DecodeRune(src); r != utf8.RuneError {
		return fmt.Sprintf("a control character, U+%04X; delete it", r)
	}
	return "a letter that is not UTF-8; save the file as UTF-8"
}

// notClosed reports a list, table or text without an end.
func (d *doctor) notClosed(at int) {
	switch rest := d.text.src[at:]; {
	case rest[0] == '[':
		d.say(at, "%s: the list that begins here is not closed; write ] at its end", d.label(d.path))
	case rest[0] == '{':
		d.say(at, "%s: the table that begins here is not closed; write } at its end", d.label(d.path))
	default:
		d.say(at, "%s: the text that begins here is not closed; write %s at its end", d.label(d.path), rest[:3])
	}
}

var bareKey = regexp.MustCompile(`^(?:[A-Za-z0-9_-]+|"(?:[^"\\]|\\.)*"|'[^']*')(?:[ \t]*\.[ \t]*(?:[A-Za-z0-9_-]+|"(?:[^"\\]|\\.)*"|'[^']*'))*$`)

func (d *doctor) header() {
	e := d.entry
	line := string(d.text.src[e.start:e.end])
	brackets := strings.Repeat("[", e.head)
	rest := strings.TrimPrefix(line[e.head:], line[e.head:][:strings.Index(line[e.head:]+"]", "]")])
	closing := len(rest) - len(strings.TrimLeft(rest, "]"))
	behind := strings.TrimSpace(rest[closing:])
	switch {
	case strings.Contains(e.key, "=") && closing == 0:
		d.say(e.start, "a key cannot begin with [; it has letters, digits, _ and - only")
	case e.key == "":
		d.say(e.start, "the name of the table is missing; write it between the brackets")
	case !bareKey.MatchString(e.key):
		d.say(e.start, "%q cannot be the name of a table; it has letters, digits, _ and - only%s", shown(e.key), d.meantTable(e.key))
	case closing != e.head:
		d.say(e.start, "the brackets do not match; write %s%s%s", brackets, shown(e.key), strings.Repeat("]", e.head))
	case behind != "" && behind[0] != '#':
		at := e.start + e.head + strings.Index(line[e.head:], rest) + closing
		at += len(line) - (at - e.start) - len(strings.TrimLeft(line[at-e.start:], " \t"))
		d.say(at, "%q cannot stand behind [%s]; write it on a line of its own", shown(behind), shown(e.key))
	}
}

func (d *doctor) meantTable(key string) string {
	if d.many() {
		return ""
	}
	return Meant(strings.ReplaceAll(key, " ", "_"), d.form.below(""))
}

// noValue is for a line without an equals sign.
func (d *doctor) noValue() {
	e := d.entry
	line := string(bytes.TrimSpace(d.text.src[e.start:e.end]))
	text, _, _ := strings.Cut(line, " #")
	text = strings.TrimSpace(text)
	word, rest, spaced := strings.Cut(text, " ")
	key, value, colon := strings.Cut(text, ":")
	_, known := d.field(d.below(word))
	switch {
	case colon && bareKey.MatchString(key) && strings.TrimSpace(value) != "":
		d.lost[d.below(key)] = true
		d.say(e.start+len(key), "an = stands between a key and its value, not a colon; write %s = %s", shown(key), shown(strings.TrimSpace(value)))
		d.at = e.start + len(line) - len(strings.TrimLeft(line[len(key)+1:], " \t"))
		d.value(d.below(key), 0)
	case strings.HasSuffix(text, "]") && bareKey.MatchString(strings.TrimRight(text, "]")):
		d.headless = true
		d.say(e.start, "the brackets do not match; write [%s]", shown(strings.TrimRight(text, "]")))
	case !spaced && bareKey.MatchString(text):
		d.lost[d.below(text)] = true
		d.say(e.start, "%s has no value; %s", shown(text), d.want(d.below(text)))
	case bareKey.MatchString(word) && known:
		d.lost[d.below(word)] = true
		d.say(e.start+len(word), "an = is missing; write %s = %s", shown(word), shown(strings.TrimSpace(rest)))
	default:
		d.say(e.start, "%q is neither a [table] nor a key = value", shown(text))
	}
}

// below returns the path of a key of the entry's table.
func (d *doctor) below(key string) string { return d.prefix + key }

// want says what to write for the value at a path.
func (d *doctor) want(path string) string {
	if f, ok := d.field(path); ok {
		return "want " + f.Allowed()
	}
	return "write one behind an ="
}

// key checks the part before the equals sign.
func (d *doctor) key() bool {
	e := d.entry
	switch {
	case e.key == "":
		d.say(e.start, "a key is missing before the =")
	case !bareKey.MatchString(e.key):
		hint := ""
		if !d.many() {
			hint = Meant(strings.ReplaceAll(e.key, " ", "_"), d.siblings())
		}
		d.say(e.start, "%q cannot be a key; it has letters, digits, _ and - only%s", shown(e.key), hint)
	default:
		return true
	}
	return false
}

// siblings are the keys of the table that the entry stands in.
func (d *doctor) siblings() []string {
	table := strings.TrimSuffix(d.below(""), ".")
	if f, ok := d.field(table); ok {
		return f.Fields.Names()
	}
	return d.form.below(formName(table))
}

// value checks one value. within is the bracket that it stands in, 0 for none.
func (d *doctor) value(path string, within byte) {
	src, begin := d.text.src, d.at
	if d.at >= d.entry.end || src[d.at] == '\n' || src[d.at] == '\r' || within == 0 && src[d.at] == '#' {
		text := strings.TrimSpace(string(src[d.at:d.entry.end]))
		if strings.HasPrefix(text, "#") && hexColour.MatchString(text) {
			d.say(begin, "%s stands without quotes; write %s", d.label(path), quoted(strings.TrimSpace(hexColour.FindString(text))))
			return
		}
		d.say(begin, "%s has no value; %s", d.label(path), d.want(path))
		return
	}
	switch c := src[d.at]; {
	case bytes.HasPrefix(src[d.at:], []byte(`"""`)), bytes.HasPrefix(src[d.at:], []byte(`'''`)):
		w := &walker{src: src[:d.entry.end], at: d.at}
		w.quoted()
		d.at = w.at
		d.escapes(path, begin, d.at)
		d.behind(path, within)
	case c == '"' || c == '\'':
		d.quotedText(path, within)
	case c == '[':
		d.items(path)
		d.behind(path, within)
	case c == '{':
		d.pairs(path)
		d.behind(path, within)
	default:
		d.token(path, within)
	}
}

var hexColour = regexp.MustCompile(`^#[0-9A-Fa-f]{3,8}[ \t]*(?:#|$)`)

// behind checks that nothing follows a value but what may.
func (d *doctor) behind(path string, within byte) {
	if within != 0 {
		return
	}
	rest := string(d.text.src[d.at:d.entry.end])
	text := strings.TrimSpace(rest)
	if text == "" || text[0] == '#' {
		return
	}
	at := d.at + strings.Index(rest, text)
	line, _, _ := strings.Cut(text, "\n")
	d.say(at, "%s: %q stands behind the value; nothing may, but a comment with #", d.label(path), shown(strings.TrimSpace(line)))
}

// quotedText checks a text on one line.
func (d *doctor) quotedText(path string, within byte) {
	begin := d.at
	src := d.text.src[:d.entry.end]
	s := &cutter{src: src, at: begin}
	s.text()
	d.at = s.at
	inner := string(src[begin+1 : max(begin+1, d.at-1)])
	if d.at-begin < 2 || src[d.at-1] != src[begin] || escaped(src[begin:d.at]) {
		line := string(src[begin+1 : d.at])
		whole := strings.TrimRight(line, " \t\r")
		for _, stop := range []string{",", "]", "}"} {
			if within != 0 {
				whole = strings.TrimRight(whole, stop+" ")
			}
		}
		if r, size := utf8.DecodeLastRuneInString(whole); size > 1 && typographicQuotes[r] != "" {
			d.say(begin, "%s: quotes are straight on both sides; write %s", d.label(path), quoted(whole[:len(whole)-size]))
			return
		}
		d.say(begin, "%s: the text that begins here is not closed; write %c at its end", d.label(path), src[begin])
		return
	}
	d.escapes(path, begin, d.at)
	if within != 0 {
		return
	}
	rest := string(src[d.at:])
	text := strings.TrimSpace(rest)
	switch {
	case text == "" || text[0] == '#':
	case src[begin] == '\'' && inner == "" && strings.HasSuffix(text, "''"): // ''Golden''
		d.say(begin, "%s: one straight quote on each side is enough; write %s", d.label(path), quoted(strings.Trim(text, "'")))
	case strings.HasSuffix(text, string(src[begin])):
		d.say(begin, "%s: a quote within a text is written \\\"; write %s", d.label(path), quoted(inner+string(src[begin])+strings.TrimSuffix(strings.TrimRight(rest, " \t"), string(src[begin]))))
	default:
		d.behind(path, within)
	}
}

// escaped reports whether the last quote of a text is one that a backslash makes
// part of it.
func escaped(text []byte) bool {
	if text[0] != '"' {
		return false
	}
	n := 0
	for i := len(text) - 2; i > 0 && text[i] == '\\'; i-- {
		n++
	}
	return n%2 == 1
}

var badEscape = regexp.MustCompile(`\\(?:[btnfre"\\]|x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|[ \t]*\r?\n)`)

// escapes checks the backslashes of a text in double quotes.
func (d *doctor) escapes(path string, begin, end int) {
	text := d.text.src[begin:end]
	if text[0] != '"' {
		return
	}
	for i := 0; i < len(text); i++ {
		if text[i] != '\\' {
			continue
		}
		good := badEscape.FindIndex(text[i:min(len(text), i+64)])
		if good == nil || good[0] != 0 {
			d.say(begin+i, `%s: a backslash in a text is written \\; a folder's name takes / instead`, d.label(path))
			return
		}
		i += good[1] - 1
	}
}

// items checks the items of a list.
func (d *doctor) items(path string) {
	src := d.text.src
	d.at++
	for i, comma := 0, true; !d.full(); {
		d.gap()
		switch {
		case d.at >= d.entry.end:
			return
		case src[d.at] == ']':
			d.at++
			return
		case src[d.at] == ',':
			if comma {
				d.say(d.at, "%s: a comma too many", d.label(path))
			}
			comma = true
			d.at++
		default:
			if !comma {
				d.say(d.at, "%s: a comma is missing before this", d.label(path))
			}
			before := d.at
			d.value(path+"["+strconv.Itoa(i)+"]", '[')
			i, comma = i+1, false
			if d.at == before {
				d.at++
			}
		}
	}
}

// pairs checks the keys and values of a table in braces.
func (d *doctor) pairs(path string) {
	src := d.text.src
	d.at++
	for !d.full() {
		for d.gap(); d.at < d.entry.end && src[d.at] == ','; d.gap() {
			d.at++
		}
		if d.at >= d.entry.end {
			return
		}
		if src[d.at] == '}' {
			d.at++
			return
		}
		begin := d.at
		for d.at < d.entry.end && !bytes.ContainsRune([]byte("=,}\n"), rune(src[d.at])) {
			d.at++
		}
		key := strings.TrimSpace(string(src[begin:d.at]))
		switch {
		case d.at >= d.entry.end || src[d.at] != '=':
			d.say(begin, "%s: %q has no value; write key = value", d.label(path), shown(key))
		case !bareKey.MatchString(key):
			d.say(begin, "%q cannot be a key; it has letters, digits, _ and - only", shown(key))
			d.at++
			d.gap()
			d.value(path+"."+key, '{')
		default:
			d.at++
			for d.at < d.entry.end && (src[d.at] == ' ' || src[d.at] == '\t') {
				d.at++
			}
			d.value(path+"."+key, '{')
		}
		if d.at == begin {
			d.at++
		}
	}
}

// gap steps over white space and comments between items.
func (d *doctor) gap() {
	w := &walker{src: d.text.src[:d.entry.end], at: d.at}
	w.skip(" \t\r\n")
	d.at = w.at
}

// token checks a value that is neither a text in straight quotes nor a list nor a
// table.
func (d *doctor) token(path string, within byte) {
	src, begin := d.text.src[:d.entry.end], d.at
	if r, size := utf8.DecodeRune(src[begin:]); typographicQuotes[r] != "" {
		line := oneLine(src[begin+size:])
		n := bytes.IndexAny(line, strings.TrimSuffix(typographicQuotes[r], "\""))
		if n < 0 {
			n = bytes.IndexAny(line, typographicQuotes[r])
		}
		if n >= 0 {
			_, last := utf8.DecodeRune(line[n:])
			d.at = begin + size + n + last
			d.say(begin, "%s: quotes are straight; write %s", d.label(path), quoted(string(line[:n])))
			d.behind(path, within)
			return
		}
	}
	stops := map[byte]string{0: "#\n\r", '[': ",]#\n\r", '{': ",}#\n\r"}[within]
	end := begin
	for end < len(src) && !strings.ContainsRune(stops, rune(src[end])) {
		end++
	}
	d.at = end
	word := strings.TrimRight(string(src[begin:end]), " \t")
	if within == '{' { // a comma between digits, unless a key follows
		if m := commaDigits.Find(src[end:min(len(src), end+40)]); m != nil && wholeDigits.MatchString(word) {
			word += string(m[:bytes.IndexAny(m[1:], " \t,}\r\n")+1])
			d.at = begin + len(word)
		}
	}
	if word == "" {
		d.say(begin, "%s has no value; %s", d.label(path), d.want(path))
		return
	}
	if simpleNumber(word) {
		return
	}
	if _, err := decodeTOML([]byte("x = " + word)); err == nil && !strings.ContainsAny(word, "\n\r") {
		return
	}
	d.advise(begin, path, word)
}

var (
	commaDigits = regexp.MustCompile(`^,\d+[ \t]*[,}\r\n]`)
	wholeDigits = regexp.MustCompile(`^[-+−]?\d+$`)
)

// simpleNumber spares the library the commonest items of long lists.
func simpleNumber(word string) bool {
	if word[0] == '0' && len(word) > 1 || len(word) > 15 {
		return false
	}
	for i := range len(word) {
		if word[i] < '0' || word[i] > '9' {
			return false
		}
	}
	return true
}

// advise says what to write for a word that is no TOML value.
func (d *doctor) advise(at int, path, word string) {
	label := d.label(path)
	f, known := d.field(path)
	if strings.HasPrefix(word, "=") {
		d.say(at, "%s: one = too many", label)
		return
	}
	if known && (f.Kind() == Texts || f.Kind() == Dates || f.Kind() == Spans) {
		f = f.item()
	}
	if known {
		if advice := f.advice(word); advice != "" {
			d.say(at, "%s is %s; %s", label, shown(word), advice)
			return
		}
	} else if advice := guess(word); advice != "" {
		d.say(at, "%s is %s; %s", label, shown(word), advice)
		return
	}
	if known && f.Kind() != Text && f.Kind() != CSV && f.Kind() != Zone {
		d.say(at, "%s is %s, want %s", label, shown(word), f.Allowed())
		return
	}
	d.say(at, "%s stands without quotes; write %s", label, quoted(word))
}

// quoted writes a text as TOML takes it, cut where it is long.
func quoted(s string) string {
	s = strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(strings.TrimSpace(s))
	return `"` + shown(s) + `"`
}

// label names what stands at a path as a person would.
func (d *doctor) label(path string) string {
	switch name := formName(path); {
	case name != "":
		return shown(name)
	case d.entry.key != "":
		return shown(d.entry.key)
	}
	return "the value"
}

// formName is the name that the form has for a path: that of the key in its table
// for one in a list of tables, without numbers of items.
func formName(path string) string {
	if n := strings.LastIndex(path, "]."); n >= 0 {
		path = path[n+2:]
	}
	name, _, _ := strings.Cut(path, "[")
	return name
}

// field returns what the form has at a path.
func (d *doctor) field(path string) (Field, bool) {
	f := d.form
	for {
		table, rest, nested := strings.Cut(path, "[")
		field, known := f.Field(table)
		if !known || !nested {
			return field, known
		}
		n := strings.Index(rest, "].")
		if n < 0 {
			return field, true
		}
		f, path = field.Fields, rest[n+2:]
	}
}
