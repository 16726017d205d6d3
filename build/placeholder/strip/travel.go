package strip

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

const sourceFar = "Outskirts: heliopause, Stone et al., Science 341 (2013); nearest star, parallax 768.0665 mas (Gaia DR3, 2022); Kuiper belt and Oort cloud: round numbers in use"

func (u stripUse) travelFacts() []result.Fact {
	minute := quantity.Metres(60 * 299792458)
	return []result.Fact{
		{Name: "light_to_earth", Value: say.Seconds(strip.LightTime(quantity.AstronomicalUnit))},
		{Name: "light_to_end", Value: say.Minutes(strip.LightTime(u.last.Orbit))},
		{Name: "light_step", Value: thickness(u.OnPaper(minute))},
		{Name: "walk_strip", Value: say.Seconds(entry.SecondsOf(u.Length().Metres() / u.walk))},
		{Name: "walk_to_sun", Value: entry.Years(strip.Years(quantity.AstronomicalUnit, u.walk))},
		{Name: "craft", Value: entry.CraftWord(u.craft)},
		{Name: "craft_speed", Value: say.Number(u.craft.Speed/1000, "km_s", entry.WholeOrTenth(u.craft.Speed/1000))},
		{Name: "craft_to_end", Value: entry.Years(strip.Years(u.last.Orbit, u.craft.Speed))},
	}
}

func (u stripUse) travelTable() result.Table {
	table := result.Table{
		Name:    "travel",
		Title:   say.Line("strip-table.travel_title", entry.CraftWord(u.craft), say.Number(u.craft.Speed/1000, "km_s", entry.WholeOrTenth(u.craft.Speed/1000))),
		Columns: []result.Column{{Name: "body"}, {Name: "light", Unit: "s"}, {Name: "craft", Unit: "years"}, {Name: "walk", Unit: "years"}, {Name: "walk_strip", Unit: "s"}},
	}
	for _, m := range u.marks {
		if m.Orbit == 0 {
			continue
		}
		table.Rows = append(table.Rows, result.Row{Marked: m.Name == u.to, Cells: []say.Value{
			say.Words("body." + m.Name), entry.LightWay(m.Orbit),
			entry.Years(strip.Years(m.Orbit, u.craft.Speed)), entry.Years(strip.Years(m.Orbit, u.walk)),
			say.Seconds(entry.SecondsOf(m.Paper.Metres() / u.walk)),
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
			say.Number(u.SquaresTo(far), "", 0), onGround(u.OnPaper(far)), entry.LightWay(far),
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

// ruleFinding names the bodies that are more than a tenth away from the rule.
func ruleFinding(marks []strip.Mark) say.Phrase {
	var off []say.Value
	for _, m := range marks {
		if bode, ok := m.Bode(); ok && math.Abs(m.AU()*float64(quantity.AstronomicalUnit)/float64(bode)-1) > 0.1 {
			off = append(off, say.Words("body."+m.Name))
		}
	}
	if len(off) == 0 {
		return say.Phrase{}
	}
	return say.Line("strip-table.finding_rule", entry.Listed(off))
}

// ruleChart draws the Titius–Bode rule beside the measured distances, which
// double from one step to the next, so the axis upward is a logarithm.
func ruleChart(marks []strip.Mark) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.PictureWidth, Height: 82,
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
	c := d.Chart(drawing.Frame{Left: 12, Top: 8, Right: entry.PictureWidth - 6, Bottom: 72},
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
