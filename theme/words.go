package theme

import (
	"embed"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"noonbook/build/say"
)

//go:embed words
var wordFiles embed.FS

// Words is one language with its way of writing numbers, clocks and dates.
type Words struct {
	Code      string // BCP 47, "en"
	lines     map[string]string
	customary bool
}

// Language loads the words of a language. With customary set, lengths are
// written in feet and inches.
func Language(code string, customary bool) (*Words, error) {
	src, err := wordFiles.ReadFile("words/" + code + ".toml")
	if err != nil {
		return nil, fmt.Errorf("no words for language %q: %w", code, err)
	}
	var tree map[string]any
	if err := toml.Unmarshal(src, &tree); err != nil {
		return nil, fmt.Errorf("words of language %q: %w", code, err)
	}
	w := &Words{code, map[string]string{}, customary}
	w.collect("", tree)
	return w, nil
}

func (w *Words) collect(prefix string, tree map[string]any) {
	for key, x := range tree {
		switch x := x.(type) {
		case string:
			w.lines[prefix+key] = x
		case map[string]any:
			w.collect(prefix+key+".", x)
		}
	}
}

// Keys returns every key of the words file, sorted.
func (w *Words) Keys() []string { return slices.Sorted(maps.Keys(w.lines)) }

// Has reports whether the words file has the key.
func (w *Words) Has(key string) bool { _, ok := w.lines[key]; return ok }

// Say returns the line of the key with its gaps {1}, {2} filled. A key that is
// missing shows itself in double brackets, which tests look for.
func (w *Words) Say(key string, with ...say.Value) string {
	line, ok := w.lines[key]
	if !ok {
		return "⟦" + key + "⟧"
	}
	if !strings.Contains(line, "{") {
		return line
	}
	pairs := make([]string, 0, 2*len(with))
	for i, v := range with {
		pairs = append(pairs, "{"+strconv.Itoa(i+1)+"}", w.Text(v))
	}
	return strings.NewReplacer(pairs...).Replace(line)
}

// Line writes a phrase.
func (w *Words) Line(p say.Phrase) string { return w.Say(p.Key, p.With...) }

// Text writes a value with its unit.
func (w *Words) Text(v say.Value) string {
	if v.Phrase.Key != "" {
		return w.Line(v.Phrase)
	}
	switch v.Kind {
	case say.Quantity:
		v = w.measured(v)
		if step := math.Pow10(-v.Decimals); v.Round && v.Number >= 360-step/2 {
			v.Number = 0
		}
		return w.number(v.Number, v.Decimals) + w.suffix(v.Unit)
	case say.Lasting:
		return w.lasting(v)
	case say.TimeOfDay:
		t := v.Time.Round(time.Minute)
		return w.Say("format.clock", say.Text(strconv.Itoa(t.Hour())), say.Text(fmt.Sprintf("%02d", t.Minute())))
	case say.CalendarDay:
		return w.Say("format.date",
			say.Count(v.Time.Day()), say.Text(w.Say(fmt.Sprintf("month.%d", v.Time.Month()))), say.Text(strconv.Itoa(v.Time.Year())))
	}
	return v.Plain
}

// Cell writes a value for a column that already names the unit.
func (w *Words) Cell(v say.Value, unit string) string {
	if v.Kind == say.Quantity && v.Phrase.Key == "" && v.Unit == unit {
		v = w.measured(v)
		v.Unit = ""
	}
	return w.Text(v)
}

// Unit writes a unit for the head of a column, "" for none.
func (w *Words) Unit(unit string) string {
	unit = w.measured(say.Number(0, unit, 0)).Unit
	if unit == "" {
		return ""
	}
	return strings.TrimLeft(w.Say("units."+unit), "\u00a0")
}

// Weekday writes a day of the week and its date, "Tuesday 20 April".
func (w *Words) Weekday(t time.Time) string {
	return w.Say("format.weekday",
		say.Text(w.Say(fmt.Sprintf("weekday.%d", t.Weekday()))), say.Count(t.Day()), say.Text(w.Say(fmt.Sprintf("month.%d", t.Month()))))
}

func (w *Words) suffix(unit string) string {
	if unit == "" {
		return ""
	}
	return w.Say("units." + unit)
}

// number writes x with a true minus, the language's decimal mark, and digits
// in groups of three from ten thousand on.
func (w *Words) number(x float64, decimals int) string {
	s := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	whole, fraction, _ := strings.Cut(s, ".")
	if len(whole) > 4 {
		for i := len(whole) - 3; i > 0; i -= 3 {
			whole = whole[:i] + w.Say("format.group") + whole[i:]
		}
	}
	if fraction != "" {
		whole += w.Say("format.decimal") + fraction
	}
	if x < 0 && strings.Trim(s, "0.") != "" {
		return "−" + whole
	}
	return whole
}

func (w *Words) lasting(v say.Value) string {
	seconds := int64(math.Round(math.Abs(v.Number)))
	if v.Decimals == 0 {
		seconds = int64(math.Round(math.Abs(v.Number)/60)) * 60
	}
	sign := ""
	if v.Number < 0 && seconds > 0 {
		sign = "−"
	}
	h, m, s := seconds/3600, seconds/60%60, seconds%60
	var parts []string
	if h > 0 {
		parts = append(parts, strconv.FormatInt(h, 10)+w.suffix("h"))
	}
	if m > 0 || h == 0 && v.Decimals == 0 {
		parts = append(parts, strconv.FormatInt(m, 10)+w.suffix("min"))
	}
	if v.Decimals > 0 && (s > 0 || len(parts) == 0) {
		parts = append(parts, strconv.FormatInt(s, 10)+w.suffix("s"))
	}
	return sign + strings.Join(parts, "\u00a0")
}

// measured turns metric lengths into customary ones where the school uses
// them. 1 inch is 25.4 mm exactly: international yard and pound agreement, 1959.
func (w *Words) measured(v say.Value) say.Value {
	if !w.customary {
		return v
	}
	switch v.Unit {
	case "mm":
		v.Number, v.Unit, v.Decimals = v.Number/25.4, "in", v.Decimals+1
	case "cm":
		v.Number, v.Unit = v.Number/2.54, "in"
	case "m":
		v.Number, v.Unit, v.Decimals = v.Number/0.3048, "ft", max(0, v.Decimals-1)
	case "km":
		v.Number, v.Unit = v.Number/1.609344, "mi"
	}
	return v
}

// DayMonth writes a date without its year, "20 April".
func (w *Words) DayMonth(t time.Time) string {
	return w.Say("format.day_month", say.Count(t.Day()), say.Text(w.Say(fmt.Sprintf("month.%d", t.Month()))))
}
