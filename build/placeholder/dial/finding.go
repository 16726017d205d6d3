package dial

import (
	"errors"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// fitFacts are what the marks tell in numbers, or nothing where they do not.
func fitFacts(fit dial.Fit, err error) []result.Fact {
	values := []say.Value{
		entry.Sided(fit.Turn.Degrees(), 1, "compass.clockwise", "compass.anticlockwise"),
		say.Number(fit.TurnMargin.Degrees(), "deg", 1),
		entry.Sided(fit.Gnomon.Degrees(), 1, "dial-marks.too_steep", "dial-marks.too_flat"),
		say.Number(fit.GnomonMargin.Degrees(), "deg", 1),
		fastOrSlow(fit.Watch),
		say.Minutes(fit.WatchMargin),
		say.Number(fit.Scatter.Degrees(), "deg", 1),
	}
	facts := make([]result.Fact, len(values))
	for i, name := range []string{"turn", "turn_margin", "gnomon_off", "gnomon_margin", "watch_off", "watch_margin", "scatter"} {
		facts[i] = result.Fact{Name: name, Value: values[i]}
		if err != nil {
			facts[i].Value = say.None("dial-marks.none")
		}
	}
	return facts
}

// finding says in words what the marks tell.
func (b board) finding(fit dial.Fit, err error, ask dial.Unknown, variation quantity.Angle) say.Value {
	var few *dial.TooFew
	var against *dial.Contradictory
	switch {
	case errors.As(err, &few) && few.Marks == 0:
		return say.Words("dial-marks.no_marks")
	case errors.As(err, &few):
		return say.Words("dial-marks.too_few", say.Count(few.Marks), say.Count(few.Want))
	case errors.As(err, &against):
		return say.Words("dial-marks.contradict", say.Number(against.Scatter.Degrees(), "deg", 0))
	case err != nil:
		return say.Words("dial-marks.undecided")
	}
	var found []say.Value
	if ask.Turn {
		found = append(found, turnFinding(fit, variation))
	}
	right, wrong := "dial-marks.gnomon_right", "dial-marks.gnomon_wrong"
	if b.isPolar() {
		right, wrong = "dial-marks.plate_right", "dial-marks.plate_wrong"
	}
	if off := fit.Gnomon; ask.Gnomon && max(off, -off) > fit.GnomonMargin {
		found = append(found, say.Words(wrong, entry.Sided(off.Degrees(), 1, "dial-marks.too_steep", "dial-marks.too_flat"), say.Number(fit.GnomonMargin.Degrees(), "deg", 1)))
	} else if ask.Gnomon {
		found = append(found, say.Words(right, say.Number(fit.GnomonMargin.Degrees(), "deg", 1)))
	}
	if ask.Watch && fit.Watch.Abs() > fit.WatchMargin {
		found = append(found, watchFinding(fit))
	} else if ask.Watch {
		found = append(found, say.Words("dial-marks.watch_right", say.Minutes(fit.WatchMargin)))
	}
	if len(found) == 0 {
		return say.Words("dial-marks.nothing_sought", say.Number(fit.Scatter.Degrees(), "deg", 1))
	}
	all := found[0]
	for _, next := range found[1:] {
		all = say.Words("dial-marks.and", all, next)
	}
	return all
}

// turnFinding compares a turn with what a compass does to it: laid along the
// needle, a plate is turned by the variation; corrected to the wrong side, by
// twice that.
func turnFinding(fit dial.Fit, variation quantity.Angle) say.Value {
	turn := entry.Sided(fit.Turn.Degrees(), 0, "compass.clockwise", "compass.anticlockwise")
	margin := say.Number(fit.TurnMargin.Degrees(), "deg", 1)
	is := func(cause quantity.Angle) bool { // and could not be nothing
		off := (fit.Turn - cause).Signed()
		return max(off, -off) <= fit.TurnMargin+quantity.Degrees(0.5) // the model of the field is no better
	}
	switch {
	case is(0):
		return say.Words("dial-marks.turn_right", margin)
	case is(variation):
		return say.Words("dial-marks.turn_needle", turn, margin)
	case is(2 * variation):
		return say.Words("dial-marks.turn_wrong_side", turn, margin)
	}
	return say.Words("dial-marks.turn_other", turn, margin)
}

func watchFinding(fit dial.Fit) say.Value {
	key := "dial-marks.watch_wrong"
	if hour := fit.Watch.Abs() - time.Hour; hour.Abs() <= fit.WatchMargin {
		key = "dial-marks.watch_hour"
	}
	return say.Words(key, fastOrSlow(fit.Watch), say.Minutes(fit.WatchMargin))
}
