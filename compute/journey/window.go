package journey

import (
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/search"
	"noonbook/compute/world"
)

// A Window is a day on which the least-energy way to a world begins.
type Window struct{ Leave, Arrive time.Time }

// NextWindow returns the first window after t. ok is false where To has no way or
// where it would end beyond the almanac's years.
func NextWindow(w world.World, t time.Time) (Window, bool) {
	transfer, ok := To(w)
	if !ok {
		return Window{}, false
	}
	synodic := Synodic(w)
	step := min(synodic, transfer.Time) / 40
	last, known := miss(w, t)
	for at := t.Add(step); known && at.Sub(t) < 2*synodic; at = at.Add(step) {
		next, ok := miss(w, at)
		if !ok {
			break
		}
		// The miss runs round the circle in one sense; where it passes zero, and not
		// half a turn, a window lies between.
		if last.off*next.off <= 0 && max(last.off, -last.off) < quantity.Turn/4 && max(next.off, -next.off) < quantity.Turn/4 {
			return between(w, last, next), true
		}
		last = next
	}
	return Window{}, false
}

// A missed goal: leaving at a moment, by how much the goal is ahead of the end of
// the way when the way ends.
type missed struct {
	Window
	off quantity.Angle // −half a turn to half a turn
}

// miss follows a way that leaves at t. Its time depends on the goal's distance at
// its end, which it changes in turn: rounds of that settle to a minute.
func miss(w world.World, t time.Time) (missed, bool) {
	earth, _ := world.Find("earth")
	from, ok := earth.Heliocentric(t)
	if !ok {
		return missed{}, false
	}
	transfer, _ := To(w)
	m := missed{Window: Window{t, t.Add(transfer.Time)}}
	for range 20 {
		goal, ok := w.Heliocentric(m.Arrive)
		if !ok {
			return m, false
		}
		// Longitudes are of the equinox of their date, which moves meanwhile.
		drift := quantity.ArcSeconds(50.29 * m.Arrive.Sub(t).Hours() / 24 / 365.25)
		m.off = (goal.Longitude - drift - from.Longitude - quantity.Turn/2).Signed()
		arrive := t.Add(halfEllipse((from.Distance + goal.Distance).Metres() / 2))
		if settled := arrive.Sub(m.Arrive).Abs() < time.Minute; settled {
			break
		}
		m.Arrive = arrive
	}
	return m, true
}

// between finds the departure between two, one too early and one too late, to an
// hour, on the early side.
func between(w world.World, a, b missed) Window {
	early, _ := search.Halve(0, b.Leave.Sub(a.Leave), time.Hour, func(after time.Duration) bool {
		m, ok := miss(w, a.Leave.Add(after))
		return !ok || a.off*m.off <= 0
	})
	m, _ := miss(w, a.Leave.Add(early))
	return m.Window
}

// Windows returns the next windows after t, at most n.
func Windows(w world.World, t time.Time, n int) []Window {
	var windows []Window
	for range n {
		next, ok := NextWindow(w, t)
		if !ok {
			break
		}
		windows = append(windows, next)
		t = next.Leave.Add(Synodic(w) / 4)
	}
	return windows
}
