// Package theme is how a handbook looks and speaks: page templates, the style
// sheet, the words of each language, and the markup of computed results.
//
//	words, _ := theme.Language("en", false)
//	words.Text(say.Number(-16.24, "deg", 1)) // −16.2°
//	dst = words.AppendFact(dst, value)       // <data value="-16.24">−16.2°</data>
//
// Computed markup is written minimal, by plain appends, because it is spliced
// into pages that were minified before: attributes quoted, no white space
// between tags, & and < escaped. Everything else goes through html/template.
package theme
