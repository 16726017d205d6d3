// Package entry says what a placeholder is, and keeps what several topics of
// them share, under one name each:
//
//	entry, lessons            an entry, its facts, the lessons that it is given
//	sources                   what several placeholders rest on
//	words                     sides, months, directions, lists, in values and words
//	noon, night, moon, shadow when and where something stands in a school's sky
//	sight                     heights as they are seen, the years that are computed
//	chart, travel             measures of drawings; craft and light on their way
package entry
