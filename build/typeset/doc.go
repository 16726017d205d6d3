// Package typeset writes results in the school's language: words, numbers, dates
// and measures, tables and drawings as markup, and pages through the templates of
// theme.
//
//	words, _ := typeset.Language("en", false)
//	words.Text(say.Number(-16.24, "deg", 1)) // −16.2°
//	dst = words.AppendFact(dst, value)       // <data value="-16.24">−16.2°</data>
//
// Computed markup is written minimal, by plain appends, because it is spliced
// into pages that were minified before: attributes quoted, no white space
// between tags, & and < escaped. Everything else goes through html/template.
package typeset
