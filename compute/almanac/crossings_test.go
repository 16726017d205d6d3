package almanac

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// The events of 60,000 days from pole to pole against the slow way: as many of each
// kind, the same state, and each within 2 ms, or within the time in which the altitude
// changes by 0.002″ where the body grazes it. Half the places lie beyond 58°, a tenth
// at a pole; a third of the Sun's days ask for another altitude than the horizon.
func TestEventsAreThoseOfTheSlowWay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	worst, events, quiet := map[Body]time.Duration{}, 0, 0
	for range 60000 {
		b := Body(r.IntN(int(Pluto) + 1))
		if r.IntN(2) == 0 {
			b = Body(r.IntN(2))
		}
		latitude := 180*r.Float64() - 90
		switch r.IntN(10) {
		case 0, 1, 2:
			latitude = math.Copysign(58+32*r.Float64(), latitude)
		case 3:
			latitude = math.Copysign(90, latitude)
		}
		p := place.Place{
			Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(360*r.Float64() - 180),
			Elevation: quantity.Metres(3000 * r.Float64()), Zone: time.FixedZone("", 900*(r.IntN(105)-52)),
		}
		d := place.Date{Year: 1950, Month: 1, Day: 1}.Add(r.IntN(151 * 365))
		altitude, radius := b.rising()
		if b == Sun && r.IntN(3) == 0 {
			altitude, radius = quantity.Degrees(100*r.Float64()-30), 0
		}
		got := b.past(p, d, altitude, radius)
		k, c, _ := slowCourse(b, p, d, altitude, radius)
		c.k = &k
		var want Day
		want.From = got.From
		var found [most]crossing
		for _, x := range found[:c.slowCrossings(&found)] {
			if x.up {
				want.Rises = append(want.Rises, want.at(x.day))
			} else {
				want.Sets = append(want.Sets, want.at(x.day))
			}
		}
		if len(want.Rises)+len(want.Sets) == 0 {
			quiet++
			want.State = DownAllDay
			if c.height(k.span/2) > 0 {
				want.State = UpAllDay
			}
		}
		var transits [most]float64
		for _, x := range transits[:c.transits(&transits)] {
			want.Transits = append(want.Transits, want.at(x))
		}
		if len(got.Rises) != len(want.Rises) || len(got.Sets) != len(want.Sets) || len(got.Transits) != len(want.Transits) || got.State != want.State {
			t.Errorf("%s on %v at %.4f°, %.4f°, altitude %.4f°: %v %v %v %v, the slow way %v %v %v %v", b, d, latitude, p.Longitude.Degrees(), altitude.Degrees(),
				got.State, got.Rises, got.Transits, got.Sets, want.State, want.Rises, want.Transits, want.Sets)
			continue
		}
		for kind, pair := range [][2][]time.Time{{got.Transits, want.Transits}, {got.Rises, want.Rises}, {got.Sets, want.Sets}} {
			for i, at := range pair[0] {
				events++
				off := at.Sub(pair[1][i]).Abs()
				var graze time.Duration
				if kind > 0 { // a transit is no matter of altitude
					slope := c.slope(pair[1][i].Sub(want.From).Hours() / 24)
					graze = time.Duration(0.002 / 206265 / slope * 86400e9)
				}
				if off > 2*time.Millisecond+graze {
					t.Errorf("%s on %v at %.4f°: %v, the slow way %v", b, d, latitude, at, pair[1][i])
				}
				if graze < time.Millisecond {
					worst[b] = max(worst[b], off)
				}
			}
		}
	}
	t.Logf("%d events, %d days without; worst %v", events, quiet, worst)
}
