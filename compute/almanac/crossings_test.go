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
// changes by 0.002″ where the body grazes it. Of the places two in five lie within 2°
// of where the body stops rising or setting, a tenth at a pole; a third of the Sun's
// days ask for another altitude than the horizon.
func TestEventsAreThoseOfTheSlowWay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	worst, events, quiet := map[Body]time.Duration{}, 0, 0
	var quick, all [3]int // to 50°, to 66°, beyond
	latitudes := func(x float64) int {
		switch x = math.Abs(x); {
		case x < 50:
			return 0
		case x < 66:
			return 1
		}
		return 2
	}
	for range 60000 {
		b := Body(r.IntN(int(Pluto) + 1))
		if r.IntN(2) == 0 {
			b = Body(r.IntN(2))
		}
		latitude := 180*r.Float64() - 90
		d := place.Date{Year: 1950, Month: 1, Day: 1}.Add(r.IntN(151 * 365))
		switch r.IntN(10) {
		case 0:
			latitude = math.Copysign(58+32*r.Float64(), latitude)
		case 1:
			latitude = math.Copysign(90, latitude)
		case 2, 3, 4, 5: // where it hardly rises or hardly sets
			latitude = math.Copysign(90-math.Abs(b.At(d.UTC()).Declination.Degrees())+4*r.Float64()-2, latitude)
			latitude = max(-90, min(90, latitude))
		}
		p := place.Place{
			Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(360*r.Float64() - 180),
			Elevation: quantity.Metres(3000 * r.Float64()), Zone: time.FixedZone("", 900*(r.IntN(105)-52)),
		}
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
		for _, x := range found[:c.hourly(&found)] {
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
		ready := got.State != NoDay
		if _, ok := c.expected(&found); ok && ready {
			quick[latitudes(latitude)]++
		}
		all[latitudes(latitude)]++
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
	t.Logf("%d events, %d days without; worst %v; found where expected: %v of %v days to 50°, to 66°, beyond", events, quiet, worst, quick, all)
	if quick[0] < all[0]*9/10 || quick[2] == 0 || quick[2] == all[2] {
		t.Error("the quick way is taken too seldom, or always")
	}
}
