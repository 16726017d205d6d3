package globe

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Source names where the places of features come from; a landing site has its own.
const Source = "Gazetteer of Planetary Nomenclature (IAU and US Geological Survey), export of September 2015"

// Site is the kind of a landing site.
const Site = "landing site"

// A Spot is a named place of a world: a feature of its ground, or a landing site.
type Spot struct {
	World  World
	Kind   string // of the gazetteer in lower case, "crater" or "mare", or Site
	Name   string // as it is written in every language
	At     Point
	Across quantity.Length // width of a feature, length of a range, a valley or a scarp; 0 of a landing site
	Source string

	// Of a landing site.
	Landed  place.Date // by Universal Time
	Crew    bool       // people landed
	Samples bool       // without a crew, and some of the ground was brought back
	Impact  bool       // it struck the ground and was not meant to land softly
	Rover   string     // the rover that drove there, "" for none; the lander itself where it is one
	Unseen  bool       // never found for certain in pictures from orbit
}

// Far reports whether the spot lies on the far side of the Moon's mean face.
func (s Spot) Far() bool {
	return s.World == Moon && s.At.Latitude.Cos()*s.At.Longitude.Cos() < 0
}

//go:embed gazetteer.csv
var table string

// spots reads the embedded table once. TestGazetteerIsWhole holds that it can be read.
var spots = sync.OnceValues(func() ([]Spot, error) {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("gazetteer: %w", err)
	}
	var all []Spot
	for i, row := range rows[1:] {
		s, err := parse(row)
		if err != nil {
			return nil, fmt.Errorf("gazetteer, line %d: %w", i+2, err)
		}
		all = append(all, s)
	}
	return all, nil
})

// parse reads a row: world, kind, name, latitude, longitude, width in km, day of
// landing, remarks, source.
func parse(row []string) (Spot, error) {
	s := Spot{World: World(row[0]), Kind: row[1], Name: row[2], Source: row[8]}
	north, err := strconv.ParseFloat(row[3], 64)
	if err != nil {
		return s, err
	}
	east, err := strconv.ParseFloat(row[4], 64)
	if err != nil {
		return s, err
	}
	s.At = Point{quantity.Degrees(north), quantity.Degrees(east)}
	if s.Kind != Site {
		s.Source = Source
		km, err := strconv.ParseFloat(row[5], 64)
		s.Across = quantity.Kilometres(km)
		return s, err
	}
	if s.Landed, err = place.ParseDate(row[6]); err != nil {
		return s, err
	}
	for remark := range strings.SplitSeq(row[7], "; ") {
		switch rover, drove := strings.CutPrefix(remark, "rover "); {
		case drove:
			s.Rover = rover
		case remark == "crew":
			s.Crew = true
		case remark == "samples":
			s.Samples = true
		case remark == "impact":
			s.Impact = true
		case remark == "unseen":
			s.Unseen = true
		case remark != "" && remark != "far side":
			return s, fmt.Errorf("unknown remark %q", remark)
		}
	}
	return s, nil
}

// Spots returns the places of a world: features in the order of the table, seas
// first, then landing sites. The slice is the caller's own.
func Spots(w World) []Spot {
	all, _ := spots()
	var of []Spot
	for _, s := range all {
		if s.World == w {
			of = append(of, s)
		}
	}
	return of
}

// Find returns the place of that name.
func Find(w World, name string) (Spot, bool) {
	all, _ := spots()
	i := slices.IndexFunc(all, func(s Spot) bool { return s.World == w && s.Name == name })
	if i < 0 {
		return Spot{}, false
	}
	return all[i], true
}
