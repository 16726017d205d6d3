// Package starter lays out a new unit for a school: the lessons of another unit without
// what belongs to that one, blank files for records, and a unit.toml of its own.
//
//	answers, err := starter.Ask(ctx, lines, out, given, today) // at a terminal
//	files, problems, err := starter.Lay(content.Files(), answers)
//
// Place reads a place as people write it. Nothing here writes to a disk.
package starter
