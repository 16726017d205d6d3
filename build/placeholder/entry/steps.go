package entry

import (
	"cmp"
	"math"
	"strconv"

	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// mostDecimals is where Enough stops: a calculator shows no more of most numbers.
const mostDecimals = 9

// Enough returns the operands of a step of a working with as many decimals as a
// calculator needs: reckoned from them as they are shown, sum comes out at the result
// as it is shown. An operand that is shown whole already keeps its decimals. The
// values are in their units, stretches of time in seconds.
func Enough(result say.Value, sum func(x []float64) float64, operands ...say.Value) []say.Value {
	operands = append([]say.Value(nil), operands...)
	half := 0.5 * math.Pow10(-result.Decimals)
	if result.Kind == say.Lasting {
		half = lastingStep(result) / 2
	}
	for {
		x := make([]float64, len(operands))
		for i, v := range operands {
			x[i] = AsShown(v)
		}
		grown := false
		if math.Abs(sum(x)-AsShown(result)) <= half*(1+1e-9) {
			return operands
		}
		for i := range operands {
			if v := &operands[i]; v.Kind == say.Quantity && v.Decimals < mostDecimals && math.Abs(v.Number-x[i]) > 1e-12*math.Abs(x[i]) {
				v.Decimals++
				grown = true
			}
		}
		if !grown {
			return operands
		}
	}
}

// AsShown is the number of a value as its digits say it.
func AsShown(v say.Value) float64 {
	if v.Kind == say.Lasting {
		step := lastingStep(v)
		return math.Round(v.Number/step) * step
	}
	x, err := strconv.ParseFloat(strconv.FormatFloat(v.Number, 'f', v.Decimals, 64), 64)
	if err != nil {
		return v.Number
	}
	return x
}

// OnItsSide returns a quantity with as many decimals as it takes to stand on its side of
// a limit: 0.39 mm under a limit of 0.4 mm does not become 0.4 mm. The limit is in the
// quantity's unit and shown whole or to few decimals.
func OnItsSide(v say.Value, limit float64) say.Value {
	if math.Abs(v.Number-limit) <= 1e-9*math.Abs(limit) {
		return v
	}
	for v.Decimals < mostDecimals && cmp.Compare(AsShown(v), limit) != cmp.Compare(v.Number, limit) {
		v.Decimals++
	}
	return v
}

func lastingStep(v say.Value) float64 {
	if v.Decimals > 0 {
		return 1
	}
	return 60
}

// FullTurn is the direction of true north from which a compass bearing counts back: 0°
// or, where the variation is east, the same direction as 360°.
func FullTurn(variation quantity.Angle) say.Value {
	if AsShown(say.Degrees(variation, 1)) > 0 {
		return say.Number(360, "deg", 0)
	}
	return say.Number(0, "deg", 0)
}
