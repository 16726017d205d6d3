package sky

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Star is a row of the table of bright stars.
type Star struct {
	Designation string  // Bayer letter or Flamsteed number, and constellation: "α Lyr"
	Name        string  // as the IAU approved it, "Vega"; most stars have none
	Magnitude   float64 // visual; smaller is brighter
	Rank        int     // among all stars, from 0, the brightest: its place in Stars

	place  space.Vector // ICRS, J2000, unit
	motion space.Vector // radians a Julian year
}

// Stars returns the stars, brightest first. They are shared; do not change them.
func Stars() []Star { return slices.Clip(table().stars) }

// Find returns the star of that designation. ok is false where the table has none.
func Find(designation string) (Star, bool) {
	i, ok := table().index[designation]
	if !ok {
		return Star{}, false
	}
	return table().stars[i], true
}

//go:embed stars.txt
var starsText string

// A catalogue is the table, and where in it each designation stands.
type catalogue struct {
	stars []Star
	index map[string]int
}

// table reads the embedded table once. TestTablesAreWhole holds that it can be read.
var table = sync.OnceValue(func() catalogue {
	stars, err := parseStars(starsText)
	if err != nil {
		return catalogue{}
	}
	slices.SortStableFunc(stars, func(a, b Star) int {
		switch {
		case a.Magnitude < b.Magnitude:
			return -1
		case a.Magnitude > b.Magnitude:
			return 1
		}
		return strings.Compare(a.Designation, b.Designation)
	})
	index := make(map[string]int, len(stars))
	for i, s := range stars {
		stars[i].Rank, index[s.Designation] = i, i
	}
	return catalogue{stars, index}
})

// parseStars reads the columns designation, ra_deg, dec_deg, pm_ra_mas, pm_dec_mas,
// magnitude, name, under a heading.
func parseStars(text string) ([]Star, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, errors.New("no heading")
	}
	stars := make([]Star, 0, len(rows)-1)
	for _, row := range rows[1:] {
		var x [5]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(row[i+1], 64); err != nil {
				return nil, fmt.Errorf("%s: %w", row[0], err)
			}
		}
		s := Star{Designation: row[0], Name: row[6], Magnitude: x[4]}
		s.place, s.motion = onSphere(quantity.Degrees(x[0]), quantity.Degrees(x[1]),
			quantity.ArcSeconds(x[2]/1000), quantity.ArcSeconds(x[3]/1000))
		stars = append(stars, s)
	}
	return stars, nil
}

// onSphere returns a place as a unit vector and its proper motion (in right
// ascension along the sky, a year) as a vector at right angles to it.
func onSphere(ra, dec, alongRA, alongDec quantity.Angle) (at, motion space.Vector) {
	at = Direction{ra, dec}.vector()
	east := space.Vector{X: -ra.Sin(), Y: ra.Cos()}
	north := space.Vector{X: -dec.Sin() * ra.Cos(), Y: -dec.Sin() * ra.Sin(), Z: dec.Cos()}
	return at, east.Times(alongRA.Radians()).Plus(north.Times(alongDec.Radians()))
}
