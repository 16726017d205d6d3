package compass

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Nanotesla is a magnetic flux density in units of 10⁻⁹ tesla.
type Nanotesla float64

// A Field is the Earth's magnetic field at one place and moment.
type Field struct {
	Declination  quantity.Angle // of magnetic from true north, east positive
	Inclination  quantity.Angle // below the horizontal positive
	Horizontal   Nanotesla      // strength of the horizontal part, which turns the needle
	Total        Nanotesla      // strength of the whole field
	Trust        Trust          // whether a compass is of use here
	OutsideModel bool           // the date lies outside the model's years 2025.0 to 2030.0
}

// Trust says how far a compass can be relied on. The horizontal field fades
// towards the magnetic poles, and the needle with it.
type Trust int

// The zones of the WMM2025 report, by the horizontal field H.
const (
	Reliable Trust = iota // H is 6000 nT or more
	Caution               // H is 2000 to 6000 nT: the compass may err
	Blackout              // H is below 2000 nT: the compass must not be used
)

// String returns the zone as the report names it.
func (t Trust) String() string {
	return [...]string{"reliable", "caution zone", "blackout zone"}[t]
}

const (
	cautionBelow  Nanotesla = 6000
	blackoutBelow Nanotesla = 2000
)

// At returns the field of the World Magnetic Model 2025 at a geodetic latitude
// (north positive), longitude (east positive) and elevation above mean sea
// level at the moment t. Outside 2025.0 to 2030.0 the field is computed all the
// same and flagged. At the poles declination is measured from the meridian of
// the longitude given; see the package comment.
//
// The error tells of a latitude beyond ±90°, of a longitude that is no number,
// or of an elevation outside the model's −1 km to 850 km.
func At(latitude, longitude quantity.Angle, elevation quantity.Length, t time.Time) (Field, error) {
	if lat := latitude.Degrees(); !(math.Abs(lat) <= 90) {
		return Field{}, fmt.Errorf("latitude %g° is outside −90° to 90°", lat)
	}
	if lon := longitude.Degrees(); math.IsNaN(lon) || math.IsInf(lon, 0) {
		return Field{}, fmt.Errorf("longitude %g° is not an angle", lon)
	}
	if h := elevation.Kilometres(); !(h >= -1 && h <= 850) {
		return Field{}, fmt.Errorf("elevation %g km is outside −1 km to 850 km", h)
	}
	model, err := wmm2025()
	if err != nil {
		return Field{}, err
	}
	year := decimalYear(t)
	north, east, down := model.vector(latitude, longitude, elevation, year-modelEpoch)
	f := fieldOf(north, east, down)
	f.OutsideModel = year < modelEpoch || year > modelEnd
	return f, nil
}

// fieldOf turns the vector, in nT, into the quantities that compasses show.
func fieldOf(north, east, down float64) Field {
	horizontal := math.Hypot(north, east)
	f := Field{
		Declination: quantity.Atan2(east, north),
		Inclination: quantity.Atan2(down, horizontal),
		Horizontal:  Nanotesla(horizontal),
		Total:       Nanotesla(math.Hypot(horizontal, down)),
	}
	switch {
	case f.Horizontal < blackoutBelow:
		f.Trust = Blackout
	case f.Horizontal < cautionBelow:
		f.Trust = Caution
	}
	return f
}

// decimalYear returns t in years as the model counts them: 2027.5 is the middle
// of the year 2027 in UTC.
func decimalYear(t time.Time) float64 {
	year := t.UTC().Year()
	begin := time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC)
	end := time.Date(year+1, time.January, 1, 0, 0, 0, 0, time.UTC)
	return float64(year) + t.Sub(begin).Seconds()/end.Sub(begin).Seconds()
}
