package worlds

import (
	"fmt"
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// What the entry takes.
const (
	argMassKg form.Key[float64]    = "mass_kg"
	argJumpM  form.Key[float64]    = "jump_m"
	argThrowM form.Key[float64]    = "throw_m"
	argBorn   form.Key[place.Date] = "born"
)

func weightTable() entry.Entry {
	return entry.Entry{
		Name:    "weight-table",
		Summary: "What a scale would show on other worlds, how high the same jump and how far the same throw would go, and how old one is in their years.",
		Arguments: form.Form{entry.OnDate(), oneWorld("moon"),
			{Key: argMassKg, Unit: "kg", Min: 1, Max: 500, Default: 40.0, Doc: "Mass: what a scale shows here. An invented one is kinder than a pupil's own."},
			{Key: argJumpM, Unit: "m", Min: 0.05, Max: 3, Default: 0.3, Doc: "How high a jump lifts the body here."},
			{Key: argThrowM, Unit: "m", Min: 0.5, Max: 150, Default: 20.0, Doc: "How far a throw flies here."},
			{Key: argBorn, Assumed: "eleven years before the date", Doc: "Day of birth, for ages and birthdays."},
		},
		Facts: []entry.Fact{
			{Name: "mass", Unit: "kg", Doc: "the mass, the same everywhere"},
			{Name: "jump_here", Unit: "m", Doc: "the jump here"},
			{Name: "throw_here", Unit: "m", Doc: "the throw here"},
			{Name: "age_here", Doc: "whole years of age on the date"},
			{Name: "world", Doc: "the world that the next facts are about"},
			{Name: "scale", Unit: "kg", Doc: "what a bathroom scale would show there"},
			{Name: "pull", Doc: "its pull in that of the Earth"},
			{Name: "force", Unit: "N", Doc: "the weight there, a force in newtons"},
			{Name: "jump", Unit: "m", Doc: "how high the same jump goes there"},
			{Name: "throw", Unit: "m", Doc: "how far the same throw flies there"},
			{Name: "age", Doc: "age there, in its own years"},
			{Name: "next_birthday", Doc: "the day of the next birthday there"},
			{Name: "next_number", Doc: "which birthday that is"},
			{Name: "lightest_on", Doc: "the world where the scale shows least"},
			{Name: "heaviest_on", Doc: "the one where it shows most"},
		},
		Sources:  []string{sourceWorlds, sourceDerived, "Jump: same take-off speed, v²/2 = GM/r − GM/(r + h). Throw: same speed and angle, no air, level ground: distance ∝ 1/pull. Newton's laws, any textbook"},
		Harmless: "Numbers of other worlds, to read.",
		Reckon:   reckonWeight,
	}
}

// A life is how long somebody has lived on a date.
type life struct {
	born, date place.Date
	days       int
}

func lifeOf(v form.Values) (life, error) {
	l := life{born: argBorn.Of(v), date: entry.Date.Of(v)}
	if !argBorn.In(v) {
		l.born = sameDay(l.date, l.date.Year-11)
	}
	if l.born.After(l.date) {
		return l, fmt.Errorf("born is %s, after the date %s", l.born, l.date)
	}
	if l.date.Year-l.born.Year > 130 {
		return l, fmt.Errorf("born is %s, more than 130 years before the date %s", l.born, l.date)
	}
	l.days = l.born.DaysUntil(l.date)
	return l, nil
}

// sameDay is a day in another year; 29 February becomes 1 March where there is none.
func sameDay(d place.Date, year int) place.Date {
	t := time.Date(year, d.Month, d.Day, 0, 0, 0, 0, time.UTC)
	return place.Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}
}

// birthday returns the next birthday on a world and which one it is: on the Earth
// by the calendar, elsewhere by whole turns of that world round the Sun. One that
// falls on the date itself is the next.
func (l life) birthday(w world.World) (number int, on place.Date) {
	if w.Name == "earth" || w.Kind == world.Moon {
		number = max(1, l.date.Year-l.born.Year)
		if on = sameDay(l.born, l.born.Year+number); on.Before(l.date) {
			number++
			on = sameDay(l.born, l.born.Year+number)
		}
		return number, on
	}
	number, after := w.Birthday(l.days)
	return number, l.born.Add(int(math.Round(after)))
}

// whole returns how many birthdays lie behind, today's included.
func (l life) whole(w world.World) int {
	number, on := l.birthday(w)
	if on == l.date {
		return number
	}
	return number - 1
}

// age is in whole years where the calendar counts birthdays, else in turns.
func (l life) age(w world.World) say.Value {
	if w.Name == "earth" || w.Kind == world.Moon {
		return say.Count(l.whole(w))
	}
	return l.turns(w)
}

// turns is how often the world has gone round the Sun meanwhile.
func (l life) turns(w world.World) say.Value {
	age := w.Age(float64(l.days))
	return say.Number(age, "", max(1, min(3, digits(age, 2))))
}

func reckonWeight(v form.Values) (result.Result, error) {
	l, err := lifeOf(v)
	if err != nil {
		return result.Result{}, err
	}
	w, err := worldOf(v)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{
		Facts:    weightFacts(v, w, l),
		Drawings: []drawing.Drawing{scaleChart(argMassKg.Of(v))},
		Tables:   []result.Table{scaleTable(v), birthdayTable(l)},
		Notes:    []say.Phrase{say.Line("weight-table.note_mass"), say.Line("weight-table.note_same"), say.Line("weight-table.note_giants"), say.Line("weight-table.note_air")},
	}
	least, most := ends(w)
	mass := argMassKg.Of(v)
	r.Drawings[0].Finding = say.Line("weight-table.finding", worldName(most), kilograms(most.Weight(mass)), worldName(least), kilograms(least.Weight(mass)))
	r.Working = weightWorking(v, w, l)
	return r, nil
}

func weightWorking(v form.Values, w world.World, l life) []say.Phrase {
	e, mass := earth(), argMassKg.Of(v)
	scale := kilograms(w.Weight(mass))
	s := entry.Enough(scale, func(x []float64) float64 { return x[0] * x[1] / x[2] }, kilograms(mass), worldPull(w), worldPull(e))
	working := []say.Phrase{say.Line("weight-table.working_scale", worldName(w), s[0], s[1], s[2], scale)}
	speed := say.Number(math.Sqrt(2*e.Gravity()*argJumpM.Of(v)), "m_s", 2)
	takeOff := func(speed say.Value) []say.Value {
		return entry.Enough(speed, func(x []float64) float64 { return math.Sqrt(2 * x[1] * x[0]) }, jumpHere(v), worldPull(e))
	}
	switch jump := jumpOn(w, v); jump.Phrase.Key {
	case "weight-table.no_ground": // nothing to reckon
	case "weight-table.leaves":
		o := takeOff(speed)
		working = append(working, say.Line("weight-table.working_leaves", o[0], o[1], speed, say.Number(w.Escape(), "m_s", 2)))
	default:
		working = append(working, jumpWorking(w, jump, speed, takeOff))
	}
	age := l.turns(w)
	a := entry.Enough(age, func(x []float64) float64 { return x[0] / x[1] }, say.Count(l.days), say.Number(w.Year.Hours()/24, "days", 1))
	return append(working, say.Line("weight-table.working_age", a[0], a[1], age))
}

// jumpWorking is v²/2g, and of a world so small that a jump leaves much of its pull
// behind, what that comes to.
func jumpWorking(w world.World, jump, speed say.Value, takeOff func(say.Value) []say.Value) say.Phrase {
	plain, key := jump, "weight-table.working_jump"
	plain.Number = speed.Number * speed.Number / (2 * w.Gravity())
	if entry.AsShown(plain) == entry.AsShown(jump) || jump.Number < plain.Number*1.00001 {
		plain = jump
	} else {
		key = "weight-table.working_jump_small"
	}
	p := entry.Enough(plain, func(x []float64) float64 { return x[0] * x[0] / (2 * x[1]) }, speed, worldPull(w))
	o := takeOff(p[0])
	return say.Line(key, o[0], o[1], p[0], p[1], plain, jump)
}

// ends are the worlds of the weakest and the strongest pull, from any one of them.
func ends(w world.World) (least, most world.World) {
	least, most = w, w
	for _, x := range world.All() {
		if x.Gravity() < least.Gravity() {
			least = x
		}
		if x.Gravity() > most.Gravity() {
			most = x
		}
	}
	return least, most
}

func weightFacts(v form.Values, w world.World, l life) []result.Fact {
	mass := argMassKg.Of(v)
	least, most := ends(w)
	number, on := l.birthday(w)
	return []result.Fact{
		{Name: "mass", Value: kilograms(mass)},
		{Name: "jump_here", Value: jumpHere(v)},
		{Name: "throw_here", Value: say.Number(argThrowM.Of(v), "m", entry.WholeOrTenth(argThrowM.Of(v)))},
		{Name: "age_here", Value: say.Count(l.whole(earth()))},
		{Name: "world", Value: worldName(w)},
		{Name: "scale", Value: kilograms(w.Weight(mass))},
		{Name: "pull", Value: inEarths(w.Gravity() / world.EarthGravity())},
		{Name: "force", Value: force(w, mass)},
		{Name: "jump", Value: jumpOn(w, v)},
		{Name: "throw", Value: throwOn(w, v)},
		{Name: "age", Value: l.age(w)},
		{Name: "next_birthday", Value: say.Date(on)},
		{Name: "next_number", Value: say.Count(number)},
		{Name: "lightest_on", Value: worldName(least)},
		{Name: "heaviest_on", Value: worldName(most)},
	}
}

// kilograms is shown as a scale shows it, to a tenth, and finer where that is nothing.
func kilograms(kg float64) say.Value {
	if kg < 0.95 {
		return sized(kg, "kg", 1)
	}
	return say.Number(kg, "kg", entry.WholeOrTenth(kg))
}

func force(w world.World, mass float64) say.Value {
	n := mass * w.Gravity()
	return say.Number(n, "N", digits(n, 2))
}

func jumpHere(v form.Values) say.Value { return say.Number(argJumpM.Of(v), "m", 2) }

// reach is how far a jump or throw goes, in words where there is no ground or no
// coming back.
func reach(w world.World, r world.Reach) say.Value {
	switch {
	case !w.Ground():
		return say.None("weight-table.no_ground")
	case r.Leaves:
		return say.None("weight-table.leaves")
	}
	return say.Number(r.Metres(), "m", min(2, digits(r.Metres(), 2)))
}

func jumpOn(w world.World, v form.Values) say.Value {
	return reach(w, w.Jump(quantity.Metres(argJumpM.Of(v))))
}

func throwOn(w world.World, v form.Values) say.Value {
	return reach(w, w.Throw(quantity.Metres(argThrowM.Of(v))))
}

func scaleTable(v form.Values) result.Table {
	mass := argMassKg.Of(v)
	table := result.Table{
		Name: "scales", Title: say.Line("weight-table.title_scales", kilograms(mass), jumpHere(v), say.Number(argThrowM.Of(v), "m", entry.WholeOrTenth(argThrowM.Of(v)))),
		Columns: []result.Column{{Name: "world"}, {Name: "pull"}, {Name: "scale", Unit: "kg"}, {Name: "force", Unit: "N"}, {Name: "jump", Unit: "m"}, {Name: "throw", Unit: "m"}},
	}
	for _, w := range world.All() {
		table.Rows = append(table.Rows, result.Row{Marked: w.Name == "earth", Cells: []say.Value{
			worldName(w), inEarths(w.Gravity() / world.EarthGravity()), kilograms(w.Weight(mass)), force(w, mass), jumpOn(w, v), throwOn(w, v),
		}})
	}
	return table
}

func birthdayTable(l life) result.Table {
	table := result.Table{
		Name: "birthdays", Title: say.Line("weight-table.title_birthdays", say.Date(l.born), say.Date(l.date)),
		Columns: []result.Column{{Name: "world"}, {Name: "year", Unit: "s"}, {Name: "age"}, {Name: "next_number"}, {Name: "next_birthday"}},
	}
	for _, w := range world.All() {
		if w.Kind == world.Moon { // its year is the Earth's
			continue
		}
		number, on := l.birthday(w)
		table.Rows = append(table.Rows, result.Row{Marked: w.Name == "earth", Cells: []say.Value{
			worldName(w), lasts(w.Year), l.age(w), say.Count(number), say.Date(on),
		}})
	}
	return table
}

// scaleChart draws what the scale shows as bars, one below the other.
func scaleChart(mass float64) drawing.Drawing {
	worlds := world.All()
	const row, left, right, top = 6.0, 42.0, 150.0, 4.0
	d := drawing.Drawing{
		Name: "chart weights", Width: entry.PictureWidth, Height: top + row*float64(len(worlds)) + 2,
		Title: say.Line("weight-table.chart", kilograms(mass)), Description: say.Line("weight-table.chart_description"),
	}
	most := 0.0
	for _, w := range worlds {
		most = max(most, w.Weight(mass))
	}
	for i, w := range worlds {
		y := top + row*float64(i)
		end := left + (right-left)*w.Weight(mass)/most
		role := "bar"
		if w.Name == "earth" {
			role = "earth"
		}
		d.Offer("figure", drawing.Keep, worldName(w), drawing.Place{At: drawing.Point{X: left - 2, Y: y + 2.6}, Anchor: drawing.End, Sits: drawing.Centred})
		d.Area(role, drawing.Point{X: left, Y: y + 0.6}, drawing.Point{X: end, Y: y + 0.6}, drawing.Point{X: end, Y: y + 4.4}, drawing.Point{X: left, Y: y + 4.4})
		d.Offer("figure", drawing.Keep, kilograms(w.Weight(mass)), drawing.Place{At: drawing.Point{X: end + 1.5, Y: y + 2.6}, Anchor: drawing.Start, Sits: drawing.Centred})
	}
	d.Line("axis", drawing.Point{X: left, Y: top}, drawing.Point{X: left, Y: top + row*float64(len(worlds))})
	return d
}
