// Package placeholder holds the catalogue: every name that a lesson may put in
// a compute block or in {name.fact}, with its arguments, facts, sources and
// evaluation, a topic a file.
//
//	entry, _ := placeholder.Find(placeholder.Catalogue(), "dial-table")
//	values := entry.Complete(unit.Settings, given, date)
//	result, err := entry.Reckon(values)
//
// An evaluation takes its arguments and settings from the values, calls
// compute, and answers a result.Result. It knows no language: what is printed
// stands in the words files under the placeholder's name.
//
// A new placeholder is a function that returns an Entry, listed in Catalogue,
// and its words.
package placeholder
