// Package placeholder holds the catalogue: every name that a lesson may put in
// a compute block or in {name.fact}. The entries stand in the folders of their
// topics below it; package entry says what an entry is.
//
//	e, _ := entry.Find(placeholder.Catalogue(), "dial-table")
//	values := e.Complete(unit.Settings, given, date)
//	result, err := e.Reckon(values)
//
// An evaluation takes its arguments and settings from the values, calls
// compute, and answers a result.Result. It knows no language: what is printed
// stands in the words files under the placeholder's name.
//
// A new placeholder is a function of its topic that returns an entry.Entry, a
// line of the topic's Entries, and its words.
package placeholder
