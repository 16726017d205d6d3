package maps

import (
	"cmp"
	"math"
	"slices"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// Limits of what is worth looking at.
const (
	lowSun = 10.0 // degrees: over ground that the Sun lights so low, hills and rims throw long shadows: common practice, no source
	inView = 80.0 // degrees from the middle of the disc: what is nearer to the rim is seen edge on
)

// A tool is what somebody looks with.
type tool struct {
	power float64
	name  say.Value
}

// tools are the bare eye, binoculars and, where it is known, the class's telescope, the
// weakest first.
func tools(v form.Values) []tool {
	list := []tool{
		{1, say.Words("moon-map.by_eye")},
		{binoculars, say.Words("moon-map.by_binoculars", say.Number(binoculars, "times", 0))},
	}
	if power, known := telescopePower(v); known {
		list = append(list, tool{power, say.Words("moon-map.by_telescope", say.Number(power, "times", 0))})
	}
	slices.SortStableFunc(list, func(a, b tool) int { return cmp.Compare(a.power, b.power) })
	return list
}

// binoculars is what the usual ones magnify: common practice, no source.
const binoculars = 8.0

// telescopePower is how many times the telescope magnifies: what the author says, or front
// focal length ÷ eye focal length of the settings, where both are set.
func telescopePower(v form.Values) (power float64, known bool) {
	switch {
	case moonPower.In(v):
		return moonPower.Of(v), true
	case school.StockFrontLensFocalMM.In(v) && school.StockEyeLensFocalMM.In(v):
		return school.StockFrontLensFocalMM.Of(v) / school.StockEyeLensFocalMM.Of(v), true
	}
	return 0, false
}

// clearArcmin is how wide a thing must look to be seen for what it is: two minutes of arc, twice
// what a good eye tells apart (common practice, no source).
const clearArcmin = 2.0

// toolFor is the weakest tool that shows a feature so wide as a thing of its own.
func toolFor(list []tool, arcmin float64) say.Value {
	for _, t := range list {
		if t.power*arcmin >= clearArcmin {
			return t.name
		}
	}
	return say.Words("moon-map.by_more")
}

// A nearLine is a feature near the terminator, on its lit side.
type nearLine struct {
	globe.Spot
	sun    quantity.Angle
	at     globe.Spotted
	arcmin float64 // how wide it looks, or how long
	narrow float64 // how wide what is long looks
}

// tonight lists the features over which the Sun is low, the lowest first. Seas are flat, and
// look best when the Sun is high.
func (m *moonView) tonight() (list []nearLine) {
	if m.mean {
		return nil
	}
	seen := globe.View{Centre: globe.Point{Latitude: m.face.Latitude, Longitude: m.face.Longitude}, Turn: m.Turn}
	distance := almanac.Moon.At(m.at).Distance
	for _, s := range globe.Spots(globe.Moon) {
		if s.Kind == globe.Site || isSea(s) || s.Kind == "bright swirl" {
			continue
		}
		sun := m.face.SunAltitude(s.At.Longitude, s.At.Latitude)
		at := seen.At(s.At)
		if sun < 0 || sun.Degrees() > lowSun || at.Toward < quantity.Degrees(inView).Cos() {
			continue
		}
		arcmin := quantity.Angle(s.Across/distance).Degrees() * 60
		list = append(list, nearLine{s, sun, at, arcmin, arcmin / slender(s)})
	}
	slices.SortStableFunc(list, func(a, b nearLine) int { return cmp.Compare(a.sun, b.sun) })
	return list
}

// slender is how many times longer than wide a feature is: mountains about five times, a
// cliff's shadow, a valley or a rille about forty; common practice, no source.
func slender(s globe.Spot) float64 {
	switch {
	case s.Kind == "mountain range":
		return 5
	case isLong(s):
		return 40
	}
	return 1
}

// best is the one to begin with: the widest crater, or else the first.
func best(list []nearLine) (nearLine, bool) {
	if len(list) == 0 {
		return nearLine{}, false
	}
	found := list[0]
	for _, n := range list {
		if n.Kind == "crater" && (found.Kind != "crater" || n.Across > found.Across) {
			found = n
		}
	}
	return found, true
}

// place says where on the disc a feature is, as the map is turned.
func (n nearLine) place() say.Value {
	r := math.Hypot(n.at.X, n.at.Y)
	switch {
	case r < 0.2:
		return say.Words("moon-map.middle")
	case r > 0.8:
		return say.Words("moon-map.by_rim", sideOf(n.at.X, n.at.Y))
	}
	return sideOf(n.at.X, n.at.Y)
}

func tonightTable(v form.Values, m *moonView, list []nearLine) result.Table {
	table := result.Table{
		Name:    "tonight",
		Title:   say.Line("moon-map.tonight_title", m.moment()),
		Columns: []result.Column{{Name: "name"}, {Name: "kind"}, {Name: "place"}, {Name: "sun", Unit: "deg"}, {Name: "looks", Unit: "arcmin"}, {Name: "with"}},
	}
	shown := tools(v)
	for _, n := range list {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			spotName(n.Spot), kindWord(n.Spot), n.place(), say.Degrees(n.sun, 0), say.Number(n.arcmin, "arcmin", 1), toolFor(shown, n.narrow),
		}})
	}
	return table
}

func featureTable() result.Table {
	table := result.Table{
		Name:    "features",
		Title:   say.Line("moon-map.features_title"),
		Columns: []result.Column{{Name: "name"}, {Name: "meaning"}, {Name: "kind"}, {Name: "latitude"}, {Name: "longitude"}, {Name: "across", Unit: "km"}},
	}
	for _, s := range globe.Spots(globe.Moon) {
		if s.Kind == globe.Site {
			continue
		}
		cells := append([]say.Value{spotName(s), moonMeaning(s), kindWord(s)}, spotPlace(s)...)
		table.Rows = append(table.Rows, result.Row{Cells: append(cells, spotAcross(s))})
	}
	return table
}

// sitesTable lists the landings, the earliest first, with how far each is from a spot.
func sitesTable(from globe.Spot) result.Table {
	table := result.Table{
		Name:    "sites",
		Title:   say.Line("moon-map.sites_title", spotName(from)),
		Columns: []result.Column{{Name: "name"}, {Name: "date"}, {Name: "from"}, {Name: "what"}, {Name: "latitude"}, {Name: "longitude"}, {Name: "away", Unit: "km"}},
	}
	var sites []globe.Spot
	for _, s := range globe.Spots(globe.Moon) {
		if s.Kind == globe.Site {
			sites = append(sites, s)
		}
	}
	slices.SortStableFunc(sites, func(a, b globe.Spot) int {
		if a.Landed.Before(b.Landed) {
			return -1
		}
		return 1
	})
	for _, s := range sites {
		what := siteWhat(s)
		if s.Far() {
			what = say.Words("moon-map.far_side", what)
		}
		cells := append([]say.Value{spotName(s), say.Date(s.Landed), sender(s), what}, spotPlace(s)...)
		table.Rows = append(table.Rows, result.Row{Cells: append(cells, wayBetween(from, s).lengthValue())})
	}
	return table
}
