package typeset

import (
	"fmt"
	"html/template"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"noonbook/build/say"
	"noonbook/theme"
)

// Words is one language with its way of writing numbers, clocks and dates.
type Words struct {
	Code      string // BCP 47, "en"
	lines     map[string]line
	explained map[string]string
	customary bool
	manner    Manner
	pages     func() (*template.Template, error)
	kin       *kin
	written   *sync.Map // drawings and sheets that were written; nil where nothing is remembered
}

// A kin is a language in the measures and manners that were asked for. Each is made once.
type kin struct {
	lock sync.Mutex
	all  map[way]*Words
}

type way struct {
	customary bool
	manner    Manner
}

// Languages returns the codes of the languages that have a words file, sorted.
func Languages() []string {
	entries, err := fs.ReadDir(theme.Files(), "words")
	if err != nil {
		return nil // the folder is part of the program
	}
	var codes []string
	for _, e := range entries {
		codes = append(codes, strings.TrimSuffix(e.Name(), ".toml"))
	}
	return codes
}

// languages reads the words of each language when it is first asked for.
var languages = sync.OnceValue(func() map[string]func() (*Words, error) {
	read := map[string]func() (*Words, error){}
	for _, code := range Languages() {
		read[code] = sync.OnceValues(func() (*Words, error) { return readWords(code) })
	}
	return read
})

// Language returns the words of a language, which are only read from then on. With
// customary set, lengths are written in feet and inches. It is the same pointer each time.
func Language(code string, customary bool) (*Words, error) {
	read, ok := languages()[code]
	if !ok {
		return nil, fmt.Errorf("no words for language %q", code)
	}
	w, err := read()
	if err != nil {
		return nil, err
	}
	return w.kindred(way{customary: customary}), nil
}

// kindred returns the language as it is written in a way.
func (w *Words) kindred(in way) *Words {
	w.kin.lock.Lock()
	defer w.kin.lock.Unlock()
	if found := w.kin.all[in]; found != nil {
		return found
	}
	other := *w.kin.all[way{}]
	other.customary, other.manner, other.lines = in.customary, in.manner, in.manner.lines(other.lines)
	other.pages = sync.OnceValues(func() (*template.Template, error) { return parsePages(&other) })
	w.kin.all[in] = &other
	return &other
}

func readWords(code string) (*Words, error) {
	src, err := fs.ReadFile(theme.Files(), "words/"+code+".toml")
	if err != nil {
		return nil, fmt.Errorf("no words for language %q: %w", code, err)
	}
	texts, err := readTexts(string(src))
	if err != nil {
		return nil, fmt.Errorf("words of language %q: %w", code, err)
	}
	explained, err := explanations(code)
	if err != nil {
		return nil, err
	}
	w := &Words{Code: code, lines: make(map[string]line, len(texts)), explained: explained}
	for key, text := range texts {
		if w.lines[key], err = parseLine(w.typesetWords(text)); err != nil {
			return nil, fmt.Errorf("words of language %q: %s: %w", code, key, err)
		}
	}
	w.pages = sync.OnceValues(func() (*template.Template, error) { return parsePages(w) })
	w.kin = &kin{all: map[way]*Words{{}: w}}
	return w, nil
}

// Metric returns the same language for a school that measures in metres. Every
// working is written by it: formulas hold constants and settings that are
// metric, and a sum that is converted at each step cannot be repeated.
func (w *Words) Metric() *Words {
	metric := *w
	metric.customary = false
	return &metric
}

// Keys returns every key of the words file, sorted.
func (w *Words) Keys() []string { return slices.Sorted(maps.Keys(w.lines)) }

// Has reports whether the words file has the key.
func (w *Words) Has(key string) bool { _, ok := w.lines[key]; return ok }

// Say returns the line of the key with its gaps filled. A key that is missing
// shows itself in double brackets, which tests look for.
func (w *Words) Say(key string, with ...say.Value) string {
	l, ok := w.lines[key]
	if !ok {
		return "⟦" + key + "⟧"
	}
	if len(l) == 1 && l[0].gap == 0 {
		return l[0].text
	}
	s := make([]byte, 0, 96) // most lines are shorter
	for i, p := range l {
		if p.gap == 0 {
			s = append(s, w.following(s, l, i, with)...)
			continue
		}
		s = w.append(s, p, with)
	}
	return string(s)
}

// Line writes a phrase.
func (w *Words) Line(p say.Phrase) string { return w.Say(p.Key, p.With...) }

// Text writes a value with its unit.
func (w *Words) Text(v say.Value) string {
	if v.Metric && w.customary {
		w = w.Metric()
	}
	if v.Phrase.Key != "" {
		return w.Line(v.Phrase)
	}
	switch v.Kind {
	case say.Quantity:
		v = w.measured(v)
		return w.amount(v) + w.suffix(v)
	case say.Lasting:
		return w.lasting(v)
	case say.TimeOfDay:
		t := say.OnItsDay(v.Time, time.Minute)
		return w.clock(t.Hour(), t.Minute())
	case say.FaceHour, say.ScaleHour, say.AxisHour:
		return w.wholeHour(v.Kind, int(v.Number))
	case say.CalendarDay:
		return w.Say("format.date",
			say.Count(v.Time.Day()), say.Text(w.month(v.Time)), say.Text(strconv.Itoa(v.Time.Year())))
	}
	if v.Kind == say.Typed {
		return v.Plain
	}
	return w.Typeset(v.Plain)
}

// Cell writes a value for a column that already names the unit.
func (w *Words) Cell(v say.Value, unit string) string {
	if v.Kind == say.Quantity && v.Phrase.Key == "" && v.Unit == unit {
		return w.amount(w.measured(v))
	}
	return w.Text(v)
}

// Unit writes a unit for the head of a column, "" for none.
func (w *Words) Unit(unit string) string {
	many := w.measured(say.Number(1000, unit, 0))
	return strings.TrimLeft(w.suffix(many), "\u00a0\u202f")
}

func (w *Words) month(t time.Time) string { return w.Say("month." + strconv.Itoa(int(t.Month()))) }

// Weekday writes a day of the week and its date, "Tuesday 20 April".
func (w *Words) Weekday(t time.Time) string {
	return w.Say("format.weekday",
		say.Text(w.Say(fmt.Sprintf("weekday.%d", t.Weekday()))), say.Count(t.Day()), say.Text(w.month(t)))
}

// DayMonth writes a date without its year, "20 April".
func (w *Words) DayMonth(t time.Time) string {
	return w.Say("format.day_month", say.Count(t.Day()), say.Text(w.month(t)))
}
