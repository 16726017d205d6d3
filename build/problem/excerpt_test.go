package problem_test

import (
	"strings"
	"testing"

	"noonbook/build/problem"
)

func TestFind(t *testing.T) {
	long := strings.Repeat("0123456789", 20)
	for _, c := range []struct {
		name         string
		text         string
		line, column int
		want         string // "" where there is nothing to show
	}{
		{"first line", "latitude = 95\nb", 1, 12, "    latitude = 95\n               ^\n"},
		{"second line, line ends of another system", "a\r\nbcd\r\ne", 2, 3, "    bcd\n      ^\n"},
		{"behind a byte order mark", "\ufeffabc", 1, 2, "    abc\n     ^\n"},
		{"columns count bytes", "é = x", 1, 6, "    é = x\n        ^\n"},
		{"a tab", "\tx", 1, 2, "        x\n        ^\n"},
		{"broad letters", "月 x", 1, 5, "    月 x\n       ^\n"},
		{"a wide star", "⭐ x", 1, 5, "    ⭐ x\n       ^\n"}, // Unicode Character Database 14.0: U+2B50 is W
		{"a wide tick, a narrow arrow", "✅→x", 1, 7, "    ✅→x\n       ^\n"},
		{"a narrow picture", "🌡 x", 1, 6, "    🌡 x\n      ^\n"}, // U+1F321 is N
		{"a hexagram", "䷀ x", 1, 5, "    ䷀ x\n      ^\n"},       // U+4DC0 is N up to version 15
		{"a ringed number", "㉈ x", 1, 5, "    ㉈ x\n      ^\n"},  // U+3248 is A
		{"a combining mark", "e\u0301x", 1, 4, "    e\u0301x\n     ^\n"},
		{"not UTF-8", "a\xe9b", 1, 2, "    a\ufffdb\n     ^\n"},
		{"an escape does not reach the terminal", "a\x1b[31m", 1, 1, "    a\ufffd[31m\n    ^\n"},
		{"at the end of the line", "ab", 1, 3, "    ab\n      ^\n"},
		{"beyond the end of the line", "ab", 1, 9, "    ab\n      ^\n"},
		{"a long line, near its start", long, 1, 3, "    " + long[:75] + "…\n      ^\n"},
		{"a long line, far in", long, 1, 101, "    …" + long[61:135] + "…\n" + strings.Repeat(" ", 44) + "^\n"},
		{"a line as long as a file", strings.Repeat(long, 2000), 1, 200_001, "    …" + long[161:] + long[:35] + "…\n" + strings.Repeat(" ", 44) + "^\n"},
		{"its end", strings.Repeat(long, 2000), 1, 400_001, "    …" + long[161:] + "…\n" + strings.Repeat(" ", 44) + "^\n"},
		{"the whole file", "abc", 0, 0, ""},
		{"no such line", "abc", 2, 1, ""},
		{"an empty line", "\n\n", 2, 1, ""},
	} {
		e, ok := problem.Find([]byte(c.text), problem.Place{File: "f", Line: c.line, Column: c.column})
		got := ""
		if ok {
			got = e.String()
		}
		if got != c.want {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}
