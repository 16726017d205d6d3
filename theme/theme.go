// Package theme holds what a designer or a translator touches, and nothing else:
//
//	templates/     the pages
//	styles/        page, paper (printables at true size), sheets (day and pupils')
//	script/        the one script of the pages
//	words/         what noonbook says, a file for each language
//	explanations/  keys and placeholders explained, by their English
//	pages/         lessons that stand in for parts that a unit leaves out
//
// build/typeset makes pages of it.
package theme

import (
	"bytes"
	"embed"
	"io/fs"
	"slices"
)

//go:embed templates words explanations pages
var files embed.FS

// Files holds the folders templates, words, explanations and pages.
func Files() fs.FS { return files }

//go:embed styles/page.css
var pageStyle []byte

//go:embed styles/paper.css
var paperStyle []byte

//go:embed styles/sheets.css
var sheetStyle []byte

// Style returns the style sheet, from page to detail.
func Style() []byte { return slices.Concat(pageStyle, paperStyle, sheetStyle) }

//go:embed script/noonbook.js
var script []byte

// Script returns the script of the pages.
func Script() []byte { return bytes.Clone(script) }
