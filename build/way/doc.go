// Package way draws what leads through the unit: its lessons as the hours of a day. The cover
// has them as hour lines of the school's dial, a page as the Sun's way from the first to
// the last, with the Sun at its own place, and a part of a lesson as an hour of its day.
//
// Lengths are millimetres of the drawing; angles from noon are positive to the evening.
package way
