package entry

import (
	"testing"
	"time"

	"noonbook/build/say"
)

// By hand: 1000 ÷ 83 = 12.05 and 1000 ÷ 83.3 = 12.00; 350 ÷ 250 is exact; 20.1 × 0.5 =
// 10.05, which is 10.0 or 10.1 alike; a time keeps its digits.
func TestEnoughDigitsForTheResult(t *testing.T) {
	inverse := func(x []float64) float64 { return 1000 / x[0] }
	for _, c := range []struct {
		name     string
		result   say.Value
		sum      func(x []float64) float64
		operand  say.Value
		decimals int
	}{
		{"a third", say.Number(12, "dioptre", 2), inverse, say.Number(1000./12, "mm", 0), 1},
		{"a coarse result", say.Number(12, "dioptre", 1), inverse, say.Number(1000./12, "mm", 0), 0},
		{"exact", say.Number(4, "dioptre", 2), inverse, say.Number(250, "mm", 0), 0},
		{"exact operand, another result", say.Number(5, "dioptre", 2), inverse, say.Number(250, "mm", 0), 0},
		{"a time", say.Seconds(90 * time.Second), func(x []float64) float64 { return x[0] * 240 }, say.Number(0.375, "deg", 1), 3},
		{"half", say.Number(10.05, "m", 1), func(x []float64) float64 { return x[0] / 2 }, say.Number(20.1, "m", 1), 1},
	} {
		if got := Enough(c.result, c.sum, c.operand)[0].Decimals; got != c.decimals {
			t.Errorf("%s: %d decimals, want %d", c.name, got, c.decimals)
		}
	}
}

// A quantity beside a limit is printed on its side of it, whichever that is; one that
// stands on the limit, but for the last bits, keeps its digits.
func TestOnItsSide(t *testing.T) {
	for _, c := range []struct {
		x, limit float64
		want     int
	}{{0.39, 0.4, 2}, {0.3, 0.4, 1}, {0.4, 0.4, 1}, {0.4 * (1 + 1e-15), 0.4, 1}, {0.41, 0.4, 2}, {0.39996, 0.4, 5}, {0.96, 1, 2}, {0.94, 1, 1}, {5.04, 5, 2}, {5.06, 5, 1}} {
		if got := OnItsSide(say.Number(c.x, "mm", 1), c.limit).Decimals; got != c.want {
			t.Errorf("%v beside %v has %d decimals, want %d", c.x, c.limit, got, c.want)
		}
	}
}

func TestAsShown(t *testing.T) {
	for _, c := range []struct {
		value say.Value
		want  float64
	}{
		{say.Number(-16.24, "deg", 1), -16.2}, {say.Number(83.333, "mm", 0), 83}, {say.Seconds(1499 * time.Millisecond), 1},
		{say.Minutes(89 * time.Second), 60}, {say.Number(-0.04, "deg", 1), 0},
	} {
		if got := AsShown(c.value); got != c.want {
			t.Errorf("%v shows as %v, want %v", c.value, got, c.want)
		}
	}
	if got := FullTurn(0.04 * 3.14159 / 180).Number; got != 0 {
		t.Errorf("a variation of 0.04°, shown as 0.0°, counts from %v", got)
	}
	if got := FullTurn(0.06 * 3.14159 / 180).Number; got != 360 {
		t.Errorf("a variation of 0.06° east counts from %v", got)
	}
}
