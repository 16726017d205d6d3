package typeset

import (
	"math"
	"strconv"
	"strings"

	"noonbook/build/say"
)

// suffix returns the unit that stands behind a number.
func (w *Words) suffix(v say.Value) string {
	if v.Unit == "" {
		return ""
	}
	v.Phrase, v.Kind = say.Phrase{}, say.Quantity
	unit := v.Unit
	v.Unit = "" // what the plural of a unit looks at is the number alone
	return w.Say("units."+unit, v)
}

// amount writes a number without its unit: as a fraction of an inch where a
// ruler is read, else with decimals.
func (w *Words) amount(v say.Value) string {
	if step := math.Pow10(-v.Decimals); v.Round && v.Number >= 360-step/2 {
		v.Number = 0
	}
	if v.Up {
		v.Number = roundedUp(v)
	}
	if v.Unit == rulerInches {
		return w.sixteenths(v.Number)
	}
	return w.number(v.Number, v.Decimals)
}

// roundedUp is the number of a value, up to the next one that its digits can say. A
// billionth of a digit is no reason to go up: it is what a change of units leaves.
func roundedUp(v say.Value) float64 {
	step := math.Pow10(-v.Decimals)
	if v.Unit == rulerInches {
		step = 1.0 / 16
	}
	return math.Ceil(v.Number/step-1e-9) * step
}

// number writes x with a true minus, the language's decimal mark, and digits
// in groups of three from ten thousand on.
func (w *Words) number(x float64, decimals int) string {
	s := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	whole, fraction, _ := strings.Cut(s, ".")
	if len(whole) > 4 {
		for i := len(whole) - 3; i > 0; i -= 3 {
			whole = whole[:i] + w.Say("format.group") + whole[i:]
		}
	}
	if fraction != "" {
		whole += w.Say("format.decimal") + fraction
	}
	if x < 0 && strings.Trim(s, "0.") != "" {
		return "−" + whole
	}
	return whole
}

func (w *Words) lasting(v say.Value) string {
	seconds := int64(math.Round(math.Abs(v.Number)))
	if v.Decimals == 0 {
		seconds = int64(math.Round(math.Abs(v.Number)/60)) * 60
	}
	sign := ""
	if v.Number < 0 && seconds > 0 {
		sign = "−"
	}
	h, m, s := seconds/3600, seconds/60%60, seconds%60
	var parts []string
	if h > 0 {
		parts = append(parts, w.Text(say.Number(float64(h), "h", 0)))
	}
	if m > 0 || h == 0 && v.Decimals == 0 {
		parts = append(parts, w.Text(say.Number(float64(m), "min", 0)))
	}
	if v.Decimals > 0 && (s > 0 || len(parts) == 0) {
		parts = append(parts, w.Text(say.Number(float64(s), "s", 0)))
	}
	return sign + strings.Join(parts, "\u00a0")
}
