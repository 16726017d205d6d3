package flow

import (
	"fmt"
	"time"

	"noonbook/compute/quantity"
)

// A Run is water that sinks in a vessel with upright walls from one level to another, and
// how long it takes, reckoned or timed. Levels are above the middle of the hole.
type Run struct {
	From, To quantity.Length
	Lasts    time.Duration
}

// levels says what is wrong with two levels.
func levels(from, to quantity.Length) error {
	if !(from > 0) || !(to >= 0) || !(to < from) {
		return fmt.Errorf("the water sinks from %.3g mm to %.3g mm; the first level must be higher, and none below the hole", from.Millimetres(), to.Millimetres())
	}
	return nil
}

// Timed returns a run that somebody timed.
func Timed(from, to quantity.Length, lasts time.Duration) (Run, error) {
	if err := levels(from, to); err != nil {
		return Run{}, err
	}
	if lasts <= 0 {
		return Run{}, fmt.Errorf("the run must take longer than 0 s")
	}
	return Run{From: from, To: to, Lasts: lasts}, nil
}

// Height returns the level so long after the start. Before the start it is From, after the
// end of the run To.
func (r Run) Height(after time.Duration) quantity.Length {
	share := max(0, min(1, after.Seconds()/r.Lasts.Seconds()))
	s := root(r.From) - (root(r.From)-root(r.To))*share
	return quantity.Metres(s * s)
}

// Dry returns when the level would come to the hole if the water went on as in the run: the
// T of h = h₀ (1 − t/T)². No bottle gets there (Vessel.Held).
func (r Run) Dry() time.Duration {
	return time.Duration(float64(r.Lasts) / (1 - root(r.To)/root(r.From)))
}

// A Mark is a level that the water passes at a time after the start.
type Mark struct {
	After  time.Duration
	Height quantity.Length
}

// Marks returns the levels at the start and after each step, as far as the run goes; none
// for a step that is not positive or would make more than a thousand.
func (r Run) Marks(step time.Duration) []Mark {
	if step <= 0 || r.Lasts/step > 1000 {
		return nil
	}
	var marks []Mark
	for after := time.Duration(0); after <= r.Lasts; after += step {
		marks = append(marks, Mark{after, r.Height(after)})
	}
	return marks
}

// Copied returns what a clock shows at the end of the run whose marks all have the distance
// of the first step: less than it lasts, since the water sinks more slowly.
func (r Run) Copied(step time.Duration) time.Duration {
	first := r.From - r.Height(step)
	if step <= 0 || first <= 0 {
		return 0
	}
	return time.Duration(float64(step) * float64((r.From-r.To)/first))
}

// Even returns by how much a clock is fast at most that has evenly spaced marks from start to
// end and is right at both, and the level where it is. With u = √h/√h₀ it shows
// (1 − u²)/(1 − u₁²) of the run where (1 − u)/(1 − u₁) of it is over; the difference is
// greatest where u is midway between 1 and u₁.
func (r Run) Even() (fast time.Duration, at quantity.Length) {
	end := root(r.To) / root(r.From)
	u := (1 + end) / 2
	share := (1-u*u)/(1-end*end) - (1-u)/(1-end)
	return time.Duration(share * float64(r.Lasts)), quantity.Length(u*u) * r.From
}

// AfterAnHour returns by how much a clock is fast after an hour of refilled runs (negative:
// slow) that shows so much for each run.
func (r Run) AfterAnHour(shows time.Duration) time.Duration {
	return time.Duration((shows.Seconds()/r.Lasts.Seconds() - 1) * float64(time.Hour))
}
