package worlds

import (
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/world"
)

// What the entry takes.
const argWorld form.Key[string] = "world"

func worldCards() entry.Entry {
	return entry.Entry{
		Name: "world-cards", Printable: true,
		Summary:   "A card to cut out for each planet, the Moon, Ceres, Pluto and a comet, with tables of all that is on them and how far each is on the date.",
		Arguments: form.Form{entry.OnDate(), worldsArgument(), {Key: argWorld, Choices: world.Names(), Assumed: "the first of the cards", Doc: "The world that the facts are about."}},
		Settings:  slices.Concat(school.Where(), form.Keys{school.Paper}),
		Facts: []entry.Fact{
			{Name: "cards", Doc: "number of cards"},
			{Name: "sheets", Doc: "sheets of paper that they take"},
			{Name: "name", Doc: "the world"},
			{Name: "kind", Doc: "what sort of world it is"},
			{Name: "diameter", Unit: "km", Doc: "its mean diameter"},
			{Name: "earths_across", Doc: "the same in Earths"},
			{Name: "mass", Doc: "its mass in Earths"},
			{Name: "gravity", Unit: "m_s2", Doc: "its pull at the equator"},
			{Name: "gravity_earths", Doc: "the same in that of the Earth"},
			{Name: "density", Unit: "kg_m3", Doc: "its mean density; water has 1000"},
			{Name: "escape_speed", Unit: "km_s", Doc: "the speed with which a thing never falls back"},
			{Name: "day", Unit: "s", Doc: "time from one noon to the next"},
			{Name: "turn", Unit: "s", Doc: "time of one turn among the stars"},
			{Name: "tilt", Unit: "deg", Doc: "angle of its axis from upright on its way; beyond 90° it turns backwards"},
			{Name: "year", Unit: "s", Doc: "time once round the Sun"},
			{Name: "from_sun", Unit: "million km", Doc: "mean distance from the Sun"},
			{Name: "moons", Doc: "number of known moons"},
			{Name: "moons_as_of", Doc: "the day for which that number holds"},
			{Name: "temperature", Doc: "its warmth, in words"},
			{Name: "air", Doc: "its air, in words"},
			{Name: "distance", Unit: "million km", Doc: "how far it is from the Earth at noon on the date"},
			{Name: "distance_au", Unit: "au", Doc: "the same in astronomical units"},
			{Name: "light_time", Unit: "s", Doc: "how long light takes from it then"},
			{Name: "first_feature", Doc: "the first of its three features"},
			{Name: "second_feature", Doc: "the second"},
			{Name: "third_feature", Doc: "the third"},
			{Name: "question", Doc: "an open question about it"},
		},
		Sources:  []string{sourceWorlds, sourceDerived, sourceMoons, sourceFeatures, sourceFarWorlds, entry.SourceLight},
		Cautions: []string{entry.CareScissors},
		Reckon:   reckonWorldCards,
	}
}

func reckonWorldCards(v form.Values) (result.Result, error) {
	date := entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	worlds, noon := worldsOf(v), noonOn(school.Place(v), date)
	paper := drawing.PaperOf(school.Paper.Of(v))
	r := result.Result{
		Tables: []result.Table{bulkTable(worlds), dayTable(worlds), surfaceTable(worlds), farTable(worlds, noon, say.Date(date)), featureTable(worlds), questionTable(worlds)},
		Notes:  []say.Phrase{say.Line("world-cards.note_cards"), say.Line("world-cards.note_moons", say.Date(world.MoonsAsOf()))},
	}
	for _, pair := range slices.Collect(slices.Chunk(worlds, 2)) {
		r.Sheets = append(r.Sheets, paper.Sheets(worldSheet(pair, noon, say.Date(date)))...)
	}
	row := rowOf(worlds)
	r.Drawings = []drawing.Drawing{row.drawn()}
	r.Walks = []result.Walk{row.walk(func(w world.World) [][2]say.Value { return cardRows(w, noon, say.Date(date)) })}
	about := worlds[0]
	if argWorld.In(v) {
		w, err := worldOf(v)
		if err != nil {
			return r, err
		}
		about = w
	}
	r.Facts = append([]result.Fact{
		{Name: "cards", Value: say.Count(len(worlds))},
		{Name: "sheets", Value: say.Count(len(r.Sheets))},
	}, worldFacts(about, noon)...)
	r.Working = worldWorking(about)
	return r, nil
}

func worldFacts(w world.World, noon time.Time) []result.Fact {
	now := standingOf(w, noon)
	facts := []result.Fact{
		{Name: "name", Value: worldName(w)},
		{Name: "kind", Value: worldKind(w)},
		{Name: "diameter", Value: worldAcross(w)},
		{Name: "earths_across", Value: inEarths(float64(w.Diameter() / earth().Diameter()))},
		{Name: "mass", Value: worldMass(w)},
		{Name: "gravity", Value: worldPull(w)},
		{Name: "gravity_earths", Value: inEarths(w.Gravity() / world.EarthGravity())},
		{Name: "density", Value: worldDensity(w)},
		{Name: "escape_speed", Value: escapeSpeed(w)},
		{Name: "day", Value: worldNoon(w)},
		{Name: "turn", Value: worldTurn(w)},
		{Name: "tilt", Value: worldTilt(w)},
		{Name: "year", Value: worldYear(w)},
		{Name: "from_sun", Value: fromSun(w)},
		{Name: "moons", Value: say.Count(w.Moons)},
		{Name: "moons_as_of", Value: say.Date(world.MoonsAsOf())},
		{Name: "temperature", Value: worldWarmth(w)},
		{Name: "air", Value: worldAir(w)},
		{Name: "distance", Value: now.distance},
		{Name: "distance_au", Value: now.au},
		{Name: "light_time", Value: now.light},
		{Name: "question", Value: worldQuestion(w)},
	}
	for i, f := range w.Features() {
		name := [...]string{"first_feature", "second_feature", "third_feature"}[i]
		facts = append(facts, result.Fact{Name: name, Value: featureName(f, w)})
	}
	return facts
}

func escapeSpeed(w world.World) say.Value { return sized(w.Escape()/1000, "km_s", 2) }

func worldWorking(w world.World) []say.Phrase {
	r := w.Equatorial.Kilometres()
	mean := w.Radius.Kilometres()
	pull, density := worldPull(w), worldDensity(w)
	d := entry.Enough(density, func(x []float64) float64 { return x[0] * 1e12 / (4. / 3 * math.Pi * x[1] * x[1] * x[1]) }, sized(w.Mass()/1e21, "", 3), say.Number(mean, "km", digits(mean, 4)))
	m := entry.Enough(d[0], func(x []float64) float64 { return x[0] / x[1] / 10 }, sized(w.GM, "", 4), say.Number(w.GM*1e9/w.Mass()*1e11, "", 5))
	p := entry.Enough(pull, func(x []float64) float64 { return 1000 * x[0] / (x[1] * x[1]) }, m[0], say.Number(r, "km", digits(r, 4)))
	return []say.Phrase{
		say.Line("world-cards.working_mass", worldName(w), m[0], m[1], d[0]),
		say.Line("world-cards.working_pull", p[0], p[1], pull),
		say.Line("world-cards.working_density", d[0], d[1], density),
	}
}

func worldRows(worlds []world.World, cells func(world.World) []say.Value) []result.Row {
	var rows []result.Row
	for _, w := range worlds {
		rows = append(rows, result.Row{Cells: append([]say.Value{worldName(w)}, cells(w)...)})
	}
	return rows
}

func bulkTable(worlds []world.World) result.Table {
	return result.Table{
		Name: "bulk", Title: say.Line("world-cards.title_bulk"),
		Columns: []result.Column{{Name: "world"}, {Name: "kind"}, {Name: "diameter", Unit: "km"}, {Name: "mass"}, {Name: "gravity", Unit: "m_s2"}, {Name: "density", Unit: "kg_m3"}, {Name: "escape_speed", Unit: "km_s"}},
		Rows: worldRows(worlds, func(w world.World) []say.Value {
			return []say.Value{worldKind(w), worldAcross(w), worldMass(w), worldPull(w), worldDensity(w), escapeSpeed(w)}
		}),
	}
}

func dayTable(worlds []world.World) result.Table {
	return result.Table{
		Name: "days", Title: say.Line("world-cards.title_days", say.Date(world.MoonsAsOf())),
		Columns: []result.Column{{Name: "world"}, {Name: "day", Unit: "s"}, {Name: "turn", Unit: "s"}, {Name: "tilt", Unit: "deg"}, {Name: "year", Unit: "s"}, {Name: "from_sun", Unit: "million_km"}, {Name: "moons"}},
		Rows: worldRows(worlds, func(w world.World) []say.Value {
			return []say.Value{worldNoon(w), worldTurn(w), worldTilt(w), worldYear(w), fromSun(w), say.Count(w.Moons)}
		}),
	}
}

func surfaceTable(worlds []world.World) result.Table {
	return result.Table{
		Name: "surface", Title: say.Line("world-cards.title_surface"),
		Columns: []result.Column{{Name: "world"}, {Name: "temperature"}, {Name: "air"}},
		Rows:    worldRows(worlds, func(w world.World) []say.Value { return []say.Value{worldWarmth(w), worldAir(w)} }),
	}
}

func farTable(worlds []world.World, noon time.Time, date say.Value) result.Table {
	return result.Table{
		Name: "now", Title: say.Line("world-cards.title_now", date),
		Columns: []result.Column{{Name: "world"}, {Name: "distance", Unit: "million_km"}, {Name: "distance_au", Unit: "au"}, {Name: "light_time", Unit: "s"}, {Name: "sun_distance", Unit: "million_km"}},
		Rows: worldRows(worlds, func(w world.World) []say.Value {
			s := standingOf(w, noon)
			return []say.Value{s.distance, s.au, s.light, s.sun}
		}),
	}
}

func featureTable(worlds []world.World) result.Table {
	table := result.Table{
		Name: "features", Title: say.Line("world-cards.title_features"),
		Columns: []result.Column{{Name: "feature"}, {Name: "world"}, {Name: "latitude", Unit: "deg"}, {Name: "longitude", Unit: "deg"}, {Name: "size", Unit: "km"}, {Name: "gazetteer"}, {Name: "look_for"}},
	}
	for _, w := range worlds {
		for _, f := range w.Features() {
			latitude, longitude := featureWhere(f)
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				featureName(f, w), worldName(w), latitude, longitude, featureSize(f),
				say.Yes(f.Gazetteer, "world.yes", "world.no"), say.Words("look." + f.Key),
			}})
		}
	}
	return table
}

func questionTable(worlds []world.World) result.Table {
	return result.Table{
		Name: "questions", Title: say.Line("world-cards.title_questions"),
		Columns: []result.Column{{Name: "world"}, {Name: "question"}},
		Rows:    worldRows(worlds, func(w world.World) []say.Value { return []say.Value{worldQuestion(w)} }),
	}
}
