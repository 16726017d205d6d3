// Package say holds what a computation says, before any language is chosen:
// values with their unit and rounding, and phrases by their key in the words
// files of the theme.
//
//	say.Number(-16.24, "deg", 1)                       // −16.2°
//	say.Number(-16.24, "deg", 1).As("compass.west_of", …) // 16.2° west
//	say.Words("sun-day.polar_day")                     // The Sun stays up all day.
//
// A value keeps full precision; rounding happens when it is written: for readers by
// its decimals, for pages' machine-readable data and files for download by Kept.
package say

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Kind tells the sorts of Value apart.
type Kind int

const (
	Nothing     Kind = iota // no value, with a phrase that says why
	Quantity                // Number in Unit, shown with Decimals
	Lasting                 // Number in seconds, shown as 1 h 28 min
	TimeOfDay               // Time, shown as the clock of its zone
	FaceHour                // Number of whole hours since midnight, as the figure on a dial
	ScaleHour               // the same, on a scale that goes round the whole day
	AxisHour                // the same, at the axis of a chart
	CalendarDay             // Time at UTC midnight, shown as a date
	Wording                 // a phrase only
	Name                    // Plain, text that no language changes
	Truth                   // Number 1 for yes and 0 for no, always with a phrase
	Typed                   // Plain, as it is typed into a file, quotes and all
)

// A Value is one computed thing.
type Value struct {
	Kind     Kind
	Number   float64
	Unit     string // "deg", "mm", "m", "s", "au"; "" for a pure number
	Decimals int    // digits shown after the decimal mark; for Lasting, 1 shows seconds
	Round    bool   // a bearing: what rounds to 360° is 0°
	Metric   bool   // stays metric in every school, as lenses are sold
	Up       bool   // rounded up, never down, in any measure: a distance to keep
	Absent   bool   // zero because there is no such thing: a list of facts leaves it out
	Time     time.Time
	Plain    string
	Phrase   Phrase  // where its key is set, what the page prints instead of the digits
	Also     []Value // more of its kind, which the phrase prints too: a day's second sunset
}

// A Phrase is a line of the words file with values for its gaps {1}, {2}, ….
type Phrase struct {
	Key  string
	With []Value
}

// Number is a quantity in the unit, shown with that many decimals.
func Number(x float64, unit string, decimals int) Value {
	return Value{Kind: Quantity, Number: x, Unit: unit, Decimals: decimals}
}

// Degrees is an angle in degrees.
func Degrees(a quantity.Angle, decimals int) Value { return Number(a.Degrees(), "deg", decimals) }

// Metres is a length in metres.
func Metres(l quantity.Length, decimals int) Value { return Number(l.Metres(), "m", decimals) }

// Millimetres is a length in millimetres.
func Millimetres(l quantity.Length, decimals int) Value {
	return Number(l.Millimetres(), "mm", decimals)
}

// Bearing is a direction in degrees, 0 to 360, that turns over to 0° when rounding
// brings it to 360°.
func Bearing(a quantity.Angle, decimals int) Value {
	v := Number(a.Bearing().Degrees(), "deg", decimals)
	v.Round = true
	return v
}

// IfAny returns v as one that a list leaves out where it is zero, because there is no such
// thing: a level plate has no slope to speak of. A sentence that asks for it has it.
func (v Value) IfAny() Value {
	v.Absent = v.Number == 0
	return v
}

// Count is a whole number of things.
func Count(n int) Value { return Number(float64(n), "", 0) }

// Minutes is a stretch of time shown to the minute, 1 h 28 min.
func Minutes(d time.Duration) Value {
	return Value{Kind: Lasting, Number: d.Seconds(), Unit: "s"}
}

// Seconds is a stretch of time shown to the second, 5 min 12 s.
func Seconds(d time.Duration) Value {
	return Value{Kind: Lasting, Number: d.Seconds(), Unit: "s", Decimals: 1}
}

// Clock is a moment, shown to the minute by the clock of its zone (see OnItsDay).
func Clock(t time.Time) Value { return Value{Kind: TimeOfDay, Time: t} }

// HourOnFace is the figure of a whole hour on a dial, 0 to 24: 13, or 1 where the
// school counts to twelve, since a shadow tells morning from afternoon.
func HourOnFace(hour int) Value { return Value{Kind: FaceHour, Number: float64(hour)} }

// HourOnScale is a whole hour, 0 to 24, on a scale that goes round the whole day: 21, or
// 9 p.m.
func HourOnScale(hour int) Value { return Value{Kind: ScaleHour, Number: float64(hour)} }

// HourOnAxis is a whole hour, 0 to 24, at the axis of a chart: 21:00, or 9 p.m.
func HourOnAxis(hour int) Value { return Value{Kind: AxisHour, Number: float64(hour)} }

// OnItsDay rounds a moment to the nearest minute, or another step, as clocks and
// files show it. Where the nearest lies on the next day by the clock of t's zone it is
// the one before: a sunset at 23:59:40 is at 23:59, not at 0:00 of a day on which the
// Sun did not set.
func OnItsDay(t time.Time, step time.Duration) time.Time {
	rounded := t.Round(step)
	if rounded.Day() != t.Day() {
		return rounded.Add(-step)
	}
	return rounded
}

// Date is a day of the calendar.
func Date(d place.Date) Value { return Value{Kind: CalendarDay, Time: d.UTC()} }

// Yes is a truth value, printed as one of two phrases.
func Yes(truth bool, yes, no string) Value {
	if truth {
		return Value{Kind: Truth, Number: 1, Phrase: Phrase{Key: yes}}
	}
	return Value{Kind: Truth, Phrase: Phrase{Key: no}}
}

// Words is a value that is a phrase.
func Words(key string, with ...Value) Value {
	return Value{Kind: Wording, Phrase: Phrase{key, with}}
}

// None is the value where there is none; the phrase says why.
func None(key string, with ...Value) Value { return Value{Phrase: Phrase{key, with}} }

// Text is a value that every language writes alike, such as a school's name.
func Text(s string) Value { return Value{Kind: Name, Plain: s} }

// Sample is what somebody types into a file, "A4": its quotes stay straight.
func Sample(s string) Value { return Value{Kind: Typed, Plain: s} }

// Line is a phrase that stands alone.
func Line(key string, with ...Value) Phrase { return Phrase{key, with} }

// As returns v, printed as the phrase.
func (v Value) As(key string, with ...Value) Value {
	v.Phrase = Phrase{key, with}
	return v
}

// AtLeast returns v, rounded up wherever it is written: 36 m are 118.1 ft, and to
// keep away so far one keeps 119 ft away.
func (v Value) AtLeast() Value {
	v.Up = true
	return v
}

// keptDigits is how many digits more than are printed a file keeps. An altitude that is
// printed to 0.1° is kept to 0.001°, to which the almanac promises the Moon's; a share
// of light to 0.01 %, which is finer than the 0.05 % that it promises. More would be
// noise, differ between processors, and change with every faster way to reckon.
const keptDigits = 2

// Kept is the number as pages' data and files for download keep it: two digits more
// than are printed, a stretch of time to the second, as moments in files are. What is
// not finite stays as it is.
func (v Value) Kept() float64 {
	scale := math.Pow10(v.Decimals + keptDigits)
	if v.Kind == Lasting {
		scale = 1
	}
	if x := math.Round(v.Number*scale) / scale; !math.IsInf(x, 0) {
		return x + 0 // no −0
	}
	return v.Number
}

// InMetric returns v, written in its metric unit in every school.
func (v Value) InMetric() Value {
	v.Metric = true
	return v
}
