package maps

import (
	"fmt"
	"math"
	"strings"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// What both maps say and draw of a named place.

const (
	sourceNames = "Names, places and widths: Gazetteer of Planetary Nomenclature (International Astronomical Union and US Geological Survey), as compute/globe documents"
	sourceSites = "Landing sites: as compute/globe names for each; what came of a landing: NSSDCA spacecraft catalogue, in part from memory"
	sourceWay   = "Distances along great circles of a sphere; a walker's 4 km in an hour and six hours in a day: common practice, no source"
)

// A siteKind is what came of a landing; each has a mark of its own.
type siteKind string

const (
	siteCrew    siteKind = "crew"    // people landed
	siteRover   siteKind = "rover"   // a rover drove about
	siteSamples siteKind = "samples" // some of the ground came back
	siteImpact  siteKind = "impact"  // it struck the ground
	siteLander  siteKind = "lander"  // it landed softly, and no more
)

// siteKinds are all, in the order of a map's key.
func siteKinds() []siteKind {
	return []siteKind{siteCrew, siteRover, siteImpact, siteSamples, siteLander}
}

func kindOfSite(s globe.Spot) siteKind {
	switch {
	case s.Crew:
		return siteCrew
	case s.Samples:
		return siteSamples
	case s.Impact:
		return siteImpact
	case s.Rover != "":
		return siteRover
	}
	return siteLander
}

// siteMark draws the mark of a kind of landing: a disc for people, a square for a rover,
// a triangle for what came back, a diamond for a lander, a cross for what fell.
func siteMark(d *drawing.Drawing, kind siteKind, at drawing.Point, size float64) {
	corner := func(x, y float64) drawing.Point { return drawing.Point{X: at.X + size*x, Y: at.Y + size*y} }
	switch kind {
	case siteCrew:
		d.Disc("site crew", at, size)
	case siteRover:
		d.Area("site rover", corner(-.9, -.9), corner(.9, -.9), corner(.9, .9), corner(-.9, .9))
	case siteSamples:
		d.Area("site samples", corner(0, -1.15), corner(1.1, .85), corner(-1.1, .85))
	case siteImpact:
		d.Line("site impact", corner(-.9, -.9), corner(.9, .9))
		d.Line("site impact", corner(-.9, .9), corner(.9, -.9))
	default:
		d.Area("site lander", corner(0, -1.2), corner(1.2, 0), corner(0, 1.2), corner(-1.2, 0))
	}
}

// siteMeaning is what a mark of the key stands for.
func siteMeaning(kind siteKind) say.Value { return say.Words("map-site." + "key_" + string(kind)) }

// siteWhat says what came of a landing.
func siteWhat(s globe.Spot) say.Value {
	kind := kindOfSite(s)
	if kind == siteRover {
		return say.Words("map-site.rover", say.Text(s.Rover))
	}
	return say.Words("map-site." + string(kind))
}

// spotName is the name of a spot, the same in every language.
func spotName(s globe.Spot) say.Value { return say.Text(s.Name) }

// kindWord is what a feature is, in one or two words.
func kindWord(s globe.Spot) say.Value {
	return say.Words("map-kind." + strings.ReplaceAll(s.Kind, " ", "_"))
}

// isLong reports whether the width of the gazetteer is a length.
func isLong(s globe.Spot) bool {
	switch s.Kind {
	case "mountain range", "valley", "scarp", "rille", "channel", "canyon system":
		return true
	}
	return false
}

// spotKey is the key of a spot in addresses and words.
func spotKey(s globe.Spot) string {
	key := strings.NewReplacer(" ", "-", "'", "", "ö", "o").Replace(strings.ToLower(s.Name))
	return key
}

// spotPlace are the cells that say where a spot is on its globe.
func spotPlace(s globe.Spot) []say.Value {
	return []say.Value{say.Latitude(s.At.Latitude.Degrees()), say.Longitude(s.At.Longitude.Degrees())}
}

// spotAcross is the width of a feature, or the length of a long one.
func spotAcross(s globe.Spot) say.Value {
	km := s.Across.Kilometres()
	decimals := 0
	if km < 20 {
		decimals = 1
	}
	return say.Number(km, "km", decimals)
}

// spotLines are the first lines of the card of a spot: what it is or what happened, how
// wide it is and where.
func spotLines(s globe.Spot) []say.Phrase {
	where := say.Line("map-spot.at", spotPlace(s)...)
	if s.Kind == globe.Site {
		lines := []say.Phrase{say.Line("map-spot.landed", say.Date(s.Landed), siteWhat(s)), where}
		if s.Unseen {
			lines = append(lines, say.Line("map-spot.unseen"))
		}
		return lines
	}
	size := "map-spot.across"
	if isLong(s) {
		size = "map-spot.long"
	}
	return []say.Phrase{say.Line(size, kindWord(s), spotAcross(s)), where}
}

// leastApart is how far the stops of a walk keep from one another, in millimetres: two that
// stand on one point could not both be chosen.
const leastApart = 0.8

// clear moves a place off the stops that are there already. Surveyor 3 stands 160 m from
// Apollo 12, a hundredth of a millimetre on the map.
func clear(stops []result.Stop, at drawing.Point) drawing.Point {
	for _, s := range stops {
		if math.Hypot(at.X-s.At.X, at.Y-s.At.Y) < leastApart/2 {
			at.X += leastApart
		}
	}
	return at
}

// spotStop is what a walk through a map says of a spot: its lines, what more is said of
// it, and words to search for.
func spotStop(s globe.Spot, at drawing.Point, reach float64, more ...say.Phrase) result.Stop {
	lines := append(spotLines(s), more...)
	search := "map-spot.search_moon"
	switch {
	case s.Kind == globe.Site:
		search = "map-spot.search_site"
	case s.World == globe.Mars:
		search = "map-spot.search_mars"
	}
	return result.Stop{Key: spotKey(s), Name: spotName(s), At: at, Reach: reach, Says: append(lines, say.Line(search, spotName(s)))}
}

// findSpot returns the spot that an argument names; the error names the nearest.
func findSpot(w globe.World, key, name string) (globe.Spot, error) {
	if s, ok := globe.Find(w, name); ok {
		return s, nil
	}
	var names []string
	for _, s := range globe.Spots(w) {
		if strings.EqualFold(s.Name, name) {
			return s, nil
		}
		names = append(names, s.Name)
	}
	return globe.Spot{}, fmt.Errorf("%s is %q, not a name of the map's tables%s", key, name, form.Meant(name, names))
}

// A way is the shortest one along the ground of a world.
type way struct {
	from, to globe.Spot
	length   quantity.Length
	toward   quantity.Angle // at the start
}

func wayBetween(from, to globe.Spot) way {
	return way{from, to, from.World.Apart(from.At, to.At), from.At.Toward(to.At)}
}

// What a walker does: common practice, no source.
const (
	walkKmH     = 4.0
	walkHours   = 6.0 // in a day
	walkKmInDay = walkKmH * walkHours
)

// walkDays is how many days of walking a way takes.
func (w way) walkDays() float64 { return w.length.Kilometres() / walkKmInDay }

// lengthValue is the way in kilometres, with decimals where it is short.
func (w way) lengthValue() say.Value {
	km := w.length.Kilometres()
	switch {
	case km < 0.01:
		return say.Number(0, "km", 0)
	case km < 10:
		return say.Number(km, "km", 2)
	case km < 100:
		return say.Number(km, "km", 1)
	}
	return say.Number(km, "km", 0)
}
