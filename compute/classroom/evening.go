package classroom

import (
	"slices"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// An Outing says how a school holds an evening under the sky.
type Outing struct {
	First, Last place.Date    // the days on which it may be, both included; zero for EveningNotice days into the term, and its end
	Length      time.Duration // from the first greeting to the way home
	EndsBy      time.Duration // since midnight, by the school's clock
}

// What an evening for pupils of about eleven must give. Common practice, no source.
const (
	EveningBegins = 18 * time.Hour   // no earlier, however early it gets dark: families are home from work
	EveningStep   = 15 * time.Minute // it begins at a full quarter of an hour
	EveningNotice = 3                // days of the term before it: the class knows the cautions, the slips are back

	reserveSoon = 10 // days after an evening within which its reserve is looked for first: families keep it free

	figuresDepth = 9 * quantity.Turn / 360  // of the Sun below the horizon halfway through Figures: the brighter stars are out
	countDepth   = 12 * quantity.Turn / 360 // halfway through Counting: the end of nautical twilight
	brightDepth  = 6 * quantity.Turn / 360  // halfway through PlanetLook, for a planet that outshines Sirius

	crescent     = 0.15 // of the Moon's disc lit at least: a thinner one sets with the dusk
	gibbous      = 0.85 // and at most: near full there are no shadows, and it drowns the stars
	planetBright = 1.5  // magnitude: as bright as the twenty brightest stars
	sirius       = -1.46
)

// EveningAdults is how many adults go with the groups at least: one for every eight pupils,
// and never fewer than two. One more is free, for the child who must go in. Common practice,
// no source; the school's own ratio comes first.
func EveningAdults(pupils int) int { return max(2, (pupils+7)/8) }

// planetLeast is how high a planet stands as seen during its station, a fist.
const planetLeast = MoonLeast

// An EveningPart is a stretch of an evening.
type EveningPart int

// The parts of an evening in their order: the Moon while it is not yet dark, the stars last.
const (
	Arriving EveningPart = iota
	MoonLook
	PlanetLook
	Figures
	Counting
	HomeGoing
)

// partShares are the lengths of the parts in fifteenths of the evening: 10, 15, 15, 15, 15
// and 5 minutes of 75. Common practice, no source.
var partShares = [...]time.Duration{2, 3, 3, 3, 3, 1}

// Part returns when a part of an evening that lasts for the span begins and ends, to the
// minute.
func (s Span) Part(part EveningPart) Span {
	at := func(n int) time.Duration {
		var sum time.Duration
		for _, share := range partShares[:n] {
			sum += share
		}
		return s.From + ((s.To - s.From) * sum / 15).Round(time.Minute)
	}
	return Span{at(int(part)), at(int(part) + 1)}
}

// middle is the moment halfway through the slot.
func (s Slot) middle(p place.Place) time.Time {
	from, to := s.Moments(p)
	return from.Add(to.Sub(from) / 2)
}

// Part returns the part of an evening on its date.
func (s Slot) Part(part EveningPart) Slot { return Slot{s.Date, s.Span.Part(part)} }

// An Evening is one on which a class can meet under the sky. It is dark enough for the
// stars in time; Moon and planet may be missing.
type Evening struct {
	Slot
	Moon      bool         // high enough throughout its station, and neither too thin nor too full
	Planet    almanac.Body // the brightest that is high enough throughout its station and shows by then
	HasPlanet bool
	Free      bool // no school on the day after it

	score float64
}

// whole counts what the evening has to show besides the stars.
func (e Evening) whole() (n int) {
	if e.Moon {
		n += 2 // what a class sees most of
	}
	if e.HasPlanet {
		n++
	}
	return n
}

// better reports whether e is to be taken before f: with the Moon, then with a planet, then
// by the score; of equals the earlier.
func (e Evening) better(f Evening) bool {
	if e.whole() != f.whole() {
		return e.whole() > f.whole()
	}
	return e.score > f.score
}

// Evenings returns the evenings of the term that have stars in time, in order: of school
// days, whose afternoon the staff is there for.
func (t Term) Evenings(p place.Place) []Evening {
	first, last := t.First.Add(EveningNotice), t.Last
	if d := t.Outing.First; !d.IsZero() {
		first = d
	}
	if d := t.Outing.Last; !d.IsZero() {
		last = d
	}
	var list []Evening
	for _, d := range t.Days() {
		if d.Before(first) || d.After(last) {
			continue
		}
		if e, ok := t.eveningOn(p, d); ok {
			list = append(list, e)
		}
	}
	return list
}

// NextEvening returns the first evening after a date, by so many days later at most, that
// has stars in time. It looks past the end of the term, by its weekdays and days off.
func (t Term) NextEvening(p place.Place, after place.Date, days int) (Evening, bool) {
	for d := after.Add(1); after.DaysUntil(d) <= days; d = d.Add(1) {
		if !t.Teaches(d) || !could(p, Need{Kind: Dark}, d) {
			continue
		}
		if e, ok := t.eveningOn(p, d); ok {
			return e, true
		}
	}
	return Evening{}, false
}

// ChooseEvening returns the best of the evenings and one after it, in reserve for cloud: so
// many are found, none to two. Of two that show as much, that goes first whose reserve, soon
// after it, shows more; then the one of the better score, and the earlier.
func ChooseEvening(list []Evening) (night, reserve Evening, found int) {
	secured := 0
	for k, e := range list {
		r, safe := reserveOf(list, k)
		if found > 0 && (e.whole() < night.whole() || e.whole() == night.whole() && (safe < secured || safe == secured && e.score <= night.score)) {
			continue
		}
		night, reserve, secured, found = e, r, safe, 2
		if safe < 0 {
			found = 1
		}
	}
	return night, reserve, found
}

// reserveOf is the best evening soon after the one of that number, or else the best of all
// later ones, and how well it secures it: by what it shows, by nothing if it is late, by less
// if there is none.
func reserveOf(list []Evening, k int) (reserve Evening, secured int) {
	secured = -1
	for _, e := range list[k+1:] {
		soon := 0
		if list[k].Date.DaysUntil(e.Date) <= reserveSoon {
			soon = 1 + e.whole()
		}
		if soon > secured || soon == secured && e.better(reserve) {
			reserve, secured = e, soon
		}
	}
	return reserve, secured
}

// eveningOn looks for a begin on the date: the first quarter of an hour after sunset from
// which it gets dark for the stars in time.
func (t Term) eveningOn(p place.Place, d place.Date) (Evening, bool) {
	deep := func(s Slot, depth quantity.Angle) bool {
		return almanac.SunFrom(p, s.middle(p)).Altitude <= -depth
	}
	for begin := EveningBegins; begin+t.Outing.Length <= t.Outing.EndsBy; begin += EveningStep {
		s := Slot{d, Span{begin, begin + t.Outing.Length}}
		if from, _ := s.Moments(p); SunDown(p, from) && deep(s.Part(Figures), figuresDepth) && deep(s.Part(Counting), countDepth) {
			e := Evening{Slot: s, Free: !t.Teaches(d.Add(1))}
			e.look(p)
			return e, true
		}
	}
	return Evening{}, false
}

// SunDown reports whether the Sun has wholly set, or is not up at all: its centre is 50′
// below the horizon, as for sunset.
func SunDown(p place.Place, t time.Time) bool {
	return almanac.SunFrom(p, t).Altitude <= -50*quantity.Turn/360/60
}

// look finds Moon and planet, and the score: up to one for a half Moon, whose craters show
// best, and for a long night before a free day; half for how high the Moon and the planet
// stand, full from 30° on. Common practice, no source.
func (e *Evening) look(p place.Place) {
	const high = 30 * quantity.Turn / 360
	moon := e.Part(MoonLook)
	lit := almanac.Moon.LimbFrom(p, moon.middle(p)).Lit
	lowest := leastHeight(p, almanac.Moon, moon)
	if e.Moon = lowest >= MoonLeast && lit >= crescent && lit <= gibbous; e.Moon {
		e.score += 1 - max(0.5-lit, lit-0.5)/(0.5-crescent) + 0.5*min(1, float64(lowest/high))
	}
	planets := e.Part(PlanetLook)
	middle := planets.middle(p)
	brightest := planetBright
	for _, b := range almanac.NakedEye() {
		magnitude, depth := b.AspectAt(middle).Magnitude, figuresDepth
		if magnitude < sirius {
			depth = brightDepth
		}
		if magnitude < brightest && leastHeight(p, b, planets) >= planetLeast && almanac.SunFrom(p, middle).Altitude <= -depth {
			e.Planet, e.HasPlanet, brightest = b, true, magnitude
		}
	}
	if e.HasPlanet {
		e.score += 0.5 * min(1, float64(leastHeight(p, e.Planet, planets)/high))
	}
	if e.Free {
		e.score++
	}
}

// leastHeight is how high a body stands as seen at the lower end of a slot: within a quarter
// of an hour its path is as good as straight.
func leastHeight(p place.Place, b almanac.Body, s Slot) quantity.Angle {
	from, to := s.Moments(p)
	return min(asSeen(b.From(p, from).Altitude), asSeen(b.From(p, to).Altitude))
}

// evenings gives the lessons that are evenings their night, beside all others.
func (c *Calendar) evenings(lessons []Lesson, list []Evening) {
	night, reserve, found := ChooseEvening(list)
	for i, l := range lessons {
		if !l.Evening {
			continue
		}
		switch h := &c.Held[i]; found {
		case 0:
			c.Dropped = append(c.Dropped, Rule{Kind: ForEvening, Lesson: i + 1})
		case 1:
			*h = Held{Slot: night.Slot, Placed: true, Reserve: Reserve{Kind: NoTime}}
		default:
			*h = Held{Slot: night.Slot, Placed: true, Reserve: Reserve{Kind: AtAnotherTime, Slot: reserve.Slot}}
		}
	}
}

// inSchool returns the lessons that are held in lesson times, and for each its index among
// all. What they say of other lessons by number is said of the numbers that these have then.
func inSchool(lessons []Lesson) (rest []Lesson, index []int) {
	if !slices.ContainsFunc(lessons, func(l Lesson) bool { return l.Evening }) {
		for i := range lessons {
			index = append(index, i)
		}
		return lessons, index
	}
	number := make([]int, len(lessons)+1) // by old number; 0 for the evenings
	for i, l := range lessons {
		if !l.Evening {
			rest, index = append(rest, l), append(index, i)
			number[i+1] = len(rest)
		}
	}
	for i := range rest {
		l := &rest[i]
		if l.After.Lesson > 0 && l.After.Lesson < len(number) {
			if l.After.Lesson = number[l.After.Lesson]; l.After.Lesson == 0 {
				l.After = Gap{}
			}
		}
		if l.With > 0 && l.With < len(number) {
			l.With = number[l.With]
		}
	}
	return rest, index
}
