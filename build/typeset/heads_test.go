package typeset_test

import (
	"strings"
	"testing"

	"noonbook/build/result"
	"noonbook/build/say"
)

// tableOf is a table of two columns, the second with these cells.
func tableOf(unit string, cells ...say.Value) result.Result {
	t := result.Table{Name: "focus", Title: say.Line("tube-plan.kit_title", say.Count(9)), Columns: []result.Column{{Name: "target"}, {Name: "separation", Unit: unit}}}
	for _, cell := range cells {
		t.Rows = append(t.Rows, result.Row{Cells: []say.Value{say.Text("row"), cell}})
	}
	return result.Result{Tables: []result.Table{t}}
}

// A number without its unit is no number: where a cell prints it bare, the head of the
// column has the unit; where all cells say it in words of their own, or hold no number,
// the head does not say it again.
func TestHeadsNameTheUnitsOfBareNumbers(t *testing.T) {
	w := words(t, false)
	bare, worded := say.Number(120, "mm", 0), say.Number(120, "mm", 0).As("dial-day.very_long")
	for _, c := range []struct {
		what  string
		cells []say.Value
		want  bool
	}{
		{"bare numbers", []say.Value{bare, bare}, true},
		{"one bare number among words", []say.Value{worded, bare}, true},
		{"words alone", []say.Value{worded, worded}, false},
		{"nothing", []say.Value{say.None("sky.dash")}, false},
	} {
		got := string(w.AppendBlock(nil, "tube-plan", tableOf("mm", c.cells...), nil))
		if strings.Contains(got, `<span class="unit">mm</span>`) != c.want {
			t.Errorf("%s: %s", c.what, got)
		}
		if body := got[strings.Index(got, "<tbody>"):]; c.want && strings.Contains(body, "mm") {
			t.Errorf("%s: the unit stands in head and cell: %s", c.what, body)
		}
	}
}

// Lenses are sold in millimetres in every country: a result that is made in metric is
// printed so, table and warning, at a school that measures in feet, where
// any other is in inches. 254 mm are 10 in (international yard and pound agreement, 1959).
func TestResultsInMetricStayMetric(t *testing.T) {
	length := say.Number(254, "mm", 0)
	r := tableOf("mm", length)
	r.Warnings = []say.Phrase{say.Line("lens-pairs.warn_equal", length)}
	for _, customary := range []bool{false, true} {
		w := words(t, customary)
		metric, plain := string(w.AppendBlock(nil, "tube-plan", r.InMetric(), nil)), string(w.AppendBlock(nil, "tube-plan", r, nil))
		if strings.Count(metric, "254") != 2 || !strings.Contains(metric, `<span class="unit">mm</span>`) || strings.Contains(metric, "10\u00a0in") {
			t.Errorf("customary %v: in metric it says %s", customary, metric)
		}
		if inches := strings.Contains(plain, "10\u00a0in") && strings.Contains(plain, `<span class="unit">in</span>`); inches != customary {
			t.Errorf("customary %v: it says %s", customary, plain)
		}
	}
}
