package register

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"strconv"
	"strings"
	"unicode"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

// A unit is a unit.toml as it is, and what it says.
type unit struct {
	folder string // "" where there is none yet
	files  fs.FS
	src    []byte      // nil where there is no unit.toml
	fresh  form.Values // what it then begins with
	values form.Values
	places map[string]form.Place
	faults []form.Fault
	words  *typeset.Words
}

// mostToml bounds unit.toml, as build/source does.
const mostToml = 512 << 10

// unit reads what the unit's folder holds now. close ends its use.
func (r *Register) unit(q *http.Request) (u unit, close func() error, err error) {
	u = unit{folder: r.Folder(), files: nowhere{}, fresh: r.Fresh}
	close = func() error { return nil }
	if u.folder != "" {
		root, err := os.OpenRoot(u.folder)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return u, close, fmt.Errorf("opening %s: %w", u.folder, err)
		}
		if err == nil {
			u.files, close = root.FS(), root.Close
			if u.src, err = read(u.files, school.SettingsFile, mostToml); err != nil {
				return u, close, errors.Join(err, close())
			}
		}
	}
	u = u.as(u.src)
	language := school.Language.Of(u.values)
	if u.src == nil {
		asked := q.Header.Get("Accept-Language")
		language = preferred(asked)
		u.fresh = u.fresh.With(school.Language.Is(language)).With(school.Paper.Is(paper(asked)))
	}
	t, err := r.tongue(language)
	u.words = t.words
	return u, close, err
}

// as is the unit with another unit.toml.
func (u unit) as(src []byte) unit {
	u.src = src
	u.values, u.faults, u.places = school.Settings().Read(plain(src))
	return u
}

// plain is a text as build/source reads it.
func plain(src []byte) []byte {
	return bytes.ReplaceAll(bytes.TrimPrefix(src, []byte("\ufeff")), []byte("\r\n"), []byte("\n"))
}

// read returns a file, nil where there is none.
func read(files fs.FS, name string, most int64) ([]byte, error) {
	f, err := files.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return nil, errors.Join(fmt.Errorf("reading %s: it is no file", name), err)
	}
	src, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	if int64(len(src)) > most {
		return nil, fmt.Errorf("reading %s: it has more than %d kB", name, most>>10)
	}
	return append([]byte{}, src...), nil
}

// preferred is the first language of ours that a browser asks for.
func preferred(header string) string {
	for one := range strings.SplitSeq(header, ",") {
		code, _, _ := strings.Cut(strings.TrimSpace(one), ";")
		code, _, _ = strings.Cut(strings.ToLower(code), "-")
		for _, known := range typeset.Languages() {
			if code == known {
				return known
			}
		}
	}
	return "en"
}

// paper is what schools print on where a browser comes from, as far as its languages
// tell: Letter in Canada and the United States (from memory), A4 elsewhere.
func paper(header string) string {
	first, _, _ := strings.Cut(strings.ToUpper(header), ",")
	if strings.Contains(first, "-CA") || strings.Contains(first, "-US") {
		return "Letter"
	}
	return "A4"
}

// problems are those that proof would tell of the settings as they are here.
func (u unit) problems() (problem.List, error) {
	_, problems, err := source.ReadSettings(overlay{u.files, school.SettingsFile, u.src}, u.folder)
	return problems, err
}

// written is what a file says under a key, as a person would type it; "" where it says
// nothing.
func (u unit) written(f form.Field) string {
	v, ok := u.values[f.Name()]
	if !ok {
		return u.literal(f.Name())
	}
	if text, ok := dated(f, v, u.words); ok {
		return text
	}
	if text, ok := f.Typed(v); ok {
		return text
	}
	return u.literal(f.Name())
}

// dated writes days in words, where they are read as the same days.
func dated(f form.Field, v any, w *typeset.Words) (string, bool) {
	var days []place.Date
	switch x := v.(type) {
	case place.Date:
		days = []place.Date{x}
	case []place.Date:
		days = x
	}
	var texts []string
	for _, d := range days {
		if d.IsZero() || w == nil {
			return "", false
		}
		texts = append(texts, normal(w.Text(say.Date(d))))
	}
	text := strings.Join(texts, ", ")
	back, complaint := f.Take(text)
	return text, len(days) > 0 && complaint == "" && fmt.Sprint(back) == fmt.Sprint(v)
}

// literal is what stands behind a key in the file, where that cannot be read as a
// value: to the end of the line, or to its remark.
func (u unit) literal(name string) string {
	at, ok := u.places[name]
	if !ok {
		return ""
	}
	lines := strings.Split(string(plain(u.src)), "\n")
	if at.Line < 1 || at.Line > len(lines) || at.Column < 1 || at.Column > len(lines[at.Line-1]) {
		return ""
	}
	text, _, _ := strings.Cut(lines[at.Line-1][at.Column-1:], " #")
	text = strings.TrimSpace(text)
	if s, err := strconv.Unquote(text); err == nil {
		return s
	}
	return strings.Trim(text, `'"[]`)
}

// offered is what stands on the line of a key: what the file says, or for a choice
// what holds without it.
func (u unit) offered(f form.Field) string {
	if fresh, ok := u.fresh[f.Name()]; ok && u.src == nil {
		text, _ := f.Typed(fresh)
		return normal(text)
	}
	if text := u.written(f); text != "" || !chosen(f) {
		return normal(text)
	}
	return u.usual(f)
}

// usual is what holds where nothing is written.
func (u unit) usual(f form.Field) string {
	if f.Default == nil {
		return ""
	}
	text, _ := f.Typed(f.Default)
	return normal(text)
}

// chosen reports whether a field is a choice among a few.
func chosen(f form.Field) bool {
	return f.Kind() == form.Flag || f.Choices != nil && (f.Kind() == form.Text || f.Kind() == form.Texts)
}

// normal is a text as two are compared: without what a browser changes on its way.
func normal(s string) string {
	s = strings.NewReplacer("\r\n", "\n", "\u00a0", " ", "\u202f", " ").Replace(s)
	return strings.TrimSpace(s)
}

// sentence makes a sentence of what is wrong with a value, in the words of a problem
// but its key, and names other keys as the page does.
func sentence(text string, w *typeset.Words) string {
	text = named(text, w)
	text = strings.TrimSuffix(text, ": a text in quotes")
	for _, verb := range []string{"is ", "has ", "holds "} {
		if strings.HasPrefix(text, verb) {
			text = "This " + text
		}
	}
	first := []rune(text)
	if len(first) == 0 {
		return ""
	}
	first[0] = unicode.ToUpper(first[0])
	text = string(first)
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// named calls keys in a text as the page does.
func named(text string, w *typeset.Words) string {
	for _, field := range school.Settings() {
		if strings.Contains(text, field.Name()) {
			text = strings.ReplaceAll(text, field.Name(), "“"+label(field, w)+"”")
		}
	}
	return text
}

// label is what the page calls a key: a name of its own, or the key without its table.
func label(f form.Field, w *typeset.Words) string {
	if key := "label." + f.Name(); w.Has(key) {
		return w.Say(key)
	}
	name := f.Name()[strings.LastIndexByte(f.Name(), '.')+1:]
	return readable(strings.TrimSuffix(name, "_"+f.Unit))
}

// readable turns a key that has no name of its own into words.
func readable(key string) string {
	words := []rune(strings.ReplaceAll(key, "_", " "))
	words[0] = unicode.ToUpper(words[0])
	return string(words)
}
