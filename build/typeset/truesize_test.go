package typeset_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// A printed sheet is as large as its paper, a millimetre of the drawing is one of
// the paper, the check bar is 100 mm long between its tall ends, and neighbouring
// sheets have crosses at the same points of the drawing.
func TestSheetsAreTrueSize(t *testing.T) {
	w := words(t, false)
	d := drawing.Drawing{Name: "thing", Width: 370, Height: 516, Title: say.Line("compass.true_north")}
	d.Line("edge", drawing.Point{X: 1, Y: 2}, drawing.Point{X: 361, Y: 2})
	crosses := map[string]int{}
	for _, s := range drawing.PaperOf("A4").Sheets(d) {
		out := string(w.AppendSheet(nil, &s, typeset.SheetHead{}))
		for _, want := range []string{
			`width="210mm" height="297mm" viewBox="0 0 210 297"`,
			fmt.Sprintf(`<svg class="thing" x="10" y="10" width="190" height="263" viewBox="%g %g 190 263">`, s.Left, s.Top),
		} {
			if !strings.Contains(out, want) {
				t.Errorf("sheet %d, %d lacks %s in\n%s", s.Row, s.Column, want, out[:400])
			}
		}
		long, ticks, left := 0.0, 0, 0.0
		var at []float64
		for _, line := range lines(t, out) {
			switch line.class {
			case "check":
				if line.dy == 0 {
					long, left = math.Abs(line.dx), min(line.x, line.x+line.dx)
				} else {
					ticks++
					at = append(at, line.x)
				}
			case "matching-mark":
				if line.dx != 0 { // the level stroke of a cross; its middle on the drawing
					x, y := line.x+line.dx/2-10+s.Left, line.y-10+s.Top
					crosses[fmt.Sprintf("%.3f %.3f", x, y)]++
				}
			}
		}
		if long != 100 || ticks != 11 {
			t.Errorf("the check bar is %v mm long with %d ticks", long, ticks)
		}
		for i, x := range at {
			if math.Abs(x-left-10*float64(i)) > 1e-9 {
				t.Errorf("tick %d of the check bar stands at %v mm", i, x-left)
			}
		}
	}
	if len(crosses) != 8 {
		t.Errorf("crosses at %v", crosses)
	}
	for at, n := range crosses {
		if n != 2 {
			t.Errorf("the cross at %s is on %d sheets", at, n)
		}
	}
	// A sheet alone has none.
	one := drawing.PaperOf("A4").Sheets(drawing.Drawing{Name: "thing", Width: 100, Height: 100, Title: say.Line("compass.true_north")})
	for _, line := range lines(t, string(w.AppendSheet(nil, &one[0], typeset.SheetHead{}))) {
		if line.class == "matching-mark" {
			t.Error("a single sheet has crosses")
		}
	}
	sheet := string(w.AppendSheets(nil, one, typeset.SheetHead{}))
	if !strings.HasPrefix(sheet, `<div class="paper-sheet portrait"`) {
		t.Errorf("it begins %s", sheet[:60])
	}
	across := string(w.AppendSheets(nil, drawing.PaperOf("A4").Sheets(drawing.Drawing{Name: "thing", Width: 270, Height: 100, Title: say.Line("compass.true_north")}), typeset.SheetHead{}))
	if !strings.HasPrefix(across, `<div class="paper-sheet landscape"`) || !strings.Contains(across, `width="297mm" height="210mm"`) {
		t.Errorf("it begins %s", across[:200])
	}
}

// A stroke is a straight line of a drawing.
type stroke struct {
	class        string
	x, y, dx, dy float64
}

// lines reads the straight lines of an SVG, however they are written.
func lines(t *testing.T, svg string) []stroke {
	t.Helper()
	var list []stroke
	dec := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return list
		}
		if err != nil {
			t.Fatal(err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		get := map[string]string{}
		for _, a := range start.Attr {
			get[a.Name.Local] = a.Value
		}
		s := stroke{class: get["class"]}
		switch start.Name.Local {
		case "line":
			var x2, y2 float64
			fmt.Sscan(get["x1"], &s.x)
			fmt.Sscan(get["y1"], &s.y)
			fmt.Sscan(get["x2"], &x2)
			fmt.Sscan(get["y2"], &y2)
			s.dx, s.dy = x2-s.x, y2-s.y
		case "path":
			var x2, y2 float64
			text := strings.NewReplacer("M", " ", "L", " ", ",", " ", "m", " ", "l", " ").Replace(get["d"])
			if n, _ := fmt.Sscan(text, &s.x, &s.y, &x2, &y2); n != 4 {
				continue
			}
			s.dx, s.dy = x2-s.x, y2-s.y
		case "polyline":
			var x2, y2 float64
			if n, _ := fmt.Sscan(strings.ReplaceAll(get["points"], ",", " "), &s.x, &s.y, &x2, &y2); n != 4 {
				continue
			}
			s.dx, s.dy = x2-s.x, y2-s.y
		default:
			continue
		}
		list = append(list, s)
	}
}

// Conversions by hand: °F = °C × 9/5 + 32, 1 lb = 0.45359237 kg, 1 mi = 1.609344 km;
// wholly negative temperatures too.
func TestCustomaryOnBothSides(t *testing.T) {
	w := words(t, true)
	for _, c := range []struct {
		value say.Value
		want  string
	}{
		{say.Number(-40, "celsius", 0), "−40"}, {say.Number(0, "celsius", 0), "32"}, {say.Number(100, "celsius", 0), "212"}, {say.Number(-18, "celsius", 0), "0"}, {say.Number(-63, "celsius", 0), "−81"},
		{say.Number(10, "kg", 1), "22.0"}, {say.Number(0.5, "kg", 1), "1.1"},
		{say.Number(16.09344, "km", 0), "10\u00a0mi"}, {say.Number(15, "km", 0), "9.3\u00a0mi"}, {say.Number(4, "m_s", 1), "9\u00a0mph"},
		{say.Number(12.6, "mm", 0), "0.5\u00a0in"}, {say.Number(12.8, "mm", 0), "1/2\u00a0in"}, {say.Number(3047, "mm", 0), "119\u00a015/16\u00a0in"}, {say.Number(3049, "mm", 0), "120\u00a0in"},
	} {
		if got := w.Text(c.value); !strings.HasPrefix(got, c.want) {
			t.Errorf("%v %s is %q, want %q", c.value.Number, c.value.Unit, got, c.want)
		}
	}
}

// A bearing that rounds to 360° is 0°, one that does not is not, at each number of
// decimals; a minus is never written before nothing.
func TestRoundingOnBothSides(t *testing.T) {
	w := words(t, false)
	round := func(x float64, decimals int) string {
		v := say.Number(x, "deg", decimals)
		v.Round = true
		return w.Text(v)
	}
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{{359.4, 0, "359°"}, {359.6, 0, "0°"}, {359.94, 1, "359.9°"}, {359.96, 1, "0.0°"}, {359.96, 0, "0°"}, {0, 1, "0.0°"}} {
		if got := round(c.x, c.decimals); got != c.want {
			t.Errorf("%v to %d places is %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{{-0.4, 0, "0"}, {-0.6, 0, "−1"}, {-0.04, 1, "0.0"}, {-0.06, 1, "−0.1"}, {9999, 0, "9999"}, {10000, 0, "10\u202f000"}, {-1234567, 0, "−1\u202f234\u202f567"}, {123456.7, 1, "123\u202f456.7"}} {
		if got := w.Text(say.Number(c.x, "", c.decimals)); got != c.want {
			t.Errorf("%v is %q, want %q", c.x, got, c.want)
		}
	}
	for seconds, want := range map[float64]string{29: "0\u00a0min", -29: "0\u00a0min", 31: "1\u00a0min", -31: "−1\u00a0min", 3600: "1\u00a0h", 3661: "1\u00a0h\u00a01\u00a0min", -5400: "−1\u00a0h\u00a030\u00a0min", 3570: "1\u00a0h"} {
		if got := w.Text(say.Value{Kind: say.Lasting, Number: seconds, Unit: "s"}); got != want {
			t.Errorf("%v s is %q, want %q", seconds, got, want)
		}
	}
	for seconds, want := range map[float64]string{0.4: "0\u00a0s", 59.6: "1\u00a0min", 61: "1\u00a0min\u00a01\u00a0s", 3605: "1\u00a0h\u00a05\u00a0s", -2: "−2\u00a0s"} {
		if got := w.Text(say.Value{Kind: say.Lasting, Number: seconds, Unit: "s", Decimals: 1}); got != want {
			t.Errorf("%v s to the second is %q, want %q", seconds, got, want)
		}
	}
}
