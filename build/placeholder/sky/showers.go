package sky

import (
	"math"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

const sourceShowers = "Meteor showers: International Meteor Organization, Meteor Shower Calendar 2026, table 5 (J. Rendtel, ed.); peaks by the Sun's longitude, J2000"

// A shower is a stream of meteors that the Earth crosses once a year.
type shower struct {
	name      string  // key of its name
	longitude float64 // of the Sun at the peak, degrees, J2000
	ra, dec   float64 // radiant at the peak, degrees, J2000
	rate      float64 // meteors an hour in a dark sky with the radiant overhead, ZHR
}

// showers are the nine strongest yearly ones: International Meteor Organization,
// Meteor Shower Calendar 2026 (IMO INFO 3-25, J. Rendtel, ed.), table 5. Rates
// differ from year to year by a third; the calendar of 2027 has 110 for the Perseids.
var showers = []shower{
	{"shower.quadrantids", 283.15, 230, 49, 80},
	{"shower.lyrids", 32.32, 271, 34, 18},
	{"shower.eta_aquariids", 45.5, 338, -1, 50},
	{"shower.delta_aquariids", 128.0, 340, -16, 25},
	{"shower.perseids", 140.0, 48, 58, 100},
	{"shower.orionids", 208.0, 95, 16, 20},
	{"shower.leonids", 235.27, 152, 22, 15},
	{"shower.geminids", 262.2, 112, 33, 150},
	{"shower.ursids", 270.7, 217, 76, 10},
}

// radiantLow is the height below which a radiant sends next to no meteors over
// the horizon: their number goes with the sine of it.
var radiantLow = quantity.Degrees(15)

// meteors finds the showers that peak in the range or a day from it, and whose radiant
// stands high enough in a night about the peak.
func meteors(p place.Place, from, to place.Date) []alert {
	var list []alert
	begin, _ := p.Day(from.Add(-1)) // the best hour may be on the next date, or on the one before
	_, end := p.Day(to.Add(1))
	for _, s := range showers {
		for t := begin; t.Before(end); t = t.Add(24 * time.Hour) {
			if away := s.away(t); away <= 0 || s.away(t.Add(24*time.Hour)) > 0 || away > 2 {
				continue
			}
			peak := t
			for peak.Before(t.Add(24*time.Hour)) && s.away(peak) > 0 {
				peak = peak.Add(30 * time.Minute)
			}
			if a, ok := s.alert(p, peak); ok {
				list = append(list, a)
			}
		}
	}
	return list
}

// away is how far the Sun has still to go to the peak, −180° to 180°.
// Precession, 50.29″ a year: Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 21.
func (s shower) away(t time.Time) float64 {
	years := t.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24 / 365.25
	return math.Remainder(s.longitude+years*50.29/3600-almanac.SunAt(t).Longitude.Degrees(), 360)
}

// alert tells of the best hour of a night that is nearest to the peak.
func (s shower) alert(p place.Place, peak time.Time) (alert, bool) {
	var best time.Time
	for night := -2; night <= 1; night++ { // nights begin at noon by the Sun, which may be any hour by the clock
		if t, ok := s.best(p, entry.NightOf(p, p.DateAt(peak).Add(night))); ok && (best.IsZero() || t.Sub(peak).Abs() < best.Sub(peak).Abs()) {
			best = t
		}
	}
	if best.IsZero() {
		return alert{}, false
	}
	height := s.height(p, best)
	look := say.Words("sky-alerts.meteors_look", say.Number(math.Ceil(s.rate*height.Sin()/5)*5, "", 0), say.Number(height.Degrees(), "deg", 0))
	if moon := almanac.Moon.AspectAt(best); entry.MoonUp(p, best) && moon.Lit > 0.3 {
		look = say.Words("sky-alerts.meteors_moon", look, entry.Percent(moon.Lit))
	}
	name := say.Words(s.name)
	return alert{at: best, what: say.Words("sky-alerts.meteors", name), look: look, Short: name}, true
}

// best returns when in the dark of a night the radiant stands highest. ok is false
// where it stays low or the night is too bright.
func (s shower) best(p place.Place, n entry.Night) (best time.Time, ok bool) {
	from, to, dark := n.Dark(nauticalDepth)
	if !dark {
		return best, false
	}
	height := radiantLow
	for t := from; t.Before(to); t = t.Add(15 * time.Minute) {
		if h := s.height(p, t); h > height {
			best, height = t, h
		}
	}
	return best, !best.IsZero()
}

// height is the radiant's altitude. Its shift by precession since J2000, less
// than 0.6° in this century, is smaller than radiants are known.
func (s shower) height(p place.Place, t time.Time) quantity.Angle {
	ra, dec := quantity.Degrees(s.ra), quantity.Degrees(s.dec)
	hour := almanac.SiderealTime(t) + p.Longitude - ra
	return quantity.Asin(p.Latitude.Sin()*dec.Sin() + p.Latitude.Cos()*dec.Cos()*hour.Cos())
}
