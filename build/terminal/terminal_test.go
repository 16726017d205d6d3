package terminal_test

import (
	"testing"
	"unicode"

	"noonbook/build/terminal"
)

// Every letter of Unicode against its tables as Go has them: control characters are
// the category Cc; of the property Bidi_Control all but the three implicit marks, which
// move no other letter, are explicit (Annex 9).
func TestWhatATerminalObeys(t *testing.T) {
	obeyed := 0
	for r := rune(0); r <= unicode.MaxRune; r++ {
		implicit := r == 0x061C || r == 0x200E || r == 0x200F
		want := unicode.Is(unicode.Cc, r) || unicode.Is(unicode.Bidi_Control, r) && !implicit
		if terminal.Obeys(r) != want {
			t.Errorf("%U is obeyed: %v", r, !want)
		}
		if ends := unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r); terminal.EndsLine(r) != ends {
			t.Errorf("%U ends a line: %v", r, !ends)
		}
		if want {
			obeyed++
		}
	}
	if obeyed != 65+9 { // C0, DEL and C1; five that embed and override, four that isolate
		t.Errorf("%d letters are obeyed", obeyed)
	}
}

func TestMarks(t *testing.T) {
	for _, c := range []struct{ given, text, line string }{
		{"plain, été, שלום", "plain, été, שלום", "plain, été, שלום"},
		{"red \x1b[31m\a", "red \ufffd[31m\ufffd", "red \ufffd[31m\ufffd"},
		{"a\tb\nc\r\n", "a\tb\nc\ufffd\n", "a b\ufffdc\ufffd\ufffd"},
		{"l\u2028p\u2029", "l\u2028p\u2029", "l\ufffdp\ufffd"},
		{"\u202egnp.exe\u2066", "\ufffdgnp.exe\ufffd", "\ufffdgnp.exe\ufffd"},
		{"not \xff UTF-8", "not \ufffd UTF-8", "not \ufffd UTF-8"},
		{"\u200f\u061c", "\u200f\u061c", "\u200f\u061c"},
	} {
		if got := terminal.Text(c.given); got != c.text {
			t.Errorf("%q as text is %q, want %q", c.given, got, c.text)
		}
		if got := terminal.Line(c.given); got != c.line {
			t.Errorf("%q as a line is %q, want %q", c.given, got, c.line)
		}
	}
}
