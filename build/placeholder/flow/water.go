package flow

import (
	"fmt"
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/compute/flow"
	"noonbook/compute/quantity"
)

// What the entries take.
const (
	argBottleMM    form.Key[float64] = "bottle_mm"
	argHoleMM      form.Key[float64] = "hole_mm"
	argFillMM      form.Key[float64] = "fill_mm"
	argLastMM      form.Key[float64] = "last_mm"
	argStepMin     form.Key[float64] = "step_min"
	argTimedS      form.Key[float64] = "timed_s"
	argCoefficient form.Key[float64] = "coefficient"
)

// Coefficients of discharge that a hole in a bottle can have, with room for a careless
// ruler; outside them bottle, hole or time was misread: common practice, no source.
const leastCoefficient, mostCoefficient = 0.5, 1.0

// leastRun is the shortest run of which a class can time the steps, our own choice.
const leastRun = 2 * time.Minute

func waterClock() entry.Entry {
	return entry.Entry{
		Name:    "water-clock",
		Summary: "The marks of a clock that is a bottle with a hole: where the water is after each step, how it slows down, and how far a clock with even marks would be off. Prints the marks at true size.",
		Arguments: form.Form{
			{Key: argBottleMM, Unit: "mm", Min: 40, Max: 400, Default: 90.0, Doc: "Inside width of the bottle, where its walls are upright."},
			{Key: argHoleMM, Unit: "mm", Min: 1, Max: 10, Default: 2.0, Doc: "Width of the hole, near the foot of the upright wall."},
			{Key: argFillMM, Unit: "mm", Min: 40, Max: 240, Default: 180.0, Doc: "The start: height of the water above the middle of the hole, below the shoulder of the bottle."},
			{Key: argLastMM, Unit: "mm", Min: 5, Max: 200, Assumed: "twice the height that surface tension holds back", Doc: "The last mark, above the middle of the hole."},
			{Key: argStepMin, Unit: "min", Min: 0.5, Max: 60, Assumed: "what gives up to ten marks", Doc: "Time from mark to mark, in whole or half minutes."},
			{Key: argTimedS, Unit: "s", Min: 10, Max: 36000, Assumed: "the time is reckoned", Doc: "Measured: seconds that the water takes from the start to the last mark. Then the marks need no other number."},
			{Key: argCoefficient, Min: 0.4, Max: 1, Default: flow.SharpEdged, Doc: "Part of the hole that counts, while no time is measured: 0.61 with a sharp edge, 0.82 in a wall twice as thick as the hole is wide."},
		},
		Settings: form.Keys{school.Paper},
		Facts: []entry.Fact{
			{Name: "run", Unit: "s", Doc: "how long the water takes from the start to the last mark"},
			{Name: "last", Unit: "mm", Doc: "height of the last mark above the middle of the hole"},
			{Name: "step", Unit: "min", Doc: "time from mark to mark"},
			{Name: "first_gap", Unit: "mm", Doc: "distance of the first two marks"},
			{Name: "last_gap", Unit: "mm", Doc: "distance of the last two marks"},
			{Name: "flow_start", Unit: "ml_min", Doc: "flow at the start"},
			{Name: "flow_end", Unit: "ml_min", Doc: "flow at the last mark"},
			{Name: "water", Unit: "ml", Doc: "water from the start to the last mark"},
			{Name: "coefficient", Doc: "part of the hole that counts, measured where a time was"},
			{Name: "copied", Unit: "s", Doc: "how slow a clock is after an hour, refilled, whose marks all have the distance of the first two"},
			{Name: "even", Unit: "s", Doc: "how fast a clock is at most that has evenly spaced marks from the start to the last"},
			{Name: "hole_tenth", Unit: "s", Doc: "how fast the clock is after an hour if its hole is a tenth of a millimetre wider than measured"},
			{Name: "reckoned", Unit: "s", Doc: "how wrong marks from the formula alone are after an hour, where a time was measured"},
			{Name: "hour_width", Unit: "mm", Doc: "width of a vessel that takes an hour for one filling, with the same hole"},
		},
		Sources:   []string{sourceOutflow, sourceSkin},
		Printable: true,
		For:       entry.EachGroup,
		OnSheet:   markStripsOn,
		Cautions:  []string{entry.CareBottleHole, entry.CareWetFloor, entry.CareScissors},
		Reckon:    reckonWaterClock,
	}
}

// What the numbers rest on.
const (
	sourceOutflow = "Speed of the jet √(2 g h): E. Torricelli, De motu gravium, 1644; sharp-edged hole 0.61 (ISO 5167-2: 0.60 to 0.62; Kirchhoff 1869: π/(π + 2) for a slot), short tube 0.82 (V. L. Streeter, Fluid Mechanics), both set down from memory"
	sourceSkin    = "Surface tension of water 72.75 mN/m at 20 °C (IAPWS R1-76, from memory); to end at twice what it holds back is our own choice"
)

// A clock is a water clock with its marks.
type clock struct {
	vessel flow.Vessel
	run    flow.Run // timed, or reckoned
	formed flow.Run // reckoned
	timed  bool
	step   time.Duration
	marks  []flow.Mark
}

func clockOf(v form.Values) (clock, error) {
	c := clock{vessel: flow.Vessel{
		Width: quantity.Millimetres(argBottleMM.Of(v)), Hole: quantity.Millimetres(argHoleMM.Of(v)), Coefficient: argCoefficient.Of(v),
	}}
	start, last := quantity.Millimetres(argFillMM.Of(v)), lastOf(v, c.vessel)
	if last >= start {
		return c, fmt.Errorf("the last mark is %g mm above a hole of %g mm, and the water starts at %g mm; raise fill_mm or widen the hole", last.Millimetres(), c.vessel.Hole.Millimetres(), start.Millimetres())
	}
	var err error
	if c.formed, err = c.vessel.Run(start, last); err != nil {
		return c, err
	}
	c.run = c.formed
	if c.timed = argTimedS.In(v); c.timed {
		lasts := time.Duration(argTimedS.Of(v) * float64(time.Second))
		if c.run, err = flow.Timed(start, last, lasts); err != nil {
			return c, err
		}
		if c.vessel.Coefficient, err = c.vessel.CoefficientOf(c.run); err != nil {
			return c, err
		}
	}
	if c.step, err = stepOf(v, c.run); err != nil {
		return c, err
	}
	c.marks = c.run.Marks(c.step)
	return c, nil
}

// lastOf returns the level of the last mark: where it is left open, on the next five
// millimetres above the lowest that the vessel should run to.
func lastOf(v form.Values, vessel flow.Vessel) quantity.Length {
	if argLastMM.In(v) {
		return quantity.Millimetres(argLastMM.Of(v))
	}
	return quantity.Millimetres(5 * math.Ceil(vessel.Lowest().Millimetres()/5))
}

// mostMarks is how many marks a step that is left open gives at most.
const mostMarks = 10

func stepOf(v form.Values, r flow.Run) (time.Duration, error) {
	if argStepMin.In(v) {
		min := argStepMin.Of(v)
		step := time.Duration(min * float64(time.Minute))
		switch {
		case step%(30*time.Second) != 0:
			return 0, fmt.Errorf("step_min is %g; want whole or half minutes", min)
		case step > r.Lasts:
			return 0, fmt.Errorf("step_min is %g, and the water runs for %.1f min only", min, r.Lasts.Minutes())
		case r.Lasts/step > 100:
			return 0, fmt.Errorf("step_min is %g, and the water runs for %.0f min; want at most 100 marks", min, r.Lasts.Minutes())
		}
		return step, nil
	}
	steps := []float64{0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1500, 3000}
	for _, min := range steps {
		if step := time.Duration(min * float64(time.Minute)); r.Lasts/step <= mostMarks {
			if step > r.Lasts {
				return 0, fmt.Errorf("the water runs for %.0f s only; take a smaller hole, a wider bottle or more water", r.Lasts.Seconds())
			}
			return step, nil
		}
	}
	return 0, fmt.Errorf("the water would run for more than a month; take a larger hole")
}

func reckonWaterClock(v form.Values) (result.Result, error) {
	c, err := clockOf(v)
	if err != nil {
		return result.Result{}, err
	}
	strips, _ := markStrips(v, c)
	return result.Result{
		Facts:    c.facts(),
		Tables:   []result.Table{c.table(), c.errors()},
		Drawings: c.drawings(),
		Sheets:   stripPaper(v).Sheets(strips),
		Notes:    c.notes(),
		Working:  c.working(),
		Warnings: c.warnings(v),
	}, nil
}
