package class

import (
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/moon"
	"noonbook/build/placeholder/sky"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// Measures of the wall calendar in millimetres.
const (
	wallHead  = 16.0 // title and days of the week
	wallWeeks = 5    // most on a sheet
	wallRow   = 43.0 // greatest height of a week
	wallLine  = 3.9  // from line to line
	wallMoon  = 2.4  // radius; its disc stays above the first line of the day
	wallEdge  = 0.2  // that the outer lines keep from the edge of the drawing
)

// A weeksPlan is the calendar of a unit in weeks, to pin up.
type weeksPlan struct {
	p        place.Place
	term     classroom.Term
	lessons  []classroom.Lesson
	calendar classroom.Calendar
	alerts   map[place.Date][]say.Value
	phases   map[place.Date]almanac.PhaseTime
	days     []time.Weekday // columns
	title    string
}

func planSheets(v form.Values, lessons []classroom.Lesson, calendar classroom.Calendar) []drawing.Sheet {
	w := weeksPlan{p: school.Place(v), term: school.Term(v), lessons: lessons, calendar: calendar, title: school.UnitTitle.Of(v),
		alerts: map[place.Date][]say.Value{}, phases: map[place.Date]almanac.PhaseTime{}}
	w.columns()
	w.sky(v)
	first := w.term.First.Add(-(int(w.term.First.Weekday()) + 6) % 7) // a Monday
	last := w.term.Last
	for _, h := range calendar.Held { // a lesson with a date of its own outside the term
		if h.Placed && h.Date.After(last) && last.DaysUntil(h.Date) < 60 {
			last = h.Date
		}
	}
	weeks := min(first.DaysUntil(last)/7+1, classroom.LongestTerm/7+1)
	paper := drawing.PaperOf(school.Paper.Of(v)).Across()
	var sheets []drawing.Sheet
	pages := (weeks + wallWeeks - 1) / wallWeeks
	each := (weeks + pages - 1) / pages
	for week := 0; week < weeks; week += each {
		d := w.draw(paper, first.Add(7*week), min(each, weeks-week))
		sheets = append(sheets, drawing.Sheet{Paper: paper, Drawing: d, Row: 1, Column: 1, Rows: 1, Columns: 1})
	}
	return sheets
}

// columns are the days of the week on which something can happen, Monday first.
func (w *weeksPlan) columns() {
	used := map[time.Weekday]bool{}
	for _, d := range w.term.Weekdays {
		used[d] = true
	}
	for _, h := range w.calendar.Held {
		if h.Placed {
			used[h.Date.Weekday()] = true
		}
	}
	for i := range 7 {
		if d := time.Weekday((i + 1) % 7); used[d] {
			w.days = append(w.days, d)
		}
	}
}

// sky notes what the calendar shows of the sky; outside the almanac's years
// nothing.
func (w *weeksPlan) sky(v form.Values) {
	first, last := w.term.First, w.term.Last
	alerts, err := sky.AlertsBetween(v, w.p, first, last)
	if err != nil {
		return
	}
	for _, a := range alerts {
		d := a.Date(w.p)
		w.alerts[d] = append(w.alerts[d], a.Short)
	}
	from, _ := w.p.Day(first)
	_, to := w.p.Day(last)
	phases, err := almanac.Phases(from, to)
	if err != nil {
		return
	}
	for _, x := range phases {
		w.phases[w.p.DateAt(x.At)] = x
	}
}

func (w *weeksPlan) draw(paper drawing.Paper, monday place.Date, weeks int) drawing.Drawing {
	width, height := paper.Area()
	row := min(wallRow, (height-wallHead-wallEdge)/float64(weeks))
	column := (width - 2*wallEdge) / float64(max(1, len(w.days)))
	left := func(i int) float64 { return wallEdge + float64(i)*column }
	last := monday.Add(7*weeks - 1)
	if n := len(w.days); n > 0 {
		last = monday.Add(7*(weeks-1) + (int(w.days[n-1])+6)%7) // the last that has a column
	}
	d := drawing.Drawing{
		Name: "wall", Width: width, Height: wallHead + row*float64(weeks) + wallEdge,
		Title:       say.Line("unit-plan.wall", say.Text(w.title), say.Date(monday), say.Date(last)),
		Description: say.Line("unit-plan.wall_description"),
	}
	d.Label("numeral", drawing.Point{X: 0, Y: 5}, drawing.Start, say.Text(w.title))
	d.Label("strong", drawing.Point{X: width, Y: 5}, drawing.End, say.Words("unit-plan.weeks", entry.DayOfYear(monday), say.Date(last)))
	for i, day := range w.days {
		name := [...]string{"weekday.0", "weekday.1", "weekday.2", "weekday.3", "weekday.4", "weekday.5", "weekday.6"}[day]
		d.Label("strong", drawing.Point{X: left(i) + column/2, Y: wallHead - 2.5}, drawing.Middle, say.Words(name))
	}
	for week := range weeks {
		for i, day := range w.days {
			date := monday.Add(7*week + (int(day)+6)%7)
			w.cell(&d, date, left(i), wallHead+float64(week)*row, column, row)
		}
	}
	for week := range weeks + 1 {
		y := wallHead + float64(week)*row
		d.Line("grid", drawing.Point{X: wallEdge, Y: y}, drawing.Point{X: width - wallEdge, Y: y})
	}
	for i := range len(w.days) + 1 {
		x := left(i)
		d.Line("grid", drawing.Point{X: x, Y: wallHead}, drawing.Point{X: x, Y: wallHead + row*float64(weeks)})
	}
	return d
}

// cell fills one day: its number, the Moon's phase, the lessons, what waits for
// rain, what the sky does.
func (w *weeksPlan) cell(d *drawing.Drawing, date place.Date, x, y, width, height float64) {
	inside := !date.Before(w.term.First) && !date.After(w.term.Last)
	if !w.term.Holds(date) {
		d.Area("day-off", drawing.Point{X: x, Y: y}, drawing.Point{X: x + width, Y: y}, drawing.Point{X: x + width, Y: y + height}, drawing.Point{X: x, Y: y + height})
	}
	figure := say.Words("format.day_month", say.Count(date.Day), entry.ShortMonth(date.Month))
	if day := w.term.CycleDay(date); day > 0 && inside {
		figure = say.Words("page.cycle_day", figure, say.Count(day))
	}
	d.Label("strong", drawing.Point{X: x + 1.5, Y: y + 4.4}, drawing.Start, figure)
	if phase, ok := w.phases[date]; ok {
		centre := drawing.Point{X: x + width - wallMoon - 1.4, Y: y + wallMoon + 1}
		entry.DrawMoon(d, centre, wallMoon, almanac.Moon.LimbFrom(w.p, phase.At))
		d.Label("small", drawing.Point{X: centre.X - wallMoon - 1, Y: centre.Y + 1}, drawing.End, moon.PhaseName(phase.Phase))
	}
	first := true
	put := func(role string, text say.Value) { // below what is there, as long as there is room
		p := d.Paragraph(role, drawing.Point{X: x + 1.5, Y: y + 9.2}, width-3, wallLine, text)
		p.After, p.Floor = !first, y+height-0.8
		first = false
	}
	for _, i := range w.calendar.On(date) {
		h := w.calendar.Held[i]
		from, _ := h.Moments(w.p)
		_, to := h.End().Moments(w.p)
		title := say.Text(w.lessons[i].Title)
		put("strong", title.As("unit-plan.numbered", say.Count(i+1), title))
		put("small", say.Words("unit-plan.times", say.Clock(from), say.Clock(to), skyShort(w.p, h.Slot)))
	}
	for i, h := range w.calendar.Held {
		r := h.Reserve
		if (r.Kind == classroom.AtAnotherTime || r.Kind == classroom.InExchange) && r.Date == date {
			from, _ := r.Moments(w.p)
			put("small", say.Words("unit-plan.if_wet", say.Clock(from), say.Count(i+1)))
		}
	}
	if inside && !w.term.Holds(date) {
		put("small", say.Words("unit-plan.day_off"))
	}
	for _, short := range w.alerts[date] {
		put("small", say.Words("unit-plan.look_up", short))
	}
}

// skyShort says in two or three words what the Sun does.
func skyShort(p place.Place, s classroom.Slot) say.Value {
	from, to := s.Moments(p)
	middle := almanac.SunFrom(p, from.Add(to.Sub(from)/2))
	switch {
	case middle.Altitude > entry.SunRise():
		return say.Words("unit-plan.sun_short", heightOf(middle))
	case middle.Altitude <= almanac.CivilTwilight:
		return say.Words("unit-plan.dark")
	}
	return say.Words("unit-plan.twilight")
}
