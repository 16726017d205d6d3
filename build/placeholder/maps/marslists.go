package maps

import (
	"slices"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// marsFeatures lists the named places, with their widths beside something known: ways that
// the class knows, where the school names one, and days of walking.
func marsFeatures(known entry.KnownWay) result.Table {
	table := result.Table{
		Name: "features", Title: say.Line("mars-map.features_title"),
		Columns: []result.Column{{Name: "name"}, {Name: "kind"}, {Name: "latitude"}, {Name: "longitude"}, {Name: "across", Unit: "km"}, {Name: "walk", Unit: "days"}},
	}
	if known.Is() {
		table.Columns = append(table.Columns, result.Column{Name: "known"})
	}
	for _, s := range globe.Spots(globe.Mars) {
		if s.Kind == globe.Site {
			continue
		}
		cells := append([]say.Value{spotName(s), kindWord(s)}, spotPlace(s)...)
		cells = append(cells, spotAcross(s), marsDays(way{length: s.Across}.walkDays()))
		if known.Is() {
			cells = append(cells, known.Measure(s.Across))
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells})
	}
	return table
}

// marsSites lists the landings, the earliest first, with the place that each is in or
// nearest to, and how far it is from a spot.
func marsSites(from globe.Spot) result.Table {
	table := result.Table{
		Name: "sites", Title: say.Line("mars-map.sites_title", spotName(from)),
		Columns: []result.Column{{Name: "name"}, {Name: "date"}, {Name: "from"}, {Name: "what"}, {Name: "near"}, {Name: "latitude"}, {Name: "longitude"}, {Name: "away", Unit: "km"}},
	}
	var sites []globe.Spot
	for _, s := range globe.Spots(globe.Mars) {
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
		cells := append([]say.Value{spotName(s), say.Date(s.Landed), marsSender(s), siteWhat(s), marsNear(s)}, spotPlace(s)...)
		table.Rows = append(table.Rows, result.Row{Cells: append(cells, wayBetween(from, s).lengthValue())})
	}
	return table
}

// marsSender is who landed: NASA, but for Zhurong (sources of the sites).
func marsSender(s globe.Spot) say.Value {
	if s.Name == "Zhurong" {
		return say.Words("mars-map.from_china")
	}
	return say.Words("mars-map.from_nasa")
}

// near returns the named place that a site is in: the crater, or else the smallest of those
// whose circle holds it; where none does, that with the nearest edge. What is long has no
// circle, and a mountain within a crater is left out.
func near(site globe.Spot) (place globe.Spot, in bool) {
	best := quantity.Length(0)
	for _, s := range globe.Spots(globe.Mars) {
		if s.Kind == globe.Site || s.Kind == "mountain" || isLong(s) {
			continue
		}
		edge := globe.Mars.Apart(site.At, s.At) - s.Across/2
		switch {
		case edge <= 0 && (!in || s.Across < place.Across):
			place, in = s, true
		case edge > 0 && !in && (place.Name == "" || edge < best):
			place, best = s, edge
		}
	}
	return place, in
}

// marsNear says in what a site is, or what it is near.
func marsNear(site globe.Spot) say.Value {
	place, in := near(site)
	if in {
		return spotName(place)
	}
	return say.Words("mars-map.near", spotName(place))
}
