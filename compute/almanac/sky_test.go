package almanac

import (
	"math/rand/v2"
	"slices"
	"sync"
	"testing"
	"time"

	"noonbook/compute/space"
)

// fits is how far, in seconds of arc, the sky may be from the theories that it is
// fitted to: a thousandth of the narrowest promise, 0.5″ for the Sun.
const fits = 0.0005

// The sky against the theories at 20,000 moments a body, and on both sides of every
// seam: directions, distances, sidereal time.
func TestSkyIsTheTheory(t *testing.T) {
	begin := momentOf(time.Date(FirstYear, 1, 1, 0, 0, 0, 0, time.UTC)).ut
	end := momentOf(time.Date(LastYear+1, 1, 1, 0, 0, 0, 0, time.UTC)).ut
	for b := Sun; b <= Pluto; b++ {
		var angle, distance, sidereal float64
		look := func(ut float64) {
			m := momentAt(ut)
			f, slow := frameOf(m), frameBySeries(m)
			v, want := b.vector(m, f), slowVector(b, m, slow)
			angle = max(angle, v.Angle(want).ArcSeconds())
			distance = max(distance, abs(v.Norm()/want.Norm()-1))
			sidereal = max(sidereal, abs(apparentSidereal(m, f)-apparentSidereal(m, slow))*86400/6.283)
		}
		r := rand.New(rand.NewPCG(1, uint64(b)))
		for range 20000 {
			look(begin + (end-begin)*r.Float64())
		}
		for day := float64(skyBegins); day < skyEnds; day += 8 {
			for _, aside := range []float64{-1e-6, 1e-6} {
				look(day + aside - deltaT(day)/86400)
			}
		}
		t.Logf("%-8s worst %.5f″, %.1g of the distance, %.2g s of sidereal time", b, angle, distance, sidereal)
		if angle > fits || distance > 2e-9 || sidereal > 1e-5 {
			t.Errorf("%s: %.5f″, %.2g of the distance, %.2g s", b, angle, distance, sidereal)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// Beyond its years the sky is the theory itself, and it does not jump there.
func TestSkyEndsWithoutAStep(t *testing.T) {
	for name, s := range sheets() {
		for _, day := range []float64{skyBegins - 1e-6, skyEnds, skyEnds + 1e-6, skyBegins - 4000, skyEnds + 4000, -reach, reach} {
			if got, want := s.at(day/36525), s.series(day/36525); got != want {
				t.Errorf("%s on day %g: %v, the theory says %v", name, day, got, want)
			}
		}
		for _, edge := range [][2]float64{{skyBegins, skyBegins - 1e-6}, {skyEnds - 1e-6, skyEnds}} {
			in, out := s.at(edge[0]/36525), s.at(edge[1]/36525)
			if jump := in.Minus(out).Norm() / out.Norm(); jump > 1e-6 {
				t.Errorf("%s jumps by %.2g of itself at day %g", name, jump, edge[0])
			}
		}
	}
}

func sheets() map[string]*sheet {
	all := map[string]*sheet{"Earth": earthSky, "Moon": moonSky, "nutation": nutationSky}
	for i, s := range planetSky {
		all[(Mercury + Body(i)).String()] = s
	}
	return all
}

// What a sheet answers does not depend on what was asked before, or by how many at
// once: asked forwards, backwards and by eight at a time it gives the same bits.
func TestSkyForgetsTheOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	moments := make([]float64, 400)
	for i := range moments {
		moments[i] = (9000 + 3000*r.Float64()) / 36525
	}
	for name, s := range sheets() {
		ask := func(fresh *sheet, order []float64) map[float64]space.Vector {
			said := map[float64]space.Vector{}
			for _, c := range order {
				said[c] = fresh.at(c)
			}
			return said
		}
		forwards := ask(newSheet(s.length, s.degree, s.series), moments)
		backwards := slices.Clone(moments)
		slices.Reverse(backwards)
		shared := newSheet(s.length, s.degree, s.series)
		said := make([]map[float64]space.Vector, 8)
		var group sync.WaitGroup
		for i := range said {
			group.Go(func() { said[i] = ask(shared, append(moments[50*i:], moments[:50*i]...)) })
		}
		group.Wait()
		for i, other := range append(said, ask(newSheet(s.length, s.degree, s.series), backwards)) {
			for c, v := range forwards {
				if other[c] != v {
					t.Fatalf("%s, order %d: %v, not %v", name, i, other[c], v)
				}
			}
		}
	}
}

// A place by its theory and from the sky, whose pieces are there.
func BenchmarkPlace(b *testing.B) {
	m := momentOf(time.Date(2027, 4, 20, 16, 18, 0, 0, time.UTC))
	f := frameOf(m)
	for _, body := range []Body{Sun, Moon, Venus, Pluto} {
		b.Run(body.String()+"/theory", func(b *testing.B) {
			for b.Loop() {
				slowVector(body, m, f)
			}
		})
		b.Run(body.String()+"/sky", func(b *testing.B) {
			for b.Loop() {
				body.vector(m, f)
			}
		})
	}
	b.Run("nutation/theory", func(b *testing.B) {
		for b.Loop() {
			frameBySeries(m)
		}
	})
	b.Run("nutation/sky", func(b *testing.B) {
		for b.Loop() {
			frameOf(m)
		}
	})
	for name, s := range sheets() {
		b.Run(name+"/fit", func(b *testing.B) {
			for b.Loop() {
				s.fit(1000 % len(s.pieces))
			}
		})
	}
}
