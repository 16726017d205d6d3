package typeset

import (
	"math"
	"strconv"

	"noonbook/build/say"
)

// Units of inches: lengths that are measured and cut with a ruler are written to
// a sixteenth; those of calipers, or too small for a ruler, with decimals.
const (
	rulerInches   = "in"
	decimalInches = "inch"
)

// Factors that are exact: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 mi = 1.609344 km
// (international yard and pound agreement, 1959), and 1 lb = 0.45359237 kg.
const (
	millimetresInch = 25.4
	metresFoot      = 0.3048
	kilometresMile  = 1.609344
	kilogramsPound  = 0.45359237
)

// measured turns metric quantities into customary ones where the school uses
// them. Each is rounded about as finely as the metric one was: a last digit that
// is finer would claim what was not measured, a coarser one would lose it.
func (w *Words) measured(v say.Value) say.Value {
	if !w.customary {
		return v
	}
	switch v.Unit {
	case "mm":
		return inches(v)
	case "cm":
		v.Number, v.Decimals = v.Number*10, v.Decimals-1
		return inches(v)
	case "m":
		return feet(v)
	case "km", "million_km", "km_s":
		v.Number, v.Unit = v.Number/kilometresMile, customaryUnit[v.Unit]
		v.Decimals = enough(v)
	case "m_s":
		v.Number, v.Unit = v.Number*3.6/kilometresMile, "mph"
		v.Decimals = max(0, v.Decimals-1) // a mile an hour is 0.45 m/s
	case "celsius":
		v.Number, v.Unit = v.Number*9/5+32, "fahrenheit"
	case "kg":
		v.Number, v.Unit = v.Number/kilogramsPound, "lb"
	}
	return v
}

var customaryUnit = map[string]string{"km": "mi", "million_km": "million_mi", "km_s": "mi_s"}

// inches writes what a ruler measures (whole millimetres, or coarser) to a
// sixteenth, which is 1.6 mm and the finest that school rulers show, and what is
// finer with decimals: a tenth of a millimetre is 0.004 in.
func inches(v say.Value) say.Value {
	v.Number /= millimetresInch
	if v.Decimals <= 0 && math.Abs(v.Number) >= 0.5 && math.Abs(v.Number) < 120 || v.Number == 0 && v.Decimals <= 0 {
		v.Unit = rulerInches
		return v
	}
	v.Unit, v.Decimals = decimalInches, max(0, v.Decimals+1)
	if math.Abs(v.Number) >= 120 {
		v.Decimals = 0
	}
	return v
}

// feet writes metres as feet with one decimal less, since a foot is less than a
// third of a metre.
func feet(v say.Value) say.Value {
	v.Number, v.Unit = v.Number/metresFoot, "ft"
	v.Decimals = max(0, v.Decimals-1)
	v.Decimals = enough(v)
	return v
}

// enough gives a number below ten, which was shown whole, one decimal: 4 m is
// 13 ft, but 4 km is 2.5 mi and not 2.
func enough(v say.Value) int {
	if v.Decimals == 0 && math.Abs(v.Number) < 9.95 && v.Number != 0 {
		return 1
	}
	return v.Decimals
}

// sixteenths writes inches as a ruler shows them: 5 3/8.
func (w *Words) sixteenths(x float64) string {
	n := int64(math.Round(math.Abs(x) * 16))
	whole, part, of := n/16, n%16, int64(16)
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	s := w.number(float64(whole), 0)
	if part > 0 {
		fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(of, 10)
		if whole == 0 {
			s = fraction
		} else {
			s += "\u00a0" + fraction
		}
	}
	if x < 0 && n > 0 {
		return "−" + s
	}
	return s
}
