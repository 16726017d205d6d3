// Package search finds where a function of one number is zero and where it is
// least: the moment of a sunrise, the speed that lifts a rocket to a height, the
// angle at which it flies farthest.
//
//	noon := search.Root(hourAngle, 11, 13, 1e-9)              // in the unit of its argument
//	at := search.Between(height, t, low, t+step, high, 1e-9)  // with the values at both ends known
//	before, from := search.Halve(0, day, time.Minute, dark)   // where a statement turns true
//	best := search.Lowest(func(e float64) float64 { return -reach(e) }, 0, 90, 0.01)
//
// # What it asks
//
// A function that is continuous between the two ends and passes zero there once,
// or has one valley; of several roots it finds one. Whoever has more looks in steps
// that hold one each.
//
// # Accuracy and range
//
// An answer is as near as within says, or as near as floating point tells two
// arguments apart. Root takes about ten evaluations for the smooth curves of this
// house where halving takes 30, and never more than 200; Lowest takes five for each
// factor of ten.
//
// # What it does not do
//
// It does not look for a bracket, follows no slopes (Newton's method stays where the
// slope is known, as in almanac's phases and Kepler's equation), and knows one
// variable only.
package search
