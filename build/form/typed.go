package form

import (
	"strconv"
	"strings"
	"time"

	"noonbook/compute/place"
)

// Take reads what a person typed into a line of a page. It takes what ParseText
// takes, and what ReadRecords takes in a cell, and what can mean one thing only:
// 46°05′N, 12 April 2027, 9h10, 250 mm. The complaint about the rest is that of
// ParseText.
func (f Field) Take(s string) (v any, complaint string) {
	s = strings.TrimSpace(spaces.Replace(s))
	v, complaint = f.take(s)
	if complaint == "" {
		return v, ""
	}
	if plain := f.Plain(s); plain != s {
		if again, wrong := f.take(plain); wrong == "" {
			return again, ""
		}
	}
	return v, complaint
}

// take reads the text as it is. An empty list has no items, not an empty one.
func (f Field) take(s string) (v any, complaint string) {
	if k := f.Kind(); k == Texts || k == Dates || k == Spans {
		s = strings.Trim(strings.Join(listed(s), ", "), ", ")
	}
	return f.ParseText(asWritten(f, s))
}

// Plain writes a text as the field takes it, where that means one thing only and the
// field does not take the text itself; advice that leaves a choice (2027-04-05 or
// 2027-05-04) is nothing that a field takes. Each item of a list is seen by itself.
func (f Field) Plain(s string) string {
	switch f.Kind() {
	case Texts, Dates, Spans:
		one := f.item()
		items := listed(s)
		for i, item := range items {
			items[i] = one.Plain(item)
		}
		return strings.Join(items, ", ")
	}
	if _, complaint := f.take(s); complaint == "" {
		return asWritten(f, s)
	}
	advice, ok := strings.CutPrefix(f.advice(s), "write ")
	if !ok {
		return s
	}
	for _, why := range []string{", with a point", " without ", ", the number of "} {
		advice, _, _ = strings.Cut(advice, why)
	}
	if text, err := strconv.Unquote(advice); err == nil {
		return text
	}
	return advice
}

// listed cuts a list at its commas and line ends, and drops what is empty. A comma
// before a year belongs to its date: April 12, 2027.
func listed(s string) []string {
	var items []string
	for item := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == ',' || r == '\n' || r == '\r' || r == ';' }) {
		item = strings.TrimSpace(item)
		if n := len(items); n > 0 && isYear(item) && dateAdvice(items[n-1]+", "+item) != "" {
			items[n-1] += ", " + item
		} else if item != "" {
			items = append(items, item)
		}
	}
	return items
}

func isYear(s string) bool {
	_, err := strconv.Atoi(s)
	return err == nil && len(s) == 4
}

// spaces are the ones that a page or a word processor puts in place of the usual.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "\r\n", "\n")

// Typed writes a value as a person types it into a line of a page; Take reads it. It
// reports false for a value that has no such writing.
func (f Field) Typed(v any) (text string, ok bool) {
	switch x := v.(type) {
	case string:
		return x, true
	case float64:
		return strings.Replace(strconv.FormatFloat(x, 'f', -1, 64), "-", "−", 1), true
	case int:
		return strings.Replace(strconv.Itoa(x), "-", "−", 1), true
	case bool:
		return strconv.FormatBool(x), true
	case place.Date:
		if x.IsZero() && len(f.Choices) == 1 {
			return f.Choices[0], true
		}
		return x.String(), !x.IsZero()
	case YearMonth:
		return strings.TrimSuffix(x.First.String(), "-01"), true
	case time.Duration:
		return clockOf(x), true
	case TimeSpan:
		return clockOf(x.From) + "–" + clockOf(x.To), true
	case *time.Location:
		return x.String(), true
	case Records:
		return x.File, true
	case []string:
		return strings.Join(x, ", "), true
	case []place.Date:
		return joined(f.item(), x)
	case []TimeSpan:
		return joined(f.item(), x)
	}
	return "", false
}

func joined[T any](one Field, list []T) (string, bool) {
	items := make([]string, len(list))
	for i, x := range list {
		text, ok := one.Typed(x)
		if !ok {
			return "", false
		}
		items[i] = text
	}
	return strings.Join(items, ", "), true
}

func clockOf(d time.Duration) string {
	minutes := int(d.Minutes())
	return strconv.Itoa(minutes/60) + ":" + strconv.Itoa(minutes%60/10) + strconv.Itoa(minutes%10)
}
