package placeholder

import (
	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// roll are the settings and arguments that describe a strip.
var roll = []string{"stock.strip_squares", "stock.square_mm"}

func stripArguments() form.Form {
	var bodies []string
	for _, b := range strip.Bodies() {
		if b.Orbit > 0 {
			bodies = append(bodies, b.Name)
		}
	}
	return form.Form{
		{Name: "to", Choices: bodies, Default: strip.DefaultOutermost, Doc: "The body that lands on the last seam of the strip."},
		{Name: "million_km_a_square", Kind: form.Number, Unit: "million km", Min: 0.001, Max: 1e6, Assumed: "the scale that puts the body of `to` on the last seam", Doc: "A fixed scale: how many million kilometres one square stands for."},
	}
}

// stripOf returns the strip that the values describe.
func stripOf(v form.Values) (strip.Strip, error) {
	s, err := strip.New(v.Whole("stock.strip_squares"), quantity.Millimetres(v.Number("stock.square_mm")), v.Text("to"))
	if err == nil && v.Has("million_km_a_square") {
		s.Scale = quantity.Kilometres(v.Number("million_km_a_square") * 1e6)
	}
	return s, err
}

func stripTable() Entry {
	facts := []Fact{
		{"strip_length", "m", "length of the whole strip"},
		{"square_scale", "million km", "distance in space that one square stands for"},
		{"last_body", "", "the last body that the strip reaches"},
		{"beyond", "", "squares that Pluto lies beyond the end of the strip; negative when it is on it"},
		{"earth_thickness", "mm", "diameter of the Earth at the scale of the strip"},
		{"jupiter_thickness", "mm", "diameter of Jupiter at that scale"},
		{"sun_thickness", "mm", "diameter of the Sun at that scale"},
		{"light_to_earth", "s", "time that sunlight takes to the Earth"},
		{"light_to_end", "s", "time that sunlight takes to the last body on the strip"},
	}
	for _, b := range strip.Bodies() {
		if b.Orbit > 0 {
			facts = append(facts,
				Fact{b.Name + "_squares", "", "squares from the Sun to the orbit of " + b.Name},
				Fact{b.Name + "_metres", "m", "the same in metres"})
		}
	}
	return Entry{
		Name:      "strip-table",
		Summary:   "Where each planet goes on a strip of paper, counted from the Sun.",
		Arguments: stripArguments(),
		Settings:  roll,
		Facts:     facts,
		Sources:   []string{sourceOrbits, sourceBode, sourceSizes, "Light: 299 792 458 m/s exactly (SI); 1 au = 149 597 870 700 m exactly (IAU 2012 Resolution B2)"},
		Reckon:    reckonStrip,
	}
}

func reckonStrip(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:  "places",
		Title: say.Line("strip-table.title", say.Count(s.Squares), say.Number(s.Square.Millimetres(), "mm", 0)),
		Columns: []result.Column{
			{Name: "body"}, {Name: "orbit_au", Unit: "au"}, {Name: "bode_au", Unit: "au"}, {Name: "bode_off", Unit: "percent"},
			{Name: "squares"}, {Name: "metres", Unit: "m"}, {Name: "fits"},
		},
	}
	var facts []result.Fact
	var last, beyond strip.Mark
	for _, m := range s.Marks() {
		bode, off := say.None("strip-table.none"), say.None("strip-table.none")
		if au, ok := m.Bode(); ok {
			excess, _ := m.BodeExcess()
			bode = say.Number(au.Metres()/quantity.AstronomicalUnit.Metres(), "au", 1)
			off = say.Number(excess, "percent", 0)
		}
		table.Rows = append(table.Rows, result.Row{Marked: m.Name == v.Text("to"), Cells: []say.Value{
			say.Words("body." + m.Name),
			say.Number(m.AU(), "au", 2), bode, off,
			say.Number(m.Squares, "", 1), say.Number(m.Paper.Metres(), "m", 2),
			say.Yes(m.Fits, "strip-table.on", "strip-table.off"),
		}})
		if m.Orbit > 0 {
			facts = append(facts,
				result.Fact{Name: m.Name + "_squares", Value: say.Number(m.Squares, "", 1)},
				result.Fact{Name: m.Name + "_metres", Value: say.Number(m.Paper.Metres(), "m", 2)})
		}
		if m.Fits {
			last = m
		} else if beyond.Name == "" {
			beyond = m
		}
	}
	r := result.Result{Facts: append(stripFacts(s, last), facts...), Tables: []result.Table{table}}
	r.Notes = []say.Phrase{say.Line("strip-table.seam")}
	if last.Orbit == 0 {
		r.Warnings = append(r.Warnings, say.Line("strip-table.only_sun"))
	} else if beyond.Name != "" && beyond.Name != "pluto" {
		r.Warnings = append(r.Warnings, say.Line("strip-table.ends_before", say.Words("body."+beyond.Name), say.Number(beyond.Squares, "", 0), say.Count(s.Squares)))
	}
	r.Working = []say.Phrase{
		say.Line("strip-table.working_scale", say.Number(1/s.SquaresTo(quantity.AstronomicalUnit), "au", 5), say.Number(s.Scale.Kilometres()/1e6, "million_km", 2)),
		say.Line("strip-table.working_earth", say.Number(1/s.SquaresTo(quantity.AstronomicalUnit), "au", 5), say.Number(s.SquaresTo(quantity.AstronomicalUnit), "", 2)),
		say.Line("strip-table.working_bode"),
	}
	return r, nil
}

func stripFacts(s strip.Strip, last strip.Mark) []result.Fact {
	thickness := map[string]say.Value{}
	var pluto, earth quantity.Length
	for _, m := range s.Marks() {
		mm := m.Thickness.Millimetres()
		decimals := 1
		if mm < 1 {
			decimals = 2
		}
		if mm < 0.1 {
			decimals = 3
		}
		thickness[m.Name] = say.Number(mm, "mm", decimals)
		switch m.Name {
		case "pluto":
			pluto = m.Orbit
		case "earth":
			earth = m.Orbit
		}
	}
	return []result.Fact{
		{Name: "strip_length", Value: say.Number(s.Length().Metres(), "m", 1)},
		{Name: "square_scale", Value: say.Number(s.Scale.Kilometres()/1e6, "million_km", 1)},
		{Name: "last_body", Value: say.Words("body." + last.Name)},
		{Name: "beyond", Value: say.Number(s.SquaresTo(pluto)-float64(s.Squares), "", 0)},
		{Name: "earth_thickness", Value: thickness["earth"]},
		{Name: "jupiter_thickness", Value: thickness["jupiter"]},
		{Name: "sun_thickness", Value: thickness["sun"]},
		{Name: "light_to_earth", Value: say.Seconds(strip.LightTime(earth))},
		{Name: "light_to_end", Value: say.Minutes(strip.LightTime(last.Orbit))},
	}
}
