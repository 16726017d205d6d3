package placeholder

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

const (
	sourceLight = "Light: 299 792 458 m/s exactly (SI); 1 au = 149 597 870 700 m exactly (IAU 2012 Resolution B2)"
	sourceCraft = "Speeds of spacecraft: NASA, as of 2024, held for the whole way; airliner 900 km/h, common practice"
	sourceFar   = "Outskirts: heliopause, Stone et al., Science 341 (2013); nearest star, parallax 768.0665 mas (Gaia DR3, 2022); Kuiper belt and Oort cloud: round numbers in use"
)

func (u stripUse) travelFacts() []result.Fact {
	minute := quantity.Metres(60 * 299792458)
	return []result.Fact{
		{Name: "light_to_earth", Value: say.Seconds(strip.LightTime(quantity.AstronomicalUnit))},
		{Name: "light_to_end", Value: say.Minutes(strip.LightTime(u.last.Orbit))},
		{Name: "light_step", Value: thickness(u.OnPaper(minute))},
		{Name: "walk_strip", Value: say.Seconds(secondsOf(u.Length().Metres() / u.walk))},
		{Name: "walk_to_sun", Value: years(strip.Years(quantity.AstronomicalUnit, u.walk))},
		{Name: "craft", Value: craftWord(u.craft)},
		{Name: "craft_speed", Value: say.Number(u.craft.Speed/1000, "km_s", wholeOrTenth(u.craft.Speed/1000))},
		{Name: "craft_to_end", Value: years(strip.Years(u.last.Orbit, u.craft.Speed))},
	}
}

// secondsOf is a stretch of time, held at three centuries, the most that a
// duration reaches.
func secondsOf(seconds float64) time.Duration {
	return time.Duration(math.Min(seconds, 9e9) * float64(time.Second))
}

// years is a number of years with two digits that count.
func years(x float64) say.Value {
	decimals := 0
	if x < 10 {
		decimals = 1
	}
	if x < 1 {
		decimals = 2
	}
	return say.Number(x, "years", decimals)
}

// lightWay is how long light takes, in years where that is easier to think of.
func lightWay(way quantity.Length) say.Value {
	if ly := float64(way / strip.LightYear); ly >= 0.05 {
		return say.Number(ly*365.25*86400, "s", 0).As("strip-table.ground", years(ly))
	}
	d := strip.LightTime(way)
	switch {
	case d < time.Hour:
		return say.Seconds(d)
	case d > 48*time.Hour:
		return say.Number(d.Seconds(), "s", 0).As("strip-table.ground", say.Number(d.Hours()/24, "days", 0))
	}
	return say.Minutes(d)
}

func (u stripUse) travelTable() result.Table {
	table := result.Table{
		Name:    "travel",
		Title:   say.Line("strip-table.travel_title", craftWord(u.craft), say.Number(u.craft.Speed/1000, "km_s", wholeOrTenth(u.craft.Speed/1000))),
		Columns: []result.Column{{Name: "body"}, {Name: "light", Unit: "s"}, {Name: "craft", Unit: "years"}, {Name: "walk", Unit: "years"}, {Name: "walk_strip", Unit: "s"}},
	}
	for _, m := range u.marks {
		if m.Orbit == 0 {
			continue
		}
		table.Rows = append(table.Rows, result.Row{Marked: m.Name == u.to, Cells: []say.Value{
			say.Words("body." + m.Name), lightWay(m.Orbit),
			years(strip.Years(m.Orbit, u.craft.Speed)), years(strip.Years(m.Orbit, u.walk)),
			say.Seconds(secondsOf(m.Paper.Metres() / u.walk)),
		}})
	}
	return table
}

// outskirtTable is what lies beyond Neptune, as far as the nearest star.
func (u stripUse) outskirtTable() result.Table {
	table := result.Table{
		Name:    "outskirts",
		Title:   say.Line("strip-table.outskirts_title"),
		Columns: []result.Column{{Name: "body"}, {Name: "orbit_au", Unit: "au"}, {Name: "squares"}, {Name: "metres", Unit: "m"}, {Name: "light", Unit: "s"}},
	}
	row := func(name say.Value, far quantity.Length) {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			name, say.Number(float64(far/quantity.AstronomicalUnit), "au", 0),
			say.Number(u.SquaresTo(far), "", 0), onGround(u.OnPaper(far)), lightWay(far),
		}})
	}
	for _, m := range u.marks {
		if m.Name == "pluto" {
			row(say.Words("body.pluto"), m.Orbit)
		}
	}
	for _, f := range strip.Outskirts() {
		row(farWord(f.Name), f.Distance)
	}
	return table
}

func farWord(name string) say.Value {
	return map[string]say.Value{
		"kuiper_belt": say.Words("far.kuiper_belt"), "heliopause": say.Words("far.heliopause"),
		"oort_inner": say.Words("far.oort_inner"), "oort_outer": say.Words("far.oort_outer"), "nearest_star": say.Words("far.nearest_star"),
	}[name]
}

// onGround is a length in metres, printed in kilometres where that is easier.
func onGround(l quantity.Length) say.Value {
	m := say.Number(l.Metres(), "m", 0)
	switch km := l.Kilometres(); {
	case km >= 100:
		return m.As("strip-table.ground", say.Number(km, "km", 0))
	case km >= 1:
		return m.As("strip-table.ground", say.Number(km, "km", 1))
	case l < 10:
		return say.Number(l.Metres(), "m", 2)
	}
	return m
}

// ruleChart draws the Titius–Bode rule beside the measured distances, which
// double from one step to the next, so the axis upward is a logarithm.
func ruleChart(marks []strip.Mark) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: pictureWidth, Height: 82,
		Title:       say.Line("strip-table.rule_title"),
		Description: say.Line("strip-table.rule_description"),
	}
	var named, au []drawing.Tick
	for _, m := range marks {
		if m.Term > 0 {
			named = append(named, drawing.Tick{At: float64(m.Term), Label: say.Words("body." + m.Name)})
		}
	}
	for _, x := range []float64{0.3, 1, 3, 10, 30, 100} {
		au = append(au, drawing.Tick{At: math.Log10(x), Label: say.Number(x, "", roundDecimals(x))})
	}
	c := d.Chart(drawing.Frame{Left: 12, Top: 8, Right: pictureWidth - 6, Bottom: 72},
		drawing.Axis{From: 0.5, To: 10.5, Ticks: named}, drawing.Axis{From: math.Log10(0.3), To: 2, Ticks: au, Title: say.Words("strip-table.rule_axis")})
	var rule []drawing.Point
	for _, m := range marks {
		if bode, ok := m.Bode(); ok {
			rule = append(rule, drawing.Point{X: float64(m.Term), Y: math.Log10(float64(bode / quantity.AstronomicalUnit))})
		}
	}
	c.Curve("curve", rule...)
	for _, m := range marks {
		if m.Term > 0 {
			c.Mark("sun", drawing.Point{X: float64(m.Term), Y: math.Log10(m.AU())}, 1.3)
		}
	}
	c.Note("name", rule[8], drawing.Point{X: -2, Y: -2}, drawing.End, say.Words("strip-table.rule_curve"))
	c.Note("name", drawing.Point{X: 9, Y: math.Log10(30.07)}, drawing.Point{X: 2, Y: 4}, drawing.Start, say.Words("strip-table.rule_marks"))
	return d
}
