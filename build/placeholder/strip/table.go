package strip

import (
	"fmt"
	"math"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// What the entry takes.
const (
	argMillionKmASquare form.Key[float64]  = "million_km_a_square"
	argShow             form.Key[[]string] = "show"
)

const sourceOrbits = "Orbits: semi-major axes, E. M. Standish, approximate elements (JPL), J2000; Ceres 2.77 au (JPL Small-Body Database)"

const sourceBode = "Titius–Bode rule: 0.4 au, then 0.4 + 0.3 · 2ⁿ au"

const sourceSizes = "Diameters: mean, B. A. Archinal and others, IAU Working Group on Cartographic Coordinates 2015 (2018); Ceres: R. S. Park and others (2016); Sun: IAU 2015 Resolution B3"

// roll are the settings that describe a strip.
var roll = form.Keys{school.StockStripSquares, school.StockSquareMM, school.StockTenSquaresMM, school.StockTornSquares}

func stripArguments() form.Form {
	return form.Form{
		{Key: argTo, Choices: school.StripBodies(), Default: strip.DefaultOutermost, Doc: "The body that lands on the last seam of the strip."},
		{Key: argMillionKmASquare, Unit: "million km", Min: 0.001, Max: 1e6, Assumed: "the scale that puts the body of `to` on the last seam", Doc: "A fixed scale: how many million kilometres one square stands for."},
	}
}

// stripOf returns the strip that the values describe.
func stripOf(v form.Values) (strip.Strip, error) {
	squares, torn := school.StockStripSquares.Of(v), school.StockTornSquares.Of(v)
	if torn >= squares {
		return strip.Strip{}, fmt.Errorf("stock.torn_squares is %d, and the roll has only stock.strip_squares = %d", torn, squares)
	}
	square := quantity.Millimetres(school.StockSquareMM.Of(v))
	if school.StockTenSquaresMM.In(v) {
		square = quantity.Millimetres(school.StockTenSquaresMM.Of(v) / 10)
	}
	s, err := strip.New(squares-torn, square, argTo.Of(v))
	if err == nil && argMillionKmASquare.In(v) {
		s.Scale = quantity.Kilometres(argMillionKmASquare.Of(v) * 1e6)
	}
	return s, err
}

func stripTable() entry.Entry {
	facts := []entry.Fact{
		{Name: "strip_length", Unit: "m", Doc: "length of the whole strip"},
		{Name: "strip_squares", Doc: "squares of the strip that can be used"},
		{Name: "square_length", Unit: "mm", Doc: "length of one square"},
		{Name: "square_scale", Unit: "million km", Doc: "distance in space that one square stands for"},
		{Name: "round_scale", Unit: "million km", Doc: "the best round scale of this strip: the smallest round number a square at which the body of `to` is still on it"},
		{Name: "round_squares", Doc: "squares to that body at the round scale"},
		{Name: "last_body", Doc: "the last body that the strip reaches"},
		{Name: "missing", Doc: "the bodies that the strip does not reach"},
		{Name: "beyond", Doc: "squares that Pluto lies beyond the end of the strip; negative when it is on it"},
		{Name: "earth_thickness", Unit: "mm", Doc: "diameter of the Earth at the scale of the strip"},
		{Name: "jupiter_thickness", Unit: "mm", Doc: "diameter of Jupiter at that scale"},
		{Name: "sun_thickness", Unit: "mm", Doc: "diameter of the Sun at that scale"},
		{Name: "light_to_earth", Unit: "s", Doc: "time that sunlight takes to the Earth"},
		{Name: "light_to_end", Unit: "s", Doc: "time that sunlight takes to the last body on the strip"},
		{Name: "light_step", Unit: "mm", Doc: "how far light goes along the strip in a minute"},
		{Name: "walk_strip", Unit: "s", Doc: "time to walk along the strip"},
		{Name: "walk_to_sun", Unit: "years", Doc: "time to walk as far as the Sun is from the Earth, without a rest"},
		{Name: "craft", Doc: "what travels"},
		{Name: "craft_speed", Unit: "km/s", Doc: "its speed, held for the whole way"},
		{Name: "craft_to_end", Unit: "years", Doc: "how long it would take from the Sun to the last body on the strip"},
	}
	facts = append(facts,
		entry.Truth("reaches_uranus", "whether the strip reaches Uranus"),
		entry.Truth("reaches_neptune", "whether it reaches Neptune"))
	for _, b := range strip.Bodies() {
		if b.Orbit > 0 {
			facts = append(facts,
				entry.Fact{Name: b.Name + "_squares", Doc: "squares from the Sun to the orbit of " + b.Name},
				entry.Fact{Name: b.Name + "_metres", Unit: "m", Doc: "the same in metres"})
		}
	}
	return entry.Entry{
		Name:    "strip-table",
		Summary: "Where each planet goes on a strip of paper, counted from the Sun; how long the ways take; the rule that almost works.",
		Arguments: append(stripArguments(),
			form.Field{Key: argShow, Choices: stripParts, Default: stripParts, Doc: "What to show: the places on the strip, travel times, the outskirts from Pluto to the Oort cloud, the chart of the rule."},
			entry.CraftArgument()),
		Settings: slices.Concat(roll, form.Keys{school.ClassWalkKmH}),
		Facts:    facts,
		Sources:  []string{sourceOrbits, sourceBode, sourceSizes, entry.SourceLight, entry.SourceCraft, sourceFar},
		Cautions: []string{entry.CarePaperOnFloor},
		Reckon:   reckonStrip,
	}
}

// reachFacts say whether the outermost planets are on the strip.
func (u stripUse) reachFacts() []result.Fact {
	on := func(body string) bool {
		return slices.ContainsFunc(u.marks, func(m strip.Mark) bool { return m.Name == body && m.Fits })
	}
	return []result.Fact{entry.True("reaches_uranus", on("uranus")), entry.True("reaches_neptune", on("neptune"))}
}

// stripParts are what strip-table can show.
var stripParts = []string{"places", "travel", "outskirts", "rule"}

// A stripUse is a strip with what goes along it.
type stripUse struct {
	strip.Strip
	marks []strip.Mark
	last  strip.Mark // on the strip
	walk  float64    // m/s
	craft strip.Craft
	to    string
}

func stripUseOf(v form.Values) (stripUse, error) {
	s, err := stripOf(v)
	if err != nil {
		return stripUse{}, err
	}
	u := stripUse{Strip: s, marks: s.Marks(), walk: school.ClassWalkKmH.Of(v) / 3.6, craft: entry.CraftOf(v), to: argTo.Of(v)}
	for _, m := range u.marks {
		if m.Fits {
			u.last = m
		}
	}
	return u, nil
}

func reckonStrip(v form.Values) (result.Result, error) {
	u, err := stripUseOf(v)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{Facts: slices.Concat(u.scaleFacts(), u.sizeFacts(), u.travelFacts(), u.placeFacts(), u.reachFacts()), Warnings: u.warnings()}
	shows := func(part string) bool { return slices.Contains(argShow.Of(v), part) }
	if shows("places") {
		r.Tables = append(r.Tables, u.placeTable())
		r.Notes = append(r.Notes, say.Line("strip-table.seam"), u.roundNote())
	}
	if shows("travel") {
		r.Tables = append(r.Tables, u.travelTable())
	}
	if shows("outskirts") {
		r.Tables = append(r.Tables, u.outskirtTable())
	}
	if shows("rule") {
		r.Drawings = append(r.Drawings, ruleChart(u.marks))
		r.Drawings[len(r.Drawings)-1].Finding = ruleFinding(u.marks)
		r.Notes = append(r.Notes, say.Line("strip-table.rule_note"))
	}
	r.Working = u.working(shows)
	return r, nil
}

// working shows the sums behind the parts that are shown.
func (u stripUse) working(shows func(string) bool) (steps []say.Phrase) {
	au := u.SquaresTo(quantity.AstronomicalUnit)
	if shows("places") || shows("outskirts") {
		scale, earth := say.Number(u.Scale.Kilometres()/1e6, "million_km", 2), say.Number(au, "", 2)
		e := entry.Enough(earth, func(x []float64) float64 { return 1 / x[0] }, say.Number(1/au, "au", 5))
		s := entry.Enough(scale, func(x []float64) float64 { return x[0] * x[1] }, e[0], say.Number(quantity.AstronomicalUnit.Kilometres()/1e6, "million_km", 2))
		steps = append(steps, say.Line("strip-table.working_scale", s[0], scale, s[1]), say.Line("strip-table.working_earth", s[0], earth))
	}
	if shows("places") || shows("rule") {
		steps = append(steps, say.Line("strip-table.working_bode"))
	}
	if shows("travel") {
		years := entry.Years(strip.Years(quantity.AstronomicalUnit, u.walk))
		w := entry.Enough(years, func(x []float64) float64 { return x[0] / x[1] / 24 / 365.25 }, say.Number(quantity.AstronomicalUnit.Kilometres(), "km", 0), say.Number(u.walk*3.6, "km", 1))
		steps = append(steps,
			say.Line("strip-table.working_light", say.Seconds(strip.LightTime(quantity.AstronomicalUnit))),
			say.Line("strip-table.working_walk", w[0], w[1], years))
	}
	return steps
}

func (u stripUse) placeTable() result.Table {
	table := result.Table{
		Name:  "places",
		Title: say.Line("strip-table.title", say.Count(u.Squares), say.Number(u.Square.Millimetres(), "mm", entry.WholeOrTenth(u.Square.Millimetres()))),
		Columns: []result.Column{
			{Name: "body"}, {Name: "orbit_au", Unit: "au"}, {Name: "bode_au", Unit: "au"}, {Name: "bode_off", Unit: "percent"},
			{Name: "squares"}, {Name: "seam"}, {Name: "past_cm", Unit: "cm"}, {Name: "metres", Unit: "m"}, {Name: "fits"},
		},
	}
	for _, m := range u.marks {
		bode, off := say.None("strip-table.none"), say.None("strip-table.none")
		if au, ok := m.Bode(); ok {
			excess, _ := m.BodeExcess()
			bode = say.Number(float64(au/quantity.AstronomicalUnit), "au", 1)
			off = say.Number(excess, "percent", 0)
		}
		seam, past := u.seam(m.Squares)
		table.Rows = append(table.Rows, result.Row{Marked: m.Name == u.to, Cells: []say.Value{
			say.Words("body." + m.Name),
			say.Number(m.AU(), "au", 2), bode, off,
			say.Number(m.Squares, "", 1), say.Count(seam), say.Number(past.Millimetres()/10, "cm", 1),
			say.Number(m.Paper.Metres(), "m", 2),
			say.Yes(m.Fits, "strip-table.on", "strip-table.off"),
		}})
	}
	return table
}

// seam returns the last seam before a place on the strip and how far beyond it
// the place is. What rounds to a seam, to a tenth of a millimetre, is at it.
func (u stripUse) seam(squares float64) (int, quantity.Length) {
	whole := math.Floor(squares + 0.05/u.Square.Millimetres())
	return int(whole), quantity.Length(max(0, squares-whole)) * u.Square
}

func (u stripUse) roundNote() say.Phrase {
	i := slices.IndexFunc(u.marks, func(m strip.Mark) bool { return m.Name == u.to })
	round := u.roundScale(u.marks[i].Orbit)
	return say.Line("strip-table.round_note", say.Number(round, "million_km", roundDecimals(round)),
		say.Words("body."+u.to), say.Number(u.marks[i].Orbit.Kilometres()/1e6/round, "", 1))
}

func (u stripUse) warnings() []say.Phrase {
	i := slices.IndexFunc(u.marks, func(m strip.Mark) bool { return !m.Fits })
	switch {
	case u.last.Orbit == 0:
		return []say.Phrase{say.Line("strip-table.only_sun")}
	case i >= 0 && u.marks[i].Name != "pluto":
		return []say.Phrase{say.Line("strip-table.ends_before", say.Words("body."+u.marks[i].Name), say.Number(u.marks[i].Squares, "", 0), say.Count(u.Squares))}
	case u.Squares < crowded:
		return []say.Phrase{say.Line("strip-table.few_squares", say.Count(u.Squares), say.Number(u.SquaresTo(quantity.AstronomicalUnit), "", 2))}
	}
	return nil
}

// crowded is the number of squares below which the inner planets of a strip to
// Neptune share a square or two: 60 put the Earth at the second seam.
const crowded = 60
