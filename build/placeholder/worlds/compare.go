package worlds

import (
	"cmp"
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/world"
)

// What the entry takes.
const (
	argSort  form.Key[string] = "sort"
	argChart form.Key[string] = "chart"
)

func worldCompare() entry.Entry {
	return entry.Entry{
		Name:    "world-compare",
		Summary: "The worlds side by side: in groups, in the order of any number, and on a chart of size and density or of mass and size.",
		Arguments: form.Form{
			{Key: argSort, Choices: orders(), Default: "mixed", Doc: "By which number the worlds are put in order, the largest first; mixed is for pupils who sort them themselves, and so shows no groups."},
			{Key: argChart, Choices: []string{"density", "mass", "both", "none"}, Default: "density", Doc: "Chart of density over size, of size over mass, both or none."},
		},
		Facts: []entry.Fact{
			{Name: "rocky", Doc: "the rocky planets"},
			{Name: "giants", Doc: "the giant planets"},
			{Name: "dwarfs", Doc: "the dwarf planets"},
			{Name: "first", Doc: "the first in the order of `sort`"},
			{Name: "last", Doc: "the last in that order"},
			{Name: "order", Doc: "all in that order"},
			{Name: "largest", Doc: "the widest world"},
			{Name: "smallest", Doc: "the narrowest"},
			{Name: "heaviest", Doc: "the one with the most mass"},
			{Name: "densest", Doc: "the one with the greatest density"},
			{Name: "least_dense", Doc: "the one with the smallest"},
			{Name: "floats", Doc: "those less dense than water"},
			{Name: "longest_day", Doc: "the one with the longest time from noon to noon"},
			{Name: "shortest_day", Doc: "the one with the shortest"},
			{Name: "hottest", Doc: "the one whose mean is warmest"},
			{Name: "most_moons", Doc: "the one with the most moons"},
			{Name: "moons_as_of", Doc: "the day for which moons were counted"},
			{Name: "earths_in_jupiter", Doc: "how many Earths fill the room of Jupiter"},
			{Name: "moons_in_earth", Doc: "how many Moons fill the room of the Earth"},
		},
		Sources:  []string{sourceWorlds, sourceDerived, sourceMoons},
		Harmless: "Numbers of other worlds, to read.",
		Reckon:   reckonCompare,
	}
}

// orders are the ways of putting worlds in order.
func orders() []string {
	return []string{"mixed", "distance", "diameter", "mass", "density", "gravity", "day", "year", "tilt", "moons"}
}

// measureOf returns what a world is sorted by.
func measureOf(w world.World, by string) float64 {
	switch by {
	case "distance":
		return float64(w.Orbit)
	case "diameter":
		return float64(w.Radius)
	case "mass":
		return w.GM
	case "density":
		return w.Density()
	case "gravity":
		return w.Gravity()
	case "day":
		return float64(w.SolarDay())
	case "year":
		return float64(w.Year)
	case "tilt":
		return float64(w.Tilt)
	case "moons":
		return float64(w.Moons)
	}
	// Mixed: an order without meaning, the same in every pressing.
	return float64(slices.Index([]string{"ceres", "uranus", "venus", "comet", "mars", "pluto", "saturn", "moon", "earth", "neptune", "mercury", "jupiter"}, w.Name))
}

func ordered(by string) []world.World {
	worlds := world.All()
	slices.SortStableFunc(worlds, func(a, b world.World) int { return cmp.Compare(measureOf(b, by), measureOf(a, by)) })
	return worlds
}

func reckonCompare(v form.Values) (result.Result, error) {
	by := argSort.Of(v)
	worlds := ordered(by)
	r := result.Result{
		Facts:  compareFacts(worlds),
		Tables: []result.Table{sortedTable(worlds, by)},
		Notes:  []say.Phrase{say.Line("world-compare.note_density")},
	}
	if by != "mixed" { // the groups are what pupils are to find in a mixed table
		r.Tables = append(r.Tables, groupTable())
		r.Notes = append(r.Notes, say.Line("world-compare.note_groups"))
	}
	r.Notes = append(r.Notes, say.Line("world-cards.note_moons", say.Date(world.MoonsAsOf())))
	add := func(d drawing.Drawing, key string, worlds []world.World) {
		if by != "mixed" { // there pupils find it themselves
			d.Finding = say.Line(key, worldName(worlds[0]), worldName(worlds[len(worlds)-1]))
		}
		r.Drawings = append(r.Drawings, d)
	}
	if chart := argChart.Of(v); chart == "density" || chart == "both" {
		add(densityChart(), "world-compare.finding_density", ordered("density"))
	}
	if chart := argChart.Of(v); chart == "mass" || chart == "both" {
		drawn := slices.DeleteFunc(ordered("mass"), func(w world.World) bool { return w.Kind == world.Comet })
		add(massChart(), "world-compare.finding_mass", drawn)
	}
	return r, nil
}

func compareFacts(worlds []world.World) []result.Fact {
	first := func(by string) say.Value { return worldName(ordered(by)[0]) }
	last := func(by string) say.Value { list := ordered(by); return worldName(list[len(list)-1]) }
	which := func(keep func(world.World) bool) say.Value {
		var names []say.Value
		for _, w := range world.All() {
			if keep(w) {
				names = append(names, worldName(w))
			}
		}
		return entry.Listed(names)
	}
	kind := func(k world.Kind) say.Value { return which(func(w world.World) bool { return w.Kind == k }) }
	var names []say.Value
	for _, w := range worlds {
		names = append(names, worldName(w))
	}
	hottest := slices.MaxFunc(world.All(), func(a, b world.World) int { return cmp.Compare(a.Mean, b.Mean) })
	jupiter, _ := world.Find("jupiter")
	moon, _ := world.Find("moon")
	room := func(a, b world.World) say.Value {
		return say.Number(math.Pow(float64(a.Radius/b.Radius), 3), "", 0)
	}
	return []result.Fact{
		{Name: "rocky", Value: kind(world.Rocky)},
		{Name: "giants", Value: kind(world.Giant)},
		{Name: "dwarfs", Value: kind(world.Dwarf)},
		{Name: "first", Value: names[0]},
		{Name: "last", Value: names[len(names)-1]},
		{Name: "order", Value: entry.Listed(names)},
		{Name: "largest", Value: first("diameter")},
		{Name: "smallest", Value: last("diameter")},
		{Name: "heaviest", Value: first("mass")},
		{Name: "densest", Value: first("density")},
		{Name: "least_dense", Value: last("density")},
		{Name: "floats", Value: which(func(w world.World) bool { return w.Density() < 1000 })},
		{Name: "longest_day", Value: first("day")},
		{Name: "shortest_day", Value: last("day")},
		{Name: "hottest", Value: worldName(hottest)},
		{Name: "most_moons", Value: first("moons")},
		{Name: "moons_as_of", Value: say.Date(world.MoonsAsOf())},
		{Name: "earths_in_jupiter", Value: room(jupiter, earth())},
		{Name: "moons_in_earth", Value: room(earth(), moon)},
	}
}

func orderWord(by string) say.Value {
	return map[string]say.Value{
		"mixed": say.Words("world-compare.by_mixed"), "distance": say.Words("world-compare.by_distance"), "diameter": say.Words("world-compare.by_diameter"),
		"mass": say.Words("world-compare.by_mass"), "density": say.Words("world-compare.by_density"), "gravity": say.Words("world-compare.by_gravity"),
		"day": say.Words("world-compare.by_day"), "year": say.Words("world-compare.by_year"), "tilt": say.Words("world-compare.by_tilt"), "moons": say.Words("world-compare.by_moons"),
	}[by]
}

func sortedTable(worlds []world.World, by string) result.Table {
	table := result.Table{
		Name: "worlds", Title: say.Line("world-compare.title", orderWord(by)),
		Columns: []result.Column{{Name: "world"}, {Name: "distance", Unit: "million_km"}, {Name: "diameter", Unit: "km"}, {Name: "mass"}, {Name: "density", Unit: "kg_m3"}, {Name: "gravity", Unit: "m_s2"}, {Name: "day", Unit: "s"}, {Name: "moons"}},
	}
	// Where the order is by what is no column of its own, it takes the last one's place.
	extra := map[string]func(world.World) say.Value{"year": worldYear, "tilt": worldTilt}[by]
	if extra != nil {
		table.Columns[6] = map[string]result.Column{"year": {Name: "year", Unit: "s"}, "tilt": {Name: "tilt", Unit: "deg"}}[by]
	}
	for _, w := range worlds {
		mass := worldMass(w)
		if w.Kind == world.Comet {
			mass = mass.As("world-compare.next_to_nothing")
		}
		day := worldNoon(w)
		if extra != nil {
			day = extra(w)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			worldName(w), fromSun(w), worldAcross(w), mass, worldDensity(w), worldPull(w), day, say.Count(w.Moons),
		}})
	}
	return table
}

func groupTable() result.Table {
	table := result.Table{
		Name: "groups", Title: say.Line("world-compare.title_groups"),
		Columns: []result.Column{{Name: "group"}, {Name: "members"}, {Name: "diameters"}, {Name: "densities"}, {Name: "moons"}, {Name: "ground"}},
	}
	for _, kind := range []world.Kind{world.Rocky, world.Giant, world.Dwarf} {
		group := slices.DeleteFunc(world.All(), func(w world.World) bool { return w.Kind != kind })
		var names []say.Value
		for _, w := range group {
			names = append(names, worldName(w))
		}
		span := func(value func(world.World) say.Value) say.Value {
			low, high := value(group[0]), value(group[0])
			for _, w := range group {
				if x := value(w); x.Number < low.Number {
					low = x
				} else if x.Number > high.Number {
					high = x
				}
			}
			return say.Words("world.warmth_span", low, high)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			worldKind(group[0]), entry.Listed(names), span(worldAcross), span(worldDensity), span(func(w world.World) say.Value { return say.Count(w.Moons) }),
			say.Yes(kind != world.Giant, "world.yes", "world.no"),
		}})
	}
	return table
}
