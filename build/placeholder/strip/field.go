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
	"noonbook/compute/compass"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// What the entry takes.
const (
	argTo        form.Key[string]  = "to"
	argMarginM   form.Key[float64] = "margin_m"
	argTurnDeg   form.Key[float64] = "turn_deg"
	argSunEastM  form.Key[float64] = "sun_east_m"
	argSunNorthM form.Key[float64] = "sun_north_m"
)

func stripField() entry.Entry {
	facts := []entry.Fact{
		{Name: "metre_scale", Unit: "million km", Doc: "distance in space that one metre on the field stands for"},
		{Name: "au_metres", Unit: "m", Doc: "an astronomical unit on the field"},
		{Name: "au_paces", Doc: "the same in paces"},
		{Name: "turn", Unit: "deg", Doc: "true bearing along which the longitudes of the planets are counted from"},
		{Name: "runs", Doc: "which way the planets go round on the field"},
		{Name: "outermost", Doc: "the farthest planet that is laid out"},
		{Name: "outermost_metres", Unit: "m", Doc: "how far it stands from the Sun's peg"},
		{Name: "off_field", Doc: "the planets that the field does not hold at this scale"},
		{Name: "behind", Doc: "the planets behind the Sun"},
		{Name: "before", Doc: "the planets between us and the Sun"},
		{Name: "evening", Doc: "the planets east of the Sun, up after sunset"},
		{Name: "morning", Doc: "the planets west of the Sun, up before sunrise"},
		{Name: "night", Doc: "the planets opposite the Sun, up nearly all night"},
	}
	for _, b := range sunAndPlanets()[1:] {
		facts = append(facts,
			entry.Fact{Name: b.Name + "_bearing", Unit: "deg", Doc: "true bearing from the Sun's peg to " + b.Name},
			entry.Fact{Name: b.Name + "_paces", Doc: "paces from the Sun's peg to " + b.Name})
	}
	return entry.Entry{
		Name:    "strip-field",
		Summary: "Where the planets stand on a date: bearings and paces from a Sun peg on the school field, and what that makes of the sky.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argTo, Choices: fieldBodies(), Default: "saturn", Doc: "The farthest planet that must stand on the field."},
			{Key: argMarginM, Unit: "m", Min: 0, Max: 100, Default: 1.0, Doc: "Ground kept free before the edge, on the way from the Sun's peg."},
			{Key: argTurnDeg, Unit: "deg", Min: 0, Max: 360, Assumed: "the bearing with which the planets have the most room", Doc: "True bearing of the direction from which the longitudes of the planets are counted."},
			{Key: argSunEastM, Unit: "m", Min: -5000, Max: 5000, Assumed: "the middle of the field", Doc: "How far east of the point that the field is measured from the Sun's peg stands."},
			{Key: argSunNorthM, Unit: "m", Min: -5000, Max: 5000, Assumed: "the middle of the field", Doc: "How far north of that point it stands."},
		},
		Settings: slices.Concat(school.Where(), school.FieldSettings(), form.Keys{school.ClassPaceM}),
		Facts:    facts,
		Sources:  []string{entry.SourcePlanets, entry.SourceSun, entry.SourceWMM, "Lost in the Sun's light: within 15°; up all night: beyond 150° from the Sun: common practice, no source"},
		Cautions: []string{entry.CarePegs},
		Reckon:   reckonField,
	}
}

func fieldBodies() []string {
	var names []string
	for _, b := range sunAndPlanets()[1:] {
		names = append(names, b.Name)
	}
	return append(names, "pluto")
}

// layoutOf returns the field with what is asked of it.
func layoutOf(v form.Values) (strip.Layout, error) {
	l := strip.Layout{
		Outline:   school.Outline(v),
		Outermost: argTo.Of(v),
		Margin:    quantity.Metres(argMarginM.Of(v)),
		South:     school.Latitude.Of(v) < 0,
	}
	if err := l.Outline.Check(); err != nil {
		return l, err
	}
	l.Sun = l.Outline.Heart()
	if argSunEastM.In(v) {
		l.Sun.East = quantity.Metres(argSunEastM.Of(v))
	}
	if argSunNorthM.In(v) {
		l.Sun.North = quantity.Metres(argSunNorthM.Of(v))
	}
	if argTurnDeg.In(v) {
		turn := quantity.Degrees(argTurnDeg.Of(v))
		l.Turn = &turn
	}
	return l, nil
}

func reckonField(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	at := entry.NoonOr(p, date)
	standings, _ := strip.StandingsAt(at)
	layout, err := layoutOf(v)
	if err != nil {
		return result.Result{}, err
	}
	plan, err := layout.Lay(standings)
	if err != nil {
		return result.Result{}, fmt.Errorf("%w; try a smaller margin_m, or another place for the Sun's peg", err)
	}
	magnetic, err := compass.At(p.Latitude, p.Longitude, p.Elevation, at)
	if err != nil {
		return result.Result{}, err
	}
	pace := quantity.Metres(school.ClassPaceM.Of(v))
	r := result.Result{
		Facts:    slices.Concat(planFacts(plan, layout, pace), skyFacts(standings), pegFacts(plan, pace)),
		Tables:   []result.Table{pegTable(plan, date, pace, magnetic.Declination)},
		Warnings: append(fieldWarnings(plan), entry.CompassWarnings(magnetic)...),
		Notes:    []say.Phrase{say.Line("strip-field.note"), say.Line(skyNote(p))},
		Working:  fieldWorking(plan, layout, pace),
	}
	r.Drawings = append(r.Drawings, fieldPicture(plan, date))
	return r, nil
}

// skyNote says on which side of the Sun east is for who faces it.
func skyNote(p place.Place) string {
	if p.Latitude < 0 {
		return "strip-field.east_right"
	}
	return "strip-field.east_left"
}

func paces(far, pace quantity.Length) say.Value {
	x := float64(far / pace)
	if x < 10 {
		return say.Number(x, "", 1)
	}
	return say.Number(x, "", 0)
}

func planFacts(plan strip.Plan, l strip.Layout, pace quantity.Length) []result.Fact {
	au := quantity.AstronomicalUnit / plan.Scale
	runs := say.Words("strip-field.anticlockwise")
	if l.South {
		runs = say.Words("strip-field.clockwise")
	}
	var off []say.Value
	outermost := say.Value{}
	for _, peg := range plan.Pegs {
		if !peg.Fits && peg.Name != "pluto" {
			off = append(off, say.Words("body."+peg.Name))
		}
		if peg.Name == l.Outermost {
			outermost = say.Number(peg.Field.Metres(), "m", 1)
		}
	}
	return []result.Fact{
		{Name: "metre_scale", Value: say.Number(plan.Scale.Kilometres()/1e6, "million_km", 1)},
		{Name: "au_metres", Value: say.Number(au.Metres(), "m", 2)},
		{Name: "au_paces", Value: paces(au, pace)},
		{Name: "turn", Value: say.Bearing(plan.Turn, 0)},
		{Name: "runs", Value: runs},
		{Name: "outermost", Value: say.Words("body." + l.Outermost)},
		{Name: "outermost_metres", Value: outermost},
		{Name: "off_field", Value: entry.Listed(off)},
	}
}

// skyFacts lists the planets by where they stand in the sky. Pluto is left out:
// nobody sees it.
func skyFacts(standings []strip.Standing) []result.Fact {
	lists := map[strip.Sky][]say.Value{}
	for _, s := range standings {
		if s.Name != "pluto" {
			lists[s.Sky] = append(lists[s.Sky], say.Words("body."+s.Name))
		}
	}
	return []result.Fact{
		{Name: "behind", Value: entry.Listed(lists[strip.Behind])},
		{Name: "before", Value: entry.Listed(lists[strip.Before])},
		{Name: "evening", Value: entry.Listed(lists[strip.Evening])},
		{Name: "morning", Value: entry.Listed(lists[strip.Morning])},
		{Name: "night", Value: entry.Listed(lists[strip.Night])},
	}
}

func pegFacts(plan strip.Plan, pace quantity.Length) []result.Fact {
	var facts []result.Fact
	for _, peg := range plan.Pegs {
		if peg.Name != "pluto" {
			facts = append(facts,
				result.Fact{Name: peg.Name + "_bearing", Value: say.Bearing(peg.Bearing, 0)},
				result.Fact{Name: peg.Name + "_paces", Value: paces(peg.Field, pace)})
		}
	}
	return facts
}

func skyWord(s strip.Sky) say.Value {
	return say.Words([...]string{
		"strip-field.ours", "strip-field.behind_sun", "strip-field.before_sun",
		"strip-field.in_evening", "strip-field.in_morning", "strip-field.at_night",
	}[s])
}

func pegTable(plan strip.Plan, date place.Date, pace quantity.Length, variation quantity.Angle) result.Table {
	table := result.Table{
		Name:  "pegs",
		Title: say.Line("strip-field.title", say.Date(date)),
		Columns: []result.Column{
			{Name: "body"}, {Name: "bearing", Unit: "deg"}, {Name: "compass", Unit: "deg"}, {Name: "paces"}, {Name: "metres", Unit: "m"},
			{Name: "distance_au", Unit: "au"}, {Name: "longitude", Unit: "deg"}, {Name: "from_sun", Unit: "deg"}, {Name: "sky"}, {Name: "on_field"},
		},
	}
	for _, peg := range plan.Pegs {
		apart := say.Number(peg.Elongation.Degrees(), "deg", 0)
		if peg.Sky == strip.Ours {
			apart = say.None("sky.dash")
		}
		table.Rows = append(table.Rows, result.Row{Marked: peg.Sky == strip.Ours, Cells: []say.Value{
			say.Words("body." + peg.Name), say.Bearing(peg.Bearing, 0), say.Bearing(peg.Bearing-variation, 0),
			paces(peg.Field, pace), say.Number(peg.Field.Metres(), "m", 1),
			say.Number(float64(peg.Distance/quantity.AstronomicalUnit), "au", 3), say.Number(peg.Longitude.Degrees(), "deg", 1),
			apart, skyWord(peg.Sky), say.Yes(peg.Fits, "strip-field.on", "strip-field.off"),
		}})
	}
	return table
}

// fieldWarnings says when the inner planets get in each other's way: where the
// Earth would stand within two metres of the Sun's peg, Mercury is within 0.9 m.
func fieldWarnings(plan strip.Plan) []say.Phrase {
	au := quantity.AstronomicalUnit / plan.Scale
	if au >= 2 {
		return nil
	}
	return []say.Phrase{say.Line("strip-field.crowded", say.Number(au.Metres(), "m", 2))}
}

func fieldWorking(plan strip.Plan, l strip.Layout, pace quantity.Length) []say.Phrase {
	peg := plan.Pegs[slices.IndexFunc(plan.Pegs, func(p strip.Peg) bool { return p.Name == l.Outermost })]
	au := quantity.AstronomicalUnit / plan.Scale
	far := float64(peg.Distance / quantity.AstronomicalUnit)
	paces := say.Number(float64(peg.Field/pace), "", 1)
	p := entry.Enough(paces, func(x []float64) float64 { return x[0] / x[1] }, say.Number(peg.Field.Metres(), "m", 2), say.Number(pace.Metres(), "m", 2))
	f := entry.Enough(p[0], func(x []float64) float64 { return x[0] * x[1] }, say.Number(far, "au", 3), say.Number(au.Metres(), "m", 3))
	return []say.Phrase{
		say.Line("strip-field.working_far", say.Words("body."+peg.Name), f[0], f[1], p[0], p[1], paces),
		bearingWorking(plan.Turn, peg, l.South),
	}
}

// bearingWorking is the sum of angles, with the whole turn that brings it between 0°
// and 360° where it needs one.
func bearingWorking(turn quantity.Angle, peg strip.Peg, south bool) say.Phrase {
	sign, word := -1.0, say.Words("strip-field.minus")
	if south {
		sign, word = 1, say.Words("strip-field.plus")
	}
	bearing := say.Bearing(peg.Bearing, 1)
	from, longitude := say.Bearing(turn, 0), say.Number(peg.Longitude.Degrees(), "deg", 1)
	turns := math.Round((bearing.Number - from.Number - sign*longitude.Number) / 360)
	o := entry.Enough(bearing, func(x []float64) float64 { return x[0] + sign*x[1] + turns*360 }, from, longitude)
	key := "strip-field.working_bearing"
	switch turns {
	case 1:
		key = "strip-field.working_bearing_more"
	case -1:
		key = "strip-field.working_bearing_less"
	}
	return say.Line(key, o[0], word, o[1], bearing)
}
