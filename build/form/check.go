package form

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	_ "time/tzdata" // zones by name on any machine
	"unicode"

	"noonbook/compute/place"
)

// value checks one raw TOML value against the field and returns it in the Go
// type of the field's kind. The complaint says what was found and what is
// allowed, without the field's name; it is empty when the value is good.
func (f Field) value(raw any) (v any, complaint string) {
	switch f.Kind() {
	case Number, Whole:
		return f.number(raw)
	case Flag:
		if b, ok := raw.(bool); ok {
			return b, ""
		}
	case Date:
		return f.date(raw)
	case Texts, Dates, Spans:
		return f.list(raw)
	default:
		if s, ok := raw.(string); ok {
			return f.text(s)
		}
		if t, ok := raw.(time.Time); ok && f.Kind() == Clock && t.Location().String() == "time-local" {
			return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute, ""
		}
	}
	return nil, f.mismatch(raw)
}

func (f Field) mismatch(raw any) string {
	if s, ok := raw.(string); ok && f.Kind() != Flag {
		if advice := f.advice(s); strings.HasPrefix(advice, "write ") {
			return fmt.Sprintf("is %s; %s", found(raw), advice)
		}
	}
	return fmt.Sprintf("is %s, want %s", found(raw), f.Allowed())
}

func (f Field) number(raw any) (any, string) {
	var x float64
	switch n := raw.(type) {
	case int64:
		x = float64(n)
	case float64:
		x = n
	default:
		return nil, f.mismatch(raw)
	}
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return nil, "is not a finite number"
	case f.Kind() == Whole && (x != math.Trunc(x) || math.Abs(x) > 1e9):
		return nil, f.mismatch(raw)
	case f.Min != f.Max && (x < f.Min || x > f.Max):
		return nil, fmt.Sprintf("%s is outside %s to %s", f.measure(x), f.measure(f.Min), f.measure(f.Max))
	case f.Kind() == Whole:
		return int(x), ""
	}
	return x, ""
}

// measure writes a number with the field's unit: 95°, 110 mm.
func (f Field) measure(x float64) string {
	s := strings.Replace(strconv.FormatFloat(x, 'g', -1, 64), "-", "−", 1)
	if math.Abs(x) < 1e15 {
		s = strings.Replace(strconv.FormatFloat(x, 'f', -1, 64), "-", "−", 1)
	}
	switch f.Unit {
	case "":
		return s
	case "deg":
		return s + "°"
	}
	return s + " " + f.Unit
}

func (f Field) date(raw any) (any, string) {
	switch d := raw.(type) {
	case time.Time:
		if d.Location().String() == "date-local" {
			return place.Date{Year: d.Year(), Month: d.Month(), Day: d.Day()}, ""
		}
	case string:
		if slices.Contains(f.Choices, d) {
			return place.Date{}, ""
		}
		if date, err := place.ParseDate(d); err == nil {
			return date, ""
		}
		if f.Named {
			return f.named(d)
		}
	}
	return nil, f.mismatch(raw)
}

func (f Field) text(s string) (any, string) {
	if r, bad := control(s); bad {
		return nil, fmt.Sprintf("holds the control character U+%04X; delete it", r)
	}
	switch f.Kind() {
	case CSV:
		if strings.TrimSpace(s) == "" {
			return nil, f.mismatch(s)
		}
		return Records{File: s}, ""
	case Month:
		if first, err := place.ParseDate(s + "-01"); err == nil {
			return YearMonth{first}, ""
		}
		if f.Named {
			return f.named(s)
		}
		return nil, f.mismatch(s)
	case Clock:
		if c, ok := clock(s); ok {
			return c, ""
		}
		return nil, f.mismatch(s)
	case Span:
		from, to, _ := strings.Cut(strings.ReplaceAll(s, "–", "-"), "-")
		a, okA := clock(strings.TrimSpace(from))
		b, okB := clock(strings.TrimSpace(to))
		if okA && okB && a < b {
			return TimeSpan{a, b}, ""
		}
		return nil, f.mismatch(s)
	case Zone:
		if s == "" || s == "Local" {
			return nil, f.mismatch(s)
		}
		z, err := time.LoadLocation(s)
		if err != nil {
			return nil, fmt.Sprintf("%q is not in the IANA time zone database; want a name such as %q", shortened(s), "America/Moncton")
		}
		return z, ""
	}
	if f.Choices != nil && !slices.Contains(f.Choices, s) {
		return nil, fmt.Sprintf("%q is unknown, want %s%s", shortened(s), f.Allowed(), Meant(s, f.Choices))
	}
	if f.Required && strings.TrimSpace(s) == "" {
		return nil, "is empty"
	}
	return s, ""
}

// control finds a control character that is no part of a written text. A page and
// a terminal do with such a character what nobody sees.
func control(s string) (rune, bool) {
	for i, r := range s {
		switch {
		case r == '\t' || r == '\n' || r == '\r' && strings.HasPrefix(s[i:], "\r\n"):
		case unicode.IsControl(r):
			return r, true
		}
	}
	return 0, false
}

var clockPattern = regexp.MustCompile(`^([01]?\d|2[0-3]):([0-5]\d)$`)

func clock(s string) (time.Duration, bool) {
	m := clockPattern.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	hours, _ := strconv.Atoi(m[1])
	minutes, _ := strconv.Atoi(m[2])
	return time.Duration(hours)*time.Hour + time.Duration(minutes)*time.Minute, true
}

func (f Field) list(raw any) (any, string) {
	items, ok := raw.([]any)
	if !ok {
		return nil, f.mismatch(raw)
	}
	if most := f.mostItems(); most > 0 && len(items) > most {
		return nil, fmt.Sprintf("has %d items; up to %d are taken", len(items), most)
	}
	one := f.item()
	var texts []string
	var dates []place.Date
	var days dayList
	var spans []TimeSpan
	for _, item := range items {
		v, complaint := one.value(item)
		if complaint != "" {
			return nil, complaint
		}
		switch v := v.(type) {
		case string:
			texts = append(texts, v)
		case place.Date:
			dates, days = append(dates, v), append(days, v)
		case Day:
			days = append(days, v)
		case TimeSpan:
			spans = append(spans, v)
		}
	}
	switch f.Kind() {
	case Dates:
		if len(days) > len(dates) {
			return days, ""
		}
		return dates, ""
	case Spans:
		return spans, ""
	}
	return texts, ""
}

// item returns the field of one item of a list.
func (f Field) item() Field {
	name, kind := f.Name(), f.Kind()
	f.Min, f.Max = 0, 0 // of the list
	switch kind {
	case Texts:
		f.Key = Key[string](name)
	case Dates:
		f.Key = Key[place.Date](name)
	case Spans:
		f.Key = Key[TimeSpan](name)
	}
	return f
}

// mostItems is how many items a list may have; 0 for any number.
func (f Field) mostItems() int {
	if f.Max > 0 && !math.IsInf(f.Max, 1) {
		return int(f.Max)
	}
	return 0
}

// wrongItem returns the first item of a list that has a complaint.
func (f Field) wrongItem(raw any) (int, bool) {
	items, ok := raw.([]any)
	if !ok || f.Kind() != Texts && f.Kind() != Dates && f.Kind() != Spans {
		return 0, false
	}
	if most := f.mostItems(); most > 0 && len(items) > most {
		return most, true
	}
	for i, x := range items {
		if _, complaint := f.item().value(x); complaint != "" {
			return i, true
		}
	}
	return 0, false
}

// shortened cuts a long text for a message.
func shortened(s string) string {
	const most = 60
	n := 0
	for i := range s {
		if n++; n > most {
			return s[:i] + "…"
		}
	}
	return s
}

// found names a raw TOML value as an author would.
func found(raw any) string {
	switch x := raw.(type) {
	case string:
		return strconv.Quote(shortened(x))
	case bool, int64:
		return fmt.Sprint(x)
	case float64:
		return strconv.FormatFloat(x, 'g', -1, 64)
	case time.Time:
		if strings.HasSuffix(x.Location().String(), "-local") {
			return "the date or time " + strings.TrimSuffix(x.Format("2006-01-02 15:04"), " 00:00")
		}
		return "the moment " + x.Format(time.RFC3339)
	case map[string]any:
		return "a table"
	}
	return "a list"
}

// ParseText reads a value that was written without TOML, as in a sentence or
// on the command line: pluto, 200, 2027-04-20, true.
func (f Field) ParseText(s string) (v any, complaint string) {
	switch f.Kind() {
	case Number, Whole:
		x, err := strconv.ParseFloat(strings.Replace(s, "−", "-", 1), 64)
		if err != nil {
			return nil, f.mismatch(s)
		}
		return f.number(x)
	case Flag:
		if s == "true" || s == "false" {
			return s == "true", ""
		}
		return nil, f.mismatch(s)
	case Texts, Dates, Spans:
		var items []any
		for item := range strings.SplitSeq(s, ",") {
			items = append(items, strings.TrimSpace(item))
		}
		return f.list(items)
	case Tables:
		return nil, f.mismatch(s)
	}
	return f.value(s)
}

// ParsePair reads one key=value that was written without TOML.
func (f Form) ParsePair(key, value string) (v any, complaint string) {
	field, ok := f.Field(key)
	if !ok {
		if len(f) == 0 {
			return nil, fmt.Sprintf("%s is not a key; it takes none", key)
		}
		return nil, key + " is not a key" + Choice(key, f.Names())
	}
	v, complaint = field.ParseText(value)
	if complaint != "" {
		complaint = key + " " + complaint
	}
	return v, complaint
}
