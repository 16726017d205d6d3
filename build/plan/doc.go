// Package plan turns a Unit into a handbook in two steps.
//
//	p, err := plan.Make(unit, words, plan.Class, placeholder.Catalogue()) // once: pages with slots
//	files, problems := p.Press(unit.Settings)                             // for each school: the slots filled
//
// Make renders each lesson, puts it into the theme's shell and minifies it
// once, with a mark wherever something depends on the school. The page is then
// cut at the marks into ready bytes. Press evaluates each distinct placeholder
// once and appends its markup between those bytes; no parser, template or
// minifier runs there.
//
// Marks stand in text only. Computed markup is minimal as it is written
// (typeset), so a page pressed this way is byte for byte the page that would have
// come from filling the slots first and minifying then, which the tests do.
//
// A Plan is not changed by Press and may be pressed by several goroutines.
package plan
