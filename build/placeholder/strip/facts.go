package strip

import (
	"math"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

func (u stripUse) scaleFacts() []result.Fact {
	var pluto, outer quantity.Length
	missing := []say.Value{}
	for _, m := range u.marks {
		if m.Name == "pluto" {
			pluto = m.Orbit
		}
		if m.Name == u.to {
			outer = m.Orbit
		}
		if !m.Fits {
			missing = append(missing, say.Words("body."+m.Name))
		}
	}
	round := u.roundScale(outer)
	return []result.Fact{
		{Name: "strip_length", Value: say.Number(u.Length().Metres(), "m", 1)},
		{Name: "strip_squares", Value: say.Count(u.Squares)},
		{Name: "square_length", Value: say.Number(u.Square.Millimetres(), "mm", entry.WholeOrTenth(u.Square.Millimetres()))},
		{Name: "square_scale", Value: say.Number(u.Scale.Kilometres()/1e6, "million_km", 1)},
		{Name: "round_scale", Value: say.Number(round, "million_km", roundDecimals(round))},
		{Name: "round_squares", Value: say.Number(outer.Kilometres()/1e6/round, "", 1)},
		{Name: "last_body", Value: say.Words("body." + u.last.Name)},
		{Name: "missing", Value: entry.Listed(missing)},
		{Name: "beyond", Value: say.Number(u.SquaresTo(pluto)-float64(u.Squares), "", 0)},
	}
}

// roundScale is the smallest round number of million kilometres a square at
// which a distance is on the strip.
func (u stripUse) roundScale(outer quantity.Length) float64 {
	return strip.RoundUp(outer.Kilometres() / 1e6 / float64(u.Squares))
}

// roundDecimals are those that a round number needs.
func roundDecimals(x float64) int {
	for d := range 6 {
		if p := math.Pow10(d); math.Abs(x*p-math.Round(x*p)) < 1e-6*x*p {
			return d
		}
	}
	return 6
}

func (u stripUse) sizeFacts() []result.Fact {
	var facts []result.Fact
	for _, m := range u.marks {
		switch m.Name {
		case "sun", "earth", "jupiter":
			facts = append(facts, result.Fact{Name: m.Name + "_thickness", Value: thickness(m.Thickness)})
		}
	}
	return facts
}

// thickness is a small length with enough digits to be told from nothing.
func thickness(l quantity.Length) say.Value {
	mm := l.Millimetres()
	decimals := 1
	for limit := 1.0; mm < limit && decimals < 5; limit /= 10 {
		decimals++
	}
	return say.Number(mm, "mm", decimals)
}

func (u stripUse) placeFacts() []result.Fact {
	var facts []result.Fact
	for _, m := range u.marks {
		if m.Orbit > 0 {
			facts = append(facts,
				result.Fact{Name: m.Name + "_squares", Value: say.Number(m.Squares, "", 1)},
				result.Fact{Name: m.Name + "_metres", Value: say.Number(m.Paper.Metres(), "m", 2)})
		}
	}
	return facts
}
