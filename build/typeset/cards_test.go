package typeset_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/result"
	"noonbook/build/say"
)

// What would scroll sideways on a phone of 390 pixels is a table of cards, which says by
// roles what its parts are; what fits is a plain table. testdata/browser/tables.mjs
// measures both.
func TestWideTablesAreCards(t *testing.T) {
	for _, c := range []struct {
		what  string
		cell  say.Value
		cards bool
	}{
		{"a number", say.Number(120, "mm", 0), false},
		{"what stays on one line and is too long for it", say.Text(strings.Repeat("x", 60)), true},
		{"words that break", say.Text(strings.Repeat("rain ", 20)), false},
	} {
		got := string(words(t, false).AppendBlock(nil, "tube-plan", tableOf("mm", c.cell, c.cell), nil))
		if strings.Contains(got, `<table class="cards" role="table">`) != c.cards {
			t.Errorf("%s: %s", c.what, got)
		}
		want := 0
		if c.cards {
			want = 1 + 2 + 3 + 2 + 2 + 2 // table, rowgroups, rows, heads, names of rows, cells
		}
		if n := strings.Count(got, ` role="`) - 1; n != want { // the frame has one
			t.Errorf("%s: %d roles, want %d: %s", c.what, n, want, got)
		}
		if n := strings.Count(got, ` data-label="`); n != want/6 {
			t.Errorf("%s: %d cells name their column: %s", c.what, n, got)
		}
	}
}

// A cell that is only a dash is marked in a table of cards, which leaves it out on a phone,
// and nowhere else.
func TestCardsMarkDashes(t *testing.T) {
	long := say.Text(strings.Repeat("x", 60))
	for _, c := range []struct {
		what  string
		cells []say.Value
		want  int
	}{
		{"cards", []say.Value{long, say.None("sky.dash")}, 1},
		{"a plain table", []say.Value{say.None("sky.dash")}, 0},
		{"a range", []say.Value{long, say.Text("9–15")}, 0},
	} {
		got := string(words(t, false).AppendBlock(nil, "tube-plan", tableOf("mm", c.cells...), nil))
		if n := strings.Count(got, ` role="cell" data-dash class="words">–</td>`) + strings.Count(got, ` role="cell" data-dash>–</td>`); n != c.want || strings.Count(got, "data-dash") != n {
			t.Errorf("%s: %d cells are left out of cards, want %d: %s", c.what, n, c.want, got)
		}
	}
}

// A unit in which all cells of a column end stands in its head; one of several stays.
func TestUnitOfAColumnIsInItsHead(t *testing.T) {
	minutes := func(n int) say.Value { return say.Minutes(time.Duration(n) * time.Minute) }
	for _, c := range []struct {
		what  string
		cells []say.Value
		unit  bool
		body  string
	}{
		{"minutes", []say.Value{minutes(3), minutes(-12)}, true, ">−12</td>"},
		{"hours too", []say.Value{minutes(3), minutes(75)}, false, ">3\u00a0min</td>"},
		{"minutes and seconds", []say.Value{minutes(3), say.Seconds(5 * time.Second)}, false, ">5\u00a0s</td>"},
		{"a reason among them", []say.Value{minutes(3), say.None("sky.dash")}, false, ">3\u00a0min</td>"},
	} {
		got := string(words(t, false).AppendBlock(nil, "tube-plan", tableOf("s", c.cells...), nil))
		if strings.Contains(got, "\u00a0<span class=\"unit\">min</span>") != c.unit || !strings.Contains(got, c.body) {
			t.Errorf("%s: %s", c.what, got)
		}
	}
}

// A list leaves out what is zero because there is no such thing; a sentence that asks for
// it has it.
func TestListsLeaveOutWhatIsAbsent(t *testing.T) {
	level, tilted := say.Number(0, "deg", 1).IfAny(), say.Number(44, "deg", 1).IfAny()
	w := words(t, false)
	for _, c := range []struct {
		value say.Value
		want  bool
	}{{level, false}, {tilted, true}, {say.Number(0, "deg", 1), true}} {
		got := string(w.AppendBlock(nil, "dial-face", result.Result{Facts: []result.Fact{{Name: "tilt", Value: c.value}}}, nil))
		if strings.Contains(got, "Slope of the plate") != c.want {
			t.Errorf("%v: %s", c.value, got)
		}
	}
	if got, want := string(w.AppendFirst(nil, level)), `<data value="0" class="first">0.0°</data>`; got != want {
		t.Errorf("a sentence has %s, want %s", got, want)
	}
}
