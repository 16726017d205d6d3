package form

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"noonbook/compute/place"
)

// Literal writes a value of the field's Go type as TOML, so that Read returns the
// same value. It reports false for what is not written as one value: a list of tables,
// or a value of another type.
func (f Field) Literal(v any) (text string, ok bool) {
	if f.Kind() == Tables || v == nil || !f.Key.holds(v) {
		return "", false
	}
	switch x := v.(type) {
	case string:
		return basicString(x), true
	case float64:
		return numberText(x)
	case int:
		return strconv.Itoa(x), true
	case bool:
		return strconv.FormatBool(x), true
	case place.Date:
		if x.IsZero() && len(f.Choices) == 1 {
			return basicString(f.Choices[0]), true
		}
		return x.String(), !x.IsZero()
	case YearMonth:
		return basicString(strings.TrimSuffix(x.First.String(), "-01")), true
	case time.Duration:
		return basicString(clockText(x)), true
	case TimeSpan:
		return basicString(spanText(x)), true
	case *time.Location:
		return basicString(x.String()), true
	case Records:
		return basicString(x.File), true
	}
	return "[" + strings.Join(f.literals(v), ", ") + "]", true
}

// literals writes each item of a list.
func (f Field) literals(v any) (items []string) {
	switch x := v.(type) {
	case []string:
		for _, s := range x {
			items = append(items, basicString(s))
		}
	case []place.Date:
		for _, d := range x {
			items = append(items, d.String())
		}
	case []TimeSpan:
		for _, s := range x {
			items = append(items, basicString(spanText(s)))
		}
	}
	return items
}

func numberText(x float64) (string, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "", false
	}
	if math.Abs(x) < 1e15 {
		return strconv.FormatFloat(x, 'f', -1, 64), true
	}
	return strconv.FormatFloat(x, 'e', -1, 64), true // an integer of TOML has 64 bits
}

func clockText(d time.Duration) string {
	return fmt.Sprintf("%d:%02d", int(d.Hours()), int(d.Minutes())%60)
}

func spanText(s TimeSpan) string { return clockText(s.From) + "-" + clockText(s.To) }

// basicString writes a basic string (TOML 1.0.0, String).
func basicString(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\r':
			b.WriteString(`\r`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
