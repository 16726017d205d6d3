package problem_test

import (
	"fmt"
	"strings"
	"testing"

	"noonbook/build/problem"
)

func many(file string, faults, warnings int) problem.List {
	var l problem.List
	for i := range max(faults, warnings) {
		at := problem.Place{File: file, Line: i + 1, Column: 1}
		if i < warnings {
			l.Warn(at, "warning %d", i)
		}
		if i < faults {
			l.Add(at, "fault %d", i)
		}
	}
	return l
}

// A hundred problems of a file are shown, faults before warnings, each file for
// itself, and the rest is counted behind them.
func TestShown(t *testing.T) {
	for _, c := range []struct {
		list             problem.List
		faults, warnings int
		rest             []string // the lines that count
	}{
		{nil, 0, 0, nil},
		{many("a", 100, 0), 100, 0, nil},
		{many("a", 60, 40), 60, 40, nil},
		{many("a", 101, 0), 100, 0, []string{"a: 1 problem more in this file"}},
		{many("a", 950, 0), 100, 0, []string{"a: 850 problems more in this file"}},
		{many("a", 0, 102), 0, 100, []string{"a: warning: 2 warnings more in this file"}},
		{many("a", 60, 60), 60, 40, []string{"a: warning: 20 warnings more in this file"}},
		{many("a", 150, 30), 100, 0, []string{"a: 50 problems and 30 warnings more in this file"}},
		{append(many("a", 120, 0), many("b", 3, 1)...), 103, 1, []string{"a: 20 problems more in this file"}},
		{append(many("a", 120, 0), many("b", 130, 0)...), 200, 0, []string{"a: 20 problems more in this file", "b: 30 problems more in this file"}},
		{many("", 101, 0), 100, 0, []string{"1 problem more besides these"}},
	} {
		var rest []string
		var shown problem.List
		for _, p := range c.list.Shown() {
			if strings.Contains(p.Text, " more ") {
				rest = append(rest, p.Error())
				if n := len(shown); n == 0 || shown[n-1].File != p.File {
					t.Errorf("%q stands behind another file", p.Error())
				}
				continue
			}
			shown = append(shown, p)
		}
		faults := shown.Faults()
		if faults != c.faults || len(shown)-faults != c.warnings || fmt.Sprint(rest) != fmt.Sprint(c.rest) {
			t.Errorf("%d problems: %d faults and %d warnings are shown, then %q; want %d, %d, %q", len(c.list), faults, len(shown)-faults, rest, c.faults, c.warnings, c.rest)
		}
		for i, p := range shown[:min(len(shown), 1)] {
			if p != c.list[i] && p.Warning == c.list[i].Warning {
				t.Errorf("the first is %v", p)
			}
		}
	}
}

// ECMA-48 gives ESC and CSI (U+009B) their power over a terminal; Unicode Standard
// Annex 9 the directional formatting characters theirs over the order of letters.
func TestProblemsArePlain(t *testing.T) {
	var l problem.List
	l.Add(problem.Place{File: "1-\x1b[2Jlesson.md", Line: 3, Column: 4}, "title %q %s is not known", "a", "b\x1b]0;x\x07c\u009b31md\u202ee\u2066f\ng\rh\ti\x7fj\u2028k\xe9l\x00m")
	l.Warn(problem.Place{File: "b\nc"}, "é − “ü” 月 %s", "\u202a")
	want := "1-\ufffd[2Jlesson.md:3:4: title \"a\" b\ufffd]0;x\ufffdc\ufffd31md\ufffde\ufffdf\ufffdg\ufffdh i\ufffdj\ufffdk\ufffdl\ufffdm is not known\n" +
		"b\ufffdc: warning: é − “ü” 月 \ufffd"
	if got := l.Error(); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	e, _ := problem.Find([]byte("a\u202eb\u2066c\u009bd\x1be"), problem.Place{File: "f", Line: 1, Column: 1})
	if e.Line != "a\ufffdb\ufffdc\ufffdd\ufffde" {
		t.Errorf("an excerpt is %q", e.Line)
	}
}
